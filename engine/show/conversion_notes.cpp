/// Which conversions a calculation went through: units of one dimension that differ between what goes in and
/// out.
#include <algorithm>

#include <fmt/format.h>

#include "base/number.h"
#include "show/calculation_cell.h"
#include "units/unit_tree.h"

namespace puteal
{

namespace
{

constexpr int noteFigures = 4;

/// A unit by its text, factor and dimension: whole units, or one word to a power.
struct Measure {
    std::string text;
    double factor;
    Dimension dimension;
};

bool counts(const Unit &unit)
{
    return !unit.text.empty() && unit.type.scale == Scale::plain && !unit.isMoney();
}

void addOnce(std::vector<Unit> &units, const Unit &unit)
{
    const auto same = [&](const Unit &other) { return other.text == unit.text; };
    if (counts(unit) && std::none_of(units.begin(), units.end(), same))
        units.push_back(unit);
}

/// Units of the literals and of the cells a formula reads.
std::vector<Unit> unitsIn(const CalculationCell &cell)
{
    std::vector<Unit> units;
    const Tree &tree = *cell.facts.tree;
    for (const Node &node : tree.nodes) {
        if (node.kind == NodeKind::number)
            addOnce(units, tree.units[node.unit]);
        if (node.kind != NodeKind::reference || !cell.facts.binding)
            continue;
        const BoundReference &reference = cell.facts.binding->references[node.extra];
        const CellAt at = reference.isRange
                              ? CellAt{reference.range.sheet, reference.range.column, reference.range.first}
                              : reference.cell;
        const NodeId other = cell.program.nodeOf(at);
        if (other != noNode && cell.program.facts(other).type.kind == ValueKind::quantity)
            addOnce(units, cell.program.facts(other).shown);
    }
    return units;
}

/// The words of a unit, each with its own power as a measure.
void addWords(const UnitPart &part, std::vector<Measure> &words)
{
    for (const auto *list : {&part.top, &part.bottom})
        for (const UnitPart &p : *list) {
            if (!p.word) {
                addWords(p, words);
                continue;
            }
            UnitPart alone;
            alone.top.push_back(p);
            alone.top[0].numerator = std::abs(p.numerator);
            alone.top[0].substance = -1;
            const auto unit = unitOf(alone);
            if (!unit || !counts(*unit) || unit->type.dimension.isPure())
                continue;
            const auto same = [&](const Measure &m) { return m.text == unit->text; };
            if (std::none_of(words.begin(), words.end(), same))
                words.push_back({unit->text, unit->factor, unit->type.dimension});
        }
}

std::string noteFor(const Measure &a, const Measure &b)
{
    const double ratio = a.factor / b.factor;
    const bool up = ratio >= 1;
    return fmt::format("{} {} per {}", trimZeros(toFigures(up ? ratio : 1 / ratio, noteFigures)),
                       up ? b.text : a.text, up ? a.text : b.text);
}

std::string withoutSubstance(const std::string &text)
{
    return text.substr(0, text.find(" as "));
}

} // namespace

std::vector<std::string> conversionNotes(const CalculationCell &cell)
{
    std::vector<std::string> notes;
    const auto add = [&](const Measure &a, const Measure &b) {
        if (a.dimension != b.dimension || a.dimension.isPure() || a.text == b.text ||
            nearlyEqual(a.factor, b.factor))
            return false;
        const std::string note = noteFor(a, b);
        if (std::find(notes.begin(), notes.end(), note) == notes.end())
            notes.push_back(note);
        return true;
    };
    std::vector<Unit> units = unitsIn(cell);
    if (cell.facts.type.kind == ValueKind::quantity && counts(cell.facts.shown)) {
        const Unit &out = cell.facts.shown;
        const Measure result{withoutSubstance(out.text), out.factor, out.type.dimension};
        for (const Unit &in : units)
            add({withoutSubstance(in.text), in.factor, in.type.dimension}, result);
        addOnce(units, out);
    }
    if (!notes.empty())
        return notes;
    std::vector<Measure> words;
    for (const Unit &unit : units)
        addWords(treeOf(unit, cell.program.units()), words);
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (add(words[i], words[j]))
                break;
    return notes;
}

} // namespace puteal
