/// The air pocket over a media bed: oxygen in it, days it lasts, room it takes under pressure. (R3, R4)
#include "oxygen.h"

namespace oxygen
{

using namespace puteal::sdk;

namespace
{

double airPocketOxygen(double volume, double temperature, double pressure)
{
    const double cubicMeter = volume * measure::literPerGallon / 1000.0;
    const double mole = pressure * pascalPerPsi * cubicMeter / (gasConstant * (temperature + kelvinAtZero));
    return oxygenShare * mole * molarMass("O2");
}

double airPocketDays(double oxygenHeld, double use, double takenUp, Reply &reply)
{
    const double perDay = use * measure::literPerGallon * takenUp / 1000.0; // g/day
    if (atMost(perDay, 0))
        return reply.refuse(0, "nothing takes oxygen from the pocket: give a use and an uptake above 0");
    const double days = oxygenHeld / perDay;
    if (lessThan(days, 1))
        reply.caution("daily",
                      "the pocket is spent within a day: renew it more than once a day or add a compressor");
    return days;
}

double airPocketVolume(double volume, double pressure, double air)
{
    return volume * air / (pressure + air);
}

constexpr Parameter outsideAir =
    Parameter("pressure", "psi_abs", "absolute pressure at which the volume is taken")
        .hard(3, 150)
        .usual(10, 90)
        .otherwise(seaLevelAir, "S");

constexpr puteal_parameter oxygenTakes[] = {
    Parameter("volume", "gal", "air drawn in").hard(0, 1000).usual(1, 20),
    Parameter("temperature", "degC", "temperature of the air").hard(-20, 60).usual(2, 30).otherwise(10, "A"),
    outsideAir,
};
constexpr const char *oxygenSources[] = {"si2019", "iupac2021", "recalled", nullptr};
constexpr puteal_example oxygenExamples[] = {
    example("air_pocket_oxygen(6 gal)", "6.55170 g as O2", 1e-4, "computed", "si2019"),
    example("air_pocket_oxygen(6 gal, 10 degC, 14.696 psi_abs)", "6.55170 g as O2", 1e-4, "computed",
            "si2019"),
    example("air_pocket_oxygen(3 gal)", "3.27585 g as O2", 1e-4, "computed", "si2019"),
};
constexpr puteal_example oxygenRefusals[] = {
    refusal("air_pocket_oxygen(-6 gal)", "`volume` must be at least 0 gal; it is -6 gal"),
};

constexpr puteal_parameter daysTakes[] = {
    Parameter("oxygen", "g as O2", "oxygen in the pocket, see air_pocket_oxygen").hard(0, 10000).usual(1, 30),
    Parameter("use", "gal/day", "water through the pocket").hard(0, 100000).usual(50, 1000),
    Parameter("taken_up", "mg/L as O2", "oxygen a liter carries away: more than iron uses; measure it")
        .hard(0, 100)
        .usual(1, 12),
};
constexpr const char *daysSources[] = {"definition", "oxygen_code", "practice", nullptr};
constexpr puteal_example daysExamples[] = {
    example("air_pocket_days(6.5517 g as O2, 300 gal/day, 4 mg/L as O2)", "1.442 day/event", 1e-3, "computed",
            "definition"),
    example("air_pocket_days(6.5517 g as O2, 300 gal/day, oxygen_budget(3 mg/L as Fe, 0 mg/L as Mn, 0 mg/L "
            "as H2S))",
            "13.425 day/event", 1e-4, "computed", "definition"),
    // the water leaves with a tenth, and with half, of what it holds under 40 psi
    example("air_pocket_days(6.5517 g as O2, 300 gal/day, 10 % * oxygen_saturation(10 degC, 54.7 psi_abs))",
            "1.364 day/event", 1e-3, "computed", "oxygen_code"),
    example("air_pocket_days(6.5517 g as O2, 300 gal/day, 50 % * oxygen_saturation(10 degC, 54.7 psi_abs))",
            "0.273 day/event", 2e-3, "computed", "oxygen_code"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("air_pocket_days(6.5517 g as O2, 300 gal/day, 0 mg/L as O2)",
            "nothing takes oxygen from the pocket: give a use and an uptake above 0"),
};
constexpr puteal_caution daysCautions[] = {caution("daily", "less than one day")};

constexpr puteal_parameter volumeTakes[] = {
    Parameter("volume", "gal", "air drawn in at outside pressure").hard(0, 1000).usual(1, 20),
    Parameter("pressure", "psi", "pressure of the water over it").hard(0, 150).usual(20, 80),
    Parameter("air", "psi_abs", "pressure of the outside air")
        .hard(3, 16)
        .usual(10, 15)
        .otherwise(seaLevelAir, "S"),
};
constexpr const char *volumeSources[] = {"boyle", "definition", nullptr};
constexpr puteal_example volumeExamples[] = {
    example("air_pocket_volume(6 gal, 40 psi, 14.7 psi_abs)", "1.61243 gal", 1e-5, "computed", "boyle"),
    example("air_pocket_volume(6 gal, 0 psi)", "6 gal", 1e-9, "computed", "definition"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("air_pocket_volume(6 gal, -20 psi)", "`pressure` must be at least 0 psi; it is -20 psi"),
};

} // namespace

constinit const puteal_function airPocketOxygenRow =
    Function("air_pocket_oxygen", "Oxygen in an air pocket", "Oxygen in the air that is drawn into a tank.",
             call<airPocketOxygen>)
        .takes(oxygenTakes)
        .gives("g as O2", "oxygen in the pocket")
        .by("0.20946 * 31.998 g/mol * pressure * volume / (8.314462618 J/(mol K) * T)")
        .from(oxygenSources)
        .shownBy(oxygenExamples)
        .refusing(oxygenRefusals)
        .safely(headSafety);

constinit const puteal_function airPocketDaysRow =
    Function("air_pocket_days", "Days an air pocket lasts",
             "Days until the oxygen of a pocket is gone. Water carries away far more than iron uses, so the "
             "pocket is "
             "renewed at each wash.",
             call<airPocketDays>)
        .takes(daysTakes)
        .gives("day/event", "days between renewals")
        .by("oxygen / (use * taken_up)")
        .from(daysSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(daysCautions)
        .safely(headSafety);

constinit const puteal_function airPocketVolumeRow =
    Function("air_pocket_volume", "Room an air pocket takes",
             "Room that air takes after the water is put under pressure.", call<airPocketVolume>)
        .takes(volumeTakes)
        .gives("gal", "air under pressure")
        .by("volume * air / (pressure + air)")
        .from(volumeSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .safely(headSafety);

} // namespace oxygen
