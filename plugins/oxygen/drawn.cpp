/// Air that a venturi draws, whether it draws at all, and sulfide that air can carry away. (R3, R5)
#include "oxygen.h"

namespace oxygen
{

using namespace puteal::sdk;

namespace
{

double venturiAirFlow(double flow, double oxygenWanted, double transfer, double temperature, double pressure,
                      Reply &reply)
{
    if (lessThan(0.3, transfer)) // [common practice, no source]
        reply.caution("optimistic", "a venturi seldom brings more than 30 % of the oxygen into the water");
    const double mgPerMinute = flow * measure::literPerGallon * oxygenWanted;
    const double molePerLiter =
        pressure * pascalPerAtmosphere / (gasConstant * (temperature + kelvinAtZero)) / 1000.0;
    const double mgPerLiterOfAir = oxygenShare * molePerLiter * molarMass("O2") * 1000.0;
    return mgPerMinute / (transfer * mgPerLiterOfAir);
}

bool venturiDraws(double inlet, double outlet, double leastDrop, Reply &reply)
{
    const double drop = (inlet - outlet) / inlet;
    const bool draws = atMost(leastDrop, drop);
    reply.reason("pressure falls by " + figures(100 * drop) + " % from " + figures(inlet) + " to " +
                 figures(outlet) + " psi, at least " + figures(100 * leastDrop) + " % is asked" +
                 (draws ? "" : ": a smaller venturi, or throttle behind it"));
    return draws;
}

double hydrogenSulfideShare(double ph, double pk)
{
    return 1.0 / (1.0 + std::pow(10.0, ph - pk));
}

constexpr puteal_parameter airTakes[] = {
    Parameter("flow", "gpm", "flow of water while it draws").hard(0, 1000).usual(1, 30),
    Parameter("oxygen", "mg/L as O2", "oxygen to bring in, see oxygen_budget and oxygen_needed")
        .hard(0, 100)
        .usual(0.05, 12),
    Parameter("transfer", "", "share of the drawn oxygen that ends in the water")
        .hard(0.01, 1)
        .usual(0.05, 0.3),
    Parameter("temperature", "degC", "temperature of the air").hard(-20, 60).usual(0, 40).otherwise(20, "A"),
    Parameter("pressure", "atm_abs", "pressure of the outside air")
        .hard(0.2, 1.1)
        .usual(0.7, 1.05)
        .otherwise(1, "S"),
};
constexpr const char *airSources[] = {"si2019", "iupac2021", "practice", "recalled", nullptr};
constexpr puteal_example airExamples[] = {
    // 3 mg/L of iron
    example("venturi_air_flow(5 gpm, 0.429735 mg/L as O2, 20 %)", "0.14596 Lpm", 1e-4, "computed", "si2019"),
    example("venturi_air_flow(5 gpm, 0.429735 mg/L as O2, 20 %)", "0.005155 cfm", 1e-4, "computed", "si2019"),
    example("venturi_air_flow(5 gpm, 0.429735 mg/L as O2, 100 %)", "0.02919 Lpm", 2e-4, "computed", "si2019"),
    // 2 mg/L of iron
    example("venturi_air_flow(8 gpm, 0.28649 mg/L as O2, 10 %)", "0.311383 Lpm", 1e-5, "computed", "si2019"),
};
constexpr puteal_example airRefusals[] = {
    refusal("venturi_air_flow(5 gpm, 0.43 mg/L as O2, 0)", "`transfer` must be at least 0.01; it is 0"),
};
constexpr puteal_caution airCautions[] = {caution("optimistic", "more than 30 % transferred")};

constexpr puteal_parameter drawsTakes[] = {
    Parameter("inlet", "psi", "pressure ahead of the venturi while water runs").hard(1, 200).usual(20, 80),
    Parameter("outlet", "psi", "pressure behind it while water runs").hard(0, 200).usual(10, 70),
    Parameter("least_drop", "", "least share of the pressure that is lost in it: 20 to 25 %")
        .hard(0.05, 0.9)
        .usual(0.2, 0.25)
        .otherwise(0.2, "T"),
};
constexpr const char *drawsSources[] = {"practice", nullptr};
constexpr puteal_example drawsExamples[] = {
    example("venturi_draws(50 psi, 40 psi)", "yes", 0, "common practice", "practice"),
    example("venturi_draws(50 psi, 42 psi)", "no", 0, "common practice", "practice"),
    example("venturi_draws(50 psi, 40 psi, 25 %)", "no", 0, "common practice", "practice"),
};
constexpr puteal_example drawsRefusals[] = {
    refusal("venturi_draws(0 psi, 0 psi)", "`inlet` must be at least 1 psi; it is 0 psi"),
};

constexpr puteal_parameter sulfideTakes[] = {
    Parameter("ph", "", "pH of the water").hard(4, 11).usual(5.5, 9),
    Parameter("pk", "", "first pK of hydrogen sulfide; a little higher in the cold")
        .hard(6, 8)
        .usual(6.9, 7.3)
        .otherwise(7.0, "H"),
};
constexpr const char *sulfideSources[] = {"lagoon_model", "practice", nullptr};
constexpr puteal_example sulfideExamples[] = {
    example("hydrogen_sulfide_share(6)", "91 %", 2e-3, "computed", "lagoon_model"),
    example("hydrogen_sulfide_share(7)", "50 %", 1e-9, "computed", "lagoon_model"),
    example("hydrogen_sulfide_share(8)", "9 %", 0.012, "computed", "lagoon_model"),
};
constexpr puteal_example sulfideRefusals[] = {
    refusal("hydrogen_sulfide_share(3)", "`ph` must be at least 4; it is 3"),
};

} // namespace

constinit const puteal_function venturiAirFlowRow =
    Function("venturi_air_flow", "Air for a venturi",
             "Outside air a venturi must draw while water runs. It draws only then, and the rest of the air "
             "must be vented.",
             call<venturiAirFlow>)
        .takes(airTakes)
        .gives("Lpm", "outside air")
        .by("flow * oxygen / (transfer * 0.20946 * 31.998 g/mol * pressure / (8.314462618 J/(mol K) * T))")
        .from(airSources)
        .shownBy(airExamples)
        .refusing(airRefusals)
        .warning(airCautions)
        .safely(aerationSafety);

constinit const puteal_function venturiDrawsRow =
    Function("venturi_draws", "Does a venturi draw air",
             "Whether the pressure falls enough across a venturi for it to draw air.", call<venturiDraws>)
        .takes(drawsTakes)
        .givesYesNo("it draws, with its reason")
        .by("(inlet - outlet) / inlet >= least_drop")
        .from(drawsSources)
        .shownBy(drawsExamples)
        .refusing(drawsRefusals)
        .safely(aerationSafety);

constinit const puteal_function hydrogenSulfideShareRow =
    Function("hydrogen_sulfide_share", "Sulfide that air can strip",
             "Share of the sulfide that is the gas hydrogen sulfide; only that share leaves with air, the "
             "rest stays dissolved. Above pH 6.5 stripping alone does little.",
             call<hydrogenSulfideShare>)
        .takes(sulfideTakes)
        .gives("", "share of the sulfide")
        .by("1 / (1 + 10^(ph - pk))")
        .from(sulfideSources)
        .shownBy(sulfideExamples)
        .refusing(sulfideRefusals)
        .safely(aerationSafety);

} // namespace oxygen
