/// CT that a contact tank reaches, the tank a CT needs, and the log inactivation that goes with it. (R4, R5)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

double ctValue(double residual, double volume, double flow, double baffling, Reply &reply)
{
    cautionHealth(reply);
    cautionBaffling(baffling, reply);
    return residual * volume / flow * baffling;
}

double ctContactVolume(double required, double residual, double flow, double baffling, Reply &reply)
{
    cautionHealth(reply);
    cautionBaffling(baffling, reply);
    return required / residual * flow / baffling;
}

double logInactivation(double reached, double required, double log, Reply &reply)
{
    cautionHealth(reply);
    return log * reached / required;
}

constexpr Parameter residualParameter =
    Parameter("residual", "mg/L as Cl2", "free chlorine at the end of the contact, not the dose")
        .hard(0.01, 10)
        .usual(0.2, 4);
constexpr Parameter flowParameter =
    Parameter("peak_flow", "gpm", "peak flow through the tank").hard(0.01, 1000).usual(1, 30);
constexpr puteal_parameter valueTakes[] = {
    residualParameter,
    Parameter("volume", "gal", "water in the contact tank").hard(0, 100000).usual(20, 1000),
    flowParameter,
    bafflingParameter,
};
constexpr const char *ctSources[] = {"epa_ct_instructions", "baffling_table", "geometry", nullptr};
constexpr puteal_example valueExamples[] = {
    example("ct_value(0.8 mg/L as Cl2, 120 gal, 7 gpm)", "4.11429 (mg*min)/L as Cl2", 1e-5, "computed",
            "geometry"),
    example("ct_value(0.5 mg/L as Cl2, 400 gal, 10 gpm, 0.3)", "6 (mg*min)/L as Cl2", 1e-9, "computed",
            "geometry"),
};
constexpr puteal_example valueRefusals[] = {
    refusal("ct_value(0.8 mg/L as Cl2, 120 gal, 0 gpm)",
            "`peak_flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr puteal_caution ctCautions[] = {healthCaution, bafflingCaution};

constexpr Parameter requiredParameter =
    Parameter("ct_required", "(mg*min)/L as Cl2", "see virus_ct_required and giardia_ct_required")
        .hard(0.1, 1000)
        .usual(1, 600);
constexpr puteal_parameter volumeTakes[] = {requiredParameter, residualParameter, flowParameter,
                                            bafflingParameter};
constexpr puteal_example volumeExamples[] = {
    example("ct_contact_volume(6 (mg*min)/L as Cl2, 0.5 mg/L as Cl2, 10 gpm)", "400 gal", 1e-9, "computed",
            "geometry"),
    example("ct_contact_volume(virus_ct_required(4, 7.5, 10 degC), 1 mg/L as Cl2, 10 gpm)", "200 gal", 1e-9,
            "computed", "geometry"),
    example("ct_contact_volume(6 (mg*min)/L as Cl2, 0.5 mg/L as Cl2, 5 gpm, 0.1)", "600 gal", 1e-9,
            "computed", "geometry"),
    example("ct_contact_volume(virus_ct_required(4, 7.5, 12 degC, \"interpolated\"), 0.8 mg/L as Cl2, 7 gpm)",
            "151.667 gal", 1e-5, "computed", "geometry"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("ct_contact_volume(6 (mg*min)/L as Cl2, 0 mg/L as Cl2, 10 gpm)",
            "`residual` must be at least 0.01 mg/L as Cl2; it is 0 mg/L as Cl2"),
};

constexpr puteal_parameter logTakes[] = {
    Parameter("ct", "(mg*min)/L as Cl2", "CT reached, see ct_value").hard(0, 100000).usual(0, 1000),
    requiredParameter,
    Parameter("log_required", "",
              "log inactivation the required CT was read for: 4 for viruses, 3 for Giardia as a rule")
        .hard(0.1, 6)
        .usual(0.5, 4),
};
constexpr puteal_example logExamples[] = {
    example("log_inactivation(4.11429 (mg*min)/L as Cl2, 5.2 (mg*min)/L as Cl2, 4)", "3.16484", 1e-5,
            "computed", "geometry"),
    example("log_inactivation(46 (mg*min)/L as Cl2, 92 (mg*min)/L as Cl2, 3)", "1.5", 1e-9, "computed",
            "geometry"),
};
constexpr puteal_example logRefusals[] = {
    refusal("log_inactivation(4 (mg*min)/L as Cl2, 0 (mg*min)/L as Cl2, 4)",
            "`ct_required` must be at least 0.1 (mg*min)/L as Cl2; it is 0 (mg*min)/L as Cl2"),
};
constexpr puteal_caution logCautions[] = {healthCaution};

} // namespace

constinit const puteal_function ctValueRow =
    Function("ct_value", "CT reached",
             "Free chlorine at the end of a contact tank times the minutes that count at peak flow.",
             call<ctValue>)
        .takes(valueTakes)
        .gives("(mg*min)/L as Cl2", "CT of the tank")
        .by("residual * baffling * volume / peak_flow")
        .from(ctSources)
        .shownBy(valueExamples)
        .refusing(valueRefusals)
        .warning(ctCautions)
        .safely(disinfectionSafety);

constinit const puteal_function ctContactVolumeRow =
    Function("ct_contact_volume", "Contact tank for a CT",
             "Water a contact tank must hold to reach a CT at peak flow.", call<ctContactVolume>)
        .takes(volumeTakes)
        .gives("gal", "water in the contact tank")
        .by("ct_required / residual * peak_flow / baffling")
        .from(ctSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .warning(ctCautions)
        .safely(disinfectionSafety);

constinit const puteal_function logInactivationRow =
    Function("log_inactivation", "Log inactivation by CT",
             "Powers of ten that a public supply may count for a CT, in proportion to what its table asks.",
             call<logInactivation>)
        .takes(logTakes)
        .gives("", "log inactivation")
        .by("log_required * ct / ct_required")
        .from(ctSources)
        .shownBy(logExamples)
        .refusing(logRefusals)
        .warning(logCautions)
        .safely(disinfectionSafety);

} // namespace dosing
