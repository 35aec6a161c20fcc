/// Sizes and loads around a tank: inside diameter, freeboard, service flow, yearly wash water, surge to a
/// septic tank. (R1)
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

double insideDiameter(double nominal, double less, Reply &reply)
{
    if (!lessThan(less, nominal))
        return reply.refuse(2,
                            "the wall is thicker than the tank: give what the inside is less than the name");
    return nominal - less;
}

double freeboard(double height, double under, double bed, Reply &reply)
{
    constexpr double half =
        0.5; // of the bed, least freeboard; resin and carbon want all of it [common practice]
    if (lessThan(height, under + bed))
        return reply.refuse(3, "gravel and bed are deeper than the straight side of the tank");
    const double share = (height - under - bed) / bed;
    if (lessThan(share, half))
        reply.caution("little", "less than half the depth of the bed is free above it: a wash loses medium");
    return share;
}

double serviceLoading(double flow, double area, double lasting, Reply &reply)
{
    constexpr double brief = 2.0; // a peak of ten minutes may be twice as much [common practice, no source]
    const double loading = flow / area;
    if (lessThan(lasting * brief, loading))
        reply.caution("too_high",
                      "too high even for ten minutes: a larger bed, two beds, or raw water for outdoor taps");
    else if (lessThan(lasting, loading))
        reply.caution("peak_only", "good for ten minutes only: check the flow that lasts");
    return loading;
}

double serviceFlow(double area, double loading)
{
    return area * loading;
}

double washPerYear(double wash, double interval, double days)
{
    return wash / interval * days;
}

double septicSurge(double wash, double tank, Reply &reply)
{
    constexpr double much = 0.1; // [common practice, no source]
    if (lessThan(much, wash / tank))
        reply.caution("much",
                      "more than a tenth of the tank at once stirs up its sludge: ask the health office for "
                      "another place for wash water");
    return wash / tank;
}

constexpr const char *rises[] = {"straight", "exponential", nullptr};

double runByLoss(double clean, double loss, double time, double allowed, int rise, Reply &reply)
{
    if (!lessThan(clean, loss))
        return reply.refuse(2, "the pressure loss has not risen: read again later");
    const double share =
        rise == 0 ? allowed / (loss - clean) : std::log((clean + allowed) / clean) / std::log(loss / clean);
    const double days = time * share;
    if (lessThan(days, 1)) {
        reply.caution("daily", "the loss is there within a day: a larger bed, or take iron out ahead of it");
        return days;
    }
    if (atMost(days, time))
        reply.caution("due", "the loss is reached by now: wash now");
    return std::floor(days * (1.0 + 1e-12)); // a clock counts whole days; 3.999... is 4
}

double lossAt(double at, double firstVolume, double firstLoss, double secondVolume, double secondLoss,
              Reply &reply)
{
    if (!lessThan(firstVolume, secondVolume))
        return reply.refuse(4, "the second reading must be later than the first");
    if (lessThan(at, firstVolume))
        return reply.refuse(1, "ask for a reading at or after the first one");
    if (lessThan(secondLoss, firstLoss))
        return reply.refuse(
            5, "the pressure loss fell between the readings: read again after the change or wash");
    const double rate = std::log(secondLoss / firstLoss) / (secondVolume - firstVolume);
    const double loss = firstLoss * std::exp(rate * (at - firstVolume));
    if (!std::isfinite(loss))
        return reply.refuse(
            1, "that far ahead the loss has no bound: ask for a reading nearer to the second one");
    if (lessThan(2.0 * secondVolume, at + firstVolume))
        reply.caution("far", "further ahead than the two readings lie apart: read again before trusting it");
    return loss;
}

constexpr Parameter wash =
    Parameter("wash", "gal/event", "water of one wash, see backwash_gallons").hard(0, 10000).usual(20, 250);

constexpr puteal_parameter insideTakes[] = {
    Parameter("nominal", "in", "diameter the tank is named by").hard(1, 120).usual(6, 36),
    Parameter("less", "in", "what the inside is less than the name")
        .hard(0, 4)
        .usual(0.1, 0.6)
        .otherwise(0.25, "T"),
};
constexpr const char *insideSources[] = {"practice", "geometry", nullptr};
constexpr puteal_example insideExamples[] = {
    example("tank_inside_diameter(10 in)", "9.75 in", 1e-12, "common practice", "practice"),
    example("bed_area(tank_inside_diameter(10 in)) / bed_area(10 in)", "0.950625", 1e-9, "computed",
            "geometry"),
    example("tank_inside_diameter(24 in, 0.5 in)", "23.5 in", 1e-12, "computed", "geometry"),
};
constexpr puteal_example insideRefusals[] = {
    refusal("tank_inside_diameter(1 in, 2 in)",
            "the wall is thicker than the tank: give what the inside is less than the name")};

constexpr puteal_parameter boardTakes[] = {
    Parameter("height", "in", "straight side of the tank").hard(1, 240).usual(35, 80),
    Parameter("under", "in", "gravel under the bed").hard(0, 60).usual(0, 12),
    Parameter("bed", "in", "depth of the bed").hard(1, 240).usual(18, 48),
};
constexpr const char *geometrySources[] = {"geometry", "practice", nullptr};
constexpr puteal_example boardExamples[] = {
    example("freeboard_share(54 in, 6 in, 30 in)", "60 %", 1e-12, "computed", "geometry"),
    example("freeboard_share(48 in, 6 in, 30 in)", "40 %", 1e-12, "computed", "geometry"),
};
constexpr puteal_example boardRefusals[] = {refusal(
    "freeboard_share(30 in, 6 in, 30 in)", "gravel and bed are deeper than the straight side of the tank")};
constexpr puteal_caution boardCautions[] = {caution("little", "less than half of the bed's depth")};

constexpr Parameter area = Parameter("area", "ft^2", "area of the bed").hard(0.01, 1000).usual(0.2, 20);
constexpr puteal_parameter loadingTakes[] = {
    Parameter("flow", "gpm", "flow through the bed").hard(0, 1000).usual(0.5, 50), area,
    Parameter("lasting", "gpm/ft^2", "highest loading for a flow that lasts, see media_service_loading")
        .hard(0.1, 100)
        .usual(2, 10)
        .otherwise(5, "T")};
constexpr puteal_example loadingExamples[] = {
    example("service_loading(3 gpm, bed_area(10 in))", "5.5 gpm/ft^2", 1e-3, "computed", "geometry"),
    example("service_loading(7 gpm, 1 ft^2)", "17.11325 m/hr", 1e-6, "computed", "hb44"),
    example("service_loading(2 gpm, 0.7854 ft^2)", "2.5465 gpm/ft^2", 1e-4, "computed", "geometry"),
};
constexpr const char *loadingSources[] = {"geometry", "hb44", "practice", nullptr};
constexpr puteal_example loadingRefusals[] = {
    refusal("service_loading(3 gpm, 0 ft^2)", "`area` must be at least 0.01 ft^2; it is 0 ft^2")};
constexpr puteal_caution loadingCautions[] = {caution("peak_only", "above the loading for a flow that lasts"),
                                              caution("too_high", "above twice that loading")};

constexpr puteal_parameter flowTakes[] = {
    area, Parameter("loading", "gpm/ft^2", "service loading of the medium").hard(0, 100).usual(2, 10)};
constexpr puteal_example flowExamples[] = {
    // at most 3 gpm/ft^2 on greensand by Okla. Admin. Code 252:626-9-7
    example("service_flow(bed_area(10 in), 3 gpm/ft^2)", "1.64 gpm", 3e-3, "computed", "geometry"),
    example("service_flow(bed_area(12 in), 5 gpm/ft^2)", "3.93 gpm", 1e-3, "computed", "geometry"),
    example("service_flow(bed_area(24 in), 5 gpm/ft^2)", "15.71 gpm", 1e-3, "computed", "geometry"),
};
constexpr puteal_example flowRefusals[] = {
    refusal("service_flow(1 ft^2, -3 gpm/ft^2)", "`loading` must be at least 0 gpm/ft^2; it is -3 gpm/ft^2")};

constexpr puteal_parameter yearTakes[] = {
    wash, Parameter("interval", "day/event", "days between washes").hard(0.1, 365).usual(1, 14),
    Parameter("days", "day/yr", "days a year on which the clock washes, used or not")
        .hard(0, 366)
        .usual(30, 366)
        .otherwise(365, "A")};
constexpr const char *yearSources[] = {"hb44", nullptr};
constexpr puteal_example yearExamples[] = {
    example("backwash_per_year(70.904 gal/event, 3 day/event)", "8626.65 gal/yr", 1e-5, "computed", "hb44"),
    example("backwash_per_year(113.883 gal/event, 4 day/event)", "10391.8 gal/yr", 1e-5, "computed", "hb44"),
};
constexpr puteal_example yearRefusals[] = {
    refusal("backwash_per_year(70 gal/event, 0 day/event)",
            "`interval` must be at least 0.1 day/event; it is 0 day/event")};

constexpr puteal_parameter surgeTakes[] = {
    wash,
    Parameter("tank", "gal", "volume of the septic tank that takes it").hard(1, 100000).usual(500, 2000)};
constexpr const char *surgeSources[] = {"massdep_title5", "definition", "practice", nullptr};
constexpr puteal_example surgeExamples[] = {
    example("septic_surge_share(113.9 gal/event, 1000 gal)", "11.39 %", 1e-9, "computed", "definition"),
    example("septic_surge_share(70.9 gal/event, 1250 gal)", "5.672 %", 1e-9, "computed", "definition"),
};
constexpr puteal_example surgeRefusals[] = {
    refusal("septic_surge_share(70 gal/event, 0 gal)", "`tank` must be at least 1 gal; it is 0 gal")};
constexpr puteal_caution surgeCautions[] = {caution("much", "more than 10 % of the tank")};

constexpr puteal_parameter runTakes[] = {
    Parameter("clean", "psi", "pressure loss right after a wash").hard(0.01, 150).usual(0.5, 15),
    Parameter("loss", "psi", "pressure loss later, at the same flow").hard(0.01, 150).usual(0.5, 25),
    Parameter("time", "day/event", "days between the two readings").hard(0.01, 365).usual(0.5, 14),
    Parameter("allowed", "psi", "rise above the clean loss at which it is washed")
        .hard(0.1, 100)
        .usual(3, 15)
        .otherwise(5, "T"),
    Parameter("rise", "",
              "straight as solids lodge through the depth of a bed, exponential as they close its surface")
        .oneOf(rises)
        .otherwise(0, "T"),
};
constexpr const char *runSources[] = {"definition", "practice", nullptr};
constexpr puteal_example runExamples[] = {
    example("filter_run_by_pressure_loss(2 psi, 4 psi, 2 day/event)", "5 day/event", 1e-12, "computed",
            "definition"),
    example("filter_run_by_pressure_loss(2 psi, 4 psi, 2 day/event, 5 psi, \"exponential\")", "3 day/event",
            1e-12, "computed", "definition"),
    example("filter_run_by_pressure_loss(2 psi, 3 psi, 1 day/event, 10 psi)", "10 day/event", 1e-12,
            "computed", "definition"),
};
constexpr puteal_example runRefusals[] = {refusal("filter_run_by_pressure_loss(4 psi, 4 psi, 2 day/event)",
                                                  "the pressure loss has not risen: read again later")};
constexpr puteal_caution runCautions[] = {caution("daily", "less than a day"),
                                          caution("due", "the rise is reached at the second reading")};

constexpr puteal_parameter lossTakes[] = {
    Parameter("at", "'u", "meter, or mass held, at which the loss is asked for"),
    Parameter("first_volume", "'u", "meter at the first reading, or mass held by then"),
    Parameter("first_loss", "psi", "pressure loss then").hard(0.01, 150).usual(0.5, 15),
    Parameter("second_volume", "'u", "meter at the second reading"),
    Parameter("second_loss", "psi", "pressure loss then").hard(0.01, 150).usual(0.5, 20),
};
constexpr puteal_example lossExamples[] = {
    example("cartridge_loss_at(50 g, 0 g, 1 psi, 100 g, 15 psi)", "3.87298 psi", 1e-5, "computed",
            "definition"),
    example("cartridge_loss_at(21253.5 gal, 5000 gal, 2 psi, 12000 gal, 4 psi)", "10 psi", 1e-5, "computed",
            "definition"),
    example("cartridge_loss_at(85.0274 g, 0 g, 1 psi, 100 g, 15 psi)", "10 psi", 1e-5, "computed",
            "definition"),
};
constexpr puteal_example lossRefusals[] = {
    refusal("cartridge_loss_at(50 g, 100 g, 1 psi, 100 g, 15 psi)",
            "the second reading must be later than the first"),
    refusal("cartridge_loss_at(50 g, 60 g, 1 psi, 100 g, 15 psi)",
            "ask for a reading at or after the first one"),
};
constexpr puteal_caution lossCautions[] = {
    caution("far", "further past the second reading than the two lie apart")};
constexpr const char housingSafety[] =
    "Take the pressure off before opening a housing, and stay below its rating.";

} // namespace

constinit const puteal_function insideDiameterRow =
    Function("tank_inside_diameter", "Inside diameter of a tank",
             "Inside diameter of a molded tank from the diameter it is named by: an eighth to a quarter inch "
             "less, which "
             "takes 3 to 6 % of the area of a small tank.",
             call<insideDiameter>)
        .takes(insideTakes)
        .gives("in", "inside diameter")
        .by("nominal - less")
        .from(insideSources)
        .shownBy(insideExamples)
        .refusing(insideRefusals);

constinit const puteal_function freeboardRow = Function("freeboard_share", "Freeboard over a bed",
                                                        "Free height over a bed as a share of its depth, for "
                                                        "bed_expansion. Half of the bed at least; resin and "
                                                        "carbon want as much as the bed.",
                                                        call<freeboard>)
                                                   .takes(boardTakes)
                                                   .gives("", "freeboard as a share of the bed's depth")
                                                   .by("(height - under - bed) / bed")
                                                   .from(geometrySources)
                                                   .shownBy(boardExamples)
                                                   .refusing(boardRefusals)
                                                   .warning(boardCautions);

constinit const puteal_function serviceLoadingRow =
    Function("service_loading", "Service loading of a bed", "Flow over the area of a bed in service.",
             call<serviceLoading>)
        .takes(loadingTakes)
        .gives("gpm/ft^2", "service loading")
        .by("flow / area")
        .from(loadingSources)
        .shownBy(loadingExamples)
        .refusing(loadingRefusals)
        .warning(loadingCautions);

constinit const puteal_function serviceFlowRow =
    Function("service_flow", "Service flow of a bed", "Flow a bed takes in service at a loading.",
             call<serviceFlow>)
        .takes(flowTakes)
        .gives("gpm", "service flow")
        .by("area * loading")
        .from(geometrySources)
        .shownBy(flowExamples)
        .refusing(flowRefusals);

constinit const puteal_function washPerYearRow =
    Function("backwash_per_year", "Wash water of a year",
             "Water that washes take in a year; a clock washes even when nobody is there.", call<washPerYear>)
        .takes(yearTakes)
        .gives("gal/yr", "wash water of a year")
        .by("wash / interval * days")
        .from(yearSources)
        .shownBy(yearExamples)
        .refusing(yearRefusals)
        .safely(pressureSafety);

constinit const puteal_function septicSurgeRow =
    Function("septic_surge_share", "Surge of a wash to a septic tank",
             "One wash as a share of the septic tank it runs to; see septic_share for the daily load.",
             call<septicSurge>)
        .takes(surgeTakes)
        .gives("", "share of the tank")
        .by("wash / tank")
        .from(surgeSources)
        .shownBy(surgeExamples)
        .refusing(surgeRefusals)
        .warning(surgeCautions)
        .safely("Rules on wash water and septic systems differ by state; some bar softener waste altogether. "
                "Confirm "
                "with the local health office.");

constinit const puteal_function runByLossRow =
    Function("filter_run_by_pressure_loss", "Days until the pressure loss asks for a wash",
             "Whole days from a clean bed to its allowed rise of pressure loss, from two gauge readings at "
             "one flow. No "
             "run is foretold without readings.",
             call<runByLoss>)
        .takes(runTakes)
        .gives("day/event", "days between washes, whole and rounded down")
        .by("straight: time * allowed / (loss - clean); exponential: time * ln((clean + allowed) / clean) / "
            "ln(loss / "
            "clean); rounded down to whole days, below one day not rounded")
        .from(runSources)
        .shownBy(runExamples)
        .refusing(runRefusals)
        .warning(runCautions)
        .safely(pressureSafety);

constinit const puteal_function lossAtRow =
    Function("cartridge_loss_at", "Pressure loss of a plugging cartridge",
             "Pressure loss at a meter reading, or at a mass held, from two gauge readings at one flow.",
             call<lossAt>)
        .takes(lossTakes)
        .gives("psi", "pressure loss")
        .by("first_loss * (second_loss / first_loss)^((at - first_volume) / (second_volume - first_volume))")
        .from(runSources)
        .shownBy(lossExamples)
        .refusing(lossRefusals)
        .warning(lossCautions)
        .safely(housingSafety);

} // namespace filtration
