/// Demands, acid and solids from balanced equations with atomic weights typed here.
#include <map>

#include <QProcess>
#include <QStandardPaths>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

/// Five figures [IUPAC 2021, abridged; Prohaska and others 2022, Pure Appl. Chem. 94:573; recalled].
const std::map<std::string, double> weights{
    {"H", 1.0080}, {"C", 12.011}, {"N", 14.007},  {"O", 15.999},  {"Na", 22.990}, {"S", 32.06},
    {"Cl", 35.45}, {"K", 39.098}, {"Ca", 40.078}, {"Mn", 54.938}, {"Fe", 55.845},
};

/// Atoms and charge of a side, of a species or of a formula.
struct Count {
    std::map<std::string, double> atoms;
    double charge = 0;
    void add(const Count &other, double times)
    {
        for (const auto &[atom, n] : other.atoms)
            atoms[atom] += times * n;
        charge += times * other.charge;
    }
    double mass() const
    {
        double sum = 0;
        for (const auto &[atom, n] : atoms)
            sum += n * weights.at(atom);
        return sum;
    }
};

double figure(const std::string &text, std::size_t &i)
{
    double n = 0;
    bool any = false;
    for (; i < text.size() && std::isdigit(static_cast<unsigned char>(text[i])); ++i, any = true)
        n = 10 * n + (text[i] - '0');
    return any ? n : 1;
}

/// "Fe(OH)3", "SO4^2-", "Fe^2+".
Count species(const std::string &text)
{
    Count out, inner;
    bool inside = false;
    for (std::size_t i = 0; i < text.size();) {
        if (text[i] == '(') {
            inside = true;
            ++i;
        } else if (text[i] == ')') {
            inside = false;
            out.add(inner, figure(text, ++i));
            inner = {};
        } else if (text[i] == '^') {
            const double size = figure(text, ++i);
            out.charge = text[i] == '-' ? -size : size;
            ++i;
        } else {
            std::string atom(1, text[i++]);
            if (i < text.size() && std::islower(static_cast<unsigned char>(text[i])))
                atom += text[i++];
            (inside ? inner : out).atoms[atom] += figure(text, i);
        }
    }
    return out;
}

/// An equation read: how many of each species go in (below zero) and come out.
struct Equation {
    std::map<std::string, double> made;
    Count balance;
    explicit Equation(const QString &text)
    {
        double sign = -1;
        for (const QString &part : text.split(' ')) {
            if (part == "=" || part == "+") {
                sign = part == "=" ? 1 : sign;
                continue;
            }
            const std::string word = part.toStdString();
            std::size_t i = 0;
            const double times = sign * figure(word, i);
            made[word.substr(i)] += times;
            balance.add(species(word.substr(i)), times);
        }
    }
    bool balanced() const
    {
        for (const auto &[atom, n] : balance.atoms)
            if (std::fabs(n) > 1e-12)
                return false;
        return std::fabs(balance.charge) < 1e-12;
    }
    double of(const char *name) const
    {
        const auto found = made.find(name);
        return found == made.end() ? 0 : found->second;
    }
};

enum Oxidant {
    chlorine,
    peroxide,
    permanganate,
    ozone,
    oxygen,
    dioxide,
    sodiumBleach,
    limeBleach,
    sodiumPermanganate,
    gas,
    dioxideToChloride
};
enum Target { fe, mn, toSulfur, toSulfate };

/// Reactions of general chemistry; sold as: what a mg of it is a mg of.
struct Reaction {
    Oxidant oxidant;
    Target target;
    const char *equation, *takes, *soldAs;
};
const char *const targets[] = {"Fe^2+", "Mn^2+", "H2S", "H2S"};
const Reaction reactions[] = {
    {oxygen, fe, "4Fe^2+ + O2 + 10H2O = 4Fe(OH)3 + 8H^+", "O2", "O2"},
    {oxygen, mn, "2Mn^2+ + O2 + 2H2O = 2MnO2 + 4H^+", "O2", "O2"},
    {oxygen, toSulfur, "2H2S + O2 = 2S + 2H2O", "O2", "O2"},
    {oxygen, toSulfate, "H2S + 2O2 = SO4^2- + 2H^+", "O2", "O2"},
    {gas, fe, "2Fe^2+ + Cl2 + 6H2O = 2Fe(OH)3 + 2Cl^- + 6H^+", "Cl2", "Cl2"},
    {gas, mn, "Mn^2+ + Cl2 + 2H2O = MnO2 + 2Cl^- + 4H^+", "Cl2", "Cl2"},
    {gas, toSulfur, "H2S + Cl2 = S + 2Cl^- + 2H^+", "Cl2", "Cl2"},
    {gas, toSulfate, "H2S + 4Cl2 + 4H2O = SO4^2- + 8Cl^- + 10H^+", "Cl2", "Cl2"},
    // bleach: a hypochlorite counts as one chlorine
    {chlorine, fe, "2Fe^2+ + ClO^- + 5H2O = 2Fe(OH)3 + Cl^- + 4H^+", "ClO^-", "Cl2"},
    {chlorine, mn, "Mn^2+ + ClO^- + H2O = MnO2 + Cl^- + 2H^+", "ClO^-", "Cl2"},
    {chlorine, toSulfur, "H2S + ClO^- = S + Cl^- + H2O", "ClO^-", "Cl2"},
    {chlorine, toSulfate, "H2S + 4ClO^- = SO4^2- + 4Cl^- + 2H^+", "ClO^-", "Cl2"},
    {sodiumBleach, fe, "2Fe^2+ + ClO^- + 5H2O = 2Fe(OH)3 + Cl^- + 4H^+", "ClO^-", "NaClO"},
    {sodiumBleach, toSulfate, "H2S + 4ClO^- = SO4^2- + 4Cl^- + 2H^+", "ClO^-", "NaClO"},
    {limeBleach, fe, "4Fe^2+ + Ca(ClO)2 + 10H2O = 4Fe(OH)3 + Ca^2+ + 2Cl^- + 8H^+", "Ca(ClO)2", "Ca(ClO)2"},
    {limeBleach, mn, "2Mn^2+ + Ca(ClO)2 + 2H2O = 2MnO2 + Ca^2+ + 2Cl^- + 4H^+", "Ca(ClO)2", "Ca(ClO)2"},
    {peroxide, fe, "2Fe^2+ + H2O2 + 4H2O = 2Fe(OH)3 + 4H^+", "H2O2", "H2O2"},
    {peroxide, toSulfur, "H2S + H2O2 = S + 2H2O", "H2O2", "H2O2"},
    {peroxide, toSulfate, "H2S + 4H2O2 = SO4^2- + 4H2O + 2H^+", "H2O2", "H2O2"},
    {permanganate, fe, "3Fe^2+ + MnO4^- + 7H2O = 3Fe(OH)3 + MnO2 + 5H^+", "MnO4^-", "KMnO4"},
    {permanganate, mn, "3Mn^2+ + 2MnO4^- + 2H2O = 5MnO2 + 4H^+", "MnO4^-", "KMnO4"},
    {permanganate, toSulfur, "3H2S + 2MnO4^- + 2H^+ = 3S + 2MnO2 + 4H2O", "MnO4^-", "KMnO4"},
    {permanganate, toSulfate, "3H2S + 8MnO4^- + 2H^+ = 3SO4^2- + 8MnO2 + 4H2O", "MnO4^-", "KMnO4"},
    {sodiumPermanganate, fe, "3Fe^2+ + MnO4^- + 7H2O = 3Fe(OH)3 + MnO2 + 5H^+", "MnO4^-", "NaMnO4"},
    {sodiumPermanganate, mn, "3Mn^2+ + 2MnO4^- + 2H2O = 5MnO2 + 4H^+", "MnO4^-", "NaMnO4"},
    {ozone, fe, "2Fe^2+ + O3 + 5H2O = 2Fe(OH)3 + O2 + 4H^+", "O3", "O3"},
    {ozone, mn, "Mn^2+ + O3 + H2O = MnO2 + O2 + 2H^+", "O3", "O3"},
    {ozone, toSulfur, "H2S + O3 = S + O2 + H2O", "O3", "O3"},
    {ozone, toSulfate, "H2S + 4O3 = SO4^2- + 4O2 + 2H^+", "O3", "O3"},
    {dioxide, fe, "Fe^2+ + ClO2 + 3H2O = Fe(OH)3 + ClO2^- + 3H^+", "ClO2", "ClO2"},
    {dioxide, mn, "Mn^2+ + 2ClO2 + 2H2O = MnO2 + 2ClO2^- + 4H^+", "ClO2", "ClO2"},
    {dioxide, toSulfur, "H2S + 2ClO2 = S + 2ClO2^- + 2H^+", "ClO2", "ClO2"},
    {dioxide, toSulfate, "H2S + 8ClO2 + 4H2O = SO4^2- + 8ClO2^- + 10H^+", "ClO2", "ClO2"},
    {dioxideToChloride, fe, "5Fe^2+ + ClO2 + 13H2O = 5Fe(OH)3 + Cl^- + 11H^+", "ClO2", "ClO2"},
    {dioxideToChloride, mn, "5Mn^2+ + 2ClO2 + 6H2O = 5MnO2 + 2Cl^- + 12H^+", "ClO2", "ClO2"},
    {dioxideToChloride, toSulfate, "5H2S + 8ClO2 + 4H2O = 5SO4^2- + 8Cl^- + 18H^+", "ClO2", "ClO2"},
};
constexpr double tolerance = 5e-5; // five-figure weights

QString run(const QString &program, const QStringList &arguments)
{
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished();
    return QString::fromUtf8(process.readAllStandardOutput()).trimmed();
}

} // namespace

class StoichiometryReferenceTest : public QObject
{
    Q_OBJECT

private slots:
    void reactionsAreBalanced()
    {
        for (const Reaction &reaction : reactions)
            QVERIFY2(Equation(reaction.equation).balanced(), reaction.equation);
        QVERIFY(!Equation("Fe^2+ + O2 = Fe(OH)3").balanced());
        QVERIFY(!Equation("Fe^2+ = Fe^3+").balanced());
    }

    void demandsFromBalancedEquations()
    {
        const Plugin oxidation("oxidation");
        for (const Reaction &reaction : reactions) {
            const Equation equation(reaction.equation);
            const double target = -equation.of(targets[reaction.target]);
            const double asMass = target * species(targets[reaction.target]).mass();
            const double demand = -equation.of(reaction.takes) * species(reaction.soldAs).mass() / asMass;
            const std::vector<Given> given{double(reaction.oxidant), double(reaction.target == fe),
                                           double(reaction.target == mn), double(reaction.target >= toSulfur),
                                           reaction.target == toSulfate ? 2.0 : 1.0};
            const Answer ours = oxidation.call("oxidant_demand", given);
            QVERIFY2(
                std::fabs(ours.number / demand - 1) < tolerance,
                qPrintable(QString("%1: %2, not %3").arg(reaction.equation).arg(ours.number).arg(demand)));
            // a mole of acid takes half a mole of calcium carbonate
            const double acid = equation.of("H^+") * species("CaCO3").mass() / 2 / asMass;
            const Answer alkalinity = oxidation.call("alkalinity_consumed", given);
            QVERIFY2(
                std::fabs(alkalinity.number - acid) < tolerance * std::max(1.0, std::fabs(acid)),
                qPrintable(
                    QString("%1: acid %2, not %3").arg(reaction.equation).arg(alkalinity.number).arg(acid)));
        }
    }

    void solidsFromBalancedEquations()
    {
        const Plugin oxidation("oxidation");
        for (const Reaction &reaction : reactions) {
            if (reaction.oxidant == sodiumPermanganate || reaction.target == toSulfate)
                continue; // the function counts potassium permanganate, and sulfide as sulfur
            const Equation equation(reaction.equation);
            double solids = 0;
            for (const char *solid : {"Fe(OH)3", "MnO2", "S"})
                solids += equation.of(solid) * species(solid).mass();
            const double asMass =
                -equation.of(targets[reaction.target]) * species(targets[reaction.target]).mass();
            const double fed = reaction.oxidant == permanganate
                                   ? -equation.of("MnO4^-") * species("KMnO4").mass() / asMass
                                   : 0.0;
            const Answer ours =
                oxidation.call("solids_made", {double(reaction.target == fe), double(reaction.target == mn),
                                               double(reaction.target == toSulfur), fed});
            QVERIFY2(std::fabs(ours.number / (solids / asMass) - 1) < tolerance, reaction.equation);
        }
    }

    void oxygenBudgetFromBalancedEquations()
    {
        const Plugin oxygenPlugin("oxygen");
        // ammonia to nitrate
        const Equation nitrification("NH3 + 2O2 = NO3^- + H^+ + H2O");
        QVERIFY(nitrification.balanced());
        const double perNitrogen = -nitrification.of("O2") * species("O2").mass() / species("N").mass();
        const Answer ours = oxygenPlugin.call("oxygen_budget", {0.0, 0.0, 0.0, 1.0});
        QVERIFY(std::fabs(ours.number / perNitrogen - 1) < tolerance);
        // ammonia to nitrogen by chlorine
        const Equation breakpoint("2NH3 + 3Cl2 = N2 + 6Cl^- + 6H^+");
        QVERIFY(breakpoint.balanced());
        const double chlorineNeed = -breakpoint.of("Cl2") * species("Cl2").mass() / (2 * species("N").mass());
        const Answer demand = Plugin("oxidation").call("ammonia_chlorine_demand", {1.0});
        QVERIFY(std::fabs(demand.number / chlorineNeed - 1) < tolerance);
    }

    void softeningAndNeutralizingFromFormulas()
    {
        const double hardness = species("CaCO3").mass(), dioxideMass = species("CO2").mass();
        const Plugin quality("quality"), softening("softening");
        constexpr double gpg = 64.79891 / 3.785411784; // mg/L [NIST Handbook 44, appendix C]
        const auto is = [](const Plugin &plugin, const char *name, std::vector<Given> given, double value) {
            const Answer answer = plugin.call(name, given);
            return !answer.refused && std::fabs(answer.number / value - 1) < tolerance;
        };
        QVERIFY(is(quality, "calcite_hardness_added", {1.0}, hardness / dioxideMass));
        QVERIFY(is(quality, "soda_ash_dose", {1.0}, species("Na2CO3").mass() / dioxideMass));
        QVERIFY(is(softening, "sodium_added", {1.0}, gpg * 2 * species("Na").mass() / hardness));
        QVERIFY(is(softening, "potassium_added", {1.0}, gpg * 2 * species("K").mass() / hardness));
        QVERIFY(is(softening, "exchange_load", {0.0, 1.0}, hardness / species("Fe").mass() / gpg));
        QVERIFY(is(softening, "exchange_load", {0.0, 0.0, 1.0}, hardness / species("Mn").mass() / gpg));
    }

    /// GNU units carries older weights: the same to four figures.
    void weightsAgainstGnuUnits()
    {
        const QString units = QStandardPaths::findExecutable("units");
        if (units.isEmpty())
            QSKIP("GNU units is not installed");
        const std::map<std::string, const char *> names{
            {"H", "hydrogen"}, {"C", "carbon"},     {"N", "nitrogen"},  {"O", "oxygen"},
            {"Na", "sodium"},  {"S", "sulfur"},     {"Cl", "chlorine"}, {"K", "potassium"},
            {"Ca", "calcium"}, {"Mn", "manganese"}, {"Fe", "iron"}};
        for (const auto &[atom, weight] : weights) {
            bool good = false;
            const double theirs = run(units, {"-1", "-t", "--digits", "12", names.at(atom)}).toDouble(&good);
            QVERIFY2(good && std::fabs(theirs / weight - 1) < 3e-4, atom.c_str());
        }
    }
};

QTEST_APPLESS_MAIN(StoichiometryReferenceTest)
#include "stoichiometry_reference_test.moc"
