/// Order of the devices of a treatment train: what stands in the wrong place, and why.
///
/// Rules:
///  1 a blank or "none" stage is passed over; the order counts, gaps do not.
///  2 what is wrong is told for every pair, the worst grade decides.
///  3 an order that helps some waters and harms others is possible, with its condition.
#include <string>
#include <vector>

#include "diagnosis.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr const char *deviceWords[] = {
    "none",         "sediment screen", "chemical feed",    "aeration tank",      "pressure tank",
    "contact tank", "air over media",  "oxidizing filter", "sediment cartridge", "iron cartridge",
    "neutralizer",  "softener",        "carbon",           "outdoor taps",       nullptr};
enum Device : int {
    nothing,
    screen,
    feed,
    aerationTank,
    pressureTank,
    contactTank,
    airMedia,
    filter,
    sedimentCartridge,
    ironFilter,
    neutralizer,
    softener,
    carbon,
    outdoorTaps
};
constexpr const char *orderWords[] = {"right order", "possible order", "wrong order", nullptr};
enum Order : int { right, possible, wrong };

/// `first` belongs before `second`; met the other way round it is graded so.
struct Rule {
    Device first, second;
    Order grade;
    const char *why;
};

constexpr const char rateOfPump[] =
    "ahead of the pressure tank a device sees the rate of the pump, behind it that of the taps: size it for "
    "that";

// [all: common practice, no source]
constexpr Rule rules[] = {
    {screen, feed, wrong, "grit wears the feed point and its check valve"},
    {screen, contactTank, wrong, "grit settles in the tank and wears what follows"},
    {screen, airMedia, wrong, "grit wears the valve"},
    {screen, filter, wrong, "grit wears the valve"},
    {screen, softener, wrong, "grit wears the valve and plugs the injector"},
    {screen, neutralizer, wrong, "grit wears the valve"},
    {screen, sedimentCartridge, possible, "the screen spares the cartridge only from ahead of it"},
    {feed, pressureTank, wrong,
     "the feed point stands before the pressure tank, with a check valve upstream"},
    {feed, contactTank, wrong, "the oxidant needs the contact behind it"},
    {feed, filter, wrong, "the filter holds only what was oxidized ahead of it"},
    {feed, sedimentCartridge, possible,
     "a cartridge ahead of the feed holds none of the rust that the feed makes"},
    {feed, carbon, wrong, "carbon takes out the oxidant, so it stands behind the feed"},
    {feed, softener, possible,
     "iron and sulfide are treated ahead of the resin; a feed behind it spares it nothing"},
    {pressureTank, filter, possible, rateOfPump},
    {pressureTank, neutralizer, possible, rateOfPump},
    {pressureTank, softener, possible, rateOfPump},
    {pressureTank, carbon, possible, rateOfPump},
    {pressureTank, sedimentCartridge, possible, rateOfPump},
    {pressureTank, ironFilter, possible, rateOfPump},
    {aerationTank, pressureTank, wrong,
     "an open tank has no pressure: the booster pump and pressure tank follow it"},
    {aerationTank, filter, wrong, "the filter holds only what was oxidized ahead of it"},
    {aerationTank, softener, wrong, "iron is taken out ahead of the resin"},
    {aerationTank, carbon, wrong, "sulfide is stripped ahead of the carbon"},
    {pressureTank, airMedia, wrong, "air over media stands behind the pressure tank"},
    {contactTank, filter, wrong, "the filter holds only what had its contact time ahead of it"},
    {contactTank, softener, wrong, "the oxidant must have worked before the resin"},
    {contactTank, carbon, wrong, "carbon takes out the oxidant before it has worked"},
    {airMedia, softener, wrong, "iron is taken out ahead of the resin"},
    {airMedia, carbon, wrong, "iron blinds the carbon"},
    {filter, softener, wrong, "iron is taken out ahead of the resin"},
    {filter, carbon, wrong, "carbon takes out the oxidant the filter needs, and iron blinds it"},
    {filter, neutralizer, possible,
     "a calcite bed ahead of the filter is right where the filter needs the pH and iron is at most 1 to 2 "
     "mg/L; "
     "more iron blinds it"},
    {airMedia, neutralizer, possible,
     "a calcite bed ahead of the filter is right where the filter needs the pH and iron is at most 1 to 2 "
     "mg/L; "
     "more iron blinds it"},
    {sedimentCartridge, ironFilter, wrong, "particles blind the iron cartridge"},
    {ironFilter, carbon, wrong, "iron blinds the carbon"},
    {ironFilter, softener, wrong, "iron is taken out ahead of the resin"},
    {sedimentCartridge, carbon, wrong, "particles blind the carbon"},
    {neutralizer, softener, wrong, "calcite adds hardness: soften behind it"},
    {neutralizer, carbon, possible, "carbon stands last as a rule"},
    {softener, carbon, possible,
     "carbon ahead of the resin keeps chlorine off it, but lets bacteria grow on both"},
    {outdoorTaps, softener, wrong,
     "outdoor taps stand before the softener: softened water wastes salt on a lawn"},
};

bool holdsParticles(int device)
{
    return device == filter || device == sedimentCartridge || device == airMedia || device == ironFilter;
}

/// What only the whole train shows: rust made by a feed must be held before the resin.
std::string unheldRust(const std::vector<int> &train)
{
    bool rust = false;
    for (const int device : train) {
        rust = (rust || device == feed || device == aerationTank) && !holdsParticles(device);
        if (rust && device == softener)
            return "softener: nothing holds the rust between the feed or air and the resin";
    }
    return {};
}

double orderOf(const std::vector<int> &train, Reply &reply)
{
    Order worst = right;
    std::string words[wrong + 1];
    const auto tell = [&](Order grade, const std::string &why) {
        worst = grade > worst ? grade : worst;
        if (words[grade].find(why) == std::string::npos)
            words[grade] += (words[grade].empty() ? "" : "; ") + why;
    };
    for (std::size_t early = 0; early < train.size(); ++early)
        for (std::size_t late = early + 1; late < train.size(); ++late)
            for (const Rule &rule : rules)
                if (rule.second == train[early] && rule.first == train[late])
                    tell(rule.grade, std::string(deviceWords[train[early]]) + " ahead of " +
                                         deviceWords[train[late]] + ": " + rule.why);
    if (const std::string why = unheldRust(train); !why.empty())
        tell(wrong, why);
    reply.reason(worst == right
                     ? "each of the " + std::to_string(train.size()) +
                           " stages stands where practice puts it; each needs a bypass and a sample tap"
                     : words[worst]);
    return worst;
}

double trainOrder(const Argument &s1, const Argument &s2, const Argument &s3, const Argument &s4,
                  const Argument &s5, const Argument &s6, const Argument &s7, const Argument &s8,
                  const Argument &s9, const Argument &s10, Reply &reply)
{
    std::vector<int> train;
    for (const Argument *stage : {&s1, &s2, &s3, &s4, &s5, &s6, &s7, &s8, &s9, &s10})
        if (!stage->missing() && stage->choice() != nothing)
            train.push_back(stage->choice());
    if (train.size() < 2)
        return reply.refuse(0, "name two stages or more, in the order the water passes them");
    return orderOf(train, reply);
}

constexpr Parameter stage(const char *name)
{
    return Parameter(name, "", "device the water passes next; none or blank is passed over")
        .oneOf(deviceWords)
        .mayBeMissing()
        .otherwise(nothing, "A");
}
constexpr puteal_parameter takes[] = {
    Parameter("first", "", "device the water of the well meets first").oneOf(deviceWords).mayBeMissing(),
    Parameter("second", "", "device the water passes next").oneOf(deviceWords).mayBeMissing(),
    stage("third"),
    stage("fourth"),
    stage("fifth"),
    stage("sixth"),
    stage("seventh"),
    stage("eighth"),
    stage("ninth"),
    stage("tenth")};
constexpr const char *sources[] = {"practice", nullptr};
constexpr puteal_example examples[] = {
    example("train_order(\"sediment screen\", \"chemical feed\", \"pressure tank\", \"contact tank\", "
            "\"oxidizing filter\", \"neutralizer\", \"outdoor taps\", \"softener\", \"carbon\")",
            "right order", 0, "common practice", "practice"),
    example("train_order(\"pressure tank\", \"air over media\", \"softener\")", "right order", 0,
            "common practice", "practice"),
    example("train_order(\"air over media\", \"pressure tank\")", "wrong order", 0, "common practice",
            "practice"),
    example("train_order(\"pressure tank\", \"softener\", \"neutralizer\")", "wrong order", 0,
            "common practice", "practice"),
    example("train_order(\"pressure tank\", \"neutralizer\", \"air over media\")", "possible order", 0,
            "common practice", "practice"),
    example("train_order(\"chemical feed\", \"pressure tank\", \"contact tank\", \"softener\")",
            "wrong order", 0, "common practice", "practice"),
};
constexpr puteal_example refusals[] = {
    refusal("train_order(\"softener\", \"none\")",
            "name two stages or more, in the order the water passes them"),
};

} // namespace

constinit const puteal_function trainOrderRow =
    Function("train_order", "Order of a treatment train",
             "Judges the order of up to ten devices and says what stands wrong and why. What is right for "
             "one water and "
             "wrong for another is possible, with its condition.",
             call<trainOrder>)
        .takes(takes)
        .givesOneOf(orderWords, "judgment of the order, with what stands wrong")
        .by("sediment screen, feed point before the pressure tank, contact, filter, neutralizer where it is "
            "not "
            "blinded, softener, carbon; air over media behind the pressure tank; outdoor taps before the "
            "softener; "
            "rust held before the resin; a filter, softener or cartridge ahead of the pressure tank: "
            "possible")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .safely("A plastic device in a metal line that grounds the house needs a bonding jumper; take the "
                "pressure off "
                "and lock the pump before cutting a line; feed points need a check valve and a vacuum "
                "breaker as the "
                "local code asks.");

} // namespace diagnosis
