/// The rows of the unit table as data; only the unit table reads them.
#pragma once

#include <array>
#include <cstddef>

#include "units/quantity_type.h"

namespace puteal
{

/// Whole exponents of dm, mg, s, K, mmol, A, USD.
using Exponents = std::array<signed char, baseCount>;

struct UnitRow {
    const char *word;
    const char *spellings; ///< separated by blanks
    const char *singular;
    const char *plural;
    double factor; ///< base units (dm, mg, s, K, mmol, A, USD)
    Exponents exponents;
    const char *definition;
    const char *source;
    const char *note = "";
    const char *substance = ""; ///< built in: gpg is an amount of CaCO3
    const char *label = "";     ///< word of the counted thing or label this is a number of
    double offset = 0.0;
    Scale scale = Scale::plain;
    const char *shownAs = "";
};

struct UnitRows {
    const UnitRow *first;
    std::size_t count;
};

/// Length, area, volume, flow.
UnitRows spaceRows();
/// Mass, time, amount, money, concentration.
UnitRows amountRows();
/// Pressure, temperature, energy, power, force, viscosity, electricity.
UnitRows physicsRows();
/// Counted things and labels without conversion.
UnitRows labelRows();

} // namespace puteal
