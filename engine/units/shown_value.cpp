/// Kinds of values in words, and values that are no quantities as text.
#include "units/shown_value.h"

#include <algorithm>

#include "units/dates.h"

namespace puteal
{

const char *kindWord(ValueKind kind)
{
    switch (kind) {
    case ValueKind::quantity:
        return "quantity";
    case ValueKind::yesNo:
        return "yes/no";
    case ValueKind::choice:
        return "choice";
    case ValueKind::date:
        return "date";
    case ValueKind::words:
        return "words";
    case ValueKind::blank:
        break;
    }
    return "blank";
}

std::string showOther(const StaticType &type, double number, const std::string &words,
                      const ChoiceLists &lists, double dayInBase)
{
    switch (type.kind) {
    case ValueKind::yesNo:
        return number != 0.0 ? "yes" : "no";
    case ValueKind::choice: {
        const std::vector<std::string> &list = lists.words(type.list);
        const auto index = static_cast<std::size_t>(std::max(0.0, number));
        return index < list.size() ? list[index] : std::string();
    }
    case ValueKind::date:
        return dateText(static_cast<std::int64_t>(wholeDays(number, dayInBase)));
    case ValueKind::words:
        return words;
    default:
        return {};
    }
}

} // namespace puteal
