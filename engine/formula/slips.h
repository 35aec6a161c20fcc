/// Slips of people who are used to other ways of writing: sheets, letters, other languages. Each is met where
/// the parser fails anyway, and gets a sentence that says what to write here.
#pragma once

#include <string_view>

#include "formula/formula_reader.h"
#include "formula/tree.h"

namespace puteal
{

class Slips : public FormulaReader
{
protected:
    Slips(std::string_view plain, const UnitTable &units, KnownWord isKnownWord, const void *context)
        : FormulaReader(plain), m_units(units), m_isKnownWord(isKnownWord), m_context(context)
    {
    }

    bool isKnown(std::string_view word) const { return m_isKnownWord && m_isKnownWord(m_context, word); }

    // All tell by true that they failed. slips.cpp: between two pieces of a formula
    bool wordSlip(std::size_t pos, std::string_view word); ///< `x`, `per`, `of`, `to`, a substance
    bool signSlip(std::size_t pos);                        ///< `+-`, `+/-`, a dash before a unit
    bool quoteSlip(std::size_t pos);                       ///< 5' 3"
    bool secondNumber(std::size_t pos);                    ///< 5 ft 3 in
    bool semicolonSlip(std::size_t pos);                   ///< max(1; 2)
    bool characterSlip(std::size_t pos, std::size_t end);
    bool notMade(); ///< the whole text says that there is no reading

    // slips_written.cpp: names, dates and numbers written in other ways
    bool cellAddress(std::size_t begin);                                         ///< A1, $A$1, R1C1
    bool sheetSlip(std::size_t begin, std::string_view word);                    ///< water!A1
    bool capitalSlip(std::size_t begin, std::string_view word);                  ///< TRUE, BDL
    bool monthSlip(std::size_t begin, std::string_view word);                    ///< 12 May 2026
    bool dateWithPoints(std::size_t begin, std::size_t end);                     ///< 12.5.2026
    bool blankGroups(std::size_t begin, std::size_t numberEnd, std::size_t pos); ///< 1 200
    bool groupedByMark(std::size_t begin, std::size_t numberEnd);                ///< 1_000
    bool spelledPower(std::size_t begin, std::size_t end);                       ///< cu ft

    const UnitTable &m_units;
    KnownWord m_isKnownWord;
    const void *m_context;
    bool m_inArguments = false; ///< a comma parts arguments here

private:
    bool told(ErrorKind kind, std::string words, std::size_t begin, std::size_t end);
    bool toldWith(ErrorKind kind, std::string words, std::size_t begin, std::size_t end, std::string text);
    bool curlyWords(std::size_t pos, std::size_t end);
};

} // namespace puteal
