/// One parameter or result as a sentence.
#include "functions/parameter_words.h"

#include <fmt/format.h>

#include "functions/functions_page.h"

namespace puteal
{
namespace
{

std::string choiceWords(const std::vector<std::string> &choices)
{
    return choices.empty() ? "a choice" : fmt::format("one of \"{}\"", fmt::join(choices, "\", \""));
}

/// "mg/L as Fe", "a pure number", "any unit 'u", "yes or no", "any kind".
std::string kindWords(ValueKind kind, const UnitPattern &pattern, bool anyKind,
                      const std::vector<std::string> &choices)
{
    if (anyKind)
        return "any kind";
    switch (kind) {
    case ValueKind::yesNo:
        return "yes or no";
    case ValueKind::choice:
        return choiceWords(choices);
    case ValueKind::words:
        return "words";
    case ValueKind::date:
        return "a date";
    default:
        break;
    }
    if (pattern.text.empty())
        return "a pure number";
    return pattern.variables.empty() ? pattern.text : "any unit " + pattern.text;
}

} // namespace

std::string parameterWords(const ParameterInfo &parameter)
{
    const auto &p = parameter;
    std::string text = p.range ? "a range of " : p.rangeOrValue ? "ranges and values of " : "";
    text += kindWords(p.kind, p.pattern, p.anyKind, p.choices) + "; " + p.meaning;
    const bool quantity = p.kind == ValueKind::quantity;
    const auto hard = quantity ? rangeWords(p.hardLow, p.hardHigh, p.pattern.text) : "";
    const auto usual = quantity ? rangeWords(p.usualLow, p.usualHigh, p.pattern.text) : "";
    if (!hard.empty())
        text += "; takes " + hard;
    if (!usual.empty())
        text += (hard.empty() ? "; usually " : ", usually ") + usual;
    if (p.hasDefault) {
        text += p.fallbackMark.empty()
                    ? "; may be left out"
                    : fmt::format("; {} when left out ({})", defaultWords(p), markWords(p.fallbackMark));
    }
    if (p.mayBeMissing)
        text += "; may be missing";
    if (p.mayBeBounded)
        text += "; takes a reading such as <0.05";
    return text;
}

std::string resultWords(const FunctionInfo &function)
{
    const auto &f = function;
    return kindWords(f.resultKind, f.result, false, f.resultChoices) + ": " + f.resultMeaning;
}

} // namespace puteal
