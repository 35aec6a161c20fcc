/// Printed properties of filter grains, for the models of clean-bed loss and expansion. (R1)
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

constexpr const char *grainWords[] = {"anthracite", "anthracite cap", "granular carbon", "garnet", "ilmenite",
                                      "sand",       nullptr};
constexpr const char *endWords[] = {"lowest", "highest", nullptr};
constexpr double unprinted = __builtin_nan("");

struct Ends {
    double low, high;
};
/// Effective size in mm, uniformity coefficient, porosity, specific gravity, sphericity.
struct Grain {
    Ends size, uniformity, porosity, gravity, sphericity;
};
// [Davis, Water and Wastewater Engineering, table 11-1, p. 11-7]
constexpr Grain grains[] = {
    {{0.45, 0.55}, {1.65, 1.65}, {0.50, 0.60}, {1.5, 1.75}, {0.46, 0.60}},
    {{0.8, 1.2}, {1.85, 1.85}, {0.50, 0.60}, {1.5, 1.75}, {0.46, 0.60}},
    {{0.8, 1.0}, {1.3, 2.4}, {0.50, 0.50}, {1.3, 1.7}, {0.75, 0.75}},
    {{0.2, 0.4}, {1.3, 1.7}, {0.45, 0.58}, {3.6, 4.2}, {0.60, 0.60}},
    {{0.2, 0.4}, {1.3, 1.7}, {unprinted, unprinted}, {4.2, 5.0}, {unprinted, unprinted}},
    {{0.3, 0.6}, {1.3, 1.8}, {0.40, 0.47}, {2.55, 2.65}, {0.7, 0.8}},
};

double endOf(Ends ends, int end, Reply &reply)
{
    const double value = end == 0 ? ends.low : ends.high;
    return std::isnan(value) ? reply.refuse(1, "the table prints none for this grain: ask for its data sheet")
                             : value;
}
double effectiveSize(int grain, int end, Reply &reply)
{
    return endOf(grains[grain].size, end, reply);
}
double uniformity(int grain, int end, Reply &reply)
{
    return endOf(grains[grain].uniformity, end, reply);
}
double porosity(int grain, int end, Reply &reply)
{
    return endOf(grains[grain].porosity, end, reply);
}
double density(int grain, int end, Reply &reply)
{
    constexpr double kgPerCubicMeter = 1000.0; // of specific gravity 1
    return endOf(grains[grain].gravity, end, reply) * kgPerCubicMeter;
}
double sphericity(int grain, int end, Reply &reply)
{
    return endOf(grains[grain].sphericity, end, reply);
}

constexpr puteal_parameter takes[] = {
    Parameter("grain", "", "the grain; anthracite alone or as a cap over sand").oneOf(grainWords),
    Parameter("end", "", "lowest or highest printed figure").oneOf(endWords),
};
constexpr const char *sources[] = {"davis_11", nullptr};

constexpr puteal_example sizeExamples[] = {
    example("grain_effective_size(\"sand\", \"lowest\")", "0.3 mm", 1e-12, "published", "davis_11"),
    example("grain_effective_size(\"sand\", \"highest\")", "0.6 mm", 1e-12, "published", "davis_11"),
    example("grain_effective_size(\"anthracite cap\", \"lowest\")", "0.8 mm", 1e-12, "published", "davis_11"),
    example("grain_effective_size(\"anthracite cap\", \"highest\")", "1.2 mm", 1e-12, "published",
            "davis_11"),
    example("grain_effective_size(\"granular carbon\", \"highest\")", "1 mm", 1e-12, "published", "davis_11"),
    example("grain_effective_size(\"garnet\", \"lowest\")", "0.2 mm", 1e-12, "published", "davis_11"),
};
constexpr puteal_example sizeRefusals[] = {refusal(
    "grain_effective_size(\"gravel\", \"lowest\")",
    "\"gravel\" is not in the list: anthracite, anthracite cap, granular carbon, garnet, ilmenite, sand")};
constexpr puteal_example uniformityExamples[] = {
    example("grain_uniformity(\"sand\", \"highest\")", "1.8", 1e-12, "published", "davis_11"),
    example("grain_uniformity(\"anthracite\", \"highest\")", "1.65", 1e-12, "published", "davis_11"),
    example("grain_uniformity(\"granular carbon\", \"highest\")", "2.4", 1e-12, "published", "davis_11"),
};
constexpr puteal_example uniformityRefusals[] = {refusal(
    "grain_uniformity(\"gravel\", \"lowest\")",
    "\"gravel\" is not in the list: anthracite, anthracite cap, granular carbon, garnet, ilmenite, sand")};
constexpr puteal_example porosityExamples[] = {
    example("grain_porosity(\"sand\", \"lowest\")", "0.4", 1e-12, "published", "davis_11"),
    example("grain_porosity(\"sand\", \"highest\")", "0.47", 1e-12, "published", "davis_11"),
    example("grain_porosity(\"anthracite\", \"highest\")", "0.6", 1e-12, "published", "davis_11"),
    example("grain_porosity(\"granular carbon\", \"lowest\")", "0.5", 1e-12, "published", "davis_11"),
};
constexpr puteal_example porosityRefusals[] = {
    refusal("grain_porosity(\"ilmenite\", \"lowest\")",
            "the table prints none for this grain: ask for its data sheet")};
constexpr puteal_example densityExamples[] = {
    example("grain_density(\"sand\", \"highest\")", "2650 kg/m^3", 1e-12, "published", "davis_11"),
    example("grain_density(\"anthracite\", \"lowest\")", "1500 kg/m^3", 1e-12, "published", "davis_11"),
    example("grain_density(\"garnet\", \"highest\")", "4200 kg/m^3", 1e-12, "published", "davis_11"),
    example("grain_density(\"ilmenite\", \"highest\")", "5000 kg/m^3", 1e-12, "published", "davis_11"),
};
constexpr puteal_example densityRefusals[] = {refusal(
    "grain_density(\"gravel\", \"lowest\")",
    "\"gravel\" is not in the list: anthracite, anthracite cap, granular carbon, garnet, ilmenite, sand")};
constexpr puteal_example sphericityExamples[] = {
    example("grain_sphericity(\"sand\", \"lowest\")", "0.7", 1e-12, "published", "davis_11"),
    example("grain_sphericity(\"anthracite\", \"lowest\")", "0.46", 1e-12, "published", "davis_11"),
    example("grain_sphericity(\"granular carbon\", \"highest\")", "0.75", 1e-12, "published", "davis_11"),
};
constexpr puteal_example sphericityRefusals[] = {
    refusal("grain_sphericity(\"ilmenite\", \"highest\")",
            "the table prints none for this grain: ask for its data sheet")};
constexpr const char relation[] = "table: one row a grain";

} // namespace

constinit const puteal_function grainSizeRow =
    Function("grain_effective_size", "Effective size of a filter grain",
             "Printed range of the size that a tenth of the grains is finer than.", call<effectiveSize>)
        .takes(takes)
        .gives("mm", "effective size")
        .by(relation)
        .from(sources)
        .shownBy(sizeExamples)
        .refusing(sizeRefusals);

constinit const puteal_function grainUniformityRow =
    Function("grain_uniformity", "Uniformity coefficient of a filter grain",
             "Printed range of the size that six tenths are finer than over the effective size.",
             call<uniformity>)
        .takes(takes)
        .gives("", "uniformity coefficient")
        .by(relation)
        .from(sources)
        .shownBy(uniformityExamples)
        .refusing(uniformityRefusals);

constinit const puteal_function grainPorosityRow =
    Function("grain_porosity", "Porosity of a filter grain",
             "Printed range of the share of a resting bed that is water.", call<porosity>)
        .takes(takes)
        .gives("", "porosity")
        .by(relation)
        .from(sources)
        .shownBy(porosityExamples)
        .refusing(porosityRefusals);

constinit const puteal_function grainDensityRow =
    Function("grain_density", "Density of a filter grain",
             "Printed range of the specific gravity, as a density; lots differ by 5 %.", call<density>)
        .takes(takes)
        .gives("kg/m^3", "density of the particle")
        .by("1000 kg/m^3 * specific gravity, table: one row a grain")
        .from(sources)
        .shownBy(densityExamples)
        .refusing(densityRefusals);

constinit const puteal_function grainSphericityRow =
    Function("grain_sphericity", "Sphericity of a filter grain",
             "Printed range of the roundness, 1 for balls.", call<sphericity>)
        .takes(takes)
        .gives("", "sphericity")
        .by(relation)
        .from(sources)
        .shownBy(sphericityExamples)
        .refusing(sphericityRefusals);

} // namespace filtration
