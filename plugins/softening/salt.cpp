/// Salt: the least that chemistry asks for, a charge, a year's use by efficiency, how long a filling lasts.
/// (R1, R2)
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

// ------------------------------------------------------------------------------------------ least_salt

constexpr const char *saltWords[] = {"sodium chloride", "potassium chloride", nullptr};
constexpr const char *saltSubstances[] = {"NaCl", "KCl", nullptr};

double leastSalt(double capacity, int salt)
{
    return capacity / grainsPerPound(molarMass(saltSubstances[salt]));
}

constexpr puteal_parameter leastTakes[] = {
    Parameter("capacity", "grain as CaCO3", "hardness to be driven off the resin")
        .hard(0, 1e7)
        .usual(1, 200000),
    Parameter("salt", "", "which salt").oneOf(saltWords, saltSubstances).otherwise(0, "T"),
};
constexpr const char *leastSources[] = {"iupac2021", "hb44", "chemistry_line", "brine_notes", nullptr};
constexpr puteal_example leastExamples[] = {
    example("least_salt(5989 grain as CaCO3)", "1 lb as NaCl", 1e-3, "published", "chemistry_line"),
    example("least_salt(4695 grain as CaCO3, \"potassium chloride\")", "1 lb as KCl", 1e-3, "published",
            "chemistry_line"),
    example("least_salt(43700 grain as CaCO3)", "7.3 lb as NaCl", 2e-3, "published", "chemistry_line"),
    example("least_salt(5994 grain as CaCO3)", "1 lb as NaCl", 1e-4, "published", "brine_notes"),
    example("least_salt(1000 grain as CaCO3)", "0.1668273 lb as NaCl", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example leastRefusals[] = {
    refusal("least_salt(-5 grain as CaCO3)",
            "`capacity` must be at least 0 grain as CaCO3; it is -5 grain as CaCO3"),
};

// -------------------------------------------------------------------------- potassium_chloride_factor (R2)

double potassiumFactor(double excess)
{
    return molarMass("KCl") / molarMass("NaCl") * (1 + excess);
}

constexpr puteal_parameter factorTakes[] = {
    Parameter("excess", "", "extra over the exchange of charge for charge; trade habit adds up to 25 %")
        .hard(0, 1)
        .usual(0, 0.25)
        .otherwise(0, "A"),
};
constexpr const char *factorSources[] = {"iupac2021", "chemistry_line", "practice", nullptr};
constexpr puteal_example factorExamples[] = {
    // 5,989 grain a pound of one salt beside 4,695 of the other
    example("5989 grain as CaCO3 / (4695 grain as CaCO3) / plain(potassium_chloride_factor())", "1", 1e-3,
            "published", "chemistry_line"),
    example("potassium_chloride_factor(0 %)", "1.27564 lb{KCl}/lb{NaCl}", 1e-5, "computed", "iupac2021"),
    example("12 lb as NaCl * potassium_chloride_factor(10 %)", "16.8385 lb as KCl", 1e-5, "computed",
            "iupac2021"),
};
constexpr puteal_example factorRefusals[] = {
    refusal("potassium_chloride_factor(-10 %)", "`excess` must be at least 0; it is -0.1"),
};

// -------------------------------------------------------------------------------- salt_per_regeneration

double saltPerRegeneration(double resin, double dose)
{
    return resin * dose;
}

constexpr puteal_parameter chargeTakes[] = {
    Parameter("resin", "ft^3", "volume of resin").hard(0.01, 100).usual(0.5, 10),
    Parameter("salt_dose", "lb/ft^3 as NaCl", "salt for a cubic foot, see resin_capacity")
        .hard(1, 25)
        .usual(4, 15),
};
constexpr const char *chargeSources[] = {"trade_sizing", "va590", nullptr};
constexpr puteal_example chargeExamples[] = {
    example("salt_per_regeneration(1.5 ft^3, 8 lb/ft^3 as NaCl)", "12 lb/event as NaCl", 1e-9, "published",
            "trade_sizing"),
    example("salt_per_regeneration(1 ft^3, 6 lb/ft^3 as NaCl)", "6 lb/event as NaCl", 1e-9, "computed",
            "va590"),
};
constexpr puteal_example chargeRefusals[] = {
    refusal("salt_per_regeneration(0 ft^3, 8 lb/ft^3 as NaCl)",
            "`resin` must be at least 0.01 ft^3; it is 0 ft^3"),
};

// ------------------------------------------------------------------------------------
// salt_per_year_by_efficiency

double saltByEfficiency(double use, double hardness, double efficiency)
{
    return use * hardness / efficiency * measure::dayPerYear;
}

constexpr Parameter softened =
    Parameter("use", "gal/day", "water softened in a day").hard(0, 1e5).usual(20, 1500);
constexpr Parameter compensated =
    Parameter("hardness", "gpg", "compensated hardness, see compensated_hardness")
        .hard(0, 1000)
        .usual(1, 100);
constexpr puteal_parameter byTakes[] = {
    softened,
    compensated,
    Parameter("efficiency", "grain{CaCO3}/lb{NaCl}",
              "hardness taken out for a pound of salt: 3,350 for the rating of NSF/ANSI 44, 4,000 for high "
              "efficiency")
        .hard(100, grainsPerPound(molarMass("NaCl")))
        .usual(2000, 4500)
        .otherwise(3350, "S"),
};
constexpr const char *bySources[] = {"definition", "nsf44", "smart_softeners", nullptr};
constexpr puteal_example byExamples[] = {
    example("salt_per_year_by_efficiency(300 gal/day, 20 gpg, 4000 grain{CaCO3}/lb{NaCl})",
            "547.5 lb/yr as NaCl", 1e-9, "computed", "definition"),
    example("salt_per_year_by_efficiency(250 gal/day, 15 gpg, 3000 grain{CaCO3}/lb{NaCl})",
            "456.25 lb/yr as NaCl", 1e-9, "computed", "definition"),
};
constexpr puteal_example byRefusals[] = {
    refusal("salt_per_year_by_efficiency(-300 gal/day, 20 gpg)",
            "`use` must be at least 0 gal/day; it is -300 gal/day"),
};

// ------------------------------------------------------------------------------- salt_efficiency_achieved

double efficiencyAchieved(double interval, double use, double hardness, double salt, Reply &reply)
{
    const double grains = interval * use * hardness / salt;
    if (lessThan(grainsPerPound(molarMass("NaCl")), grains))
        return reply.refuse(4,
                            "no resin takes out more than 5,994 grain of hardness for a pound of salt; check "
                            "the interval and the salt");
    if (lessThan(grains, 3350)) // the standard's efficiency rating [NSF/ANSI 44 clause 7 as quoted]
        reply.caution("below_rating", "below 3,350 grain a pound, the efficiency rating of NSF/ANSI 44: a "
                                      "clock that regenerates early wastes the rest of the capacity");
    return grains;
}

constexpr puteal_parameter achievedTakes[] = {
    Parameter("interval", "day/event", "days between regenerations as the clock or meter runs")
        .hard(0, 365)
        .usual(1, 30),
    softened,
    compensated,
    Parameter("salt", "lb/event as NaCl", "salt for one regeneration").hard(0.1, 1000).usual(2, 60),
};
constexpr const char *achievedSources[] = {"definition", "nsf44", "iupac2021", nullptr};
constexpr puteal_example achievedExamples[] = {
    example("salt_efficiency_achieved(3 day/event, 300 gal/day, 25 gpg, 12 lb/event as NaCl)",
            "1875 grain{CaCO3}/lb{NaCl}", 1e-9, "computed", "definition"),
    example("salt_efficiency_achieved(5 day/event, 400 gal/day, 15 gpg, 15 lb/event as NaCl)",
            "2000 grain{CaCO3}/lb{NaCl}", 1e-9, "computed", "definition"),
};
constexpr puteal_example achievedRefusals[] = {
    refusal(
        "salt_efficiency_achieved(14 day/event, 400 gal/day, 15 gpg, 12 lb/event as NaCl)",
        "no resin takes out more than 5,994 grain of hardness for a pound of salt; check the interval and "
        "the salt"),
};
constexpr puteal_caution achievedCautions[] = {caution("below_rating", "less than 3,350 grain a pound")};

// --------------------------------------------------------------------------------------- salt_supply_days

double saltSupply(double stored, double salt, double interval)
{
    return stored / salt * interval;
}

constexpr puteal_parameter supplyTakes[] = {
    Parameter("stored", "lb as NaCl", "salt in the brine tank").hard(0, 10000).usual(0, 400),
    Parameter("salt", "lb/event as NaCl", "salt for one regeneration").hard(0.1, 1000).usual(2, 60),
    Parameter("interval", "day/event", "days between regenerations").hard(0.1, 365).usual(1, 30),
};
constexpr const char *supplySources[] = {"definition", nullptr};
constexpr puteal_example supplyExamples[] = {
    example("salt_supply_days(200 lb as NaCl, 12 lb/event as NaCl, 3 day/event)", "50 day", 1e-9, "computed",
            "definition"),
    example("salt_supply_days(40 lb as NaCl, 6 lb/event as NaCl, 6 day/event)", "40 day", 1e-9, "computed",
            "definition"),
};
constexpr puteal_example supplyRefusals[] = {
    refusal("salt_supply_days(200 lb as NaCl, 0 lb/event as NaCl, 3 day/event)",
            "`salt` must be at least 0.1 lb/event as NaCl; it is 0 lb/event as NaCl"),
};

} // namespace

constinit const puteal_function leastSaltRow =
    Function("least_salt", "Least salt by chemistry",
             "The salt that drives hardness off a resin if every ion of it did its work: a bound that no "
             "softener reaches. Usual settings take half as much again to three times as much.",
             call<leastSalt>)
        .takes(leastTakes)
        .gives("lb as 'salt", "least salt")
        .by("capacity / (5994 grain a lb of sodium chloride; 4699 of potassium chloride)")
        .from(leastSources)
        .shownBy(leastExamples)
        .refusing(leastRefusals);

constinit const puteal_function potassiumFactorRow =
    Function("potassium_chloride_factor", "Potassium chloride instead of salt",
             "Pounds of potassium chloride that do the work of a pound of sodium chloride: multiply any salt "
             "figure by it.",
             call<potassiumFactor>)
        .takes(factorTakes)
        .gives("lb{KCl}/lb{NaCl}", "potassium chloride for a pound of sodium chloride")
        .by("74.5483 / 58.4398 * (1 + excess)")
        .from(factorSources)
        .shownBy(factorExamples)
        .refusing(factorRefusals)
        .safely("People with kidney or heart trouble ask their doctor before potassium chloride is used.");

constinit const puteal_function saltPerRegenerationRow =
    Function("salt_per_regeneration", "Salt for one regeneration",
             "Salt that one regeneration of the whole bed takes: what the valve is set to.",
             call<saltPerRegeneration>)
        .takes(chargeTakes)
        .gives("lb/event as NaCl", "salt for one regeneration")
        .by("resin * salt_dose")
        .from(chargeSources)
        .shownBy(chargeExamples)
        .refusing(chargeRefusals);

constinit const puteal_function saltByEfficiencyRow =
    Function("salt_per_year_by_efficiency", "Salt a year by efficiency",
             "Salt of a year when only the salt efficiency is known; with a known setting use salt_per_year.",
             call<saltByEfficiency>)
        .takes(byTakes)
        .gives("lb/yr as NaCl", "salt used in a year of 365 days")
        .by("use * hardness / efficiency")
        .from(bySources)
        .shownBy(byExamples)
        .refusing(byRefusals);

constinit const puteal_function efficiencyAchievedRow =
    Function("salt_efficiency_achieved", "Salt efficiency achieved",
             "Hardness really taken out for each pound of salt with the interval the valve keeps, the unused "
             "part of the capacity counted against it.",
             call<efficiencyAchieved>)
        .takes(achievedTakes)
        .gives("grain{CaCO3}/lb{NaCl}", "hardness taken out for a pound of salt")
        .by("interval * use * hardness / salt")
        .from(achievedSources)
        .shownBy(achievedExamples)
        .refusing(achievedRefusals)
        .warning(achievedCautions);

constinit const puteal_function saltSupplyRow =
    Function("salt_supply_days", "Days the salt lasts",
             "Days until the salt in the brine tank is used up. Look every month: salt may stand as a bridge "
             "over an empty tank.",
             call<saltSupply>)
        .takes(supplyTakes)
        .gives("day", "days until the brine tank is out of salt")
        .by("stored / salt * interval")
        .from(supplySources)
        .shownBy(supplyExamples)
        .refusing(supplyRefusals);

} // namespace softening
