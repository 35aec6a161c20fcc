/// How far a wash lifts a bed, by two models, and the clean-bed loss of a graded bed. (R4, R5)
#include "filtration.h"
#include "sdk/roots.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

constexpr double gravity = 9.80665; // m/s^2, standard [NIST SP 811, appendix B]
constexpr double meterPerSecondPerGpmPerSquareFoot =
    measure::literPerGallon / 1000.0 / 60.0 / (0.3048 * 0.3048); // exact [NIST Handbook 44, appendix C]
constexpr const char *modelWords[] = {"Ergun", "Richardson and Zaki", nullptr};
enum Model : int { ergun, richardsonZaki };
constexpr double widest = 0.95; // share of water above which the grains are as good as gone

/// A grain in upward water, SI units.
struct Grain {
    double size, density, sphericity, waterDensity, viscosity;

    double reynolds(double v) const { return waterDensity * v * size / viscosity; }
    double weight() const { return (density - waterDensity) * gravity; }

    /// Weight of the grains less the drag on them at a share of water; rises with the share. [Ergun]
    double surplus(double v, double porosity) const
    {
        const double d = size * sphericity, pore = porosity * porosity * porosity;
        return weight() - 150.0 * viscosity * (1.0 - porosity) * v / (d * d * pore) -
               1.75 * waterDensity * v * v / (d * pore);
    }
    /// Speed at which a single ball sinks; drag 24/Re (1 + 0.15 Re^0.687) [Schiller and Naumann, recalled].
    double settling() const
    {
        return crossing(1e-30, 1e6, [&](double v) { // m/s, beyond any grain on both sides
            const double re = reynolds(v),
                         drag = 24.0 / re * (1.0 + 0.15 * std::pow(re, 0.687)); // [recalled]
            return 3.0 * waterDensity * drag * v * v - 4.0 * size * weight();
        });
    }
};

/// Exponent by the Reynolds number of the settling grain [Richardson and Zaki, recalled; the middle one is
/// printed in Davis].
double exponentFor(double reynolds)
{
    if (reynolds < 0.2)
        return 4.65;
    if (reynolds < 1)
        return 4.35 * std::pow(reynolds, -0.03);
    return reynolds < 500 ? 4.45 * std::pow(reynolds, -0.1) : 2.39;
}

constexpr const char washedOut[] =
    "the wash carries these grains out of the tank: a lower rate or a coarser medium";

double expandedPorosity(double rate, double size, double particle, double porosity, double temperature,
                        double sphericity, int model, Reply &reply)
{
    const Grain grain{size / 1000.0, particle, sphericity, water::density(temperature),
                      water::viscosity(temperature) / 1000.0};
    if (atMost(particle, grain.waterDensity))
        return reply.refuse(
            3, "a grain lighter than water floats: give the density of the wet particle, above 1000 kg/m^3");
    const double v = rate * meterPerSecondPerGpmPerSquareFoot;
    const auto resting = [&] {
        reply.caution("resting", "the rate does not lift the bed by this model: it stays as it lies");
        return porosity;
    };
    if (model == richardsonZaki) {
        const double settling = grain.settling();
        if (atMost(settling, v))
            return reply.refuse(1, washedOut);
        const double open = std::pow(v / settling, 1.0 / exponentFor(grain.reynolds(settling)));
        return lessThan(open, porosity) ? resting() : open;
    }
    if (atMost(0, grain.surplus(v, porosity)))
        return resting();
    if (lessThan(grain.surplus(v, widest), 0))
        return reply.refuse(1, washedOut);
    return crossing(porosity, widest, [&](double open) { return grain.surplus(v, open); });
}

double bedExpansion(double rate, double size, double particle, double porosity, double temperature,
                    double sphericity, int model, double freeboard, Reply &reply)
{
    const double open =
        expandedPorosity(rate, size, particle, porosity, temperature, sphericity, model, reply);
    const double share = (1.0 - porosity) / (1.0 - open) - 1.0;
    if (lessThan(freeboard, share))
        reply.caution("spills", "the bed rises above the free space over it: medium goes to the drain");
    return share;
}

double roseHeadLoss(double loading, double depth, double porosity, double sphericity, const Argument &sizes,
                    const Argument &shares, double temperature, Reply &reply)
{
    if (sizes.count() == 0 || shares.count() != sizes.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    const double v = loading * meterPerSecondPerGpmPerSquareFoot,
                 viscosity = water::viscosity(temperature) / 1000.0 / water::density(temperature);
    double sum = 0.0, whole = 0.0;
    for (std::size_t i = 0; i < sizes.count(); ++i) {
        const double d = sizes.begin()[i] / 1000.0, share = shares.begin()[i];
        if (!std::isfinite(d + share))
            return reply.refuse(0, "a line is blank: fill it or take it out of the range");
        const double re = sphericity * d * v / viscosity;
        // [Davis, Water and Wastewater Engineering, equations 10-10 and 10-11]
        const double drag = re < 0.5 ? 24.0 / re : 24.0 / re + 3.0 / std::sqrt(re) + 0.34;
        sum += v > 0 ? drag * share / d : 0.0;
        whole += share;
    }
    if (lessThan(1.001, whole))
        return reply.refuse(6, "the shares make more than the whole");
    const double pore = porosity * porosity * porosity * porosity;
    return 1.067 * v * v * depth / (sphericity * gravity * pore) *
           sum; // [Rose, as printed in Davis, equation 11-9]; feet from feet
}

double waterDensity(double temperature)
{
    return water::density(temperature);
}

constexpr Parameter temperature =
    Parameter("temperature", "degC",
              "temperature of the water, to 60 degC; well water is 7 to 13 degC in the north")
        .hard(0, 60)
        .usual(2, 30);
constexpr Parameter model =
    Parameter("model", "", "balance of drag by Ergun, or hindered settling by Richardson and Zaki")
        .oneOf(modelWords)
        .otherwise(ergun, "A");
constexpr Parameter rate = Parameter("rate", "gpm/ft^2", "backwash rate").hard(0, 200).usual(2, 30);
constexpr Parameter size = Parameter("grain_size", "mm", "grain size").hard(0.01, 50).usual(0.3, 3);
constexpr Parameter particle =
    Parameter("particle_density", "kg/m^3", "density of the wet particle, not of the heap")
        .hard(1, 20000)
        .usual(1200, 5000);
constexpr Parameter porosity =
    Parameter("porosity", "", "share of the resting bed that is water").hard(0.2, 0.8).usual(0.35, 0.55);
constexpr Parameter sphericity =
    Parameter("sphericity", "", "roundness of the grains, 1 for balls; used by Ergun")
        .hard(0.1, 1)
        .usual(0.6, 1)
        .otherwise(1, "A");

constexpr puteal_parameter openTakes[] = {rate, size, particle, porosity, temperature, sphericity, model};
constexpr const char *openSources[] = {"davis_11", "ergun", "recalled", nullptr};
constexpr puteal_example openExamples[] = {
    // example 11-3: wash at 0.01 m/s, sand 2650 kg/m^3, 10 degC; the printed settling speeds rest on a chart,
    // so 3.5 %
    example("expanded_porosity(14.7254 gpm/ft^2, 0.714 mm, 2650 kg/m^3, 0.4, 10 degC, 1, \"Richardson and "
            "Zaki\")",
            "0.448", 0.035, "published", "davis_11"),
    example("expanded_porosity(14.7254 gpm/ft^2, 0.505 mm, 2650 kg/m^3, 0.45, 10 degC, 1, \"Richardson and "
            "Zaki\")",
            "0.537", 0.035, "published", "davis_11"),
    example("expanded_porosity(14.7254 gpm/ft^2, 0.357 mm, 2650 kg/m^3, 0.45, 10 degC, 1, \"Richardson and "
            "Zaki\")",
            "0.635", 0.035, "published", "davis_11"),
    example("expanded_porosity(14.7254 gpm/ft^2, 0.252 mm, 2650 kg/m^3, 0.45, 10 degC, 1, \"Richardson and "
            "Zaki\")",
            "0.758", 0.035, "published", "davis_11"),
    example("expanded_porosity(14.7254 gpm/ft^2, 0.178 mm, 2650 kg/m^3, 0.45, 10 degC, 1, \"Richardson and "
            "Zaki\")",
            "0.877", 0.035, "published", "davis_11"),
    example("expanded_porosity(10 gpm/ft^2, 0.6 mm, 2650 kg/m^3, 0.42, 5 degC)", "0.5155", 2e-4, "computed",
            "ergun"),
};
constexpr puteal_example openRefusals[] = {
    refusal("expanded_porosity(60 gpm/ft^2, 0.2 mm, 2650 kg/m^3, 0.42, 10 degC)", washedOut),
    refusal("expanded_porosity(10 gpm/ft^2, 0.6 mm, 900 kg/m^3, 0.42, 10 degC)",
            "a grain lighter than water floats: give the density of the wet particle, above 1000 kg/m^3"),
};
constexpr puteal_caution openCautions[] = {caution("resting", "the rate does not lift the bed")};

constexpr puteal_parameter expansionTakes[] = {
    rate,
    size,
    particle,
    porosity,
    temperature,
    sphericity,
    model,
    Parameter("freeboard", "", "free space above the bed as a share of its depth")
        .hard(0, 5)
        .usual(0.3, 1.2)
        .otherwise(0.5, "T")};
constexpr puteal_example expansionExamples[] = {
    example("bed_expansion(10 gpm/ft^2, 0.6 mm, 2650 kg/m^3, 0.42, 5 degC)", "19.7 %", 3e-3, "computed",
            "ergun"),
    example("bed_expansion(10 gpm/ft^2, 0.6 mm, 2650 kg/m^3, 0.42, 25 degC)", "6.1 %", 1e-2, "computed",
            "ergun"),
    example("bed_expansion(10 gpm/ft^2, 0.6 mm, 2650 kg/m^3, 0.42, 5 degC, 1, \"Richardson and Zaki\")",
            "6.3 %", 1e-2, "computed", "recalled"),
    example("bed_expansion(5 gpm/ft^2, 0.6 mm, 1260 kg/m^3, 0.38, 10 degC)", "75.2 %", 2e-3, "computed",
            "ergun"),
    example("bed_expansion(10 gpm/ft^2, 0.6 mm, 2650 kg/m^3, 0.42, 20 degC, 1, \"Richardson and Zaki\")",
            "0 %", 1e-12, "computed", "recalled"),
};
constexpr puteal_example expansionRefusals[] = {
    refusal("bed_expansion(60 gpm/ft^2, 0.2 mm, 2650 kg/m^3, 0.42, 10 degC)", washedOut)};
constexpr puteal_caution expansionCautions[] = {openCautions[0],
                                                caution("spills", "the expansion is above the freeboard")};

constexpr puteal_parameter roseTakes[] = {
    Parameter("loading", "gpm/ft^2", "flow over the area of the bed").hard(0, 100).usual(1, 15),
    Parameter("depth", "ft", "depth of the bed").hard(0, 20).usual(1, 5),
    porosity,
    Parameter("sphericity", "", "roundness of the grains, 1 for balls").hard(0.1, 1).usual(0.6, 1),
    Parameter("size", "mm", "mean size between two sieves, a line each").range().hard(0.01, 50).usual(0.1, 5),
    Parameter("share", "", "share of the mass between them").range().hard(0, 1).usual(0, 1),
    temperature,
};
constexpr const char *roseSources[] = {"davis_11", nullptr};
#define OTTAWA                                                                                               \
    "d: 2 mm, 1.42 mm, 1 mm, 0.714 mm, 0.505 mm, 0.357 mm, 0.252 mm, 0.178 mm, 0.126 mm; f: 5.3 %, 17.1 %, " \
    "14.6 %, 20.4 %, 17.6 %, 11.9 %, 5.9 %, 3.1 %, 0.7 %; "
constexpr puteal_example roseExamples[] = {
    example(OTTAWA "rose_head_loss(0.0025 m/s, 0.5 m, 0.45, 0.82, d[:], f[:], 10 degC)", "0.76 m_head", 5e-3,
            "published", "davis_11"),
    example("d: 0.5 mm; f: 1; rose_head_loss(0.0025 m/s, 0.5 m, 0.45, 0.82, d[:], f[:], 10 degC)",
            "0.6937 m_head", 2e-3, "computed", "davis_11"),
};
constexpr puteal_example roseRefusals[] = {
    refusal(
        "d: 1 mm, 2 mm; f: 60 %, 60 %; rose_head_loss(0.0025 m/s, 0.5 m, 0.45, 0.82, d[:], f[:], 10 degC)",
        "the shares make more than the whole"),
};

constexpr puteal_parameter densityTakes[] = {temperature};
constexpr const char *densitySources[] = {"density_table", "recalled", nullptr};
constexpr puteal_example densityExamples[] = {
    example("water_density(10 degC)", "999.73 kg/m^3", 1e-5, "published", "density_table"),
    example("water_density(20 degC)", "998.23 kg/m^3", 1e-5, "published", "density_table"),
};
constexpr puteal_example densityRefusals[] = {
    refusal("water_density(-5 degC)", "`temperature` must be at least 0 degC; it is -5 degC")};

} // namespace

constinit const puteal_function expandedPorosityRow =
    Function("expanded_porosity", "Share of water in a washed bed",
             "Share of water in a bed that a wash lifts, by one of two models that differ by several points.",
             call<expandedPorosity>)
        .takes(openTakes)
        .gives("", "share of water in the lifted bed")
        .by("Ergun: 150 * viscosity * (1 - e) * v / ((s * d)^2 * e^3) + 1.75 * density * v^2 / (s * d * e^3) "
            "= "
            "(particle_density - density) * g; Richardson and Zaki: (v / settling speed)^(1 / n), settling "
            "by a drag "
            "of 24 / Re * (1 + 0.15 * Re^0.687), n 4.65 below Re 0.2, 4.35 * Re^-0.03 below 1, 4.45 * "
            "Re^-0.1 below "
            "500, else 2.39")
        .from(openSources)
        .shownBy(openExamples)
        .refusing(openRefusals)
        .warning(openCautions)
        .safely(pressureSafety);

constinit const puteal_function bedExpansionRow =
    Function("bed_expansion", "Bed expansion",
             "How much deeper a bed stands while it is washed. The two models differ by ten points and more: "
             "they rank temperatures and sizes, the medium's own "
             "data sheet decides.",
             call<bedExpansion>)
        .takes(expansionTakes)
        .gives("", "expansion as a share of the resting depth")
        .by("(1 - porosity) / (1 - expanded_porosity) - 1")
        .from(openSources)
        .shownBy(expansionExamples)
        .refusing(expansionRefusals)
        .warning(expansionCautions)
        .safely(pressureSafety);

constinit const puteal_function roseHeadLossRow =
    Function("rose_head_loss", "Clean-bed loss of a graded bed",
             "Head a clean bed of graded grains takes, from its sieve lines.", call<roseHeadLoss>)
        .takes(roseTakes)
        .gives("ft_head", "head loss of the clean bed")
        .by("1.067 * loading^2 * depth / (sphericity * g * porosity^4) * sum of drag * share / size; drag "
            "24/Re, from Re 0.5 also + 3/sqrt(Re) + 0.34")
        .from(roseSources)
        .shownBy(roseExamples)
        .refusing(roseRefusals)
        .safely(pressureSafety);

constinit const puteal_function waterDensityRow =
    Function("water_density", "Density of water", "Density of clean water at one atmosphere.",
             call<waterDensity>)
        .takes(densityTakes)
        .gives("kg/m^3", "density")
        .by("1000 kg/m^3 * (1 - (t + 288.9414) * (t - 3.9863)^2 / (508929.2 * (t + 68.12963)))")
        .from(densitySources)
        .shownBy(densityExamples)
        .refusing(densityRefusals);

} // namespace filtration
