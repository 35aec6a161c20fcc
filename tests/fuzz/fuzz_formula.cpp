/// Bytes as a formula in a small workbook: read, bound, checked, evaluated, shown; what is shown can be typed
/// back.
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "session/session.h"
#include "show/shown.h"

using namespace puteal;

namespace
{

const char *const book = R"(puteal workbook 1
title "Fuzz"
list verdict "works" "will not work"
sheet water "Water"
column item words "Item" 20
column amount amounts "Amount" 14
column cost amounts "Cost" 14
line
amount: 3 mg/L as Fe
  name iron
cost: $5
line
amount: <0.05 mg/L as Mn
  name manganese
cost: $7.50
line
amount: 7.2
  name ph
line
line
amount: yes
  name softener
line
amount: 2026-10-12
  name taken
end water 6
end workbook
)";

const Session &session()
{
    static const PluginFolders folders{{}, {PUTEAL_BUILD_DIR "/lib/puteal/plugins"}};
    static const auto opened = Session::fromText(book, folders);
    if (!opened)
        std::abort();
    return **opened;
}

/// How far a shown value may stand off, in its own unit: money shows whole cents, a rate under a dollar three
/// figures.
double slackOf(double shown, const Unit &unit)
{
    const double size = std::fabs(shown);
    if (!unit.text.starts_with('$'))
        return 1e-9 * size;
    return unit.isMoney() || size >= 1.0 ? 0.00501 : 0.00501 * size;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    const std::string_view text(reinterpret_cast<const char *>(data), size);
    const Session &s = session();
    const auto result = s.program().preview(s.workbook(), CellAt{0, 1, 3}, text, s.values());
    if (result.error) {
        const auto &place = result.error->place;
        if (result.error->words.empty() || (place.span && place.span->end > size))
            std::abort(); // an error without words, or outside the text
        return 0;
    }
    if (result.type.kind == ValueKind::quantity && !std::isfinite(result.number))
        std::abort(); // a number that is none must be an error
    if (result.type.kind != ValueKind::quantity || result.type.bound != Bound::exact)
        return 0;
    const std::string shown = showPlain(result.type, result.number, result.words, result.shown, 17,
                                        s.program().lists(), s.program().units());
    const auto again = s.program().preview(s.workbook(), CellAt{0, 1, 3}, shown, s.values());
    const double was = result.shown.fromBase(result.number);
    if (again.error || std::fabs(result.shown.fromBase(again.number) - was) > slackOf(was, result.shown))
        std::abort(); // what is shown cannot be typed back
    return 0;
}
