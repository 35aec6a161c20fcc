/// Which words may name a cell or key a column.
#include "sheet/workbook.h"

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"

namespace puteal
{

namespace
{

Result<void> checkForm(std::string_view word, std::string_view what, bool oneLetter)
{
    if (isName(word, oneLetter))
        return {};
    if (word.size() > limits::nameCharacters)
        return fail(ErrorKind::name, fmt::format("this {} has {} characters, {} are the most: shorten it",
                                                 what, word.size(), limits::nameCharacters));
    return fail(
        ErrorKind::name,
        fmt::format("`{}` cannot be a {}: use lower-case letters, digits and _, starting with a letter{}",
                    word, what, oneLetter ? "" : ", two characters or more, as in raw_iron"));
}

} // namespace

Result<void> checkName(const Sheet &sheet, std::string_view name, bool isUnitWord, std::optional<CellAt> self)
{
    if (auto form = checkForm(name, "name", false); !form)
        return form;
    if (isUnitWord)
        return fail(ErrorKind::name,
                    fmt::format("`{0}` is a unit word: take a longer name, as in {0}_used", name));
    if (isReservedWord(name))
        return fail(ErrorKind::name,
                    fmt::format("`{}` is a word of the formula language: take another name", name));
    if (sheet.columnByKey(name))
        return fail(ErrorKind::name, fmt::format("`{}` is the key of a column of sheet {}: take another name",
                                                 name, sheet.key()));
    const auto taken = sheet.names().find(std::string(name));
    if (taken != sheet.names().end() &&
        !(self && self->column == taken->second.first && self->line == taken->second.second))
        return fail(ErrorKind::name, fmt::format("`{}` already names line {} of sheet {}: take another name",
                                                 name, taken->second.second + 1, sheet.key()));
    return {};
}

Result<void> checkColumnKey(const Sheet &sheet, std::string_view key, std::optional<std::uint32_t> self)
{
    if (auto form = checkForm(key, "column key", true); !form)
        return form;
    if (isReservedWord(key))
        return fail(ErrorKind::name,
                    fmt::format("`{}` is a word of the formula language: take another key", key));
    if (const auto other = sheet.columnByKey(key); other && other != self)
        return fail(ErrorKind::name,
                    fmt::format("sheet {} already has a column `{}`: take another key", sheet.key(), key));
    if (const auto taken = sheet.names().find(std::string(key)); taken != sheet.names().end())
        return fail(ErrorKind::name, fmt::format("`{}` names line {} of sheet {}: take another key", key,
                                                 taken->second.second + 1, sheet.key()));
    return {};
}

std::string freeColumnKey(const Sheet &sheet)
{
    constexpr std::string_view letters = "abcefijknopqrtuvwxyz"; // the others are unit words
    for (const char letter : letters)
        if (!sheet.columnByKey(std::string_view(&letter, 1)) &&
            !sheet.names().contains(std::string(1, letter)))
            return {letter};
    for (std::uint32_t n = 2;; ++n)
        for (const char letter : letters)
            if (std::string key = fmt::format("{}{}", letter, n);
                !sheet.columnByKey(key) && !sheet.names().contains(key))
                return key;
}

} // namespace puteal
