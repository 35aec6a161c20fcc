/// Air pressure at height, velocity and friction of pipes by Hazen and Williams, total dynamic head. (R4)
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

constexpr const char *formWords[] = {"US head", "US pressure", "SI", nullptr};
enum Form : int { usHead, usPressure, metric };

double hazenWilliamsBy(double flow, double diameter, double length, double coefficient, int form)
{
    if (form == usPressure) // psi a foot [fire-hydraulics reference page]
        return headPerPsi * 4.52 * std::pow(flow, 1.85) /
               (std::pow(coefficient, 1.85) * std::pow(diameter, 4.87)) * length;
    if (form == metric) { // m, from m^3/s and m [pipe glossary page; the exponent 4.8704 recalled]
        const double cubicMeters = flow * measure::literPerGallon / 1000.0 / 60.0,
                     meters = diameter * measure::mmPerInch / 1000.0;
        return 10.67 * length * std::pow(cubicMeters / coefficient, 1.852) / std::pow(meters, 4.8704);
    }
    return hazenWilliams(flow, diameter, length, coefficient);
}

double hazenWilliamsLoss(double flow, double diameter, double length, double coefficient, int form,
                         Reply &reply)
{
    const double velocity = 0.4085 * flow / (diameter * diameter); // ft/s [fire-hydraulics reference page]
    if (lessThan(8, velocity))                                     // [common practice, no source]
        reply.caution("fast", "above 8 ft/s pipes hammer and wear: a wider pipe");
    // gpm over in: a Reynolds number of 4000 in water of 10 degC, by 4 Q / (pi d nu) with 1.3073e-6 m^2/s
    constexpr double turbulentFrom = 1.653;
    if (lessThan(0, flow) && lessThan(flow / diameter, turbulentFrom))
        reply.caution("slow", "so slow a flow may be laminar, where this form does not hold: take "
                              "darcy_weisbach_loss");
    return hazenWilliamsBy(flow, diameter, length, coefficient, form);
}

double pipeVelocity(double flow, double diameter, double fastest, Reply &reply)
{
    constexpr double cubicInchPerFootAndMinute = measure::inchPerFoot * 60.0,
                     cubicInchPerGallon = 231.0; // exact [NIST Handbook 44, appendix C]
    const double velocity =
        flow * cubicInchPerGallon / (measure::pi / 4.0 * diameter * diameter * cubicInchPerFootAndMinute);
    if (lessThan(fastest, velocity))
        reply.caution("fast", "faster than is wanted here: a wider pipe");
    return velocity;
}

double dynamicHead(double staticLevel, double fall, double friction, double pressure)
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
    Parameter("form", "", "which constants; US head is about 1 % above the other two in pipes of 3/4 to 2 in")
        .oneOf(formWords)
        .otherwise(usHead, "T"),
};
constexpr const char *pipeSources[] = {"illinois_906", "fire_hydraulics", "pipe_glossary", "nist811",
                                       "recalled",     "practice",        nullptr};
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
    example("hazen_williams_loss(10 gpm, 1.049 in, 100 ft, 150, \"US pressure\")", "2.3889 psi", 2e-5,
            "computed", "fire_hydraulics"),
    example("hazen_williams_loss(10 gpm, 1.049 in, 100 ft, 150, \"SI\")", "5.48891 ft_head", 1e-6, "computed",
            "pipe_glossary"),
    example("hazen_williams_loss(0.5 L/s, 25 mm, 100 m, 140, \"SI\")", "5.52969 mH2O", 1e-6, "computed",
            "pipe_glossary"),
};
constexpr puteal_example pipeRefusals[] = {
    refusal("hazen_williams_loss(10 gpm, 0 in, 100 ft)", "`diameter` must be at least 0.1 in; it is 0 in"),
};
constexpr puteal_caution pipeCautions[] = {
    caution("fast", "faster than 8 ft/s"),
    caution("slow", "a Reynolds number below 4000 in water of 10 degC")};

constexpr puteal_parameter velocityTakes[] = {
    pipeTakes[0],
    pipeTakes[1],
    Parameter("fastest", "ft/s", "fastest that is wanted: 5 ft/s in copper and for hot water, 8 ft/s else")
        .hard(0.1, 100)
        .usual(4, 10)
        .otherwise(8, "T"),
};
constexpr const char *velocitySources[] = {"hb44", "fire_hydraulics", "practice", nullptr};
constexpr puteal_example velocityExamples[] = {
    example("pipe_velocity(1 gpm, 1 in)", "0.4085 ft/s", 1.2e-4, "published", "fire_hydraulics"),
    example("pipe_velocity(10 gpm, 1.049 in)", "1.131497 m/s", 1e-6, "computed", "hb44"),
    example("pipe_velocity(20 gpm, 1.38 in, 5 ft/s)", "4.290041 ft/s", 1e-6, "computed", "hb44"),
};
constexpr puteal_example velocityRefusals[] = {
    refusal("pipe_velocity(10 gpm, 0 in)", "`diameter` must be at least 0.1 in; it is 0 in"),
};
constexpr puteal_caution velocityCautions[] = {caution("fast", "faster than the fastest wanted")};

constexpr puteal_parameter headTakes[] = {
    Parameter("static_level", "ft", "height from the resting water up to the outlet")
        .hard(-1000, 5000)
        .usual(0, 500),
    Parameter("drawdown", "ft", "fall of the level while pumping, see drawdown").hard(0, 5000).usual(0, 300),
    Parameter("friction", "ft_head", "loss in pipes and fittings, see hazen_williams_loss and minor_loss")
        .hard(0, 5000)
        .usual(0, 100),
    Parameter("pressure", "psi", "pressure wanted at the outlet").hard(0, 300).usual(20, 80),
};
constexpr const char *headSources[] = {"nist811", "definition", nullptr};
constexpr puteal_example headExamples[] = {
    example("total_dynamic_head(60 ft, 8 ft, 8.0618 ft_head, 25 psi)", "133.7293 ft_head", 1e-5, "computed",
            "definition"),
    example("total_dynamic_head(60 ft, 49.380 ft, 12.187 ft_head, 25 psi)", "179.235 ft_head", 1e-5,
            "computed", "definition"),
};
constexpr puteal_example headRefusals[] = {
    refusal("total_dynamic_head(60 ft, -8 ft, 8 ft_head, 25 psi)",
            "`drawdown` must be at least 0 ft; it is -8 ft"),
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
             "Friction of water in a full pipe. Water colder than 40 degF takes more, and in smooth pipe "
             "Darcy and "
             "Weisbach give 11 to 16 % more: show both.",
             call<hazenWilliamsLoss>)
        .takes(pipeTakes)
        .gives("ft_head", "friction loss")
        .by("US head: 0.2083 * (100 / coefficient)^1.852 * flow^1.852 / diameter^4.8655 ft a 100 ft (gpm, "
            "in); US "
            "pressure: 4.52 * flow^1.85 / (coefficient^1.85 * diameter^4.87) psi a foot; SI: 10.67 * "
            "flow^1.852 / "
            "(coefficient^1.852 * diameter^4.8704) m a meter (m^3/s, m)")
        .from(pipeSources)
        .shownBy(pipeExamples)
        .refusing(pipeRefusals)
        .warning(pipeCautions);

constinit const puteal_function pipeVelocityRow =
    Function("pipe_velocity", "Velocity in a pipe",
             "How fast water runs in a full pipe. Fast water hammers, makes noise and wears bends.",
             call<pipeVelocity>)
        .takes(velocityTakes)
        .gives("ft/s", "mean velocity")
        .by("flow / (pi / 4 * diameter^2)")
        .from(velocitySources)
        .shownBy(velocityExamples)
        .refusing(velocityRefusals)
        .warning(velocityCautions);

constinit const puteal_function dynamicHeadRow =
    Function("total_dynamic_head", "Total dynamic head",
             "Head a pump works against: lift, friction and pressure together, as feet of water.",
             call<dynamicHead>)
        .takes(headTakes)
        .gives("ft_head", "total dynamic head")
        .by("static_level + drawdown + friction + 2.3067 ft_head/psi * pressure")
        .from(headSources)
        .shownBy(headExamples)
        .refusing(headRefusals)
        .safely(wellSafety);

} // namespace hydraulics
