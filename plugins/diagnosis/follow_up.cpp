/// What to look at, and in which order, when the follow-up test misses its target.
#include <string>
#include <vector>

#include "diagnosis.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr const char *findingWords[] = {"iron up after a softener",
                                        "iron up after a feed, no residual",
                                        "iron up after a feed, residual there",
                                        "manganese up",
                                        "pink water",
                                        "chlorine after carbon",
                                        "smell back",
                                        "pressure fell",
                                        "pH off after calcite",
                                        "slime back",
                                        nullptr};
constexpr int findingCount = 10;

constexpr const char *checkWords[] = {"bypass",
                                      "brine draw",
                                      "color of the iron",
                                      "setting",
                                      "resin",
                                      "feed pump prime",
                                      "solution strength",
                                      "solution age",
                                      "channeled bed",
                                      "wash flow at the drain",
                                      "pH",
                                      "free residual",
                                      "coating",
                                      "regeneration",
                                      "rinse",
                                      "overfeed",
                                      "ozone dose",
                                      "flow",
                                      "spent carbon",
                                      "raw sulfide",
                                      "bacteria in the carbon",
                                      "heater anode",
                                      "cartridge",
                                      "bed",
                                      "valve screen",
                                      "bed level",
                                      "share of magnesia",
                                      "long standing",
                                      "shock again",
                                      "dose",
                                      "wellhead",
                                      nullptr};
enum Check : int {
    bypass,
    brineDraw,
    ironColor,
    setting,
    resinFouled,
    prime,
    strength,
    age,
    channels,
    drainFlow,
    phNow,
    freeResidual,
    coating,
    regeneration,
    rinse,
    overfeed,
    ozoneDose,
    flow,
    spentCarbon,
    rawSulfide,
    carbonBacteria,
    anode,
    cartridge,
    bed,
    valveScreen,
    bedLevel,
    magnesia,
    standingWater,
    shockAgain,
    dose,
    wellhead,
    listEnd
};

/// The orders in which to look [all: common practice, no source]; each list is closed.
constexpr Check orders[findingCount][6] = {
    {bypass, brineDraw, ironColor, setting, resinFouled, listEnd},
    {prime, strength, age, listEnd, listEnd, listEnd},
    {channels, drainFlow, listEnd, listEnd, listEnd, listEnd},
    {phNow, freeResidual, coating, regeneration, listEnd, listEnd},
    {rinse, overfeed, ozoneDose, listEnd, listEnd, listEnd},
    {flow, spentCarbon, overfeed, listEnd, listEnd, listEnd},
    {rawSulfide, carbonBacteria, anode, listEnd, listEnd, listEnd},
    {cartridge, bed, valveScreen, listEnd, listEnd, listEnd},
    {bedLevel, flow, magnesia, standingWater, listEnd, listEnd},
    {shockAgain, dose, wellhead, listEnd, listEnd, listEnd},
};

/// How to look, in the order of the checks.
constexpr const char *how[listEnd] = {
    "the bypass may stand open or leak",
    "a salt bridge or a plugged injector keeps brine from being drawn",
    "iron that is colored by now is not exchanged: draw raw water into a white cup",
    "hardness, iron or use may be set too low",
    "clean the resin; renew it if that does not help",
    "the pump has lost its prime or its injection fitting is plugged",
    "test the strength of the solution",
    "an old solution has lost strength: mix it anew",
    "water runs through channels: look at the top of the bed",
    "time a bucket at the drain: too slow a wash leaves the bed dirty",
    "the pH may have fallen below what manganese needs",
    "free residual ahead of the bed, not total",
    "the coating is stripped, or peroxide meets manganese dioxide",
    "too little or too seldom regenerated",
    "the rinse after regeneration is too short",
    "the feed is set too high",
    "too much ozone turns manganese pink",
    "the flow is above the design",
    "the carbon is spent: renew it",
    "sulfide of the well may have risen: test it at the site",
    "bacteria live in carbon that sees no oxidant",
    "smell on the hot side only comes from the heater anode",
    "read the gauges stage by stage, cartridge first",
    "then across the bed",
    "then the screen and injector of the valve",
    "the bed dissolves: look at its level",
    "much magnesia overshoots at low flow",
    "water that stood long in the bed shows a high pH",
    "disinfect well and plumbing once more",
    "raise the continuous dose",
    "a loose cap or a cracked casing lets bacteria in",
};

std::string howTo(int finding, Check check)
{
    constexpr int calcitePh = 8; // a neutralizer is laid out for 3 gpm/ft^2 [extension text on pH adjustment]
    return check == flow && finding == calcitePh ? "more than 3 gpm/ft^2 leaves too little contact"
                                                 : how[check];
}

double followUp(int finding, double step, Reply &reply)
{
    if (!nearlyEqual(step, std::floor(step)))
        return reply.refuse(2, "steps are counted in whole numbers from 1");
    std::vector<Check> list;
    for (const Check check : orders[finding])
        if (check != listEnd)
            list.push_back(check);
    if (!(step >= 1 && step <= static_cast<double>(list.size())))
        return reply.refuse(2, "the list ends after " + std::to_string(list.size()) +
                                   " steps: test the raw water again, it may have changed");
    const auto at = static_cast<std::size_t>(step);
    std::string words = "step " + std::to_string(at) + " of " + std::to_string(list.size()) + ": " +
                        howTo(finding, list[at - 1]);
    for (std::size_t i = at; i < list.size(); ++i)
        words += (i == at ? "; then " : ", ") + std::string(checkWords[list[i]]);
    reply.reason(words);
    return list[at - 1];
}

constexpr puteal_parameter takes[] = {
    Parameter("finding", "", "what the follow-up test or the family shows").oneOf(findingWords),
    Parameter("step", "", "which check of the list, counted from 1").hard(1, 9).usual(1, 5).otherwise(1, "A"),
};
constexpr const char *sources[] = {"practice", nullptr};
constexpr puteal_example examples[] = {
    example("follow_up_check(\"iron up after a softener\")", "bypass", 0, "common practice", "practice"),
    example("follow_up_check(\"iron up after a softener\", 5)", "resin", 0, "common practice", "practice"),
    example("follow_up_check(\"iron up after a feed, no residual\")", "feed pump prime", 0, "common practice",
            "practice"),
    example("follow_up_check(\"iron up after a feed, residual there\")", "channeled bed", 0,
            "common practice", "practice"),
    example("follow_up_check(\"pink water\")", "rinse", 0, "common practice", "practice"),
    example("follow_up_check(\"smell back\", 3)", "heater anode", 0, "common practice", "practice"),
};
constexpr puteal_example refusals[] = {
    refusal("follow_up_check(\"pink water\", 4)",
            "the list ends after 3 steps: test the raw water again, it may have changed"),
    refusal("follow_up_check(\"pink water\", 1.5)", "steps are counted in whole numbers from 1"),
};

} // namespace

constinit const puteal_function followUpRow =
    Function(
        "follow_up_check", "What to look at when a follow-up misses",
        "Names the check to make first when a treated value misses its target, and lists those that follow.",
        call<followUp>)
        .takes(takes)
        .givesOneOf(checkWords, "what to look at, with how and what comes next")
        .by("one list a finding, in the order in which a service call looks")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .safely("Take the pressure off before opening a tank or housing; power off and locked before "
                "draining a heater "
                "or opening a pump; bleach never with acid, ammonia, peroxide, permanganate or resin "
                "cleaner. Pink "
                "water is not to be used until it runs clear.");

} // namespace diagnosis
