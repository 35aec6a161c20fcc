/// Air pressure at height, pipe friction by Hazen and Williams, and the head a pump works against. (R4)
#include "hydraulics.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

double airPressure(double elevation)
{
    // International standard atmosphere, lower layer [recalled, not confirmed; 11.8 psi at 6,000 ft is
    // published]
    return 14.696 * std::pow(1.0 - 6.8754e-6 * elevation, 5.2559); // [recalled]
}

double hazenWilliamsLoss(double flow, double diameter, double length, double coefficient, Reply &reply)
{
    const double velocity =
        0.4085 * flow / (diameter * diameter); // ft/s, gpm and in [fire hydraulics reference]
    if (lessThan(8, velocity))                 // [common practice, no source]
        reply.caution("fast", "above 8 ft/s pipes hammer and wear: a wider pipe");
    return hazenWilliams(flow, diameter, length, coefficient);
}

double pumpingHead(double staticLevel, double fall, double friction, double pressure)
{
    return staticLevel + fall + friction + headPerPsi * pressure;
}

constexpr puteal_parameter airTakes[] = {
    Parameter("elevation", "ft", "height above the sea").hard(-1500, 36000).usual(0, 10000),
};
constexpr const char *airSources[] = {"pressure_tank", "recalled", nullptr};
constexpr puteal_example airExamples[] = {
    example("air_pressure(6000 ft)", "11.8 psi_abs", 3e-3, "published", "pressure_tank"),
    example("air_pressure(0 ft)", "14.696 psi_abs", 1e-9, "memory", "recalled"),
    example("air_pressure(5000 ft)", "12.2278 psi_abs", 1e-5, "computed", "recalled"),
};
constexpr puteal_example airRefusals[] = {
    refusal("air_pressure(40000 ft)", "`elevation` must be at most 36000 ft; it is 40000 ft"),
};

constexpr puteal_parameter pipeTakes[] = {
    Parameter("flow", "gpm", "flow in the pipe").hard(0, 10000).usual(1, 50),
    Parameter("diameter", "in", "inside diameter: 1.049 in for 1 in schedule 40")
        .hard(0.1, 48)
        .usual(0.75, 4),
    Parameter("length", "ft", "length of the pipe with an allowance for fittings")
        .hard(0, 100000)
        .usual(5, 1000),
    Parameter("coefficient", "", "Hazen-Williams coefficient: new plastic 150, old steel 95")
        .hard(40, 170)
        .usual(80, 150)
        .otherwise(150, "H"),
};
constexpr const char *pipeSources[] = {"illinois_906", "recalled", nullptr};
constexpr puteal_example pipeExamples[] = {
    example("hazen_williams_loss(10 gpm, 1.049 in, 100 ft)", "5.50 ft_head", 0.015, "published",
            "illinois_906"),
    example("hazen_williams_loss(20 gpm, 1.38 in, 100 ft)", "5.23 ft_head", 0.015, "published",
            "illinois_906"),
    example("hazen_williams_loss(5 gpm, 1.049 in, 100 ft)", "1.52 ft_head", 0.015, "published",
            "illinois_906"),
    example("hazen_williams_loss(15 gpm, 1.38 in, 100 ft)", "3.06 ft_head", 0.015, "published",
            "illinois_906"),
    example("hazen_williams_loss(20 gpm, 1.61 in, 100 ft)", "2.46 ft_head", 0.015, "published",
            "illinois_906"),
    example("hazen_williams_loss(50 gpm, 2.067 in, 100 ft)", "3.98 ft_head", 0.015, "published",
            "illinois_906"),
    example("hazen_williams_loss(10 gpm, 0.824 in, 100 ft)", "17.9318 ft_head", 1e-4, "computed", "recalled"),
};
constexpr puteal_example pipeRefusals[] = {
    refusal("hazen_williams_loss(10 gpm, 0 in, 100 ft)", "`diameter` must be at least 0.1 in; it is 0 in"),
};
constexpr puteal_caution pipeCautions[] = {caution("fast", "faster than 8 ft/s")};

constexpr puteal_parameter headTakes[] = {
    Parameter("static_level", "ft", "depth of the resting water below the outlet")
        .hard(-1000, 5000)
        .usual(0, 500),
    Parameter("drawdown", "ft", "fall of the level while pumping, see drawdown").hard(0, 5000).usual(0, 300),
    Parameter("friction", "ft_head", "loss in the pipes, see hazen_williams_loss")
        .hard(0, 5000)
        .usual(0, 100),
    Parameter("pressure", "psi", "pressure wanted at the outlet").hard(0, 300).usual(20, 80),
};
constexpr const char *headSources[] = {"nist811", "definition", nullptr};
constexpr puteal_example headExamples[] = {
    example("pumping_head(60 ft, 8 ft, 8.0618 ft_head, 25 psi)", "133.7293 ft_head", 1e-5, "computed",
            "definition"),
    example("pumping_head(60 ft, 49.380 ft, 12.187 ft_head, 25 psi)", "179.235 ft_head", 1e-5, "computed",
            "definition"),
};
constexpr puteal_example headRefusals[] = {
    refusal("pumping_head(60 ft, -8 ft, 8 ft_head, 25 psi)", "`drawdown` must be at least 0 ft; it is -8 ft"),
};

} // namespace

constinit const puteal_function airPressureRow =
    Function("air_pressure", "Air pressure at a height",
             "Pressure of the outside air at a height above the sea.", call<airPressure>)
        .takes(airTakes)
        .gives("psi_abs", "pressure of the air")
        .by("14.696 psi_abs * (1 - 0.0000068754 * elevation / 1 ft)^5.2559")
        .from(airSources)
        .shownBy(airExamples)
        .refusing(airRefusals);

constinit const puteal_function hazenWilliamsRow =
    Function("hazen_williams_loss", "Pipe friction by Hazen and Williams",
             "Friction of cold water in a full pipe, US head form. Cold water in smooth pipe takes some 10 % "
             "more.",
             call<hazenWilliamsLoss>)
        .takes(pipeTakes)
        .gives("ft_head", "friction loss")
        .by("0.2083 * (100 / coefficient)^1.852 * flow^1.852 / diameter^4.8655 ft a 100 ft (gpm, in)")
        .from(pipeSources)
        .shownBy(pipeExamples)
        .refusing(pipeRefusals)
        .warning(pipeCautions);

constinit const puteal_function pumpingHeadRow =
    Function("pumping_head", "Head a pump works against",
             "Lift, friction and pressure together, as feet of water.", call<pumpingHead>)
        .takes(headTakes)
        .gives("ft_head", "total dynamic head")
        .by("static_level + drawdown + friction + 2.3067 ft_head/psi * pressure")
        .from(headSources)
        .shownBy(headExamples)
        .refusing(headRefusals)
        .safely(wellSafety);

} // namespace hydraulics
