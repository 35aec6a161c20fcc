/// Bytes as a row of edits: each is refused or made; afterwards the workbook can be saved, and undone it is
/// the first one.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "file/reader.h"
#include "session/session.h"

using namespace puteal;

namespace
{

const char *const book = R"(puteal workbook 1
title "Fuzz"
source L1 laboratory "invented"
sheet water "Water"
column item words "Item" 20
column amount amounts "Amount" 14
# a comment
line
item: "Iron {iron}"
amount: 3 mg/L as Fe
  name iron
  source L1
line
fill amount: iron * 2
line
stop amount
line
amount: sum(amount[1:3])
end water 4
end workbook
)";

/// Takes the bytes apart; after the end everything is zero.
struct Bytes {
    const std::uint8_t *data;
    std::size_t size, pos = 0;
    std::uint32_t next(std::uint32_t below)
    {
        const std::uint32_t byte = pos < size ? data[pos++] : 0U;
        return below == 0 ? 0U : byte % below;
    }
    std::string text()
    {
        std::string out;
        for (std::uint32_t n = next(24); n > 0 && pos < size; --n)
            out += static_cast<char>(data[pos++]);
        return out;
    }
};

Edit edit(Bytes &bytes, const Session &session)
{
    const Sheet &sheet = session.workbook().sheets[0];
    const CellAt at{0, bytes.next(sheet.columnCount()), bytes.next(sheet.lineCount())};
    switch (bytes.next(10)) {
    case 0:
        return InsertLines{0, bytes.next(sheet.lineCount() + 1), 1 + bytes.next(3)};
    case 1:
        return DeleteLines{0, at.line, 1 + bytes.next(2)};
    case 2:
        return MoveLines{0, at.line, 1, bytes.next(sheet.lineCount() + 1)};
    case 3:
        return RenameCell{at, bytes.text()};
    case 4: {
        const Cell *cell = session.workbook().cell(at);
        Attributes beside = cell && cell->attributes ? *cell->attributes : Attributes{};
        beside.note = bytes.text();
        beside.unit = bytes.text();
        return SetAttributes{at, beside};
    }
    case 5:
        return SetTitle{bytes.text()};
    case 6:
        return FillDown{0, at.column, at.column, at.line, sheet.lineCount() - 1};
    default:
        return SetText{at, bytes.text()};
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    static const PluginFolders none{{}, {PUTEAL_BUILD_DIR "/lib/puteal/plugins"}};
    const auto session = Session::fromText(book, none);
    if (!session)
        std::abort();
    const std::string start = (*session)->fileText();
    Bytes bytes{data, size};
    for (int i = 0; i < 12 && bytes.pos < size; ++i) {
        if ((*session)->workbook().sheets[0].lineCount() == 0)
            break;
        (void)(*session)->apply(edit(bytes, **session));
    }
    const auto back = readWorkbook((*session)->fileText());
    if (!back || !(*back == (*session)->workbook()))
        std::abort(); // it could not be saved
    while ((*session)->canUndo())
        (*session)->undo();
    if ((*session)->fileText() != start)
        std::abort();
    return 0;
}
