/// How long water stays in a contact tank, and which clock sizes it. (R3, R4)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

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

double detentionTime(double volume, double flow)
{
    return volume / flow;
}

double contactTankSize(double flow, bool slow, double baffling, double quickTime, double slowTime,
                       Reply &reply)
{
    cautionBaffling(baffling, reply);
    const double byIron = quickTime * flow / baffling, bySlow = slowTime * flow;
    const std::string ironWords = "iron asks " + figures(quickTime) +
                                  " min that count: " + figures(byIron, 4) + " gal at a baffling of " +
                                  figures(baffling);
    if (!slow) {
        reply.reason(ironWords + "; no other clock was asked for");
        return byIron;
    }
    const std::string slowWords = "iron bacteria or manganese ask " + figures(slowTime) +
                                  " min of detention: " + figures(bySlow, 4) + " gal";
    const bool slowDecides = lessThan(byIron, bySlow);
    reply.reason(slowDecides ? slowWords + " decides; " + ironWords : ironWords + " decides; " + slowWords);
    return slowDecides ? bySlow : byIron;
}

constexpr puteal_parameter timeTakes[] = {
    Parameter("volume", "gal", "water in the contact tank").hard(0, 100000).usual(20, 500),
    Parameter("peak_flow", "gpm", "peak flow through it").hard(0.01, 1000).usual(1, 30),
    bafflingParameter,
};
constexpr const char *contactSources[] = {"baffling_table", "practice", nullptr};
constexpr puteal_example timeExamples[] = {
    example("contact_time(120 gal, 10 gpm)", "3.6 min", 1e-9, "computed", "baffling_table"),
    example("contact_time(120 gal, 10 gpm, 0.1)", "1.2 min", 1e-9, "computed", "baffling_table"),
    example("contact_time(80 gal, 7 gpm, 0.5)", "5.71429 min", 1e-5, "computed", "baffling_table"),
    example("contact_time(120 gal, 10 gpm, tanks_in_series_baffling(3))", "4.40826 min", 1e-5, "computed",
            "geometry"),
};
constexpr puteal_example timeRefusals[] = {
    refusal("contact_time(120 gal, 0 gpm)", "`peak_flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr puteal_caution contactCautions[] = {bafflingCaution};
constexpr puteal_parameter volumeTakes[] = {
    Parameter("time", "min", "time that counts").hard(0, 1440).usual(1, 30),
    Parameter("peak_flow", "gpm", "peak flow through the tank").hard(0, 1000).usual(1, 30),
    bafflingParameter,
};
constexpr puteal_example volumeExamples[] = {
    example("contact_volume(20 min, 5 gpm, 0.5)", "200 gal", 1e-9, "computed", "baffling_table"),
    example("contact_volume(20 min, 5 gpm, 0.1)", "1000 gal", 1e-9, "computed", "baffling_table"),
    example("contact_volume(5 min, 8 gpm)", "133.333 gal", 1e-5, "computed", "baffling_table"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("contact_volume(5 min, 8 gpm, 30)",
            "`baffling` must be at most 1; it is 30: for 30 percent write 30 %"),
};
constexpr const char contactSafety[] = "Contact time against iron is no disinfection and makes no water safe "
                                       "to drink: bacteria are a matter for the "
                                       "health department. A contact tank is a pressure vessel.";

constexpr puteal_parameter detentionTakes[] = {
    Parameter("volume", "gal", "water in the tank or pipe").hard(0, 100000).usual(5, 1000),
    Parameter("peak_flow", "gpm", "peak flow through it").hard(0.01, 1000).usual(1, 30),
};
constexpr puteal_example detentionExamples[] = {
    example("detention_time(120 gal, 10 gpm)", "12 min", 1e-9, "computed", "geometry"),
    // 300 ft of pipe of 1.38 in inside
    example("detention_time(23.310 gal, 10 gpm)", "2.331 min", 1e-9, "computed", "geometry"),
    example("detention_time(160 gal, 8 gpm)", "20 min", 1e-9, "common practice", "practice"),
};
constexpr puteal_example detentionRefusals[] = {
    refusal("detention_time(120 gal, 0 gpm)", "`peak_flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr const char *detentionSources[] = {"geometry", "practice", nullptr};

constexpr puteal_parameter sizeTakes[] = {
    Parameter("peak_flow", "gpm", "peak flow through the tank").hard(0.01, 1000).usual(1, 30),
    Parameter("bacteria_or_manganese", "", "yes when iron bacteria or manganese are to be dealt with")
        .yesNo(),
    bafflingParameter,
    Parameter("quick_time", "min", "time that counts for iron: 2 to 5 min")
        .hard(0.1, 240)
        .usual(2, 5)
        .otherwise(5, "T"),
    Parameter("slow_time", "min", "detention for iron bacteria and manganese")
        .hard(0.1, 1440)
        .usual(20, 60)
        .otherwise(20, "T"),
};
constexpr const char *sizeSources[] = {"practice", "baffling_table", nullptr};
constexpr puteal_example sizeExamples[] = {
    example("contact_tank_size(8 gpm, yes)", "160 gal", 1e-9, "common practice", "practice"),
    example("contact_tank_size(8 gpm, no)", "133.333 gal", 1e-5, "common practice", "practice"),
    example("contact_tank_size(8 gpm, yes, 0.1)", "400 gal", 1e-9, "common practice", "practice"),
};
constexpr puteal_example sizeRefusals[] = {
    refusal("contact_tank_size(0 gpm, yes)", "`peak_flow` must be at least 0.01 gpm; it is 0 gpm"),
};

} // namespace

constinit const puteal_function contactTimeRow =
    Function("contact_time", "Contact time", "Time that counts in a contact tank at peak flow.",
             call<contactTime>)
        .takes(timeTakes)
        .gives("min", "time nine tenths of the water stay at least")
        .by("baffling * volume / peak_flow")
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
        .by("time * peak_flow / baffling")
        .from(contactSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .warning(contactCautions)
        .safely(contactSafety);

constinit const puteal_function detentionTimeRow =
    Function("detention_time", "Detention time",
             "Time the water would stay if it moved through the tank like a plug. Part of it takes short "
             "cuts: the time "
             "that counts is contact_time. A long thin pipe, 160 diameters and more, comes close to a plug.",
             call<detentionTime>)
        .takes(detentionTakes)
        .gives("min", "nominal time")
        .by("volume / peak_flow")
        .from(detentionSources)
        .shownBy(detentionExamples)
        .refusing(detentionRefusals)
        .safely(contactSafety);

constinit const puteal_function contactTankSizeRow =
    Function("contact_tank_size", "Contact tank by the slower clock",
             "Water a contact tank must hold by the trade's two clocks, and which of them decides: a few "
             "minutes that count "
             "for iron, twenty minutes of detention for iron bacteria and manganese. Disinfection is not "
             "claimed.",
             call<contactTankSize>)
        .takes(sizeTakes)
        .gives("gal", "water in the contact tank, with its reason")
        .by("larger of quick_time * peak_flow / baffling and, with bacteria_or_manganese, slow_time * "
            "peak_flow")
        .from(sizeSources)
        .shownBy(sizeExamples)
        .refusing(sizeRefusals)
        .warning(contactCautions)
        .safely(contactSafety);

} // namespace dosing
