/// What a well stores and gives, and how far its level falls. (R1, R2)
#include "hydraulics.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

double boreStorage(double diameter, double length)
{
    return gallonPerFoot(diameter) * length;
}

double recoveryRate(double rise, double time, double diameter, Reply &reply)
{
    if (lessThan(rise, 2)) // below it the reading of the level decides [common practice, no source]
        reply.caution("small_rise", "a rise below 2 ft is read too coarsely: wait longer");
    return gallonPerFoot(diameter) * rise / time;
}

double bucketFlow(double volume, double time, Reply &reply)
{
    constexpr double secondPerMinute = 60.0;
    if (lessThan(time, 15) ||
        lessThan(volume, 2)) // shorter is a matter of the stopwatch [common practice, no source]
        reply.caution("coarse",
                      "less than 15 seconds or 2 gallons is read too coarsely: use a larger bucket");
    return volume * secondPerMinute / time;
}

double storageNeeded(double peak, double yield, double time)
{
    return std::fmax(0.0, (peak - yield) * time);
}

double drawdown(double flow, double specificCapacity, double diameter, double time, double earlier)
{
    // The bore empties while the aquifer gives in proportion to the drawdown.
    const double left = leftAfter(time, specificCapacity, diameter);
    return flow / specificCapacity * -std::expm1(-time * specificCapacity / gallonPerFoot(diameter)) +
           earlier * left;
}

constexpr Parameter bore =
    Parameter("diameter", "in", "inside diameter of the bore").hard(0.5, 120).usual(2, 48);

constexpr puteal_parameter storageTakes[] = {
    bore,
    Parameter("length", "ft", "water standing in it").hard(0, 5000).usual(10, 500),
};
constexpr const char *boreSources[] = {"mesa_county", "agwt", "hb44", nullptr};
constexpr puteal_example storageExamples[] = {
    example("bore_storage(6 in, 1 ft)", "1.47 gal", 2e-3, "published", "mesa_county"),
    example("bore_storage(2 in, 1 ft)", "0.16 gal", 0.025, "published", "mesa_county"),
    example("bore_storage(4 in, 1 ft)", "0.65 gal", 5e-3, "published", "mesa_county"),
    example("bore_storage(5 in, 1 ft)", "1.02 gal", 1e-3, "published", "mesa_county"),
    example("bore_storage(24 in, 1 ft)", "23.50 gal", 1e-3, "published", "mesa_county"),
    example("bore_storage(4 in, 100 ft)", "65 gal", 5e-3, "published", "agwt"),
    example("bore_storage(36 in, 1 ft)", "52.87 gal", 1e-3, "published", "mesa_county"),
    example("bore_storage(8 in, 100 ft)", "261 gal", 2e-3, "published", "agwt"),
    example("bore_storage(6 in, 150 ft)", "220.32 gal", 1e-5, "computed", "hb44"),
};
constexpr puteal_example storageRefusals[] = {
    refusal("bore_storage(0 in, 150 ft)", "`diameter` must be at least 0.5 in; it is 0 in"),
};

constexpr puteal_parameter recoveryTakes[] = {
    Parameter("rise", "ft", "rise of the level after the pump stopped").hard(0, 1000).usual(2, 100),
    Parameter("time", "min", "time it took").hard(0.1, 10000).usual(2, 240),
    bore,
};
constexpr const char *recoverySources[] = {"hb44", "practice", nullptr};
constexpr puteal_example recoveryExamples[] = {
    example("recovery_rate(20 ft, 12 min, 6 in)", "2.44799 gpm", 1e-5, "computed", "hb44"),
    example("recovery_rate(10 ft, 30 min, 4 in)", "0.217599 gpm", 1e-5, "computed", "hb44"),
};
constexpr puteal_example recoveryRefusals[] = {
    refusal("recovery_rate(20 ft, 0 min, 6 in)", "`time` must be at least 0.1 min; it is 0 min"),
};
constexpr puteal_caution recoveryCautions[] = {caution("small_rise", "a rise below 2 ft")};

constexpr puteal_parameter bucketTakes[] = {
    Parameter("volume", "gal", "water caught").hard(0, 10000).usual(2, 60),
    Parameter("time", "s", "time it took").hard(0.1, 36000).usual(15, 600),
};
constexpr const char *bucketSources[] = {"definition", "practice", nullptr};
constexpr puteal_example bucketExamples[] = {
    example("bucket_flow(5 gal, 37 s)", "8.10811 gpm", 1e-5, "computed", "definition"),
    example("bucket_flow(16 gal, 90 s)", "10.6667 gpm", 1e-5, "computed", "definition"),
};
constexpr puteal_example bucketRefusals[] = {
    refusal("bucket_flow(5 gal, 0 s)", "`time` must be at least 0.1 s; it is 0 s"),
};
constexpr puteal_caution bucketCautions[] = {caution("coarse", "less than 15 seconds or 2 gallons")};

constexpr puteal_parameter neededTakes[] = {
    Parameter("peak", "gpm", "peak flow of the house").hard(0, 1000).usual(3, 30),
    Parameter("yield", "gpm", "what the well gives for long").hard(0, 1000).usual(0.2, 30),
    Parameter("time", "min", "length of the peak; 7 minutes is the least").hard(0, 10000).usual(7, 120),
};
constexpr const char *neededSources[] = {"national_driller", "definition", nullptr};
constexpr puteal_example neededExamples[] = {
    example("storage_needed(10 gpm, 1 gpm, 7 min)", "63 gal", 1e-9, "computed", "national_driller"),
    example("storage_needed(5 gpm, 2 gpm, 60 min)", "180 gal", 1e-9, "computed", "definition"),
    example("storage_needed(5 gpm, 7 gpm, 60 min)", "0 gal", 1e-9, "computed", "definition"),
};
constexpr puteal_example neededRefusals[] = {
    refusal("storage_needed(10 gpm, -1 gpm, 7 min)", "`yield` must be at least 0 gpm; it is -1 gpm"),
};

constexpr puteal_parameter drawdownTakes[] = {
    Parameter("flow", "gpm", "pumped").hard(0, 1000).usual(1, 30),
    Parameter("specific_capacity", "gpm/ft", "yield for each foot of drawdown")
        .hard(0.0001, 1e6)
        .usual(0.01, 20),
    bore,
    Parameter("time", "min", "since the pump started").hard(0, 1e6).usual(1, 1440),
    Parameter("earlier", "ft", "drawdown left from before, see residual_drawdown")
        .hard(0, 5000)
        .usual(0, 300)
        .otherwise(0, "A"),
};
constexpr const char *drawdownSources[] = {"definition", "hb44", nullptr};
constexpr puteal_example drawdownExamples[] = {
    example("drawdown(10 gpm, 0.1 gpm/ft, 6 in, 10 min)", "49.3803 ft", 1e-5, "computed", "definition"),
    example("drawdown(10 gpm, 0.1 gpm/ft, 6 in, 15 min)", "63.9853 ft", 1e-5, "computed", "definition"),
    example("drawdown(0 gpm, 0.1 gpm/ft, 6 in, 30 min, 49.375 ft)", "6.40421 ft", 1e-5, "computed",
            "definition"),
    example("drawdown(12 gpm, 0.5 gpm/ft, 6 in, 1000 min)", "24 ft", 1e-5, "computed", "definition"),
};
constexpr puteal_example drawdownRefusals[] = {
    refusal("drawdown(10 gpm, 0 gpm/ft, 6 in, 10 min)",
            "`specific_capacity` must be at least 0.0001 gpm/ft; it is 0 gpm/ft"),
};

} // namespace

constinit const puteal_function boreStorageRow =
    Function("bore_storage", "Water stored in a bore", "Water standing in a round bore or casing.",
             call<boreStorage>)
        .takes(storageTakes)
        .gives("gal", "water stored")
        .by("pi / 4 * diameter^2 * length")
        .from(boreSources)
        .shownBy(storageExamples)
        .refusing(storageRefusals)
        .safely(wellSafety);

constinit const puteal_function recoveryRateRow =
    Function("recovery_rate", "Recovery of a well",
             "Inflow of a well from the rise of its level after the pump stopped.", call<recoveryRate>)
        .takes(recoveryTakes)
        .gives("gpm", "inflow")
        .by("pi / 4 * diameter^2 * rise / time")
        .from(recoverySources)
        .shownBy(recoveryExamples)
        .refusing(recoveryRefusals)
        .warning(recoveryCautions)
        .safely(wellSafety);

constinit const puteal_function bucketFlowRow =
    Function(
        "bucket_flow", "Flow by bucket and watch",
        "Flow from a bucket and a watch. An open bucket shows the flow at almost no pressure; a wash "
        "needs it at 20 to 30 psi. Under pressure: drain the tank into buckets down to cut-in, shut every "
        "tap, and time the pump from cut-in to cut-out.",
        call<bucketFlow>)
        .takes(bucketTakes)
        .gives("gpm", "flow")
        .by("volume / time")
        .from(bucketSources)
        .shownBy(bucketExamples)
        .refusing(bucketRefusals)
        .warning(bucketCautions);

constinit const puteal_function storageNeededRow =
    Function("storage_needed", "Storage for a peak",
             "Water to hold ready for a peak that the well cannot give.", call<storageNeeded>)
        .takes(neededTakes)
        .gives("gal", "storage")
        .by("greater of 0 and (peak - yield) * time")
        .from(neededSources)
        .shownBy(neededExamples)
        .refusing(neededRefusals);

constinit const puteal_function drawdownRow =
    Function("drawdown", "Drawdown while pumping",
             "Fall of the level in a bore while a pump runs, with inflow in proportion to the drawdown. A "
             "fracture that "
             "falls dry gives less.",
             call<drawdown>)
        .takes(drawdownTakes)
        .gives("ft", "fall of the level")
        .by("flow / specific_capacity * (1 - e) + earlier * e; e = exp(-time * specific_capacity / (pi / 4 * "
            "diameter^2))")
        .from(drawdownSources)
        .shownBy(drawdownExamples)
        .refusing(drawdownRefusals)
        .safely(wellSafety);

} // namespace hydraulics
