/// Cold water in a bed: viscosity, the rate that just lifts the grains, and the pressure a clean bed takes.
/// (R4)
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

constexpr double gravity = 9.80665; // m/s^2, standard [NIST SP 811, appendix B]
constexpr double meterPerSecondPerGpmPerSquareFoot =
    measure::literPerGallon / 1000.0 / 60.0 / (0.3048 * 0.3048); // exact [NIST Handbook 44, appendix C]
constexpr double pascalPerPsi = 6894.757293168;                  // [NIST SP 811, appendix B]

double waterViscosity(double temperature)
{
    return water::viscosity(temperature);
}

double fluidizationVelocity(double grainSize, double particleDensity, double temperature, Reply &reply)
{
    const double density = water::density(temperature);
    if (atMost(particleDensity, density))
        return reply.refuse(
            2, "a grain lighter than water floats: give the density of the wet particle, above 1000 kg/m^3");
    const double viscosity = water::viscosity(temperature) / 1000.0, d = grainSize / 1000.0;
    const double galileo =
        d * d * d * density * (particleDensity - density) * gravity / (viscosity * viscosity);
    const double reynolds =
        std::sqrt(33.7 * 33.7 + 0.0408 * galileo) - 33.7; // [Wen and Yu 1966, in Hendricks, eq. 12.56]
    if (lessThan(500, reynolds))
        reply.caution("coarse",
                      "so coarse a grain is outside of what the correlation was made for: measure the rate");
    return viscosity * reynolds / (density * d) / meterPerSecondPerGpmPerSquareFoot;
}

double bedPressureLoss(double loading, double depth, double grainSize, double porosity, double sphericity,
                       double temperature)
{
    const double v = loading * meterPerSecondPerGpmPerSquareFoot,
                 length = depth * measure::mmPerInch / 1000.0;
    const double d = sphericity * grainSize / 1000.0, viscosity = water::viscosity(temperature) / 1000.0;
    const double solid = 1.0 - porosity, pore = porosity * porosity * porosity;
    const double viscous = 150.0 * viscosity * solid * solid * v / (d * d * pore);           // [Ergun]
    const double inertial = 1.75 * water::density(temperature) * solid * v * v / (d * pore); // [Ergun]
    return (viscous + inertial) * length / pascalPerPsi;
}

constexpr Parameter waterTemperature =
    Parameter("temperature", "degC",
              "temperature of the water, to 60 degC; well water is 7 to 13 degC in the north")
        .hard(0, 60)
        .usual(2, 30);
constexpr puteal_parameter viscosityTakes[] = {waterTemperature};
constexpr const char *viscositySources[] = {"viscosity_table", "recalled", nullptr};
constexpr puteal_example viscosityExamples[] = {
    example("water_viscosity(10 degC)", "1.307 cP", 1e-3, "published", "viscosity_table"),
    example("water_viscosity(5 degC)", "1.519 cP", 1e-3, "published", "viscosity_table"),
    example("water_viscosity(20 degC)", "1.002 cP", 1e-3, "published", "viscosity_table"),
};
constexpr puteal_example viscosityRefusals[] = {
    refusal("water_viscosity(-5 degC)", "`temperature` must be at least 0 degC; it is -5 degC"),
};

constexpr puteal_parameter fluidTakes[] = {
    Parameter("grain_size", "mm", "grain size that 90 % of the bed is finer than")
        .hard(0.01, 50)
        .usual(0.3, 3),
    Parameter("particle_density", "kg/m^3", "density of the wet particle, not of the heap")
        .hard(1, 20000)
        .usual(1200, 5000),
    waterTemperature,
};
constexpr const char *fluidSources[] = {"wen_yu", "recalled", nullptr};
constexpr puteal_example fluidExamples[] = {
    // table 12.9, predicted for sand, upper sieve of each range; sand of 2,650 kg/m^3 as in table 12.8
    example("minimum_fluidization_velocity(2 mm, 2650 kg/m^3, 25 degC)", "87.5 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(1.41 mm, 2650 kg/m^3, 25 degC)", "57.2 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(1 mm, 2650 kg/m^3, 25 degC)", "34.2 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(0.595 mm, 2650 kg/m^3, 25 degC)", "13.3 m/hr", 2e-2, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(2 mm, 2650 kg/m^3, 40 degC)", "97.6 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(1.41 mm, 2650 kg/m^3, 40 degC)", "67.3 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(1 mm, 2650 kg/m^3, 40 degC)", "42.8 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(0.595 mm, 2650 kg/m^3, 40 degC)", "18.0 m/hr", 5e-3, "published",
            "wen_yu"),
    example("minimum_fluidization_velocity(0.9 mm, 2650 kg/m^3, 10 degC)", "8.446 gpm/ft^2", 1e-3, "computed",
            "wen_yu"),
    example("minimum_fluidization_velocity(0.5 mm, 2650 kg/m^3, 5 degC)", "2.355 gpm/ft^2", 1e-3, "computed",
            "wen_yu"),
    example("minimum_fluidization_velocity(0.85 mm, 4000 kg/m^3, 10 degC)", "13.334 gpm/ft^2", 1e-3,
            "computed", "wen_yu"),
};
constexpr puteal_example fluidRefusals[] = {
    refusal("minimum_fluidization_velocity(0.9 mm, 900 kg/m^3, 10 degC)",
            "a grain lighter than water floats: give the density of the wet particle, above 1000 kg/m^3"),
};
constexpr puteal_caution fluidCautions[] = {caution("coarse", "Reynolds number of the grain above 500")};

constexpr puteal_parameter lossTakes[] = {
    Parameter("loading", "gpm/ft^2", "flow over the area of the bed").hard(0, 100).usual(1, 15),
    Parameter("depth", "in", "depth of the bed").hard(0, 240).usual(18, 48),
    Parameter("grain_size", "mm", "mean grain size").hard(0.01, 50).usual(0.3, 3),
    Parameter("porosity", "", "share of the bed that is water").hard(0.1, 0.9).usual(0.35, 0.55),
    Parameter("sphericity", "", "roundness of the grains, 1 for balls").hard(0.1, 1).usual(0.6, 1),
    waterTemperature,
};
constexpr const char *lossSources[] = {"ergun", "fluids_docs", "viscosity_table", nullptr};
constexpr puteal_example lossExamples[] = {
    example("bed_pressure_loss(5 gpm / bed_area(10 in), 30 in, 0.6 mm, 0.42, 0.85, 10 degC)", "2.4698 psi",
            2e-4, "computed", "ergun"),
    example("bed_pressure_loss(3 gpm / bed_area(10 in), 30 in, 0.6 mm, 0.42, 0.85, 10 degC)", "1.4542 psi",
            2e-4, "computed", "ergun"),
    // printed for 1 mPa*s and 1000 kg/m^3; water of 20 degC is 0.2 % off both: 1338.867 Pa over 1 m
    example("bed_pressure_loss(0.001 m/s, 1 m, 0.8 mm, 0.4, 1, 20 degC)", "0.194186 psi", 3e-3, "published",
            "fluids_docs"),
};
constexpr puteal_example lossRefusals[] = {
    refusal("bed_pressure_loss(5 gpm/ft^2, 30 in, 0.6 mm, 42, 0.85, 10 degC)",
            "`porosity` must be at most 0.9; it is 42: for 42 percent write 42 %"),
};

} // namespace

constinit const puteal_function viscosityRow =
    Function("water_viscosity", "Viscosity of water", "Viscosity of clean water.", call<waterViscosity>)
        .takes(viscosityTakes)
        .gives("cP", "viscosity")
        .by("1.002 cP * 10^((20 - t) / (t + 96) * (1.2364 - 0.00137 * (20 - t) + 0.0000057 * (20 - t)^2))")
        .from(viscositySources)
        .shownBy(viscosityExamples)
        .refusing(viscosityRefusals);

constinit const puteal_function fluidizationRow =
    Function(
        "minimum_fluidization_velocity", "Least fluidizing rate",
        "Upward rate that just lifts a bed; a wash takes about 1.3 times as much. A model ranks sizes and "
        "temperatures; measured rates of fine sand lie up to a quarter off, the medium's own data sheet "
        "decides.",
        call<fluidizationVelocity>)
        .takes(fluidTakes)
        .gives("gpm/ft^2", "rate at which the bed begins to lift")
        .by("Re = sqrt(33.7^2 + 0.0408 * Ga) - 33.7; Ga = d^3 * density * (particle_density - density) * g / "
            "viscosity^2")
        .from(fluidSources)
        .shownBy(fluidExamples)
        .refusing(fluidRefusals)
        .warning(fluidCautions)
        .safely(pressureSafety);

constinit const puteal_function bedLossRow =
    Function("bed_pressure_loss", "Pressure loss of a clean bed",
             "Pressure a clean bed takes; a dirty one takes 5 to 10 psi more before it must be washed.",
             call<bedPressureLoss>)
        .takes(lossTakes)
        .gives("psi", "pressure loss of the clean bed")
        .by("depth * (150 * viscosity * (1 - e)^2 * v / (s * d)^2 + 1.75 * density * (1 - e) * v^2 / (s * "
            "d)) / e^3")
        .from(lossSources)
        .shownBy(lossExamples)
        .refusing(lossRefusals)
        .safely(pressureSafety);

} // namespace filtration
