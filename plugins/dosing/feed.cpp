/// What a feeder must give, how long its tank lasts, and how long the water stays in a contact tank. (R3, R4)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

double feedRate(double flow, double dose, double strength)
{
    return flow * measure::minutePerDay * dose / strength;
}

double feedSetting(double rate, double capacity, Reply &reply)
{
    if (!atMost(rate, capacity))
        return reply.refuse(1, "the pump cannot give that much: a stronger solution or a larger pump");
    const double setting = rate / capacity;
    if (lessThan(setting, 0.1)) // a tenth to nine tenths is where feeders hold their rate [common practice]
        reply.caution("low", "below 10 % a feeder does not hold its rate: a weaker solution");
    else if (lessThan(0.9, setting))
        reply.caution("high", "above 90 % nothing is left for wear: a stronger solution");
    return setting;
}

double solutionDays(double tank, double use, double dose, double strength, Reply &reply)
{
    const double perDay = use * dose / strength;
    if (atMost(perDay, 0))
        return reply.refuse(0, "nothing is fed, so the tank never empties: give a use and a dose above 0");
    const double days = tank / perDay;
    if (lessThan(30, days)) // bleach is best used within a month [common practice, no source]
        reply.caution("old", "more than 30 days: a solution loses strength, mix a smaller or a weaker tank");
    return days;
}

void cautionBaffling(double baffling, Reply &reply)
{
    if (lessThan(0.3, baffling)) // small tanks short-circuit [common practice, no source]
        reply.caution("optimistic", "a small tank without an inlet diffuser seldom does better than 0.3");
}

double contactTime(double volume, double flow, double baffling, Reply &reply)
{
    cautionBaffling(baffling, reply);
    return volume / flow * baffling;
}

double contactVolume(double time, double flow, double baffling, Reply &reply)
{
    cautionBaffling(baffling, reply);
    return time * flow / baffling;
}

constexpr puteal_parameter rateTakes[] = {
    Parameter("flow", "gpm",
              "flow while the feeder runs: the well pump's at mid pressure if it is wired to the pump")
        .hard(0, 1000)
        .usual(1, 30),
    Parameter("dose", "'u", "what the water is to get").hard(0, HUGE_VAL),
    Parameter("strength", "'u", "strength of the solution").hard(1e-9, HUGE_VAL),
};
constexpr const char *rateSources[] = {"treatment_math", "geometry", "practice", nullptr};
constexpr puteal_example rateExamples[] = {
    example("feed_rate(10 gpm, 5 mg/L as Cl2, 5250 mg/L as Cl2)", "13.7143 gal/day", 1e-5, "computed",
            "treatment_math"),
    example("feed_rate(7 gpm, 3 mg/L as Cl2, 5250 mg/L as Cl2)", "5.76 gal/day", 1e-9, "computed",
            "treatment_math"),
    example("feed_rate(12 gpm, 8 mg/L as H2O2, 70000 mg/L as H2O2)", "1.97486 gal/day", 1e-5, "computed",
            "treatment_math"),
};
constexpr puteal_example rateRefusals[] = {
    refusal("feed_rate(-10 gpm, 5 mg/L as Cl2, 5250 mg/L as Cl2)",
            "`flow` must be at least 0 gpm; it is -10 gpm"),
};

constexpr puteal_parameter settingTakes[] = {
    Parameter("rate", "gal/day", "solution to be fed, see feed_rate").hard(0, 10000).usual(0.5, 30),
    Parameter("pump_capacity", "gal/day", "what the feeder gives at its highest setting")
        .hard(0.1, 10000)
        .usual(3, 60),
};
constexpr puteal_example settingExamples[] = {
    example("feed_setting(5.76 gal/day, 10 gal/day)", "57.6 %", 1e-9, "computed", "geometry"),
    example("feed_setting(feed_rate(7 gpm, 3 mg/L as Cl2, 5250 mg/L as Cl2), 24 gal/day)", "24 %", 1e-9,
            "computed", "geometry"),
};
constexpr puteal_example settingRefusals[] = {
    refusal("feed_setting(13.7 gal/day, 10 gal/day)",
            "the pump cannot give that much: a stronger solution or a larger pump"),
};
constexpr puteal_caution settingCautions[] = {caution("low", "below 10 %"), caution("high", "above 90 %")};

constexpr puteal_parameter daysTakes[] = {
    Parameter("tank", "gal", "solution in a full tank").hard(0.1, 10000).usual(5, 60),
    Parameter("use", "gal/day", "water treated: the household's use, not the pump's flow")
        .hard(0, 100000)
        .usual(50, 1000),
    Parameter("dose", "'u", "what the water gets").hard(0, HUGE_VAL),
    Parameter("strength", "'u", "strength of the solution").hard(1e-9, HUGE_VAL),
};
constexpr puteal_example daysExamples[] = {
    example("solution_days(15 gal, 300 gal/day, 5 mg/L as Cl2, 5250 mg/L as Cl2)", "52.5 day/event", 1e-9,
            "computed", "geometry"),
    example("solution_days(15 gal, 250 gal/day, 8 mg/L as H2O2, 70000 mg/L as H2O2)", "525 day/event", 1e-9,
            "computed", "geometry"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("solution_days(15 gal, 300 gal/day, 0 mg/L as Cl2, 5250 mg/L as Cl2)",
            "nothing is fed, so the tank never empties: give a use and a dose above 0"),
};
constexpr puteal_caution daysCautions[] = {caution("old", "more than 30 days")};

constexpr Parameter baffling =
    Parameter("baffling", "",
              "share of the nominal time that counts: 0.1 unbaffled, 0.3 poor, 0.5 average, 0.7 superior")
        .hard(0.01, 1)
        .usual(0.1, 0.7)
        .otherwise(0.3, "H");
constexpr puteal_parameter timeTakes[] = {
    Parameter("volume", "gal", "water in the contact tank").hard(0, 100000).usual(20, 500),
    Parameter("flow", "gpm", "peak flow through it").hard(0.01, 1000).usual(1, 30),
    baffling,
};
constexpr const char *contactSources[] = {"baffling_table", "practice", nullptr};
constexpr puteal_example timeExamples[] = {
    example("contact_time(120 gal, 10 gpm)", "3.6 min", 1e-9, "computed", "baffling_table"),
    example("contact_time(120 gal, 10 gpm, 0.1)", "1.2 min", 1e-9, "computed", "baffling_table"),
    example("contact_time(80 gal, 7 gpm, 0.5)", "5.71429 min", 1e-5, "computed", "baffling_table"),
};
constexpr puteal_example timeRefusals[] = {
    refusal("contact_time(120 gal, 0 gpm)", "`flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr puteal_caution contactCautions[] = {caution("optimistic", "baffling above 0.3")};
constexpr puteal_parameter volumeTakes[] = {
    Parameter("time", "min", "time that counts").hard(0, 1440).usual(1, 30),
    Parameter("flow", "gpm", "peak flow through the tank").hard(0, 1000).usual(1, 30),
    baffling,
};
constexpr puteal_example volumeExamples[] = {
    example("contact_volume(20 min, 5 gpm, 0.5)", "200 gal", 1e-9, "computed", "baffling_table"),
    example("contact_volume(20 min, 5 gpm, 0.1)", "1000 gal", 1e-9, "computed", "baffling_table"),
    example("contact_volume(5 min, 8 gpm)", "133.333 gal", 1e-5, "computed", "baffling_table"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("contact_volume(5 min, 8 gpm, 30)", "`baffling` must be at most 1; it is 30"),
};
constexpr const char contactSafety[] = "Contact time against iron is no disinfection and makes no water safe "
                                       "to drink: bacteria are a matter for the "
                                       "health department. A contact tank is a pressure vessel.";

} // namespace

constinit const puteal_function feedRateRow =
    Function("feed_rate", "Feed rate", "Solution a feeder must give while the water runs.", call<feedRate>)
        .takes(rateTakes)
        .gives("gal/day", "solution, as if the water ran all day")
        .by("flow * dose / strength")
        .from(rateSources)
        .shownBy(rateExamples)
        .refusing(rateRefusals)
        .safely(feederSafety);

constinit const puteal_function feedSettingRow =
    Function("feed_setting", "Feeder setting", "Setting of a feeder as a share of its capacity.",
             call<feedSetting>)
        .takes(settingTakes)
        .gives("", "share of the pump's capacity")
        .by("rate / pump_capacity")
        .from(rateSources)
        .shownBy(settingExamples)
        .refusing(settingRefusals)
        .warning(settingCautions)
        .safely(feederSafety);

constinit const puteal_function solutionDaysRow =
    Function("solution_days", "Days a tank of solution lasts", "Days until a full solution tank is empty.",
             call<solutionDays>)
        .takes(daysTakes)
        .gives("day/event", "days between fillings")
        .by("tank * strength / (use * dose)")
        .from(rateSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(daysCautions)
        .safely(feederSafety);

constinit const puteal_function contactTimeRow =
    Function("contact_time", "Contact time", "Time that counts in a contact tank at peak flow.",
             call<contactTime>)
        .takes(timeTakes)
        .gives("min", "time nine tenths of the water stay at least")
        .by("baffling * volume / flow")
        .from(contactSources)
        .shownBy(timeExamples)
        .refusing(timeRefusals)
        .warning(contactCautions)
        .safely(contactSafety);

constinit const puteal_function contactVolumeRow =
    Function("contact_volume", "Contact tank volume",
             "Water a contact tank must hold for a time that counts.", call<contactVolume>)
        .takes(volumeTakes)
        .gives("gal", "water in the contact tank")
        .by("time * flow / baffling")
        .from(contactSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .warning(contactCautions)
        .safely(contactSafety);

} // namespace dosing
