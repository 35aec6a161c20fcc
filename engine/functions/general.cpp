/// Collects the general functions: reads their patterns and puts sources and origins beside their examples.
#include "functions/general.h"

#include "functions/general_rows.h"

namespace puteal
{
namespace
{

FunctionInfo build(general::Row &row, const UnitTable &units)
{
    FunctionInfo f;
    f.general = row.general;
    f.name = row.name;
    f.title = row.title;
    f.purpose = row.purpose;
    f.resultKind = row.kind;
    f.resultMeaning = row.meaning;
    f.resultChoices = row.choices;
    f.relation = row.relation;
    f.sources = {"definition"};
    const auto read = [&](const UnitPattern &written) {
        auto pattern = readPattern(written.text, units, f.parameters);
        UnitPattern result = pattern ? std::move(*pattern) : UnitPattern{};
        result.readings = written.readings;
        return result;
    };
    for (auto &take : row.takes) {
        take.info.pattern = read(take.info.pattern);
        f.parameters.push_back(std::move(take.info));
    }
    UnitPattern written;
    written.text = row.unit;
    written.readings = row.readings;
    f.result = read(written);
    for (const auto &[formula, expected] : row.examples)
        f.examples.push_back({formula, expected, "computed", "definition", row.tolerance});
    return f;
}

template<std::vector<general::Row> (*RowsOf)()>
std::vector<FunctionInfo> buildGroup(const UnitTable &units)
{
    std::vector<FunctionInfo> all;
    for (auto &row : RowsOf())
        all.push_back(build(row, units));
    return all;
}

} // namespace

const std::vector<GeneralGroup> &generalGroups()
{
    static const std::vector<GeneralGroup> groups{
        {{"sum", "mean", "min", "max", "count", "product", "stdev", "percentile", "least_at", "greatest_at",
          "pick", "lookup", "list", "interpolate", "slope", "intercept"},
         buildGroup<general::rangeRows>},
        {{"round_to", "ceil_to", "floor_to", "abs", "sqrt", "cbrt", "exp", "ln", "log10", "pow10", "sin",
          "cos", "tan", "asin", "acos", "atan", "clamp"},
         buildGroup<general::numberRows>},
        {{"if_error", "within", "any", "all", "count_true", "known", "state", "because", "why", "worst",
          "as_caco3", "as_element", "plain", "absolute", "gauge"},
         buildGroup<general::meaningRows>},
    };
    return groups;
}

std::vector<FunctionInfo> generalFunctions(const UnitTable &units)
{
    std::vector<FunctionInfo> all;
    for (const auto &group : generalGroups()) {
        for (auto &f : group.build(units))
            all.push_back(std::move(f));
    }
    return all;
}

const std::vector<std::string> &generalChoices()
{
    static const std::vector<std::string> words{"within", "near", "outside", "no limit", "missing test"};
    return words;
}

const std::vector<SourceInfo> &generalSources()
{
    static const std::vector<SourceInfo> sources{{"definition", "W", "definition, worked out by hand"}};
    return sources;
}

} // namespace puteal
