/// Size of a media bed, the flow and water its wash takes, and how long it runs between washes. (R1, R2)
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

double bedArea(double diameter)
{
    const double feet = diameter / measure::inchPerFoot;
    return measure::pi / 4.0 * feet * feet;
}

double bedVolume(double diameter, double depth)
{
    return bedArea(diameter) * depth / measure::inchPerFoot;
}

double emptyBedContactTime(double bed, double flow, Reply &reply)
{
    const double minutes = bed * measure::gallonPerCubicFoot / flow;
    if (lessThan(minutes, 1.5)) // shortest that is still judged useful [common practice, no source]
        reply.caution("short", "less than 1.5 minutes in the empty bed is too short for most media");
    return minutes;
}

double backwashFlow(double area, double rate)
{
    return area * rate;
}

double backwashGallons(double area, double washRate, double washTime, double rinseRate, double rinseTime,
                       Reply &reply)
{
    const double gallons = area * (washRate * washTime + rinseRate * rinseTime);
    if (lessThan(250, gallons)) // one wash of a house filter is 100 to 200 gal [Missouri Extension G1801]
        reply.caution("much_water",
                      "more than 250 gal a wash: check the well, the drain and the septic system");
    return gallons;
}

double backwashInterval(double loadLimit, double iron, double area, double use, double longest, Reply &reply)
{
    const double perDay = iron * use * measure::literPerGallon / measure::mgPerGrain; // grain of iron a day
    const double held = loadLimit * area;
    if (atMost(longest * perDay, held))
        return longest;
    const double days = held / perDay;
    if (lessThan(days, 1)) {
        reply.caution("daily", "the bed is full within a day: a larger bed, or take iron out ahead of it");
        return days;
    }
    return std::floor(days * (1.0 + 1e-12)); // a clock counts whole days; 3.999... is 4
}

constexpr puteal_parameter areaTakes[] = {
    Parameter("diameter", "in",
              "inside diameter of the tank; molded tanks are a quarter inch under their name")
        .hard(1, 120)
        .usual(6, 36),
};
constexpr const char *areaSources[] = {"hb44", nullptr};
constexpr puteal_example areaExamples[] = {
    example("bed_area(10 in)", "0.5454 ft^2", 1e-4, "computed", "hb44"),
    example("bed_area(24 in)", "3.1416 ft^2", 1e-4, "computed", "hb44"),
};
constexpr puteal_example areaRefusals[] = {
    refusal("bed_area(0 in)", "`diameter` must be at least 1 in; it is 0 in"),
};

constexpr puteal_parameter volumeTakes[] = {
    Parameter("diameter", "in", "inside diameter of the tank").hard(1, 120).usual(6, 36),
    Parameter("depth", "in", "depth of the bed; leave half of it and more as freeboard")
        .hard(0, 240)
        .usual(18, 48),
};
constexpr puteal_example volumeExamples[] = {
    example("bed_volume(10 in, 30 in)", "1.364 ft^3", 1e-3, "computed", "hb44"),
    example("bed_volume(12 in, 36 in)", "2.356 ft^3", 1e-3, "computed", "hb44"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("bed_volume(10 in, -30 in)", "`depth` must be at least 0 in; it is -30 in"),
};

constexpr puteal_parameter contactTakes[] = {
    Parameter("bed", "ft^3", "volume of the bed").hard(0, 1000).usual(0.5, 10),
    Parameter("flow", "gpm", "flow through the bed").hard(0.01, 1000).usual(1, 30),
};
constexpr puteal_example contactExamples[] = {
    example("empty_bed_contact_time(1.364 ft^3, 5 gpm)", "2.04 min", 2e-3, "computed", "hb44"),
    example("empty_bed_contact_time(1.5 ft^3, 5 gpm)", "2.2442 min", 1e-4, "computed", "hb44"),
};
constexpr puteal_example contactRefusals[] = {
    refusal("empty_bed_contact_time(1.5 ft^3, 0 gpm)", "`flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr puteal_caution contactCautions[] = {caution("short", "less than 1.5 minutes")};

constexpr puteal_parameter flowTakes[] = {
    Parameter("area", "ft^2", "area of the bed").hard(0, 1000).usual(0.2, 20),
    Parameter("rate", "gpm/ft^2", "backwash rate of the medium at the coldest water")
        .hard(0, 100)
        .usual(4, 30),
};
constexpr const char *flowSources[] = {"geometry", "exam_guide", "practice", nullptr};
constexpr puteal_example flowExamples[] = {
    example("backwash_flow(bed_area(10 in), 10 gpm/ft^2)", "5.45 gpm", 1e-3, "computed", "geometry"),
    example("backwash_flow(bed_area(12 in), 12 gpm/ft^2)", "9.42 gpm", 1e-3, "computed", "geometry"),
    // a rise of 6 in in 30 s over 30 ft by 25 ft
    example("backwash_flow(750 ft^2, 1 ft/min)", "5610 gpm", 1e-3, "published", "exam_guide"),
};
constexpr puteal_example flowRefusals[] = {
    refusal("backwash_flow(1 ft^2, -10 gpm/ft^2)", "`rate` must be at least 0 gpm/ft^2; it is -10 gpm/ft^2"),
};

constexpr puteal_parameter gallonsTakes[] = {
    Parameter("area", "ft^2", "area of the bed").hard(0, 1000).usual(0.2, 20),
    Parameter("wash_rate", "gpm/ft^2", "backwash rate").hard(0, 100).usual(4, 30),
    Parameter("wash_time", "min", "length of the backwash").hard(0, 240).usual(5, 20),
    Parameter("rinse_rate", "gpm/ft^2", "rinse rate").hard(0, 100).usual(0, 10).otherwise(0, "A"),
    Parameter("rinse_time", "min", "length of the rinse").hard(0, 240).usual(0, 15).otherwise(0, "A"),
};
constexpr const char *gallonsSources[] = {"missouri_g1801", "hb44", nullptr};
constexpr puteal_example gallonsExamples[] = {
    example("backwash_gallons(bed_area(10 in), 10 gpm/ft^2, 10 min, 5 gpm/ft^2, 6 min)", "70.904 gal/event",
            1e-4, "computed", "hb44"),
    example("backwash_gallons(bed_area(12 in), 12 gpm/ft^2, 10 min, 5 gpm/ft^2, 5 min)", "113.883 gal/event",
            1e-4, "computed", "hb44"),
    example("backwash_gallons(1 ft^2, 10 gpm/ft^2, 10 min)", "100 gal/event", 1e-9, "computed",
            "missouri_g1801"),
};
constexpr puteal_example gallonsRefusals[] = {
    refusal("backwash_gallons(1 ft^2, 10 gpm/ft^2, -10 min)",
            "`wash_time` must be at least 0 min; it is -10 min"),
};
constexpr puteal_caution gallonsCautions[] = {caution("much_water", "more than 250 gal a wash")};

constexpr puteal_parameter intervalTakes[] = {
    Parameter("load_limit", "grain/ft^2 as Fe", "iron a square foot of bed holds before it must be washed")
        .hard(1, 10000)
        .usual(500, 1200),
    Parameter("iron", "mg/L as Fe", "iron the bed takes out").hard(0, 1000).usual(0, 30),
    Parameter("area", "ft^2", "area of the bed").hard(0.01, 1000).usual(0.2, 20),
    Parameter("use", "gal/day", "water through the bed").hard(0, 100000).usual(50, 1000),
    Parameter("longest", "day/event", "longest run by habit").hard(0.1, 365).usual(1, 7).otherwise(3, "T"),
};
constexpr const char *intervalSources[] = {"hb44", "practice", nullptr};
constexpr puteal_example intervalExamples[] = {
    example("backwash_interval(500 grain/ft^2 as Fe, 3 mg/L as Fe, bed_area(10 in), 300 gal/day)",
            "3 day/event", 1e-9, "common practice", "practice"),
    example(
        "backwash_interval(500 grain/ft^2 as Fe, 3 mg/L as Fe, bed_area(10 in), 300 gal/day, 14 day/event)",
        "5 day/event", 1e-9, "computed", "hb44"),
    example(
        "backwash_interval(500 grain/ft^2 as Fe, 6 mg/L as Fe, bed_area(10 in), 240 gal/day, 14 day/event)",
        "3 day/event", 1e-9, "computed", "hb44"),
};
constexpr puteal_example intervalRefusals[] = {
    refusal("backwash_interval(500 grain/ft^2 as Fe, -3 mg/L as Fe, 1 ft^2, 300 gal/day)",
            "`iron` must be at least 0 mg/L as Fe; it is -3 mg/L as Fe"),
};
constexpr puteal_caution intervalCautions[] = {caution("daily", "the bed is full within a day")};

} // namespace

constinit const puteal_function bedAreaRow =
    Function("bed_area", "Bed area", "Cross-section of a round bed.", call<bedArea>)
        .takes(areaTakes)
        .gives("ft^2", "area of the bed")
        .by("pi / 4 * diameter^2")
        .from(areaSources)
        .shownBy(areaExamples)
        .refusing(areaRefusals);

constinit const puteal_function bedVolumeRow =
    Function("bed_volume", "Bed volume", "Volume of a round bed.", call<bedVolume>)
        .takes(volumeTakes)
        .gives("ft^3", "volume of the bed")
        .by("pi / 4 * diameter^2 * depth")
        .from(areaSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals);

constinit const puteal_function contactRow =
    Function("empty_bed_contact_time", "Empty-bed contact time",
             "Time water would stay in the bed if it were empty.", call<emptyBedContactTime>)
        .takes(contactTakes)
        .gives("min", "empty-bed contact time")
        .by("bed / flow")
        .from(areaSources)
        .shownBy(contactExamples)
        .refusing(contactRefusals)
        .warning(contactCautions);

constinit const puteal_function backwashFlowRow =
    Function("backwash_flow", "Backwash flow", "Flow that washes a bed at the rate of its medium.",
             call<backwashFlow>)
        .takes(flowTakes)
        .gives("gpm", "flow a wash needs")
        .by("area * rate")
        .from(flowSources)
        .shownBy(flowExamples)
        .refusing(flowRefusals)
        .safely(pressureSafety);

constinit const puteal_function backwashGallonsRow =
    Function("backwash_gallons", "Backwash water", "Water that one wash and rinse sends to the drain.",
             call<backwashGallons>)
        .takes(gallonsTakes)
        .gives("gal/event", "water of one wash")
        .by("area * (wash_rate * wash_time + rinse_rate * rinse_time)")
        .from(gallonsSources)
        .shownBy(gallonsExamples)
        .refusing(gallonsRefusals)
        .warning(gallonsCautions)
        .safely(pressureSafety);

constinit const puteal_function backwashIntervalRow =
    Function("backwash_interval", "Days between backwashes",
             "Whole days a bed runs until it holds its load of iron, never longer than habit allows.",
             call<backwashInterval>)
        .takes(intervalTakes)
        .gives("day/event", "days between washes, whole and rounded down")
        .by("least of load_limit * area / (iron * use), rounded down to whole days, and longest; below one "
            "day not rounded")
        .from(intervalSources)
        .shownBy(intervalExamples)
        .refusing(intervalRefusals)
        .warning(intervalCautions)
        .safely(pressureSafety);

} // namespace filtration
