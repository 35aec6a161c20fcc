/// Which chlorine is in the water at a pH, and the trade's simple rule of contact. (R4, R6)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

double hypochlorousPka(double temperature)
{
    const double kelvin = temperature + 273.15;          // exact [NIST SP 811, appendix B]
    return 3000.00 / kelvin - 10.0686 + 0.0253 * kelvin; // [Morris 1966, recalled]
}

double hypochlorousShare(double ph, double temperature)
{
    return 1.0 / (1.0 + std::pow(10.0, ph - hypochlorousPka(temperature)));
}

// Bulletins on simple chlorination print K by steps of pH; a step adds 4 at 50 degF and above, 5 at 45, 6 at
// 40 and below [recalled: extension bulletins, not found again].
constexpr double firstPh = 6.5, phStep = 0.5;
constexpr double warmK = 4, coolK = 5, coldK = 6;
constexpr double warmFrom = 50, coolFrom = 45; // degF

double chlorinationKTime(double ph, double temperature, double residual, Reply &reply)
{
    cautionHealth(reply);
    reply.caution("unsourced",
                  "the K table is recalled and no bulletin was found to confirm it: look it up before use");
    const double perStep = atMost(warmFrom, temperature)   ? warmK
                           : atMost(coolFrom, temperature) ? coolK
                                                           : coldK;
    constexpr double slack = 1e-9; // a pH that is typed as the row's own belongs to the row
    const double step = 1 + std::fmax(0, std::ceil((ph - firstPh) / phStep - slack)); // the row at or above
    return perStep * step / residual;
}

constexpr Parameter temperatureParameter =
    Parameter("temperature", "degC", "temperature of the water").hard(0, 40).usual(2, 30);
constexpr puteal_parameter pkaTakes[] = {temperatureParameter};
constexpr const char *morrisSources[] = {"morris", nullptr};
constexpr puteal_example pkaExamples[] = {
    example("hypochlorous_acid_pka(25 degC)", "7.5366", 1e-5, "computed", "morris"),
    example("hypochlorous_acid_pka(10 degC)", "7.6902", 1e-5, "computed", "morris"),
    example("hypochlorous_acid_pka(5 degC)", "7.7541", 1e-5, "computed", "morris"),
};
constexpr puteal_example pkaRefusals[] = {
    refusal("hypochlorous_acid_pka(50 degC)", "`temperature` must be at most 40 degC; it is 50 degC"),
};

constexpr puteal_parameter shareTakes[] = {
    Parameter("ph", "", "pH of the water").hard(4, 11).usual(5.5, 9),
    temperatureParameter,
};
constexpr puteal_example shareExamples[] = {
    example("hypochlorous_acid_share(7, 10 degC)", "83.05 %", 1e-3, "computed", "morris"),
    example("hypochlorous_acid_share(7.5, 10 degC)", "60.78 %", 1e-3, "computed", "morris"),
    example("hypochlorous_acid_share(8, 10 degC)", "32.89 %", 1e-3, "computed", "morris"),
    example("hypochlorous_acid_share(7.5, 25 degC)", "52.11 %", 1e-3, "computed", "morris"),
};
constexpr puteal_example shareRefusals[] = {
    refusal("hypochlorous_acid_share(3, 10 degC)", "`ph` must be at least 4; it is 3"),
};

constexpr puteal_parameter kTakes[] = {
    Parameter("ph", "", "pH of the water; the row at or above it is read").hard(5, 9).usual(6.5, 8.5),
    Parameter("temperature", "degF", "temperature of the water; steps at 50 and 45 degF")
        .hard(32, 100)
        .usual(35, 80),
    Parameter("residual", "mg/L as Cl2", "free chlorine left at the end of the contact")
        .hard(0.05, 10)
        .usual(0.2, 5),
};
constexpr const char *kSources[] = {"recalled", "practice", "new_york", nullptr};
constexpr puteal_example kExamples[] = {
    example("chlorination_k_time(7.5, 50 degF, 0.5 mg/L as Cl2)", "24 min", 1e-9, "memory", "recalled"),
    example("chlorination_k_time(7, 40 degF, 1 mg/L as Cl2)", "12 min", 1e-9, "memory", "recalled"),
    example("chlorination_k_time(8.5, 45 degF, 0.5 mg/L as Cl2)", "50 min", 1e-9, "memory", "recalled"),
};
constexpr puteal_example kRefusals[] = {
    refusal("chlorination_k_time(7.5, 50 degF, 0 mg/L as Cl2)",
            "`residual` must be at least 0.05 mg/L as Cl2; it is 0 mg/L as Cl2"),
};
constexpr puteal_caution kCautions[] = {healthCaution, caution("unsourced", "always: a recalled table")};

} // namespace

constinit const puteal_function hypochlorousPkaRow =
    Function("hypochlorous_acid_pka", "pKa of hypochlorous acid",
             "pH at which half of the free chlorine is hypochlorous acid.", call<hypochlorousPka>)
        .takes(pkaTakes)
        .gives("", "pKa")
        .by("3000 / T - 10.0686 + 0.0253 * T, T in K")
        .from(morrisSources)
        .shownBy(pkaExamples)
        .refusing(pkaRefusals);

constinit const puteal_function hypochlorousShareRow =
    Function(
        "hypochlorous_acid_share", "Hypochlorous acid in free chlorine",
        "Share of the free chlorine that is hypochlorous acid, the quicker half of the pair; the rest is "
        "hypochlorite. "
        "It explains why chlorine works slowly at a high pH, and is no measure of disinfection.",
        call<hypochlorousShare>)
        .takes(shareTakes)
        .gives("", "share of the free chlorine")
        .by("1 / (1 + 10^(ph - pKa)), pKa see hypochlorous_acid_pka")
        .from(morrisSources)
        .shownBy(shareExamples)
        .refusing(shareRefusals)
        .safely(disinfectionSafety);

constinit const puteal_function chlorinationKTimeRow =
    Function("chlorination_k_time", "Contact time by the K rule",
             "Minutes of contact by the simple rule of bulletins for private wells: K by pH and temperature, "
             "divided by "
             "the free chlorine left. It carries no log credit. The State of New York's figures for public "
             "supplies, 0.2 mg/L after 10 minutes at pH 7 and 0.4 at pH 8, are a quarter of it.",
             call<chlorinationKTime>)
        .takes(kTakes)
        .gives("min", "time that counts")
        .by("K / residual; K at pH 6.5, 7, ... 9: 4, 8, ... 24 from 50 degF, 5, 10, ... 30 from 45 degF, 6, "
            "12, ... 36 below")
        .from(kSources)
        .shownBy(kExamples)
        .refusing(kRefusals)
        .warning(kCautions)
        .safely(disinfectionSafety);

} // namespace dosing
