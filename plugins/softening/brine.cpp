/// Brine: how strong a saturated one is, the water that dissolves the salt, the volume drawn. (R2)
#include "softening.h"

#include "sdk/water.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

constexpr double saturatedShare = 0.264;   // share by mass in saturated brine [brine notes]
constexpr double saturatedDensity = 1.198; // kg/L of saturated brine at 20 degC [recalled, not confirmed]
constexpr double poundPerGallonPerKgL = 1000 / measure::gramPerPound * measure::literPerGallon; // exact

double brineStrength(double share, double density)
{
    return share * density * poundPerGallonPerKgL;
}

constexpr Parameter saltShare =
    Parameter("share", "", "share of salt by mass; 26.4 % in saturated brine at room temperature")
        .hard(0, 0.28)
        .usual(0.08, 0.265)
        .otherwise(saturatedShare, "H");

constexpr puteal_parameter strengthTakes[] = {
    saltShare,
    Parameter("density", "kg/L", "density of the brine; 1.198 when saturated")
        .hard(0.99, 1.21)
        .usual(1.05, 1.2)
        .otherwise(saturatedDensity, "R"),
};
constexpr const char *brineSources[] = {"hb44", "brine_notes", "brine_recalled", nullptr};
constexpr puteal_example strengthExamples[] = {
    example("brine_strength(26.4 %, 1.2 kg/L)", "2.6 lb/gal as NaCl", 0.02, "published", "brine_notes"),
    example("brine_strength(26.4 %, 1.2 kg/L)", "19.4 lb/ft^3 as NaCl", 0.025, "published", "brine_notes"),
    example("brine_strength(26.4 %, 1.198 kg/L)", "2.639 lb/gal as NaCl", 1e-3, "computed", "brine_recalled"),
    example("brine_strength(26.4 %, 1.198 kg/L)", "316272 mg/L as NaCl", 1e-6, "computed", "brine_recalled"),
    example("brine_strength(10 %, 1.07 kg/L)", "107000 mg/L as NaCl", 1e-6, "computed", "brine_recalled"),
};
constexpr puteal_example strengthRefusals[] = {
    refusal("brine_strength(40 %, 1.2 kg/L)", "`share` must be at most 0.28; it is 0.4"),
};

// ----------------------------------------------------------------------------------------- salt_dissolved

double saltDissolved(double share, double temperature)
{
    return share / (1 - share) * water::density(temperature) / 1000 * poundPerGallonPerKgL;
}

constexpr puteal_parameter dissolvedTakes[] = {
    saltShare,
    Parameter("temperature", "degC", "temperature of the water").hard(0, 40).usual(2, 30).otherwise(20, "A"),
};
constexpr const char *dissolvedSources[] = {"trade_brine", "brine_notes", "saline_water", "hb44", nullptr};
constexpr puteal_example dissolvedExamples[] = {
    example("salt_dissolved(26.4 %, 20 degC)", "3 lb/gal as NaCl", 0.01, "published", "trade_brine"),
    example("salt_dissolved(26.4 %, 25 degC)", "359 g/L as NaCl", 0.006, "published", "brine_notes"),
    example("salt_dissolved(26.3 %, 20 degC)", "357 g/L as NaCl", 0.005, "published", "saline_water"),
    example("salt_dissolved(10 %, 4 degC)", "0.92725 lb/gal as NaCl", 1e-4, "computed", "hb44"),
};
constexpr puteal_example dissolvedRefusals[] = {
    refusal("salt_dissolved(40 %)", "`share` must be at most 0.28; it is 0.4"),
};

// --------------------------------------------------------------------------------- brine_fill, brine_volume

double volumeFor(double salt, double strength)
{
    return salt / strength;
}

constexpr Parameter chargeOfSalt =
    Parameter("salt", "lb/event as NaCl", "salt for one regeneration").hard(0, 1000).usual(2, 60);
constexpr puteal_parameter fillTakes[] = {
    chargeOfSalt,
    Parameter("dissolves", "lb/gal as NaCl", "salt that a gallon of fill water dissolves; the trade counts 3")
        .hard(0.1, 3.2)
        .usual(2.5, 3.1)
        .otherwise(3, "T"),
};
constexpr const char *fillSources[] = {"trade_brine", "definition", nullptr};
constexpr puteal_example fillExamples[] = {
    example("brine_fill(12 lb/event as NaCl)", "4 gal/event", 1e-9, "computed", "trade_brine"),
    example("brine_fill(6 lb/event as NaCl)", "2 gal/event", 1e-9, "computed", "trade_brine"),
    example("brine_fill(12 lb/event as NaCl, 2.5 lb/gal as NaCl)", "4.8 gal/event", 1e-9, "computed",
            "definition"),
};
constexpr puteal_example fillRefusals[] = {
    refusal("brine_fill(-12 lb/event as NaCl)",
            "`salt` must be at least 0 lb/event as NaCl; it is -12 lb/event as NaCl"),
};
constexpr puteal_parameter volumeTakes[] = {
    chargeOfSalt,
    Parameter("strength", "lb/gal as NaCl", "salt in a gallon of brine, see brine_strength")
        .hard(0.1, 2.8)
        .usual(2, 2.65)
        .otherwise(saturatedShare *saturatedDensity *poundPerGallonPerKgL, "R"),
};
constexpr puteal_example volumeExamples[] = {
    example("brine_volume(12 lb/event as NaCl)", "4.5465 gal/event", 1e-4, "computed", "brine_recalled"),
    example("brine_volume(6 lb/event as NaCl, 2.4 lb/gal as NaCl)", "2.5 gal/event", 1e-9, "computed",
            "hb44"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("brine_volume(-12 lb/event as NaCl)",
            "`salt` must be at least 0 lb/event as NaCl; it is -12 lb/event as NaCl"),
};

constexpr const char freezes[] =
    "Brine eats metal and kills plants where it is spilled; empty the brine tank and its line where they can "
    "freeze. Where brine may be sent is ruled locally.";

} // namespace

constinit const puteal_function brineStrengthRow =
    Function("brine_strength", "Strength of brine",
             "Salt in a gallon of brine. Brine is far from dilute: its parts per million by mass are not its "
             "mg/L.",
             call<brineStrength>)
        .takes(strengthTakes)
        .gives("lb/gal as NaCl", "salt in a gallon of brine")
        .by("share * density")
        .from(brineSources)
        .shownBy(strengthExamples)
        .refusing(strengthRefusals);

constinit const puteal_function saltDissolvedRow =
    Function(
        "salt_dissolved", "Salt a gallon of water dissolves",
        "Salt that a gallon of water takes up until the brine holds a share of salt: what a gallon of fill "
        "water can bring to the bed after standing for hours.",
        call<saltDissolved>)
        .takes(dissolvedTakes)
        .gives("lb/gal as NaCl", "salt taken up by a gallon of water")
        .by("share / (1 - share) * density of water")
        .from(dissolvedSources)
        .shownBy(dissolvedExamples)
        .refusing(dissolvedRefusals);

constinit const puteal_function brineFillRow =
    Function("brine_fill", "Fill water of the brine tank",
             "Water to run into the brine tank so that it dissolves the salt of one regeneration.",
             call<volumeFor>)
        .takes(fillTakes)
        .gives("gal/event", "fill water of one regeneration")
        .by("salt / dissolves")
        .from(fillSources)
        .shownBy(fillExamples)
        .refusing(fillRefusals)
        .safely(freezes);

constinit const puteal_function brineVolumeRow =
    Function("brine_volume", "Brine drawn",
             "Volume of brine that carries the salt of one regeneration to the bed: it must fit below the "
             "brine tank's float.",
             call<volumeFor>)
        .takes(volumeTakes)
        .gives("gal/event", "brine of one regeneration")
        .by("salt / strength")
        .from(brineSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .safely(freezes);

} // namespace softening
