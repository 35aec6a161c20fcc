/// Gathers what could stand at a place of a formula that is being typed.
#pragma once

#include <set>

#include "functions/registry.h"
#include "session/session.h"
#include "session/typing_place.h"

namespace puteal
{

/// The parameter an argument is given for; null when the function takes none there.
const ParameterInfo *parameterAt(const FunctionInfo *function, std::size_t argument);
/// "iron mg/L as Fe".
std::string argumentWords(const ParameterInfo &parameter);
/// Does the text begin so? Case does not count.
bool beginsWith(std::string_view text, std::string_view with);
/// Does a word of the text begin so? Words are parted by anything that is no letter and no digit; in `word` a
/// _ stands for a blank or for itself.
bool hasWordBeginning(std::string_view text, std::string_view word);

class Completer
{
public:
    Completer(const Session &session, const CellAt &at, TypingPlace place);

    std::vector<Completion> offers();

private:
    const Registry &registry() const { return m_session.program().registry(); }
    const UnitTable &units() const { return m_session.program().units(); }
    bool typed(std::string_view candidate) const { return beginsWith(candidate, m_place.word); }
    /// One letter tells too little to search by.
    bool searches() const { return m_place.word.size() >= 2; }

    void add(Completion::Kind kind, std::string text, std::string detail);
    void addFound(Completion::Kind kind, std::string text, const std::string &detail);
    void addSubstances();
    void addJoints();
    void addListedWords();
    std::optional<CellAt> referred(const std::string &reference) const;
    void addUnits();
    void addUnitsSetHere();
    bool spelled(const UnitWord &unit) const;
    std::vector<std::string> unitsHere() const;

    std::string told(const CellAt &at) const;
    bool fits(const CellAt &at) const;
    void addNames(std::uint32_t sheet, const std::string &before);
    void addColumns(std::uint32_t sheet);
    void addOperands();
    void addOfSheet();
    void addNamesFound(std::uint32_t sheet, const std::string &before);
    void addFunctions();

    const Session &m_session;
    const Workbook &m_workbook;
    CellAt m_at;
    TypingPlace m_place;
    const ParameterInfo *m_parameter;
    std::vector<Completion> m_out;
    std::set<std::string> m_texts; ///< what is offered already
};

} // namespace puteal
