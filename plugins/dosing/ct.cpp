/// CT that the public tables ask for: viruses and Giardia cysts by free chlorine. (R4, R5)
#include "ct_table.h"
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

constexpr const char *readingWords[] = {"next safer row", "interpolated", nullptr};
enum Reading : int { nextSaferRow, interpolated };
constexpr const char *giardiaWayWords[] = {"next safer row", "regression", "two-range regression", nullptr};
enum GiardiaWay : int { byTable, byRegression, byTwoRanges };

void cautionCold(double temperature, Reply &reply)
{
    if (lessThan(temperature, ct::temperatures[0]))
        reply.caution("cold", "below 0.5 degC the row of 0.5 degC stands: the table goes no lower");
}

/// The row at or below a temperature; the first one for colder water.
std::size_t temperatureRow(double temperature)
{
    std::size_t row = ct::temperatureCount - 1;
    while (row > 0 && lessThan(temperature, ct::temperatures[row]))
        --row;
    return row;
}

double virusCt(double log, double ph, double temperature, int reading, Reply &reply)
{
    cautionHealth(reply);
    if (!nearlyEqual(log, 2) && !nearlyEqual(log, 3) && !nearlyEqual(log, 4))
        return reply.refuse(1, "the public table has rows of 2, 3 and 4 log: give one of them");
    cautionCold(temperature, reply);
    if (lessThan(log, 3.5)) // between the rows of 3 and of 4 log
        reply.caution("recalled", "the rows of 2 and 3 log are recalled: look them up before use");
    const bool alkaline = lessThan(9, ph); // the table goes from pH 6 to 9 and to pH 10
    if (alkaline)
        reply.caution("high_ph", "above pH 9 the row of pH 10 stands, seven times the others: lower the pH");
    const double *row = ct::viruses[static_cast<std::size_t>(std::lround(log)) - 2][alkaline ? 1 : 0];
    const std::size_t at = temperatureRow(temperature);
    if (reading == nextSaferRow || at + 1 == ct::temperatureCount || atMost(temperature, ct::temperatures[0]))
        return row[at];
    const double part =
        (temperature - ct::temperatures[at]) / (ct::temperatures[at + 1] - ct::temperatures[at]);
    return row[at] + part * (row[at + 1] - row[at]);
}

double giardiaByTable(double ph, double temperature, double chlorine)
{
    std::size_t column = 0, line = 0; // the ones at or above
    while (column + 1 < ct::phCount && lessThan(ct::phs[column], ph))
        ++column;
    while (line + 1 < ct::chlorineCount && lessThan(ct::chlorines[line], chlorine))
        ++line;
    return ct::giardia[temperatureRow(temperature)][line][column];
}

/// A log by one power law [chlorine-disinfection page of a water-research archive].
double giardiaByRegression(double ph, double temperature, double chlorine)
{
    return 0.2828 * std::pow(ph, 2.69) * std::pow(chlorine, 0.15) * std::pow(0.933, temperature - 5.0);
}

/// A log by two exponentials, one below and one above 12.5 degC [Smith, Clark and others 1995, recalled].
double giardiaByTwoRanges(double ph, double temperature, double chlorine)
{
    if (lessThan(temperature, 12.5)) // [Smith 1995, recalled]
        return 0.353 *
               (12.006 + std::exp(2.46 - 0.073 * temperature + 0.125 * chlorine + 0.389 * ph)); // [the same]
    return 0.361 *
           (-2.261 + std::exp(2.69 - 0.065 * temperature + 0.111 * chlorine + 0.361 * ph)); // [the same]
}

double giardiaCt(double log, double ph, double temperature, double chlorine, int way, Reply &reply)
{
    cautionHealth(reply);
    cautionCold(temperature, reply);
    const double least = ct::chlorines[0], most = ct::chlorines[ct::chlorineCount - 1];
    if (lessThan(most, chlorine) && way == byTable)
        reply.caution("most_chlorine", "above 3 mg/L the row of 3 mg/L stands, as the table's text says");
    if (way == byTable)
        return log / 3.0 * giardiaByTable(ph, temperature, chlorine); // the table stands for 3 log
    if (lessThan(chlorine, least) || lessThan(most, chlorine) || lessThan(ph, ct::phs[0]))
        reply.caution("extrapolated", "outside pH 6 to 9 and 0.4 to 3 mg/L the regressions were not made: "
                                      "read the next safer row");
    const double warmth = std::fmax(temperature, ct::temperatures[0]);
    return log * (way == byRegression ? giardiaByRegression(ph, warmth, chlorine)
                                      : giardiaByTwoRanges(ph, warmth, chlorine));
}

constexpr Parameter temperatureParameter =
    Parameter("temperature", "degC", "coldest water of the year; the tables end at 25 degC")
        .hard(0, 25)
        .usual(1, 25);
constexpr puteal_parameter virusTakes[] = {
    Parameter("log_inactivation", "", "powers of ten: 4 leaves one of 10,000; 2, 3 or 4").hard(2, 4),
    Parameter("ph", "", "highest pH of the water").hard(6, 10).usual(6, 9),
    temperatureParameter,
    Parameter("reading", "",
              "between two temperatures: the colder row, as the table's text asks, or in "
              "proportion, as one state accepts")
        .oneOf(readingWords)
        .otherwise(nextSaferRow, "S"),
};
constexpr const char *virusSources[] = {"epa_ct_virus", "state_interpolation", "recalled", nullptr};
constexpr puteal_example virusExamples[] = {
    example("virus_ct_required(4, 7.5, 10 degC)", "6 (mg*min)/L as Cl2", 1e-9, "published", "epa_ct_virus"),
    example("virus_ct_required(4, 7.5, 5 degC)", "8 (mg*min)/L as Cl2", 1e-9, "published", "epa_ct_virus"),
    example("virus_ct_required(4, 7.5, 0.5 degC)", "12 (mg*min)/L as Cl2", 1e-9, "published", "epa_ct_virus"),
    example("virus_ct_required(4, 10, 10 degC)", "45 (mg*min)/L as Cl2", 1e-9, "published", "epa_ct_virus"),
    example("virus_ct_required(4, 7.5, 2 degC, \"interpolated\")", "10.67 (mg*min)/L as Cl2", 5e-4,
            "published", "state_interpolation"),
    example("virus_ct_required(4, 7.5, 12 degC, \"interpolated\")", "5.2 (mg*min)/L as Cl2", 1e-9, "computed",
            "epa_ct_virus"),
    example("virus_ct_required(3, 7.5, 10 degC)", "4 (mg*min)/L as Cl2", 1e-9, "memory", "recalled"),
    example("virus_ct_required(2, 7.5, 10 degC)", "3 (mg*min)/L as Cl2", 1e-9, "memory", "recalled"),
};
constexpr puteal_example virusRefusals[] = {
    refusal("virus_ct_required(4, 7.5, 26 degC)", "`temperature` must be at most 25 degC; it is 26 degC"),
    refusal("virus_ct_required(4, 10.5, 10 degC)", "`ph` must be at most 10; it is 10.5"),
    refusal("virus_ct_required(2.5, 7.5, 10 degC)",
            "the public table has rows of 2, 3 and 4 log: give one of them"),
};
constexpr puteal_caution virusCautions[] = {
    healthCaution,
    caution("cold", "below 0.5 degC"),
    caution("recalled", "2 and 3 log"),
    caution("high_ph", "above pH 9"),
};

constexpr puteal_parameter giardiaTakes[] = {
    Parameter("log_inactivation", "", "powers of ten: 3 leaves one of 1,000").hard(0.1, 3).usual(0.5, 3),
    Parameter("ph", "", "highest pH of the water").hard(4, 9).usual(6, 9),
    temperatureParameter,
    Parameter("chlorine", "mg/L as Cl2", "free chlorine at the end of the contact")
        .hard(0.05, 10)
        .usual(0.2, 3),
    Parameter("way", "",
              "the public table at the next colder, more alkaline and stronger row; a power law that keeps "
              "within 12 % of "
              "it; or a recalled law in two ranges of temperature that is never below it")
        .oneOf(giardiaWayWords)
        .otherwise(byTable, "S"),
};
constexpr const char *giardiaSources[] = {"epa_ct_giardia", "epa_ct_instructions", "ct_regression",
                                          "recalled", nullptr};
constexpr puteal_example giardiaExamples[] = {
    example("giardia_ct_required(3, 7.5, 15 degC, 1.2 mg/L as Cl2)", "92 (mg*min)/L as Cl2", 1e-9,
            "published", "epa_ct_instructions"),
    example("giardia_ct_required(1.5, 7.6, 0.4 degC, 0.82 mg/L as Cl2)", "152 (mg*min)/L as Cl2", 1e-9,
            "published", "epa_ct_instructions"),
    example("giardia_ct_required(3, 9, 25 degC, 3 mg/L as Cl2)", "97 (mg*min)/L as Cl2", 1e-9, "published",
            "epa_ct_giardia"),
    example("giardia_ct_required(1, 7, 0.5 degC, 1 mg/L as Cl2)", "70 (mg*min)/L as Cl2", 1e-9, "published",
            "ct_regression"),
    example("giardia_ct_required(3, 7.5, 15 degC, 1.2 mg/L as Cl2, \"regression\")", "92 (mg*min)/L as Cl2",
            0.1, "published", "epa_ct_giardia"),
    example("giardia_ct_required(3, 7, 25 degC, 3 mg/L as Cl2, \"regression\")", "46 (mg*min)/L as Cl2", 0.1,
            "published", "epa_ct_giardia"),
    example("giardia_ct_required(3, 9, 25 degC, 3 mg/L as Cl2, \"regression\")", "97 (mg*min)/L as Cl2", 0.1,
            "published", "epa_ct_giardia"),
    example("giardia_ct_required(3, 7.5, 15 degC, 1.2 mg/L as Cl2, \"regression\")",
            "98.4485 (mg*min)/L as Cl2", 1e-6, "computed", "ct_regression"),
    example("giardia_ct_required(1, 7, 0.5 degC, 1 mg/L as Cl2, \"regression\")", "72.498 (mg*min)/L as Cl2",
            1e-6, "computed", "ct_regression"),
};
constexpr puteal_example giardiaRefusals[] = {
    refusal("giardia_ct_required(3, 9.5, 10 degC, 1 mg/L as Cl2)", "`ph` must be at most 9; it is 9.5"),
    refusal("giardia_ct_required(3, 7.5, 30 degC, 1 mg/L as Cl2)",
            "`temperature` must be at most 25 degC; it is 30 degC"),
};
constexpr puteal_caution giardiaCautions[] = {
    healthCaution,
    caution("cold", "below 0.5 degC"),
    caution("most_chlorine", "more than 3 mg/L in the table"),
    caution("extrapolated", "a regression below pH 6, below 0.4 or above 3 mg/L"),
};

} // namespace

constinit const puteal_function virusCtRow =
    Function("virus_ct_required", "CT required for viruses",
             "Free chlorine times the minutes that count which public supplies must reach for viruses. It "
             "covers neither "
             "Giardia nor Cryptosporidium, and viruses in clumps need more.",
             call<virusCt>)
        .takes(virusTakes)
        .gives("(mg*min)/L as Cl2", "CT the public table asks for")
        .by("table by log, temperature and pH; 4 log at pH 6 to 9: 12, 8, 6, 4, 3, 2 at 0.5, 5, 10, 15, 20, "
            "25 degC")
        .from(virusSources)
        .shownBy(virusExamples)
        .refusing(virusRefusals)
        .warning(virusCautions)
        .safely(disinfectionSafety);

constinit const puteal_function giardiaCtRow =
    Function("giardia_ct_required", "CT required for Giardia",
             "Free chlorine times the minutes that count which public supplies must reach for Giardia cysts. "
             "Chlorine does "
             "little to Cryptosporidium.",
             call<giardiaCt>)
        .takes(giardiaTakes)
        .gives("(mg*min)/L as Cl2", "CT the public table asks for")
        .by("table * log_inactivation / 3; or 0.2828 * ph^2.69 * chlorine^0.15 * 0.933^(t - 5) * "
            "log_inactivation; or 0.353 * log * (12.006 + exp(2.46 - 0.073 t + 0.125 chlorine + 0.389 ph)) "
            "below 12.5 degC and 0.361 * log * (-2.261 + exp(2.69 - 0.065 t + 0.111 chlorine + 0.361 ph)) "
            "above")
        .from(giardiaSources)
        .shownBy(giardiaExamples)
        .refusing(giardiaRefusals)
        .warning(giardiaCautions)
        .safely(disinfectionSafety);

} // namespace dosing
