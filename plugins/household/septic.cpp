/// What washes add to a septic system, day by day. (R2)
#include "household.h"

namespace household
{

using namespace puteal::sdk;

namespace
{

double septicShare(double wash, double interval, double design, Reply &reply)
{
    const double share = wash / interval / design;
    if (lessThan(0.1, share)) // a tenth is where designers begin to ask [common practice, no source]
        reply.caution("much",
                      "more than a tenth of what the septic system is laid out for: wash less often, or "
                      "ask the health office where else the water may go");
    return share;
}

constexpr puteal_parameter shareTakes[] = {
    Parameter("wash", "gal/event", "water one wash sends to the drain").hard(0, 10000).usual(20, 300),
    Parameter("interval", "day/event", "days between washes").hard(0.1, 365).usual(1, 14),
    Parameter("design", "gal/day", "what the septic system is laid out for, see use_by_bedrooms")
        .hard(1, 100000)
        .usual(150, 1000),
};
constexpr const char *shareSources[] = {"massdep_title5", "ny_fact_sheet", "definition", "practice", nullptr};
constexpr puteal_example shareExamples[] = {
    example("septic_share(70.9 gal/event, 3 day/event, 330 gal/day)", "7.16162 %", 1e-6, "computed",
            "ny_fact_sheet"),
    example("septic_share(75 gal/event, 4 day/event, 300 gal/day)", "6.25 %", 1e-9, "computed", "definition"),
};
constexpr puteal_example shareRefusals[] = {
    refusal("septic_share(70.9 gal/event, 3 day/event, 0 gal/day)",
            "`design` must be at least 1 gal/day; it is 0 gal/day"),
};
constexpr puteal_caution shareCautions[] = {caution("much", "more than 10 % of the design flow")};

constexpr const char septicSafety[] = "Rules on wash water and septic systems differ by state; some bar "
                                      "softener waste altogether. Confirm with "
                                      "the local health office.";

} // namespace

constinit const puteal_function septicShareRow =
    Function("septic_share", "Share of the septic system",
             "What washes add to a septic system as a share of its design flow; see septic_surge_share for "
             "one wash at once.",
             call<septicShare>)
        .takes(shareTakes)
        .gives("", "share of the design flow")
        .by("wash / interval / design")
        .from(shareSources)
        .shownBy(shareExamples)
        .refusing(shareRefusals)
        .warning(shareCautions)
        .safely(septicSafety);

} // namespace household
