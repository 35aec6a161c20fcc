/// Alkalinity that oxidation leaves behind.
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

constexpr double leastLeft =
    30.0; // mg/L as CaCO3: below it pH is no longer held [common practice, no source]

double alkalinityRemaining(double alkalinity, double consumed, Reply &reply)
{
    const double left = alkalinity - consumed;
    if (atMost(left, 0))
        reply.caution("none_left",
                      "no alkalinity is left: the water turns acid, feed soda ash or choose another "
                      "oxidant");
    else if (lessThan(left, leastLeft))
        reply.caution("low",
                      "less than 30 mg/L is left: pH may fall, and iron oxidizes slowly; soda ash ahead "
                      "helps");
    return left;
}

constexpr puteal_parameter takes[] = {
    Parameter("alkalinity", "mg/L as CaCO3", "total alkalinity of the raw water")
        .hard(0, 5000)
        .usual(10, 600),
    Parameter("consumed", "mg/L as CaCO3", "see alkalinity_consumed; below zero gives some back")
        .hard(-1000, 5000)
        .usual(-10, 200),
};
constexpr const char *sources[] = {"iupac2021", "practice", nullptr};
constexpr puteal_example examples[] = {
    example("alkalinity_remaining(40 mg/L as CaCO3, 11.6642 mg/L as CaCO3)", "28.3358 mg/L as CaCO3", 1e-9,
            "computed", "iupac2021"),
    example("alkalinity_remaining(210 mg/L as CaCO3, 4.51992 mg/L as CaCO3)", "205.48008 mg/L as CaCO3", 1e-9,
            "computed", "iupac2021"),
};
constexpr puteal_example refusals[] = {
    refusal("alkalinity_remaining(-40 mg/L as CaCO3, 5 mg/L as CaCO3)",
            "`alkalinity` must be at least 0 mg/L as CaCO3; it is -40 mg/L as CaCO3"),
};
constexpr puteal_caution cautions[] = {
    caution("low", "less than 30 mg/L as CaCO3 left"),
    caution("none_left", "nothing left"),
};

} // namespace

constinit const puteal_function alkalinityRemainingRow =
    Function("alkalinity_remaining", "Alkalinity remaining",
             "Alkalinity behind the oxidation. It holds the pH up: 30 mg/L at least, 50 where copper pipes "
             "follow.",
             call<alkalinityRemaining>)
        .takes(takes)
        .gives("mg/L as CaCO3", "alkalinity left; below zero means acid water")
        .by("alkalinity - consumed")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions)
        .safely(oxidizerSafety);

} // namespace oxidation
