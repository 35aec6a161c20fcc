/// Pressure tank, air pressure at height, pipe friction and the head a pump works against. (R3, R4)
#include "hydraulics.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

constexpr double headPerPsi = 2.3067; // ft_head, conventional water [NIST SP 811, appendix B]
constexpr double seaLevelAir = 14.7;  // psi_abs, rounded as the trade does [National Driller]

double tankDrawdown(double volume, double precharge, double cutIn, double cutOut, double air, Reply &reply)
{
    if (!lessThan(cutIn, cutOut))
        return reply.refuse(4, "the pump must cut out at a higher pressure than it cuts in");
    if (!atMost(precharge, cutIn))
        return reply.refuse(
            2, "the precharge is above the cut-in pressure: the tank runs empty before the pump starts");
    if (lessThan(precharge, cutIn - 5)) // usual is 2 psi below cut-in [common practice, no source]
        reply.caution("low_precharge", "the precharge is usually 2 psi below the cut-in pressure");
    const double filled = precharge + air;
    return volume * (filled / (cutIn + air) - filled / (cutOut + air));
}

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
    // US head form, ft a 100 ft [recalled from plumbing handbooks; within 1.5 % of the Illinois friction
    // table]
    const double perHundred =
        0.2083 * std::pow(100.0 / coefficient, 1.852) * std::pow(flow, 1.852) / std::pow(diameter, 4.8655);
    return perHundred * length / 100.0;
}

double pumpingHead(double staticLevel, double fall, double friction, double pressure)
{
    return staticLevel + fall + friction + headPerPsi * pressure;
}

constexpr puteal_parameter tankTakes[] = {
    Parameter("volume", "gal", "whole volume of the tank").hard(0, 10000).usual(10, 150),
    Parameter("precharge", "psi", "air pressure of the empty tank").hard(0, 200).usual(15, 60),
    Parameter("cut_in", "psi", "pressure at which the pump starts").hard(1, 200).usual(20, 60),
    Parameter("cut_out", "psi", "pressure at which the pump stops").hard(1, 250).usual(40, 80),
    Parameter("air", "psi_abs", "pressure of the outside air, see air_pressure")
        .hard(3, 16)
        .usual(10, 15)
        .otherwise(seaLevelAir, "S"),
};
constexpr const char *tankSources[] = {"pressure_tank", nullptr};
constexpr puteal_example tankExamples[] = {
    example("tank_drawdown(85 gal, 28 psi, 30 psi, 50 psi)", "25.1 gal", 1e-3, "published", "pressure_tank"),
    example("tank_drawdown(85 gal, 28 psi, 30 psi, 50 psi, 11.8 psi_abs)", "26.1 gal", 5e-3, "published",
            "pressure_tank"),
    example("tank_drawdown(44 gal, 38 psi, 40 psi, 60 psi)", "11.34973 gal", 1e-6, "computed",
            "pressure_tank"),
};
constexpr puteal_example tankRefusals[] = {
    refusal("tank_drawdown(85 gal, 35 psi, 30 psi, 50 psi)",
            "the precharge is above the cut-in pressure: the tank runs empty before the pump starts"),
    refusal("tank_drawdown(85 gal, 28 psi, 50 psi, 50 psi)",
            "the pump must cut out at a higher pressure than it cuts in"),
};
constexpr puteal_caution tankCautions[] = {
    caution("low_precharge", "precharge more than 5 psi below cut-in")};

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

constinit const puteal_function tankDrawdownRow =
    Function("tank_drawdown", "Drawdown of a pressure tank",
             "Water a pressure tank gives between cut-out and cut-in.", call<tankDrawdown>)
        .takes(tankTakes)
        .gives("gal", "water between cut-out and cut-in")
        .by("volume * ((precharge + air) / (cut_in + air) - (precharge + air) / (cut_out + air))")
        .from(tankSources)
        .shownBy(tankExamples)
        .refusing(tankRefusals)
        .warning(tankCautions)
        .safely("A pressure tank stores energy: take the pressure off before opening. The relief valve is "
                "never plugged.");

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
