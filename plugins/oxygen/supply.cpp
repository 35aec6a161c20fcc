/// Oxygen to design for, what is left of it, and whether oxygen or time limits aeration. (R2, R5)
#include "oxygen.h"

namespace oxygen
{

using namespace puteal::sdk;

namespace
{

double saturationShare(double found, double temperature, double pressure, Reply &reply)
{
    const double share = found / saturationOf(temperature, pressure);
    if (lessThan(1.1, share)) // beyond what a meter may err [common practice, no source]
        reply.caution(
            "supersaturated",
            "more than a tenth above saturation: look for bubbles at the probe or another pressure");
    return share;
}

double oxygenNeeded(double budget, double margin, double left)
{
    return margin * budget + left;
}

double oxygenRemaining(double supply, double budget, Reply &reply)
{
    const double left = supply - budget;
    if (lessThan(left, 0))
        reply.caution("short", "oxygen does not suffice: more air, a higher pressure or a chemical oxidant");
    else if (lessThan(left, 1)) // 1 to 2 mg/L at the outlet [common practice, no source]
        reply.caution("little", "less than 1 mg/L is left at the outlet: more air");
    return left;
}

constexpr const char *limitWords[] = {"nothing", "contact time", "oxygen", "oxygen and contact time",
                                      nullptr};
enum Limit : int { noLimit, timeLimit, oxygenLimit, bothLimit };

int aerationLimit(double supply, double needed, double time, double timeNeeded, Reply &reply)
{
    const bool breathless = lessThan(supply, needed), hurried = lessThan(time, timeNeeded);
    const std::string oxygenWords = "oxygen supplied " + figures(supply) + " mg/L, needed " + figures(needed);
    const std::string timeWords = "time " + figures(time) + " min, needed " + figures(timeNeeded);
    std::string advice = "both suffice";
    if (breathless && hurried)
        advice = "more air and a larger tank or a higher pH";
    else if (breathless)
        advice = "more air or a higher pressure";
    else if (hurried)
        advice = "a larger tank, a higher pH, a coated medium or a chemical oxidant";
    reply.reason(oxygenWords + "; " + timeWords + ": " + advice);
    return breathless ? (hurried ? bothLimit : oxygenLimit) : hurried ? timeLimit : noLimit;
}

constexpr puteal_parameter shareTakes[] = {
    Parameter("oxygen", "mg/L as O2", "oxygen found in the water").hard(0, 100).usual(0, 15),
    Parameter("temperature", "degC", "temperature of the water").hard(0, 40).usual(2, 30),
    Parameter("pressure", "psi_abs", "absolute pressure of the air over the water")
        .hard(3, 150)
        .usual(10, 90)
        .otherwise(seaLevelAir, "S"),
};
constexpr const char *shareSources[] = {"apha1985", "oxygen_code", nullptr};
constexpr puteal_example shareExamples[] = {
    example("oxygen_saturation_share(11.3 mg/L as O2, 10 degC)", "100 %", 5e-3, "published", "en25814"),
    example("oxygen_saturation_share(5.644 mg/L as O2, 10 degC)", "50 %", 1e-3, "computed", "apha1985"),
    example("oxygen_saturation_share(4 mg/L as O2, 10 degC, 54.7 psi_abs)", "9.457 %", 1e-3, "computed",
            "oxygen_code"),
};
constexpr puteal_example shareRefusals[] = {
    refusal("oxygen_saturation_share(5 mg/L as O2, 50 degC)",
            "`temperature` must be at most 40 degC; it is 50 degC"),
};
constexpr puteal_caution shareCautions[] = {caution("supersaturated", "more than 110 %")};

constexpr Parameter budgetParameter =
    Parameter("budget", "mg/L as O2", "oxygen used up, see oxygen_budget").hard(0, 500).usual(0, 30);
constexpr puteal_parameter neededTakes[] = {
    budgetParameter,
    Parameter("margin", "", "times the budget: 2 to 4").hard(1, 20).usual(2, 4).otherwise(3, "T"),
    Parameter("left", "mg/L as O2", "oxygen at the outlet: 1 to 2 mg/L")
        .hard(0, 20)
        .usual(1, 2)
        .otherwise(1.5, "T"),
};
constexpr const char *practiceSources[] = {"practice", "definition", nullptr};
constexpr puteal_example neededExamples[] = {
    example("oxygen_needed(0.37873 mg/L as O2)", "2.63619 mg/L as O2", 1e-6, "common practice", "practice"),
    example("oxygen_needed(1.00508 mg/L as O2, 2, 1 mg/L as O2)", "3.01016 mg/L as O2", 1e-6,
            "common practice", "practice"),
};
constexpr puteal_example neededRefusals[] = {
    refusal("oxygen_needed(0.4 mg/L as O2, 0.5)", "`margin` must be at least 1; it is 0.5"),
};

constexpr puteal_parameter remainingTakes[] = {
    Parameter("oxygen_supplied", "mg/L as O2", "oxygen the water takes up, at most oxygen_saturation")
        .hard(0, 100)
        .usual(1, 60),
    budgetParameter,
};
constexpr puteal_example remainingExamples[] = {
    example("oxygen_remaining(11.288 mg/L as O2, 0.37873 mg/L as O2)", "10.90927 mg/L as O2", 1e-9,
            "computed", "definition"),
    // 2.5 mg/L of ammonia nitrogen use up what cold water holds
    example(
        "oxygen_remaining(11.288 mg/L as O2, oxygen_budget(0 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, 2.5 "
        "mg/L as N))",
        "-0.134 mg/L as O2", 0.02, "computed", "iupac2021"),
};
constexpr puteal_example remainingRefusals[] = {
    refusal("oxygen_remaining(-1 mg/L as O2, 0.4 mg/L as O2)",
            "`oxygen_supplied` must be at least 0 mg/L as O2; it is -1 mg/L as O2"),
};
constexpr puteal_caution remainingCautions[] = {caution("short", "more used than supplied"),
                                                caution("little", "less than 1 mg/L left")};
constexpr const char *remainingSources[] = {"definition", "iupac2021", "practice", nullptr};

constexpr puteal_parameter limitTakes[] = {
    Parameter("oxygen_supplied", "mg/L as O2", "oxygen the water takes up").hard(0, 100).usual(1, 60),
    Parameter("oxygen_needed", "mg/L as O2", "see oxygen_needed").hard(0, 500).usual(0, 30),
    Parameter("contact_time", "min", "time that counts between air and filter").hard(0, 10000).usual(1, 240),
    Parameter("time_needed", "min", "see iron_oxidation_time").hard(0, 1e7).usual(0.1, 1000),
};
constexpr puteal_example limitExamples[] = {
    // 2.4 mg/L of iron at pH 7.2 and 10 degC ask about an hour; 120 gal at 8 gpm give less
    example("aeration_limit(8 mg/L as O2, 2.6 mg/L as O2, 4.5 min, 58.3 min)", "contact time", 0, "computed",
            "definition"),
    example("aeration_limit(8 mg/L as O2, 2.6 mg/L as O2, 60 min, 58.3 min)", "nothing", 0, "computed",
            "definition"),
    example("aeration_limit(8 mg/L as O2, 12 mg/L as O2, 60 min, 58.3 min)", "oxygen", 0, "computed",
            "definition"),
};
constexpr puteal_example limitRefusals[] = {
    refusal("aeration_limit(8 mg/L as O2, 2.6 mg/L as O2, -1 min, 58.3 min)",
            "`contact_time` must be at least 0 min; it is -1 min"),
};

} // namespace

constinit const puteal_function saturationShareRow =
    Function("oxygen_saturation_share", "Oxygen as a share of saturation",
             "Oxygen found in water over what it holds in balance with moist air.", call<saturationShare>)
        .takes(shareTakes)
        .gives("", "share of saturation")
        .by("oxygen / oxygen_saturation(temperature, pressure)")
        .from(shareSources)
        .shownBy(shareExamples)
        .refusing(shareRefusals)
        .warning(shareCautions);

constinit const puteal_function oxygenNeededRow =
    Function("oxygen_needed", "Oxygen to design for",
             "Oxygen to bring into the water: the budget with a margin, and something left at the outlet.",
             call<oxygenNeeded>)
        .takes(neededTakes)
        .gives("mg/L as O2", "oxygen to bring in")
        .by("margin * budget + left")
        .from(practiceSources)
        .shownBy(neededExamples)
        .refusing(neededRefusals)
        .safely(aerationSafety);

constinit const puteal_function oxygenRemainingRow =
    Function("oxygen_remaining", "Oxygen left",
             "Oxygen left after oxidation. Without ammonia it is almost never the limit: pH, temperature and "
             "contact are.",
             call<oxygenRemaining>)
        .takes(remainingTakes)
        .gives("mg/L as O2", "oxygen left; below 0 what is missing")
        .by("oxygen_supplied - budget")
        .from(remainingSources)
        .shownBy(remainingExamples)
        .refusing(remainingRefusals)
        .warning(remainingCautions)
        .safely(aerationSafety);

constinit const puteal_function aerationLimitRow =
    Function("aeration_limit", "What limits aeration",
             "Whether oxygen or contact time holds up the oxidation of iron by air.", call<aerationLimit>)
        .takes(limitTakes)
        .givesOneOf(limitWords, "what is short, with its reason")
        .by("oxygen when oxygen_supplied < oxygen_needed, contact time when contact_time < time_needed")
        .from(practiceSources)
        .shownBy(limitExamples)
        .refusing(limitRefusals)
        .safely(aerationSafety);

} // namespace oxygen
