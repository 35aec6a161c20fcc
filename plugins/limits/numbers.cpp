/// Limits without a substance: pH, color, odor.
#include "limits.h"

using namespace puteal::sdk;

namespace limits
{
namespace
{

constexpr Places asFirstAndSecond{1, 2};

template<Item item, bool lowEnd>
double numberLimit(int place, double date, Reply &reply)
{
    const Asked what{item, ""};
    const Limit *row = inForce(what, place, forAesthetics, date);
    if (!row)
        return refuseNone(what, place, forAesthetics, date, asFirstAndSecond, reply);
    cautionsOf(*row, date, reply);
    reply.reason(nameOf(what) + ": " + limitWords(*row, what));
    return lowEnd ? row->low : row->high;
}

constexpr puteal_parameter takes[] = {placeTaken, dateTaken};

constexpr puteal_example lowExamples[] = {
    example("ph_limit_low(\"US\", 2026-10-12)", "6.5", 1e-12, "published", "cfr143_3"),
    example("ph_limit_low(\"Canada\", 2014-06-01)", "6.5", 1e-12, "memory", "recalled_canada"),
    example("ph_limit_low(\"Canada\", 2026-10-12)", "7", 1e-12, "memory", "recalled_canada"),
    example("ph_limit_low(\"US\", 2028-01-01)", "6.5", 1e-12, "published", "cfr143_3"),
};
constexpr puteal_example lowRefusals[] = {
    refusal("ph_limit_low(\"WHO\", 2026-10-12)",
            "the table has no aesthetic objective for pH of WHO: ask another purpose or jurisdiction"),
};
constexpr puteal_example highExamples[] = {
    example("ph_limit_high(\"US\", 2026-10-12)", "8.5", 1e-12, "published", "cfr143_3"),
    example("ph_limit_high(\"Canada\", 2026-10-12)", "10.5", 1e-12, "memory", "recalled_canada"),
    example("ph_limit_high(\"US\", 2028-01-01)", "8.5", 1e-12, "published", "cfr143_3"),
};
constexpr puteal_example highRefusals[] = {
    refusal(
        "ph_limit_high(\"US\", 1970-01-01)",
        "the table knows no aesthetic objective for pH of US before 1979-07-19: check the date 1970-01-01"),
};
constexpr puteal_example colorExamples[] = {
    example("color_limit(\"US\", 2026-10-12)", "15 CU", 1e-12, "published", "cfr143_3"),
    example("color_limit(\"Canada\", 2026-10-12)", "15 CU", 1e-12, "published", "canada_open"),
    example("color_limit(\"WHO\", 2028-01-01)", "15 CU", 1e-12, "memory", "recalled_who"),
};
constexpr puteal_example colorRefusals[] = {
    refusal("color_limit(\"US\", 1970-01-01)", "the table knows no aesthetic objective for color of US "
                                               "before 1979-07-19: check the date 1970-01-01"),
};
constexpr puteal_example odorExamples[] = {
    example("odor_limit(\"US\", 2026-10-12)", "3 TON", 1e-12, "published", "cfr143_3"),
    example("odor_limit(\"US\", 2028-01-01)", "3 TON", 1e-12, "published", "cfr143_3"),
};
constexpr puteal_example odorRefusals[] = {
    refusal("odor_limit(\"Canada\", 2026-10-12)",
            "the table has no aesthetic objective for odor of Canada: ask another purpose or jurisdiction"),
};
constexpr puteal_caution odorCautions[] = {tableCautions[0]};
constexpr const char relation[] = "row of docs/limits.md whose days hold the date";

} // namespace

constinit const puteal_function phLimitLowRow =
    Function("ph_limit_low", "Lowest pH allowed", "Lower end of the pH a jurisdiction asks for on a day.",
             call<numberLimit<ph, true>>)
        .takes(takes)
        .gives("", "lowest pH allowed")
        .by(relation)
        .from(tableSources)
        .shownBy(lowExamples)
        .refusing(lowRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function phLimitHighRow =
    Function("ph_limit_high", "Highest pH allowed", "Upper end of the pH a jurisdiction asks for on a day.",
             call<numberLimit<ph, false>>)
        .takes(takes)
        .gives("", "highest pH allowed")
        .by(relation)
        .from(tableSources)
        .shownBy(highExamples)
        .refusing(highRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function colorLimitRow =
    Function("color_limit", "Most color allowed", "Limit for the color of water on a day, in color units.",
             call<numberLimit<color, false>>)
        .takes(takes)
        .gives("CU", "most color allowed")
        .by(relation)
        .from(tableSources)
        .shownBy(colorExamples)
        .refusing(colorRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function odorLimitRow =
    Function("odor_limit", "Most odor allowed",
             "Limit for the odor of water on a day, as threshold odor number.",
             call<numberLimit<odor, false>>)
        .takes(takes)
        .gives("TON", "most odor allowed")
        .by(relation)
        .from(tableSources)
        .shownBy(odorExamples)
        .refusing(odorRefusals)
        .warning(odorCautions)
        .safely(tableSafety);

} // namespace limits
