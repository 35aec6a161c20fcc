/// Units, substances, listed words and what joins two values.
#include "session/completer.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "sdk/substances.h"

namespace puteal
{

namespace
{

using Kind = Completion::Kind;
using Wants = TypingPlace::Wants;

char low(char c)
{
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

} // namespace

bool beginsWith(std::string_view text, std::string_view with)
{
    return text.size() >= with.size() && std::equal(with.begin(), with.end(), text.begin(),
                                                    [](char a, char b) { return low(a) == low(b); });
}

bool hasWordBeginning(std::string_view text, std::string_view word)
{
    const auto same = [](char a, char b) { return low(a) == low(b) || (a == '_' && b == ' '); };
    for (std::size_t i = 0; i + word.size() <= text.size(); ++i)
        if ((i == 0 || !std::isalnum(static_cast<unsigned char>(text[i - 1]))) &&
            std::equal(word.begin(), word.end(), text.begin() + static_cast<long>(i), same))
            return true;
    return false;
}

std::string argumentWords(const ParameterInfo &parameter)
{
    std::string out = parameter.name;
    if (!parameter.pattern.text.empty())
        out += " " + parameter.pattern.text;
    if (parameter.kind == ValueKind::date)
        out += " (year-month-day)";
    return out;
}

const ParameterInfo *parameterAt(const FunctionInfo *function, std::size_t argument)
{
    if (!function)
        return nullptr;
    for (std::size_t i = 0; i < function->parameters.size(); ++i)
        if (i == argument || function->parameters[i].repeats)
            return &function->parameters[i];
    return nullptr;
}

Completer::Completer(const Session &session, const CellAt &at, TypingPlace place)
    : m_session(session), m_workbook(session.workbook()), m_at(at), m_place(std::move(place)),
      m_parameter(parameterAt(registry().find(m_place.function), m_place.argument))
{
}

std::vector<Completion> Completer::offers()
{
    switch (m_place.wants) {
    case Wants::nothing:
        break;
    case Wants::substance:
        addSubstances();
        break;
    case Wants::joint:
        addJoints();
        break;
    case Wants::listedWord:
        addListedWords();
        break;
    case Wants::unit:
        addUnits();
        break;
    case Wants::cell:
    case Wants::operand:
        m_place.sheet.empty() ? addOperands() : addOfSheet();
        break;
    }
    // What was typed in whole comes first.
    std::stable_partition(m_out.begin(), m_out.end(),
                          [this](const Completion &offer) { return offer.text == m_place.word; });
    return std::move(m_out);
}

void Completer::add(Kind kind, std::string text, std::string detail)
{
    if (m_texts.insert(text).second)
        m_out.push_back({kind, std::move(text), std::move(detail), false});
}

void Completer::addFound(Kind kind, std::string text, const std::string &detail)
{
    if (!m_texts.insert(text).second)
        return;
    std::string said = m_place.word;
    std::replace(said.begin(), said.end(), '_', ' ');
    m_out.push_back({kind, std::move(text), fmt::format("for \"{}\": {}", said, detail), true});
}

void Completer::addSubstances()
{
    for (std::size_t i = 0; i < sdk::substanceCount; ++i)
        if (typed(sdk::substances[i].word))
            add(Kind::substance, sdk::substances[i].word, sdk::substances[i].name);
    for (std::size_t i = 0; i < sdk::substanceCount && searches(); ++i)
        if (hasWordBeginning(sdk::substances[i].name, m_place.word))
            addFound(Kind::substance, sdk::substances[i].word, sdk::substances[i].name);
}

void Completer::addJoints()
{
    const char *const rows[][2] = {{"and", "both conditions hold"},
                                   {"or", "one of two conditions holds"},
                                   {"->", "the unit the result is wanted in"}};
    for (const auto &row : rows)
        if (typed(row[0]))
            add(Kind::joint, row[0], row[1]);
}

/// Listed words of the argument, or of what they are compared with.
void Completer::addListedWords()
{
    std::vector<std::string> words;
    if (m_parameter)
        words = m_parameter->choices;
    if (const auto at = referred(m_place.compared))
        if (const StaticType type = m_session.view(*at).type; type.kind == ValueKind::choice)
            words = m_session.program().lists().words(type.list);
    for (const std::string &word : words)
        if (typed(word))
            add(Kind::list, quoted(word), "listed word");
}

/// The cell a reference means that is written in this sheet.
std::optional<CellAt> Completer::referred(const std::string &reference) const
{
    if (reference.empty())
        return {};
    const Sheet &sheet = m_workbook.sheets[m_at.sheet];
    if (const auto here = sheet.named(reference, m_at.sheet))
        return here;
    if (const auto c = sheet.columnByKey(reference))
        return CellAt{m_at.sheet, *c, m_at.line};
    if (const auto there = m_session.find(reference))
        return *there;
    return {};
}

void Completer::addUnits()
{
    if (m_place.firstOfUnit)
        addUnitsSetHere();
    for (const UnitWord &unit : units().words())
        if (typed(unit.word))
            add(Kind::unit, unit.word, std::string(unit.name));
    for (const UnitWord &unit : units().words())
        if (searches() && (hasWordBeginning(unit.name, m_place.word) || spelled(unit)))
            addFound(Kind::unit, unit.word, std::string(unit.name));
    if (!m_place.afterNumber || m_place.word.empty())
        return;
    if (m_place.firstOfUnit)
        addJoints();
    else
        addNames(m_at.sheet, ""); // below the line a name divides
}

/// Whole units that are likely meant: of the argument, of the cell, of the sheet.
void Completer::addUnitsSetHere()
{
    const auto offer = [this](const std::string &unit, const std::string &why) {
        if (!unit.empty() && typed(unit))
            add(Kind::unit, unit, why);
    };
    if (m_parameter && m_parameter->pattern.variables.empty() && m_parameter->pattern.substanceFrom < 0)
        offer(m_parameter->pattern.text, fmt::format("what `{}` takes", m_parameter->name));
    offer(m_workbook.sheets[m_at.sheet].effective(m_at.column, m_at.line).unit, "set unit of this cell");
    for (const std::string &unit : unitsHere())
        offer(unit, "set unit in this sheet");
}

bool Completer::spelled(const UnitWord &unit) const
{
    const auto spellings = unit.spellings();
    return std::any_of(spellings.begin(), spellings.end(),
                       [this](const std::string &spelling) { return typed(spelling); });
}

/// Set units of the sheet, the most used first.
std::vector<std::string> Completer::unitsHere() const
{
    constexpr std::uint32_t mostLines = 1000;
    const Sheet &sheet = m_workbook.sheets[m_at.sheet];
    std::vector<std::pair<int, std::string>> counted;
    for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
        for (std::uint32_t l = 0; l < std::min(sheet.lineCount(), mostLines); ++l) {
            const std::string &unit = sheet.cell(c, l).beside().unit;
            const auto there = std::find_if(counted.begin(), counted.end(),
                                            [&](const auto &one) { return one.second == unit; });
            if (there == counted.end())
                counted.emplace_back(1, unit);
            else
                ++there->first;
        }
    std::stable_sort(counted.begin(), counted.end(),
                     [](const auto &a, const auto &b) { return a.first > b.first; });
    std::vector<std::string> out;
    for (const auto &one : counted)
        out.push_back(one.second);
    return out;
}

} // namespace puteal
