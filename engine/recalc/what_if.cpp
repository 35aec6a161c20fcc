/// Evaluation with inputs replaced: as typed values of the same type, else in a copy of the program.
#include <fmt/format.h>

#include "recalc/program_model.h"

namespace puteal
{

namespace
{

struct Replacement {
    NodeId node = noNode;
    double number = 0.0;
};

/// Reads an override as if typed; `sameType` stays true while a plain number will do.
Result<Replacement> readOverride(const Model &model, const Override &given, bool &sameType)
{
    const NodeId node = model.layout.nodeOf(given.at);
    if (node == noNode)
        return fail(ErrorKind::range, "there is no such cell");
    if (model.book.sheets[given.at.sheet].column(given.at.column).kind == ColumnKind::words) {
        sameType = false;
        return Replacement{node, 0.0};
    }
    const std::string name = cellWords(model, node, given.at.sheet);
    const CellContext context = contextOf(model, given.at);
    auto typed =
        readTyped(given.text, TypedContext{&model.units, &model.lists, context.list, context.setUnit});
    if (!typed)
        return tl::unexpected<Error>(std::move(typed.error()));
    if (typed->form == TypedForm::formula)
        return fail(ErrorKind::use,
                    fmt::format("`{}` takes a value here, and `{}` is none: write an amount with its unit",
                                name, given.text));
    if (typed->form == TypedForm::blank) {
        sameType = false;
        return Replacement{node, 0.0};
    }
    if (context.setUnit && typed->value.type.kind == ValueKind::quantity)
        if (auto misfit = fitSetUnit(*context.setUnit, typed->value, given.text))
            return tl::unexpected<Error>(std::move(*misfit));
    if (model.content[node] != Content::number || !(model.typeOf(node).type == typed->value.type))
        sameType = false;
    return Replacement{node, typed->value.number};
}

} // namespace

Result<Values> ProgramModel::evaluate(const std::vector<Override> &overrides) const
{
    bool sameType = true;
    std::vector<Replacement> replacements;
    for (const Override &given : overrides) {
        auto read = readOverride(m_model, given, sameType);
        if (!read)
            return tl::unexpected<Error>(std::move(read.error()));
        replacements.push_back(*read);
    }
    if (sameType) {
        Values values;
        Evaluator evaluator(m_model, values);
        evaluator.fill();
        for (const Replacement &replacement : replacements)
            evaluator.setNumber(replacement.node, replacement.number);
        evaluator.workAll();
        return values;
    }
    // Types differ: checked again in a copy, as an edit would be.
    Model copy = m_model;
    Workbook book = m_model.book;
    std::vector<CellAt> edited;
    for (const Override &given : overrides) {
        Cell cell = book.sheets[given.at.sheet].cell(given.at.column, given.at.line);
        cell.text = given.text.empty() ? nullptr : std::make_shared<const std::string>(given.text);
        book.sheets[given.at.sheet].setCell(given.at.column, given.at.line, std::move(cell));
        edited.push_back(given.at);
    }
    Values values = evaluate();
    updateModel(copy, book, edited, values);
    return values;
}

} // namespace puteal
