/// Bytes a formula cell takes in a session with undo: what the allocator has given out (mallinfo2) and what
/// the process holds (VmRSS), less the same of a session without formulas.
#include <cstring>
#include <malloc.h>
#include <unistd.h>

#include "bench/recalc_sheets.h"
#include "session/session.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

constexpr std::uint32_t formulas = 100000;

struct Held {
    double allocated = 0, resident = 0;
};
Held held()
{
    malloc_trim(0); // pages the allocator keeps for later are not the cells'
    const struct mallinfo2 all = mallinfo2();
    std::size_t pages = 0;
    if (std::FILE *file = std::fopen("/proc/self/statm", "r")) {
        std::size_t size = 0;
        if (std::fscanf(file, "%zu %zu", &size, &pages) != 2)
            pages = 0;
        std::fclose(file);
    }
    return {static_cast<double>(all.uordblks + all.hblkhd),
            static_cast<double>(pages) * static_cast<double>(sysconf(_SC_PAGESIZE))};
}

void print(const char *name, const Held &before, const Held &after, std::uint32_t cells)
{
    std::printf("{\"bench\":\"%s\",\"bytes_a_cell\":%.0f,\"resident_bytes_a_cell\":%.0f,\"figure\":400}\n",
                name, (after.allocated - before.allocated) / cells,
                (after.resident - before.resident) / cells);
}

/// Ten formulas over three inputs a line, as a saved file tells it: a run once, at its top.
std::string fileOf(std::uint32_t lines, const std::function<std::string(std::uint32_t)> &formula)
{
    std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\n";
    for (std::uint32_t c = 0; c < 13; ++c)
        text += "column q" + std::to_string(c) + " amounts \"C\" 9\n";
    for (std::uint32_t l = 0; l < lines; ++l) {
        text += "line\n";
        for (std::uint32_t c = 0; c < (l == 0 ? 13U : 3U); ++c)
            text += (c < 3 ? "q" : "fill q") + std::to_string(c) + ": " +
                    (c < 3 ? std::to_string(l % 10) : formula(c)) + "\n";
    }
    text += "stop";
    for (std::uint32_t c = 3; c < 13; ++c)
        text += " q" + std::to_string(c);
    return text + "\nend s " + std::to_string(lines) + "\nend workbook\n";
}

bool right(const Session &session, std::uint32_t line, double value)
{
    return session.view({0, 12, line}).number == value;
}

/// A file opened; every formula filled down once more and so in the undo list too.
int filled()
{
    const Held before = held();
    constexpr std::uint32_t lines = formulas / 10;
    auto session = Session::fromText(
        fileOf(lines, [](std::uint32_t c) { return "q0*" + std::to_string(c) + " + q1*q2"; }),
        PluginFolders{});
    if (!session) {
        std::fprintf(stderr, "%s\n", session.error().words.c_str());
        return 1;
    }
    print("memory_100000_filled_opened", before, held(), formulas);
    for (std::uint32_t c = 3; c < 13; ++c)
        if (!(*session)->apply(SetText{{0, c, 0}, "q0*" + std::to_string(c + 1) + " + q1*q2"}))
            return 1;
    if (!(*session)->apply(FillDown{0, 3, 12, 0, lines - 1}))
        return 1;
    print("memory_100000_filled_with_undo_of_all", before, held(), formulas);
    return right(**session, 7, 7 * 13 + 49) ? 0 : 1;
}

/// Formulas typed one by one, no two texts equal, each with an undo step of its own.
int different()
{
    const Held before = held();
    constexpr std::uint32_t lines = 1000, cells = lines * 10;
    auto session = Session::fromText(fileOf(lines, [](std::uint32_t) { return "q0"; }), PluginFolders{});
    if (!session)
        return 1;
    for (std::uint32_t l = 0; l < lines; ++l)
        for (std::uint32_t c = 3; c < 13; ++c)
            if (!(*session)->apply(SetText{{0, c, l}, "q0*" + std::to_string(l * 10 + c) + " + q1*q2"}))
                return 1;
    print("memory_10000_different_typed_with_undo", before, held(), cells);
    return right(**session, 7, 7 * 82 + 49) ? 0 : 1;
}

} // namespace

int main(int argc, char **argv)
{
    if (argc > 1 && std::strcmp(argv[1], "different") == 0)
        return different();
    const auto session = Session::createNew(PluginFolders{}); // tables and lists made once are no cell's
    if (const int failed = filled(); failed != 0)
        return failed;
    return different();
}
