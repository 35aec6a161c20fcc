/// General functions of one value: rounding, roots, powers, angles.
#include "functions/general_rows.h"

namespace puteal::general
{
namespace
{

Take pure(const char *name, const char *meaning)
{
    return {name, "", meaning};
}

Row ofPure(General which, const char *name, const char *title, const char *purpose, Take take,
           const char *relation, std::vector<std::pair<const char *, const char *>> examples)
{
    return {which,
            name,
            title,
            purpose,
            {std::move(take)},
            ValueKind::quantity,
            "",
            "a pure number",
            relation,
            std::move(examples)};
}

Row rounding(General which, const char *name, const char *title, const char *purpose, const char *relation,
             std::vector<std::pair<const char *, const char *>> examples)
{
    return {which,
            name,
            title,
            purpose,
            {Take("x", "'u", "the value"),
             Take("step", "'u", "the step, above 0; a step as typed takes the unit's counted things")},
            ValueKind::quantity,
            "'u",
            "a whole number of steps",
            relation,
            std::move(examples)};
}

void addRounding(std::vector<Row> &rows)
{
    rows.push_back(rounding(General::roundTo, "round_to", "Round to a step",
                            "The whole number of steps nearest to x; a half goes away from zero.",
                            "step * round(x / step)",
                            {{"round_to(13.4 gpg, 1 gpg)", "13 gpg"},
                             {"round_to(12 gal, 5 gal)", "10 gal"},
                             {"round_to(2.5, 1)", "3"}}));
    rows.push_back(rounding(General::ceilTo, "ceil_to", "Round up to a step",
                            "The least whole number of steps that is not below x; within the slack of 1e-12 "
                            "x counts as on the step.",
                            "step * ceil(x / step)",
                            {{"ceil_to(1 gpg + 5 gpg/(mg/L)*1.8 mg/L, 1 gpg)", "10 gpg"},
                             {"ceil_to(61 gal, 15 gal)", "75 gal"}}));
    rows.push_back(rounding(
        General::floorTo, "floor_to", "Round down to a step",
        "The greatest whole number of steps that is not above x; within the slack of 1e-12 x counts as on "
        "the step.",
        "step * floor(x / step)",
        {{"floor_to(4500 gal/(50 gal/day), 1 day)", "90 day"}, {"floor_to(3.8 day, 1 day)", "3 day"}}));
}

void addRoots(std::vector<Row> &rows)
{
    rows.push_back({General::abs,
                    "abs",
                    "Size without sign",
                    "The value without its sign.",
                    {Take("x", "'u", "the value")},
                    ValueKind::quantity,
                    "'u",
                    "x or -x, whichever is not negative",
                    "|x|",
                    {{"abs(-3 gpm)", "3 gpm"}, {"abs(2.5)", "2.5"}}});
    rows.push_back({General::sqrt,
                    "sqrt",
                    "Square root",
                    "The square root; the unit's powers are halved. A negative value is refused.",
                    {Take("x", "'u", "the value, 0 or more").hard(0, HUGE_VAL)},
                    ValueKind::quantity,
                    "'u^(1/2)",
                    "the value whose square is x",
                    "x^(1/2)",
                    {{"sqrt(16)", "4"}, {"sqrt(9 ft^2)", "3 ft"}}});
    rows.push_back({General::cbrt,
                    "cbrt",
                    "Cube root",
                    "The cube root; the unit's powers are divided by three.",
                    {Take("x", "'u", "the value")},
                    ValueKind::quantity,
                    "'u^(1/3)",
                    "the value whose cube is x",
                    "x^(1/3)",
                    {{"cbrt(27)", "3"}, {"cbrt(8 ft^3)", "2 ft"}}});
}

void addPowers(std::vector<Row> &rows)
{
    rows.push_back(ofPure(General::exp, "exp", "Exponential", "e to the power x.", pure("x", "a pure number"),
                          "e^x", {{"exp(0)", "1"}, {"exp(1)", "2.718281828459045"}}));
    rows.push_back(ofPure(General::ln, "ln", "Natural logarithm", "The power of e that gives x.",
                          pure("x", "a pure number above 0"), "ln x",
                          {{"ln(1)", "0"}, {"ln(2)", "0.6931471805599453"}}));
    rows.push_back(ofPure(General::log10, "log10", "Logarithm to base 10", "The power of 10 that gives x.",
                          pure("x", "a pure number above 0"), "log10 x",
                          {{"log10(1000)", "3"}, {"log10(0.01)", "-2"}}));
    rows.push_back(ofPure(General::pow10, "pow10", "Power of 10",
                          "10 to the power x; pow10(-ph) is the activity of acid in mol/L.",
                          pure("x", "a pure number"), "10^x", {{"pow10(3)", "1000"}, {"pow10(-2)", "0.01"}}));
}

void addAngles(std::vector<Row> &rows)
{
    rows.push_back(ofPure(General::sin, "sin", "Sine", "Sine of an angle in radians.",
                          pure("x", "an angle in radians"), "sin x",
                          {{"sin(0)", "0"}, {"sin(pi/6)", "0.5"}}));
    rows.push_back(ofPure(General::cos, "cos", "Cosine", "Cosine of an angle in radians.",
                          pure("x", "an angle in radians"), "cos x",
                          {{"cos(0)", "1"}, {"cos(pi/3)", "0.5"}}));
    rows.push_back(ofPure(General::tan, "tan", "Tangent", "Tangent of an angle in radians.",
                          pure("x", "an angle in radians"), "tan x", {{"tan(0)", "0"}, {"tan(pi/4)", "1"}}));
    rows.push_back(ofPure(General::asin, "asin", "Angle of a sine", "The angle, in radians, whose sine is x.",
                          pure("x", "-1 to 1").hard(-1, 1), "arcsin x",
                          {{"asin(0)", "0"}, {"asin(0.5)", "0.5235987755982989"}}));
    rows.push_back(ofPure(General::acos, "acos", "Angle of a cosine",
                          "The angle, in radians, whose cosine is x.", pure("x", "-1 to 1").hard(-1, 1),
                          "arccos x", {{"acos(1)", "0"}, {"acos(0.5)", "1.0471975511965979"}}));
    rows.push_back(ofPure(General::atan, "atan", "Angle of a tangent",
                          "The angle, in radians, whose tangent is x.", pure("x", "a pure number"),
                          "arctan x", {{"atan(0)", "0"}, {"atan(1)", "0.7853981633974483"}}));
}

} // namespace

std::vector<Row> numberRows()
{
    std::vector<Row> rows;
    addRounding(rows);
    addRoots(rows);
    addPowers(rows);
    addAngles(rows);
    rows.push_back({General::clamp,
                    "clamp",
                    "Keep between two ends",
                    "x, but not below low and not above high.",
                    {Take("x", "'u", "the value").readings(), Take("low", "'u", "least").readings(),
                     Take("high", "'u", "most, not below low").readings()},
                    ValueKind::quantity,
                    "'u",
                    "x between low and high",
                    "min(max(x, low), high)",
                    {{"clamp(12 gpm, 0 gpm, 10 gpm)", "10 gpm"}, {"clamp(3, 5, 9)", "5"}},
                    true});
    return rows;
}

} // namespace puteal::general
