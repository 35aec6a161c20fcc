/// Pressure tank: what it gives between switch points, how large it must be, how often the motor starts. (R3,
/// R4)
#include "hydraulics.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

constexpr double seaLevelAir = 14.7; // psi_abs, rounded as the trade does [National Driller]

/// Share of its volume that a tank gives; `prechargeArgument` is the place of the precharge among the
/// arguments, where cut-in and cut-out follow.
double givenShare(double precharge, double cutIn, double cutOut, double air, std::uint32_t prechargeArgument,
                  Reply &reply)
{
    if (!lessThan(cutIn, cutOut))
        return reply.refuse(prechargeArgument + 2,
                            "the pump must cut out at a higher pressure than it cuts in");
    if (!atMost(precharge, cutIn))
        return reply.refuse(
            prechargeArgument,
            "the precharge is above the cut-in pressure: the tank runs empty before the pump starts");
    if (lessThan(precharge, cutIn - 5)) // usual is 2 psi below cut-in [common practice, no source]
        reply.caution(
            "low_precharge",
            "the precharge is usually 2 psi below the cut-in pressure: set it with the tank empty of water");
    const double filled = precharge + air;
    return filled / (cutIn + air) - filled / (cutOut + air);
}

double tankDrawdown(double volume, double precharge, double cutIn, double cutOut, double air, Reply &reply)
{
    return volume * givenShare(precharge, cutIn, cutOut, air, 2, reply);
}

double leastTankVolume(double flow, double time, double precharge, double cutIn, double cutOut, double air,
                       Reply &reply)
{
    return flow * time / givenShare(precharge, cutIn, cutOut, air, 3, reply);
}

double motorStarts(double held, double flow, double draw, Reply &reply)
{
    if (atMost(draw, 0) || atMost(flow, draw)) {
        reply.reason(atMost(draw, 0) ? "nothing is drawn, so the pump rests"
                                     : "the draw takes all the pump gives, so it never stops");
        return 0.0;
    }
    constexpr double minutePerHour = 60.0;
    const double starts = minutePerHour / (held / (flow - draw) + held / draw);
    if (lessThan(20, starts)) // [common practice, no source]
        reply.caution(
            "often",
            "more than 20 starts an hour wear the motor out: a larger tank or a wider switch setting");
    return starts;
}

double mostMotorStarts(double held, double flow, Reply &reply)
{
    return motorStarts(held, flow, flow / 2.0, reply); // filling and emptying take least time together there
}

constexpr puteal_parameter tankTakes[] = {
    Parameter("volume", "gal", "whole volume of the tank").hard(0, 10000).usual(10, 150),
    Parameter("precharge", "psi", "air pressure of the empty tank").hard(0, 200).usual(15, 60),
    Parameter("cut_in", "psi", "pressure at which the pump starts").hard(1, 200).usual(20, 60),
    Parameter("cut_out", "psi", "pressure at which the pump stops").hard(1, 250).usual(40, 80),
    Parameter("air", "psi_abs", "pressure of the outside air, see air_pressure")
        .hard(3, 16)
        .usual(10, 15)
        .otherwise(seaLevelAir, "H"),
};
constexpr const char *tankSources[] = {"pressure_tank", "practice", nullptr};
constexpr puteal_example tankExamples[] = {
    example("tank_drawdown(85 gal, 28 psi, 30 psi, 50 psi)", "25.1 gal", 1e-3, "published", "pressure_tank"),
    example("tank_drawdown(85 gal, 28 psi, 30 psi, 50 psi, 11.8 psi_abs)", "26.1 gal", 5e-3, "published",
            "pressure_tank"),
    example("tank_drawdown(1 gal, 28 psi, 30 psi, 50 psi)", "0.30 gal", 0.02, "published", "pressure_tank"),
    example("tank_drawdown(85 gal, 38 psi, 40 psi, 60 psi)", "21.92561 gal", 1e-6, "computed",
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

constexpr puteal_parameter leastTakes[] = {
    Parameter("flow", "gpm", "flow of the pump at the cut-out pressure").hard(0.01, 1000).usual(2, 30),
    Parameter("run_time", "min", "least run of the motor: 1 min to 1 hp, 2 min above")
        .hard(0.1, 60)
        .usual(1, 3),
    tankTakes[1],
    tankTakes[2],
    tankTakes[3],
    tankTakes[4],
};
constexpr const char *leastSources[] = {"pressure_tank", "practice", nullptr};
constexpr puteal_example leastExamples[] = {
    example("least_tank_volume(10 gpm, 1 min, 38 psi, 40 psi, 60 psi)", "38.7675 gal", 1e-5, "computed",
            "pressure_tank"),
    example("least_tank_volume(7 gpm, 1 min, 28 psi, 30 psi, 50 psi)", "23.7057 gal", 1e-5, "computed",
            "pressure_tank"),
    example("least_tank_volume(25.1 gpm, 1 min, 28 psi, 30 psi, 50 psi)", "85 gal", 1e-3, "computed",
            "pressure_tank"),
};
constexpr puteal_example leastRefusals[] = {
    refusal("least_tank_volume(10 gpm, 1 min, 45 psi, 40 psi, 60 psi)",
            "the precharge is above the cut-in pressure: the tank runs empty before the pump starts"),
};

constexpr Parameter held = Parameter("held", "gal", "water between cut-out and cut-in, see tank_drawdown")
                               .hard(0.1, 10000)
                               .usual(5, 100);
constexpr Parameter pumpFlow = Parameter("flow", "gpm", "flow of the pump").hard(0.01, 1000).usual(2, 30);
constexpr puteal_parameter startsTakes[] = {
    held,
    pumpFlow,
    Parameter("draw", "gpm", "water drawn meanwhile").hard(0, 1000).usual(0, 20),
};
constexpr puteal_parameter mostTakes[] = {held, pumpFlow};
constexpr const char *startsSources[] = {"definition", "practice", nullptr};
constexpr puteal_example startsExamples[] = {
    example("motor_starts(21.9256 gal, 10 gpm, 3 gpm)", "5.74671 event/hr", 1e-5, "computed", "definition"),
    example("motor_starts(21.9256 gal, 10 gpm, 10 gpm)", "0 event/hr", 1e-12, "computed", "definition"),
};
constexpr puteal_example startsRefusals[] = {
    refusal("motor_starts(0 gal, 10 gpm, 3 gpm)", "`held` must be at least 0.1 gal; it is 0 gal"),
};
constexpr puteal_example mostExamples[] = {
    example("most_motor_starts(21.9256 gal, 10 gpm)", "6.84132 event/hr", 1e-5, "computed", "definition"),
    example("most_motor_starts(10 gal, 8 gpm)", "12 event/hr", 1e-9, "computed", "definition"),
};
constexpr puteal_example mostRefusals[] = {
    refusal("most_motor_starts(0 gal, 10 gpm)", "`held` must be at least 0.1 gal; it is 0 gal"),
};
constexpr puteal_caution startsCautions[] = {caution("often", "more than 20 starts an hour")};
constexpr const char motorSafety[] = "Pump motors and their switches belong to a licensed electrician or "
                                     "pump installer: power off and locked first.";

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

constinit const puteal_function leastTankVolumeRow =
    Function("least_tank_volume", "Least tank volume",
             "Volume of a pressure tank that lets the motor run a least time at each start.",
             call<leastTankVolume>)
        .takes(leastTakes)
        .gives("gal", "whole volume of the tank")
        .by("flow * run_time / tank_drawdown(1 gal, precharge, cut_in, cut_out, air) * 1 gal")
        .from(leastSources)
        .shownBy(leastExamples)
        .refusing(leastRefusals)
        .warning(tankCautions)
        .safely("A pressure tank stores energy: take the pressure off before opening. The relief valve is "
                "never plugged.");

constinit const puteal_function motorStartsRow =
    Function("motor_starts", "Starts of the pump motor",
             "Starts an hour while water is drawn at a steady rate.", call<motorStarts>)
        .takes(startsTakes)
        .gives("event/hr", "starts an hour")
        .by("1 event / (held / (flow - draw) + held / draw)")
        .from(startsSources)
        .shownBy(startsExamples)
        .refusing(startsRefusals)
        .warning(startsCautions)
        .safely(motorSafety);

constinit const puteal_function mostMotorStartsRow =
    Function("most_motor_starts", "Most starts of the pump motor",
             "Starts an hour at the worst draw, half of the pump's flow.", call<mostMotorStarts>)
        .takes(mostTakes)
        .gives("event/hr", "starts an hour")
        .by("flow / (4 * held) * 1 event")
        .from(startsSources)
        .shownBy(mostExamples)
        .refusing(mostRefusals)
        .warning(startsCautions)
        .safely(motorSafety);

} // namespace hydraulics
