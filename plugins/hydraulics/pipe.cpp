/// Pipe friction by Darcy and Weisbach, fittings and valves. (R1)
#include "hydraulics.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

constexpr double gravity = 9.80665;     // m/s^2, standard [NIST SP 811, appendix B]
constexpr double meterPerFoot = 0.3048; // exact [NIST SP 811, appendix B]
constexpr double cubicMeterPerSecondPerGpm =
    measure::literPerGallon / 1000.0 / 60.0; // exact [NIST Handbook 44, appendix C]
constexpr const char *methodWords[] = {"Colebrook", "Swamee and Jain", nullptr};
enum Method : int { colebrook, swameeJain };
constexpr double laminarTo = 2000, turbulentFrom = 4000; // Reynolds numbers [fluid mechanics textbooks]

/// m/s from gpm and in.
double velocity(double flow, double diameter)
{
    const double d = diameter * measure::mmPerInch / 1000.0;
    return flow * cubicMeterPerSecondPerGpm / (measure::pi / 4.0 * d * d);
}

double reynoldsNumber(double flow, double diameter, double temperature)
{
    const double d = diameter * measure::mmPerInch / 1000.0;
    return water::density(temperature) * velocity(flow, diameter) * d /
           (water::viscosity(temperature) / 1000.0);
}

double turbulentFactor(double reynolds, double roughness, int method)
{
    if (method == swameeJain) { // [Swamee and Jain 1976, recalled]
        const double root = std::log10(roughness / 3.7 + 5.74 / std::pow(reynolds, 0.9));
        return 0.25 / (root * root);
    }
    // Newton's steps on x = 1/sqrt(f); the relation is convex there, so they settle within a few.
    double x = 8.0;
    for (int step = 0; step < 50; ++step) {
        const double inner = roughness / 3.7 + 2.51 * x / reynolds; // [Colebrook, as printed by Clamond 2009]
        const double miss = x + 2.0 * std::log10(inner);
        const double slope = 1.0 + 2.0 / std::log(10.0) * 2.51 / reynolds / inner;
        const double next = x - miss / slope;
        if (std::fabs(next - x) <= 1e-15 * x)
            return 1.0 / (next * next);
        x = next;
    }
    return 1.0 / (x * x);
}

double frictionFactor(double reynolds, double roughness, int method, Reply &reply)
{
    constexpr double laminar = 64.0; // f * Re of laminar flow [Hagen and Poiseuille]
    if (lessThan(reynolds, laminarTo))
        return laminar / reynolds;
    if (lessThan(reynolds, turbulentFrom)) {
        reply.caution("transition", "between a Reynolds number of 2000 and 4000 the flow may be either: the "
                                    "factor is drawn straight between them");
        const double low = laminar / laminarTo, high = turbulentFactor(turbulentFrom, roughness, method);
        return low + (high - low) * (reynolds - laminarTo) / (turbulentFrom - laminarTo);
    }
    const bool stated =
        atMost(5e3, reynolds) && atMost(reynolds, 1e8) && atMost(1e-6, roughness) && atMost(roughness, 1e-2);
    if (method == swameeJain && !stated) // [Swamee and Jain 1976, recalled]
        reply.caution("outside", "outside the range this short form was made for: take Colebrook");
    return turbulentFactor(reynolds, roughness, method);
}

double darcyWeisbachLoss(double flow, double diameter, double length, double temperature, double roughness,
                         int method, Reply &reply)
{
    if (atMost(flow, 0))
        return 0.0;
    const double v = velocity(flow, diameter), d = diameter * measure::mmPerInch / 1000.0;
    if (lessThan(8 * meterPerFoot, v)) // [common practice, no source]
        reply.caution("fast", "above 8 ft/s pipes hammer and wear: a wider pipe");
    const double f =
        frictionFactor(reynoldsNumber(flow, diameter, temperature), roughness / 1000.0 / d, method, reply);
    return f * length * meterPerFoot / d * v * v / (2.0 * gravity) / meterPerFoot;
}

double minorLoss(double flow, double diameter, double coefficient)
{
    const double v = velocity(flow, diameter);
    return coefficient * v * v / (2.0 * gravity) / meterPerFoot;
}

double valvePressureLoss(double flow, double coefficient)
{
    return flow / coefficient * (flow / coefficient);
}

constexpr Parameter flowInPipe = Parameter("flow", "gpm", "flow in the pipe").hard(0, 10000).usual(0.5, 50);
constexpr Parameter inside =
    Parameter("diameter", "in", "inside diameter: 1.049 in for 1 in schedule 40").hard(0.1, 48).usual(0.5, 4);
constexpr Parameter cold =
    Parameter("temperature", "degC", "temperature of the water").hard(0, 60).usual(2, 30).otherwise(10, "A");
constexpr Parameter method =
    Parameter("method", "", "Colebrook's own relation or the short form of Swamee and Jain")
        .oneOf(methodWords)
        .otherwise(colebrook, "H");

constexpr puteal_parameter reynoldsTakes[] = {flowInPipe, inside, cold};
constexpr const char *reynoldsSources[] = {"definition", "recalled", nullptr};
constexpr puteal_example reynoldsExamples[] = {
    example("reynolds_number(10 gpm, 1.049 in)", "23059.87", 5e-5, "computed", "definition"),
    example("reynolds_number(5 gpm, 0.824 in)", "14678.28", 5e-5, "computed", "definition"),
};
constexpr puteal_example reynoldsRefusals[] = {
    refusal("reynolds_number(10 gpm, 0 in)", "`diameter` must be at least 0.1 in; it is 0 in")};

constexpr puteal_parameter factorTakes[] = {
    Parameter("reynolds", "", "Reynolds number, see reynolds_number").hard(1, 1e10).usual(500, 1e7),
    Parameter("relative_roughness", "", "height of the roughness over the inside diameter")
        .hard(0, 0.1)
        .usual(0, 0.05),
    method,
};
constexpr const char *factorSources[] = {"clamond_2009", "fluids_docs", "colebrook_module", "recalled",
                                         nullptr};
constexpr puteal_example factorExamples[] = {
    example("friction_factor(100000, 0.0001)", "0.01851386607747165", 1e-13, "published", "fluids_docs"),
    example("friction_factor(128, 0)", "0.5", 1e-12, "published", "fluids_docs"),
    example("friction_factor(60000, 0.0023, \"Swamee and Jain\")", "0.027", 0.005, "published",
            "colebrook_module"),
    example("friction_factor(100000, 0.01)", "0.038503544", 1e-7, "computed", "clamond_2009"),
    example("friction_factor(4000, 0)", "0.039907014", 1e-8, "computed", "clamond_2009"),
    example("friction_factor(100000, 0.001, \"Swamee and Jain\")", "0.022342412", 1e-7, "computed",
            "recalled"),
    example("friction_factor(3000, 0)", "0.035953507", 1e-7, "computed", "definition"),
};
constexpr puteal_example factorRefusals[] = {
    refusal("friction_factor(0, 0)", "`reynolds` must be at least 1; it is 0")};
constexpr puteal_caution factorCautions[] = {
    caution("transition", "Reynolds number between 2000 and 4000"),
    caution("outside", "Swamee and Jain outside 5e3 to 1e8 or a roughness of 1e-6 to 1e-2")};

constexpr puteal_parameter darcyTakes[] = {
    flowInPipe,
    inside,
    Parameter("length", "ft", "length of the pipe").hard(0, 100000).usual(5, 1000),
    cold,
    Parameter("roughness", "mm",
              "drawn plastic or copper 0.0015, steel 0.045, galvanized 0.15, cast iron 0.26")
        .hard(0, 10)
        .usual(0, 0.5)
        .otherwise(0.0015, "R"),
    method,
};
constexpr const char *darcySources[] = {"clamond_2009", "definition", "recalled", nullptr};
constexpr puteal_example darcyExamples[] = {
    example("darcy_weisbach_loss(10 gpm, 1.049 in, 100 ft)", "6.15771 ft_head", 1e-5, "computed",
            "definition"),
    example("darcy_weisbach_loss(5 gpm, 0.824 in, 100 ft)", "5.75339 ft_head", 1e-5, "computed",
            "definition"),
    example("darcy_weisbach_loss(10 gpm, 1.049 in, 100 ft, 10 degC, 0.046 mm)", "7.01533 ft_head", 1e-5,
            "computed", "definition"),
    example("darcy_weisbach_loss(0.5 gpm, 0.824 in, 100 ft)", "0.08930 ft_head", 1e-4, "computed",
            "definition"),
};
constexpr puteal_example darcyRefusals[] = {
    refusal("darcy_weisbach_loss(10 gpm, 1.049 in, -100 ft)",
            "`length` must be at least 0 ft; it is -100 ft"),
};
constexpr puteal_caution darcyCautions[] = {caution("fast", "faster than 8 ft/s"), factorCautions[0],
                                            factorCautions[1]};

constexpr puteal_parameter minorTakes[] = {
    flowInPipe,
    inside,
    Parameter("coefficient", "",
              "sum over the fittings: elbow 0.9, 45-degree 0.4, tee branch 1.8, tee run 0.6, open ball or "
              "gate 0.1, globe 10, "
              "swing check 2.5, sharp entry 0.5, exit 1")
        .hard(0, 10000)
        .usual(0, 50),
};
constexpr const char *minorSources[] = {"definition", "recalled", nullptr};
constexpr puteal_example minorExamples[] = {
    example("minor_loss(10 gpm, 1.049 in, 8)", "1.713293 ft_head", 1e-6, "computed", "definition"),
    example("minor_loss(5 gpm, 0.824 in, 0.9)", "0.126566 ft_head", 1e-4, "computed", "definition"),
};
constexpr puteal_example minorRefusals[] = {
    refusal("minor_loss(10 gpm, 1.049 in, -1)", "`coefficient` must be at least 0; it is -1")};

constexpr puteal_parameter valveTakes[] = {
    flowInPipe,
    Parameter("coefficient", "", "valve coefficient Cv: gpm of water that take 1 psi")
        .hard(0.01, 10000)
        .usual(0.5, 100),
};
constexpr const char *valveSources[] = {"definition", nullptr};
constexpr puteal_example valveExamples[] = {
    example("valve_pressure_loss(10 gpm, 8)", "1.5625 psi", 1e-9, "computed", "definition"),
    example("valve_pressure_loss(19.5959 gpm, 8)", "6 psi", 1e-5, "computed", "definition"),
};
constexpr puteal_example valveRefusals[] = {
    refusal("valve_pressure_loss(10 gpm, 0)", "`coefficient` must be at least 0.01; it is 0")};

} // namespace

constinit const puteal_function reynoldsRow =
    Function("reynolds_number", "Reynolds number of a pipe",
             "Whether the flow in a pipe is laminar (below 2000) or turbulent (above 4000).",
             call<reynoldsNumber>)
        .takes(reynoldsTakes)
        .gives("", "Reynolds number")
        .by("density * velocity * diameter / viscosity")
        .from(reynoldsSources)
        .shownBy(reynoldsExamples)
        .refusing(reynoldsRefusals);

constinit const puteal_function frictionFactorRow =
    Function("friction_factor", "Friction factor of a pipe",
             "Darcy's friction factor; a fourth of it is Fanning's.", call<frictionFactor>)
        .takes(factorTakes)
        .gives("", "Darcy friction factor")
        .by("64 / Re below 2000; 1 / sqrt(f) = -2 log10(relative_roughness / 3.7 + 2.51 / (Re sqrt(f))) "
            "above 4000; straight between")
        .from(factorSources)
        .shownBy(factorExamples)
        .refusing(factorRefusals)
        .warning(factorCautions);

constinit const puteal_function darcyWeisbachRow =
    Function("darcy_weisbach_loss", "Pipe friction by Darcy and Weisbach",
             "Friction of water of a stated temperature in a full pipe. In cold water and smooth pipe it is "
             "11 to 16 % above "
             "Hazen and Williams with C 150; neither is wrong.",
             call<darcyWeisbachLoss>)
        .takes(darcyTakes)
        .gives("ft_head", "friction loss")
        .by("friction_factor * length / diameter * velocity^2 / (2 * g)")
        .from(darcySources)
        .shownBy(darcyExamples)
        .refusing(darcyRefusals)
        .warning(darcyCautions);

constinit const puteal_function minorLossRow =
    Function("minor_loss", "Loss in fittings", "Head that fittings take, by their loss coefficients.",
             call<minorLoss>)
        .takes(minorTakes)
        .gives("ft_head", "loss in the fittings")
        .by("coefficient * velocity^2 / (2 * g)")
        .from(minorSources)
        .shownBy(minorExamples)
        .refusing(minorRefusals);

constinit const puteal_function valveLossRow =
    Function("valve_pressure_loss", "Pressure loss of a valve",
             "Pressure a valve, control head or flow control takes, by its Cv.", call<valvePressureLoss>)
        .takes(valveTakes)
        .gives("psi", "pressure loss")
        .by("(flow / 1 gpm / coefficient)^2 * 1 psi")
        .from(valveSources)
        .shownBy(valveExamples)
        .refusing(valveRefusals)
        .safely(pressureSafety);

} // namespace hydraulics
