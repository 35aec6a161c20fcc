/// Expectations of a sheet held against values.
#include <cmath>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/number.h"
#include "compile/error_number.h"
#include "compile/shown_text.h"
#include "recalc/program_model.h"
#include "units/shown_quantity.h"

namespace puteal
{

namespace
{

constexpr double usualTolerance = 1e-9; ///< relative, where an expectation gives none

struct Wanted {
    StaticType type;
    double number = 0.0;
    std::string words;
};

/// Splits "25 gpg within 1 %": the last " within " outside quotes.
std::pair<std::string, std::string> split(const std::string &tail)
{
    bool quoted = false;
    std::size_t at = std::string::npos;
    for (std::size_t i = 0; i < tail.size(); ++i) {
        if (tail[i] == '"')
            quoted = !quoted;
        else if (!quoted && tail.compare(i, 8, " within ") == 0)
            at = i;
    }
    return at == std::string::npos ? std::pair(tail, std::string())
                                   : std::pair(tail.substr(0, at), tail.substr(at + 8));
}

class Holding
{
public:
    Holding(const Model &model, const Values &values, std::uint32_t sheet)
        : m_model(model), m_values(values), m_types(model), m_host(model, values), m_sheet(sheet)
    {
    }

    Program::ExpectationResult hold(const Expectation &expectation)
    {
        Program::ExpectationResult result;
        const auto refuse = [&](Error error) {
            result.words = fmt::format("{}: {}", expectation.reference, error.words);
            result.error = std::move(error);
            return result;
        };
        const auto node = nodeOf(expectation.reference);
        if (!node)
            return refuse(node.error());
        const auto [valueText, toleranceText] = split(expectation.tail);
        const CellType &type = m_model.typeOf(*node);
        const auto wanted = read(valueText, type);
        if (!wanted)
            return refuse(wanted.error());
        double tolerance = usualTolerance * std::fabs(wanted->number);
        if (!toleranceText.empty()) {
            const auto told = toleranceOf(toleranceText, *wanted, type);
            if (!told)
                return refuse(told.error());
            tolerance = *told;
        }
        const double number = m_values.number[*node];
        if (std::isnan(number)) {
            result.words =
                fmt::format("{} has no value, expected {}", expectation.reference, expectation.tail);
            return result;
        }
        result.met = meets(number, type.type, *wanted, tolerance);
        result.words = result.met
                           ? fmt::format("{} is {} as expected", expectation.reference, shown(*node, number))
                           : fmt::format("{} is {}, expected {}", expectation.reference, shown(*node, number),
                                         expectation.tail);
        return result;
    }

private:
    CheckContext context() const { return checkContext(m_model, {m_sheet, 0, 0}, m_types); }

    Result<NodeId> nodeOf(const std::string &reference) const
    {
        auto tree = parseText(m_model, reference, false, m_sheet);
        if (!tree)
            return tl::unexpected<Error>(std::move(tree.error()));
        auto binding = bindAt(m_model, *tree, {m_sheet, 0, 0});
        if (!binding)
            return tl::unexpected<Error>(std::move(binding.error()));
        if (tree->nodes[tree->root].kind != NodeKind::reference || binding->references.at(0).isRange)
            return fail(ErrorKind::syntax, "an expectation names one cell");
        return m_model.layout.nodeOf(binding->references[0].cell);
    }

    Result<Wanted> read(const std::string &text, const CellType &type) const
    {
        const TypedContext typedContext{&m_model.units, &m_model.lists, type.type.list, nullptr};
        const auto typed = readTyped(text, typedContext);
        if (typed && typed->form == TypedForm::value) {
            TypedValue value = typed->value;
            const bool bothAmounts =
                value.type.kind == ValueKind::quantity && type.type.kind == ValueKind::quantity;
            if (bothAmounts && value.type.quantity.dimension != type.type.quantity.dimension)
                return fail(ErrorKind::unit, fmt::format("`{}` is another kind of amount than the cell ({})",
                                                         text, typeWords(type.type.quantity, m_model.units)));
            if (!bothAmounts && value.type.kind != type.type.kind && type.type.kind != ValueKind::blank)
                return fail(ErrorKind::kind,
                            fmt::format("`{}` is not the kind of value the cell holds", text));
            return Wanted{value.type, value.number, value.words};
        }
        auto tree = parseText(m_model, text, false, m_sheet);
        if (!tree)
            return tl::unexpected<Error>(std::move(tree.error()));
        CheckContext wanted = context();
        wanted.expected = type.type;
        wanted.choiceList = type.type.list;
        LooseResult loose = workLoose(m_model, m_values, std::move(*tree), wanted, noNode);
        if (loose.error)
            return tl::unexpected<Error>(std::move(*loose.error));
        return Wanted{loose.checked->type, loose.number, loose.words};
    }

    /// "1 %" is a share of the value expected, "0.5 gpg" a difference.
    Result<double> toleranceOf(const std::string &text, const Wanted &wanted, const CellType &type) const
    {
        const auto typed = readTyped(text, TypedContext{&m_model.units, &m_model.lists, 0, nullptr});
        if (!typed || typed->form != TypedForm::value || typed->value.type.kind != ValueKind::quantity)
            return fail(ErrorKind::syntax, fmt::format("`{}` is no tolerance: write 1 % or an amount", text));
        const TypedValue &value = typed->value;
        if (value.unit.text == "%")
            return value.number * std::fabs(wanted.number);
        if (value.type.quantity.dimension != type.type.quantity.dimension)
            return fail(ErrorKind::unit, fmt::format("the tolerance `{}` does not fit the cell ({})", text,
                                                     typeWords(type.type.quantity, m_model.units)));
        return value.number;
    }

    bool meets(double number, const StaticType &type, const Wanted &wanted, double tolerance) const
    {
        if (type.kind != wanted.type.kind || type.bound != wanted.type.bound)
            return false;
        if (type.kind == ValueKind::words)
            return m_host.words(static_cast<std::uint32_t>(number)) == wanted.words;
        if (type.kind != ValueKind::quantity)
            return nearlyEqual(number, wanted.number);
        return std::fabs(number - wanted.number) <=
               tolerance + limits::slack * std::max(std::fabs(number), std::fabs(wanted.number));
    }

    std::string shown(NodeId node, double number) const
    {
        const ShownFacts facts = m_host.shownFacts(node);
        if (facts.type.kind != ValueKind::quantity)
            return shownForReason(m_host, facts.type, facts.unit, number);
        constexpr int figures = 6;
        return showTrimmed(number, facts.type.bound, facts.unit, figures).text();
    }

    const Model &m_model;
    const Values &m_values;
    ModelTypes m_types;
    LookingHost m_host;
    std::uint32_t m_sheet;
};

} // namespace

std::vector<Program::ExpectationResult> ProgramModel::expectations(const Workbook &workbook,
                                                                   const Values &values) const
{
    std::vector<ExpectationResult> results;
    for (std::uint32_t s = 0; s < workbook.sheets.size(); ++s) {
        Holding holding(m_model, values, s);
        for (std::uint32_t i = 0; i < workbook.sheets[s].expectations.size(); ++i) {
            results.push_back(holding.hold(workbook.sheets[s].expectations[i]));
            results.back().sheet = s;
            results.back().index = i;
        }
    }
    return results;
}

} // namespace puteal
