/// Which names and keys an edit may give.
#include <fmt/format.h>

#include "base/text.h"
#include "session/applier.h"

namespace puteal
{

Result<void> Applier::wordIsFree(std::uint32_t sheet, const std::string &word) const
{
    const Sheet &page = state.m_workbook.sheets[sheet];
    for (std::uint32_t c = 0; c < page.columnCount(); ++c)
        for (std::uint32_t l = 0; l < page.lineCount(); ++l) {
            const CellAt at{sheet, c, l};
            const auto &tree = state.m_program->facts(state.m_program->nodeOf(at)).tree;
            // A formula that names a word nobody has yet waits for it: taking it on is what its author wants.
            if (tree && isBareWordIn(*tree, word) && bind(*tree, state.m_workbook, at))
                return fail(ErrorKind::name,
                            fmt::format("`{}` already means something in {}; choose another word", word,
                                        state.placeWords(at)));
        }
    return {};
}

Result<void> Applier::nameFits(const CellAt &at, const std::string &name) const
{
    if (name.empty() || name == state.m_workbook.cell(at)->beside().name)
        return {};
    if (auto good = checkName(state.m_workbook.sheets[at.sheet], name, state.m_units.isUnitWord(name), at);
        !good)
        return good;
    return wordIsFree(at.sheet, name);
}

Result<void> Applier::keyFits(std::uint32_t sheet, const std::string &key,
                              std::optional<std::uint32_t> self) const
{
    const Sheet &page = state.m_workbook.sheets[sheet];
    if (self && page.column(*self).key == key)
        return {};
    if (!isName(key, true) || isReservedWord(key))
        return fail(
            ErrorKind::name,
            fmt::format("`{}` is no column key; use small letters, digits and _, first a letter", key));
    if (state.m_units.isUnitWord(key))
        return fail(ErrorKind::name, fmt::format("`{}` is a unit word; choose another key", key));
    if (page.columnByKey(key))
        return fail(ErrorKind::name,
                    fmt::format("the sheet already has a column `{}`; choose another key", key));
    if (page.named(key, sheet))
        return fail(ErrorKind::name,
                    fmt::format("`{}` is the name of a cell of this sheet; choose another key", key));
    return wordIsFree(sheet, key);
}

Result<void> Applier::sheetKeyFits(const std::string &key, std::optional<std::uint32_t> self) const
{
    if (self && state.m_workbook.sheets[*self].key() == key)
        return {};
    if (!isName(key) || isReservedWord(key))
        return fail(
            ErrorKind::name,
            fmt::format("`{}` is no sheet key; use two or more small letters, digits and _, first a letter",
                        key));
    if (state.m_workbook.sheetByKey(key))
        return fail(ErrorKind::name, fmt::format("there is a sheet `{}` already; choose another key", key));
    return {};
}

} // namespace puteal
