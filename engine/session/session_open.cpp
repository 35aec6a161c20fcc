/// Opening and creating: how a session begins.
#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "file/reader.h"
#include "file/safe_save.h"
#include "file/writer.h"
#include "session/session_state.h"

namespace puteal
{

namespace
{

Workbook emptyWorkbook()
{
    Workbook book;
    book.title = "New workbook";
    book.sheets.push_back(freshSheet("water", "Water test"));
    return book;
}

} // namespace

bool shippedUnitWord(std::string_view word)
{
    static const UnitTable table;
    return table.isUnitWord(word);
}

Sheet freshSheet(const std::string &key, const std::string &title)
{
    Sheet sheet(key, title);
    sheet.insertColumn(0, Column{"item", ColumnKind::words, "Item", 32, {}});
    sheet.insertColumn(1, Column{"amount", ColumnKind::amounts, "Amount", 18, {}});
    sheet.insertLines(0, 30);
    return sheet;
}

SessionState::SessionState(Workbook workbook, PluginFolders folders)
    : m_workbook(std::move(workbook)), m_folders(std::move(folders))
{
    // A counted thing that cannot be declared shows as an unknown unit in the cells that use it.
    for (const auto &thing : m_workbook.things)
        (void)m_units.declareThing(thing);
    m_registry = Registry::create(m_units, m_folders);
    rebuild();
}

void SessionState::rebuild()
{
    m_overview.reset();
    m_program = Program::build(m_workbook, m_units, m_registry);
    m_values = m_program->evaluate();
}

std::unique_ptr<Session> Session::createNew(const PluginFolders &folders)
{
    return std::make_unique<SessionState>(emptyWorkbook(), folders);
}

Result<std::unique_ptr<Session>> Session::fromText(std::string_view text, const PluginFolders &folders)
{
    auto book = readWorkbook(text, shippedUnitWord);
    if (!book)
        return tl::unexpected(book.error());
    return std::unique_ptr<Session>(std::make_unique<SessionState>(std::move(*book), folders));
}

Result<std::unique_ptr<Session>> Session::open(const std::filesystem::path &path,
                                               const PluginFolders &folders)
{
    auto bytes = readFile(path);
    if (!bytes)
        return tl::unexpected(bytes.error());
    auto book = readWorkbook(*bytes, shippedUnitWord);
    if (!book)
        return tl::unexpected(book.error());
    auto state = std::make_unique<SessionState>(std::move(*book), folders);
    state->setPath(path, *bytes);
    return std::unique_ptr<Session>(std::move(state));
}

namespace
{

bool isComment(const std::string &record)
{
    return record.empty() || record.front() == '#';
}

std::string unknownWords(const Sheet &sheet, const std::string &place, const std::string &record)
{
    const std::string word = record.substr(0, record.find(' '));
    if (record.size() > word.size() && sheet.columnByKey(word))
        return fmt::format(
            "{}: \"{}\" has no effect and is kept as it is; a cell of a column has a colon, as in "
            "{}: {}",
            place, record, word, trimmed(std::string_view(record).substr(word.size())));
    return fmt::format("{}: \"{}\" is not understood and has no effect; it is kept as it is", place, record);
}

/// Records this version does not know: kept, but a misspelled limit must not go unnoticed.
void noteUnknown(const Sheet &sheet, std::vector<std::string> &notes)
{
    const auto say = [&](const std::string &place, const std::string &record) {
        if (!isComment(record))
            notes.push_back(unknownWords(sheet, place, record));
    };
    for (const auto *around : {&sheet.keptAtHead, &sheet.keptAtEnd})
        for (const Kept &kept : *around)
            say(fmt::format("sheet {}", sheet.key()), kept.text);
    for (std::uint32_t l = 0; l < sheet.lineCount(); ++l) {
        const std::string place = fmt::format("sheet {} line {}", sheet.key(), l + 1);
        for (const Kept &kept : sheet.line(l).kept)
            say(place, kept.text);
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            for (const std::string &record : sheet.cell(c, l).beside().unknown)
                say(place, record);
    }
}

} // namespace

std::vector<std::string> SessionState::openingNotes() const
{
    std::vector<std::string> notes;
    if (m_workbook.formatMajor > 1)
        notes.push_back(fmt::format(
            "this workbook was written by a newer version (format {}); what this version does not "
            "know is kept as it is",
            m_workbook.formatMajor));
    for (const auto &word : m_workbook.required)
        notes.push_back(fmt::format(
            "this workbook needs \"{}\", which this version does not have; read its results with care",
            word));
    for (const auto &use : m_workbook.uses) {
        const PluginInfo *plugin = m_registry->plugin(use.id);
        if (!plugin)
            notes.push_back(
                fmt::format("needs the plugin \"{}\", which is not here; its cells keep their text: open the "
                            "workbook with a Puteal that has it (`puteal plugins` lists those that are here)",
                            use.id));
        else if (plugin->state != PluginInfo::State::enabled)
            notes.push_back(fmt::format("needs the plugin \"{}\": {}", use.id, plugin->problem));
        else if (plugin->major != use.major)
            notes.push_back(fmt::format(
                "was made with version {} of the plugin \"{}\", version {} is here; compare the results",
                use.major, use.id, plugin->major));
    }
    for (const std::string &thing : m_workbook.things)
        if (shippedUnitWord(thing))
            notes.push_back(
                fmt::format("the thing \"{0}\" is a unit already, so `thing {0}` has no effect: give it "
                            "another word",
                            thing));
    for (const Kept &kept : m_workbook.kept)
        if (!isComment(kept.text))
            notes.push_back(
                fmt::format("\"{}\" is not understood and has no effect; it is kept as it is", kept.text));
    for (const Sheet &sheet : m_workbook.sheets)
        noteUnknown(sheet, notes);
    return notes;
}

std::string SessionState::fileText() const
{
    return writeWorkbook(m_workbook);
}

} // namespace puteal
