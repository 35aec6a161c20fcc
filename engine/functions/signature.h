/// What may be called: name, parameters with units and ranges, result, relation, sources, examples. One form
/// for the general functions and for those of plugins.
#pragma once

#include <cmath>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "units/value.h"

namespace puteal
{

/// A unit or a pattern of units: fixed part times unit variables ('u) to powers, substance perhaps from a
/// choice.
struct UnitPattern {
    std::string text; ///< as declared: "mg/L as Fe", "'u", "'y/'x", "mg/L as 'oxidant", ""
    Unit unit;        ///< the fixed part (what plugins calculate in)
    std::vector<std::pair<char, int>> variables; ///< ('u', sixths)
    int substanceFrom = -1; ///< index of the choice parameter that names the substance, -1 = none
    bool readings =
        false; ///< a lone variable also takes temperature readings (min, max, mean, interpolate ...)
};

struct ParameterInfo {
    std::string name;
    std::string meaning;
    ValueKind kind = ValueKind::quantity;
    bool anyKind = false;      ///< general functions: takes every kind, see `sameKind`
    bool sameKind = false;     ///< all parameters so marked have one kind (worst, if_error ...)
    bool range = false;        ///< takes a range (general functions: see `rangeOrValue`)
    bool rangeOrValue = false; ///< sum, min, max ...: ranges and single values mixed
    bool repeats = false;
    bool mayBeMissing = false;
    bool mayBeBounded = false;
    bool hasDefault = false;
    double fallback = 0.0; ///< in the pattern's unit; choice: index
    std::string fallbackMark;
    UnitPattern pattern;
    std::vector<std::string> choices;
    std::vector<std::string> choiceSubstances;       ///< same order, "" = none
    double hardLow = -HUGE_VAL, hardHigh = HUGE_VAL; ///< in the pattern's unit
    double usualLow = -HUGE_VAL, usualHigh = HUGE_VAL;
};

struct ExampleInfo {
    std::string formula, expected, origin, source;
    double tolerance = 0.0;
};
struct SourceInfo {
    std::string key, mark, words;
};
struct CautionInfo {
    std::string key, when;
};

/// The general functions need the checker's or the compiler's own hand; everything else is `plugin`.
enum class General : std::uint8_t {
    none, // a plugin's function
    sum,
    mean,
    min,
    max,
    count,
    stdev,
    percentile,
    product,
    leastAt,
    greatestAt,
    pick,
    lookup,
    interpolate,
    slope,
    intercept,
    list,
    roundTo,
    ceilTo,
    floorTo,
    abs,
    sqrt,
    cbrt,
    exp,
    ln,
    log10,
    pow10,
    sin,
    cos,
    tan,
    asin,
    acos,
    atan,
    clamp,
    ifError,
    within,
    any,
    all,
    countTrue,
    known,
    state,
    because,
    why,
    worst,
    asCaco3,
    asElement,
    plain,
    absolute,
    gauge
};

struct FunctionInfo {
    std::string name, title, purpose;
    General general = General::none;
    std::string plugin; ///< id, "" for general functions
    std::vector<ParameterInfo> parameters;
    ValueKind resultKind = ValueKind::quantity;
    UnitPattern result;
    std::vector<std::string> resultChoices;
    std::string resultMeaning, relation, safety;
    std::vector<std::string> sources; ///< keys
    std::vector<ExampleInfo> examples, refusals;
    std::vector<CautionInfo> cautions;
    std::uint32_t index = 0; ///< position in the registry, stable while it lives

    std::size_t leastArguments() const;
    std::size_t mostArguments() const; ///< limits::arguments when the last one repeats
    /// "compensated_hardness(hardness, iron, [manganese], [iron_allowance], [manganese_allowance])"
    std::string call() const;
};

/// Reads a pattern text against the table. Error: unknown unit, variable or choice parameter.
Result<UnitPattern> readPattern(const std::string &text, const UnitTable &units,
                                const std::vector<ParameterInfo> &parameters);

} // namespace puteal
