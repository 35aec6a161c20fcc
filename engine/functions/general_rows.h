/// Row builder for the descriptors of general functions (used by the general_*.cpp tables only).
#pragma once

#include <initializer_list>
#include <utility>

#include "functions/general.h"

namespace puteal::general
{

/// A parameter under construction; its pattern is only text until generalFunctions() reads it.
struct Take {
    ParameterInfo info;
    Take(const char *name, const char *unit, const char *meaning)
    {
        info.name = name;
        info.pattern.text = unit;
        info.meaning = meaning;
    }
    Take &&range() &&
    {
        info.range = true;
        return std::move(*this);
    }
    Take &&rangeOrValue() &&
    {
        info.rangeOrValue = info.repeats = true;
        return std::move(*this);
    }
    Take &&any() &&
    {
        info.anyKind = true;
        return std::move(*this);
    }
    Take &&same() &&
    {
        info.anyKind = info.sameKind = true;
        return std::move(*this);
    }
    Take &&of(ValueKind kind) &&
    {
        info.kind = kind;
        return std::move(*this);
    }
    Take &&missing() &&
    {
        info.mayBeMissing = true;
        return std::move(*this);
    }
    Take &&bounded() &&
    {
        info.mayBeBounded = true;
        return std::move(*this);
    }
    Take &&optional(double fallback) &&
    {
        info.hasDefault = true;
        info.fallback = fallback;
        return std::move(*this);
    }
    Take &&readings() &&
    {
        info.pattern.readings = true;
        return std::move(*this);
    }
    Take &&hard(double low, double high) &&
    {
        info.hardLow = low;
        info.hardHigh = high;
        return std::move(*this);
    }
};

/// One function; `unit` of the result is a pattern text.
struct Row {
    General general;
    const char *name, *title, *purpose;
    std::vector<Take> takes;
    ValueKind kind = ValueKind::quantity;
    const char *unit = "";
    const char *meaning = "";
    const char *relation = "";
    std::vector<std::pair<const char *, const char *>> examples{}; ///< formula, expected
    bool readings = false; ///< a lone variable of the result may be a temperature reading
    std::vector<std::string> choices{};
    double tolerance = 1e-9; ///< of the examples, relative
};

std::vector<Row> numberRows();  ///< one value in, one value out
std::vector<Row> rangeRows();   ///< over ranges and tables
std::vector<Row> meaningRows(); ///< kinds, reasons, substances, pressures

} // namespace puteal::general
