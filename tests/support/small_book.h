/// A small workbook of typed cells, their types, and a few functions as plugins declare them: for checker
/// tests.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "check/checker.h"
#include "functions/registry.h"
#include "sheet/workbook.h"

namespace puteal::test
{

/// One cell to put into the workbook.
struct BookCell {
    const char *name;
    const char *typed; ///< "" = blank; "?" = a cell whose formula failed
    const char *unit = "";
    const char *list = "";
};

/// General functions and some that a plugin would bring, described by hand.
class SmallRegistry final : public Registry
{
public:
    explicit SmallRegistry(const UnitTable &units) : m_general(Registry::general(units))
    {
        m_functions.reserve(32);
        const auto iron = quantity("iron", "mg/L as Fe"),
                   manganese = optional(quantity("manganese", "mg/L as Mn"), 0);
        add(units, "compensated_hardness", {quantity("hardness", "gpg"), iron, manganese}, "gpg");
        add(units, "iron_equivalents",
            {iron, quantity("manganese", "mg/L as Mn"), quantity("sulfide", "mg/L as H2S")}, "mg/L as Fe");
        add(units, "oxidant_demand", {oxidant(), iron, manganese}, "mg/L as 'oxidant");
        auto life = quantity("rating", "gal/cartridge");
        add(units, "cartridge_days",
            {life, iron, quantity("use", "gal/day"), optional(quantity("longest", "day/cartridge"), 365)},
            "day/cartridge");
        auto value = quantity("value", "'u");
        value.mayBeMissing = value.mayBeBounded = true;
        add(units, "screen_at_most", {value, quantity("limit", "'u"), optional(quantity("near", "'u"), 0)},
            "", {"works", "marginal", "cannot tell yet", "will not work"});
        add(units, "feed_rate", {quantity("flow", "gpm"), quantity("dose", "'u"), quantity("strength", "'u")},
            "gal/day");
        add(units, "oxygen_saturation",
            {quantity("temperature", "degC"), optional(quantity("pressure", "psi_abs"), 14.696)},
            "mg/L as O2");
        auto points = quantity("years", "yr");
        points.range = true;
        add(units, "last_year", {points}, "yr");
        add(units, "yearly_use", {quantity("use", "gal/day"), quantity("days", "day/yr")}, "gal/yr");
    }
    const FunctionInfo *find(std::string_view name) const override
    {
        for (const FunctionInfo &f : m_functions)
            if (f.name == name)
                return &f;
        return m_general->find(name);
    }
    std::span<const FunctionInfo> functions() const override { return m_functions; }
    const std::vector<PluginInfo> &plugins() const override { return m_general->plugins(); }
    std::vector<std::string> closestNames(std::string_view name) const override
    {
        return m_general->closestNames(name);
    }
    Result<puteal_call> callOf(const FunctionInfo &) const override
    {
        return fail(ErrorKind::plugin, "no code here");
    }
    Error whyNot(std::string_view name) const override
    {
        if (name == "iron_hours")
            return Error{ErrorKind::plugin,
                         "`iron_hours` needs the plugin \"iron kinetics\", which is not enabled",
                         {},
                         {}};
        return m_general->whyNot(name);
    }

private:
    static ParameterInfo quantity(const char *name, const char *unit)
    {
        ParameterInfo p;
        p.name = name;
        p.pattern.text = unit;
        return p;
    }
    static ParameterInfo optional(ParameterInfo p, double fallback)
    {
        p.hasDefault = true;
        p.fallback = fallback;
        return p;
    }
    static ParameterInfo oxidant()
    {
        ParameterInfo p;
        p.name = "oxidant";
        p.kind = ValueKind::choice;
        p.choices = {"chlorine", "peroxide", "ozone"};
        p.choiceSubstances = {"Cl2", "H2O2", "O3"};
        return p;
    }
    void add(const UnitTable &units, const char *name, std::vector<ParameterInfo> parameters,
             const char *result, std::vector<std::string> choices = {})
    {
        FunctionInfo f;
        f.name = name;
        f.plugin = "small";
        f.parameters = std::move(parameters);
        for (ParameterInfo &p : f.parameters)
            p.pattern = readPattern(p.pattern.text, units, f.parameters).value();
        f.result = readPattern(result, units, f.parameters).value();
        f.resultChoices = std::move(choices);
        f.resultKind = f.resultChoices.empty() ? ValueKind::quantity : ValueKind::choice;
        f.index = static_cast<std::uint32_t>(m_general->functions().size() + m_functions.size());
        m_functions.push_back(std::move(f));
    }

    std::shared_ptr<const Registry> m_general;
    std::vector<FunctionInfo> m_functions;
};

/// The workbook, and what the checker asks about its cells.
class SmallBook final : public TypeSource
{
public:
    UnitTable units;
    ChoiceLists lists;
    SmallRegistry registry{units};
    Workbook workbook;

    /// A sheet of named cells in one amounts column `amount`.
    void addNamed(const std::string &key, const std::vector<BookCell> &cells)
    {
        Sheet sheet(key, key);
        sheet.insertColumn(0, Column{"amount", ColumnKind::amounts, "Amount", 12, {}});
        sheet.insertLines(0, static_cast<std::uint32_t>(cells.size() + 1));
        for (std::uint32_t l = 0; l < cells.size(); ++l)
            sheet.setCell(0, l, cellOf(cells[l]));
        workbook.sheets.push_back(std::move(sheet));
    }
    /// A sheet of columns; all have as many lines, one more stays blank.
    void addColumns(const std::string &key,
                    const std::vector<std::pair<BookCell, std::vector<const char *>>> &columns)
    {
        Sheet sheet(key, key);
        sheet.insertLines(0, static_cast<std::uint32_t>(columns.front().second.size() + 1));
        for (std::uint32_t c = 0; c < columns.size(); ++c) {
            const BookCell &head = columns[c].first;
            sheet.insertColumn(c, Column{head.name, ColumnKind::amounts, head.name, 12, {}});
            for (std::uint32_t l = 0; l < columns[c].second.size(); ++l)
                sheet.setCell(c, l, cellOf(BookCell{"", columns[c].second[l], head.unit, head.list}));
        }
        workbook.sheets.push_back(std::move(sheet));
    }
    std::uint32_t listOf(const std::string &words)
    {
        std::vector<std::string> items;
        std::size_t begin = 0;
        for (std::size_t bar = words.find('|'); bar != std::string::npos; bar = words.find('|', begin)) {
            items.push_back(words.substr(begin, bar - begin));
            begin = bar + 1;
        }
        items.push_back(words.substr(begin));
        return words.empty() ? 0 : lists.intern(items);
    }

    CellType typeOf(const CellAt &at) const override
    {
        CellType out;
        const Cell *cell = workbook.cell(at);
        if (!cell)
            return out;
        const Attributes &beside = cell->beside();
        Unit set;
        if (!beside.unit.empty())
            set = readUnit(beside.unit, units).value();
        TypedContext context{&units, &lists, 0, beside.unit.empty() ? nullptr : &set};
        if (!beside.choices.empty())
            context.list = const_cast<SmallBook *>(this)->lists.intern(beside.choices);
        if (cell->blank()) {
            out.shown = set;
            out.type.quantity = set.type;
            out.type.list = context.list;
            return out;
        }
        const Result<Typed> typed = readTyped(cell->typed(), context);
        if (!typed || typed->form != TypedForm::value) {
            out.failed = true;
            return out;
        }
        out.type = typed->value.type;
        out.shown = typed->value.unit;
        return out;
    }

private:
    static Cell cellOf(const BookCell &row)
    {
        Cell cell;
        if (*row.typed)
            cell.text = std::make_shared<const std::string>(row.typed);
        Attributes beside;
        beside.name = row.name;
        beside.unit = row.unit;
        std::string words = row.list;
        for (std::size_t begin = 0; !words.empty() && begin <= words.size();) {
            const std::size_t bar = std::min(words.find('|', begin), words.size());
            beside.choices.push_back(words.substr(begin, bar - begin));
            begin = bar + 1;
        }
        cell.attributes = std::make_shared<const Attributes>(std::move(beside));
        return cell;
    }
};

} // namespace puteal::test
