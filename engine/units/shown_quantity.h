/// A quantity as text that can be typed back: rounding on decimal text, money, bounded readings.
#pragma once

#include <string>

#include "units/value.h"

namespace puteal
{

/// How many figures or places to show; figures 0 and places -1 mean the default (3 figures; money 2 places).
struct Rounding {
    int figures = 0;
    int places = -1;
};

/// A number with its unit as text that can be typed back: "6.84 mg/L as Cl2", "$1,640", "<0.05 mg/L", "104
/// day".
struct ShownQuantity {
    std::string number; ///< "6.84", "$1,640", "<0.05"
    std::string unit; ///< "mg/L as Cl2"; "" for money and pure numbers ("/yr" stays with money: "$45.50/yr")
    std::string text() const { return unit.empty() ? number : number + " " + unit; }
};

/// Default: three significant figures, zeros kept. Money: two places, none for whole dollars; small rates
/// ($0.00423/gal) three figures.
ShownQuantity showQuantity(double base, Bound bound, const Unit &unit, const Rounding &rounding);

/// Up to `figures` significant figures, trailing zeros dropped; money as showQuantity does.
ShownQuantity showTrimmed(double base, Bound bound, const Unit &unit, int figures);

} // namespace puteal
