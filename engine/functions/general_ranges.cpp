/// General functions over ranges: totals, statistics, finding, lines through points.
#include "functions/general_rows.h"

namespace puteal::general
{
namespace
{

Take values(const char *meaning = "ranges and single values; blank cells are skipped")
{
    return Take("x", "'u", meaning).rangeOrValue();
}
Take only()
{
    return Take("only", "",
                "yes/no range of the same lines as the range before it: lines that say no are not read")
        .range()
        .of(ValueKind::yesNo)
        .optional(1);
}
Take column(const char *name, const char *unit, const char *meaning)
{
    return Take(name, unit, meaning).range();
}

void addTotals(std::vector<Row> &rows)
{
    rows.push_back(
        {General::sum,
         "sum",
         "Total",
         "Adds ranges and single values of one unit. Blank cells are skipped; nothing at all adds to 0.",
         {values(), only()},
         ValueKind::quantity,
         "'u",
         "the total",
         "x1 + x2 + ...",
         {{"sum(1 gal, 2 gal, 3 gal)", "6 gal"}, {"sum(2, 3)", "5"}}});
    rows.push_back({General::mean,
                    "mean",
                    "Mean",
                    "The arithmetic mean. Blank cells are skipped; no value at all is refused.",
                    {values().readings(), only()},
                    ValueKind::quantity,
                    "'u",
                    "the mean",
                    "sum(x) / count(x)",
                    {{"mean(2 mg/L, 4 mg/L)", "3 mg/L"}, {"mean(1, 2, 6)", "3"}},
                    true});
    rows.push_back({General::min,
                    "min",
                    "Least",
                    "The least value. Blank cells are skipped; no value at all is refused.",
                    {values().readings(), only()},
                    ValueKind::quantity,
                    "'u",
                    "the least value",
                    "least of x",
                    {{"min(3 min, 90 s)", "90 s"}, {"min(4, 2, 7)", "2"}},
                    true});
    rows.push_back({General::max,
                    "max",
                    "Greatest",
                    "The greatest value. Blank cells are skipped; no value at all is refused.",
                    {values().readings(), only()},
                    ValueKind::quantity,
                    "'u",
                    "the greatest value",
                    "greatest of x",
                    {{"max(3 min, 90 s)", "3 min"}, {"max(4, 2, 7)", "7"}},
                    true});
    rows.push_back({General::count,
                    "count",
                    "Count",
                    "How many cells hold a value of any kind; blank cells are not counted.",
                    {Take("x", "", "ranges and single values of any kind").rangeOrValue().any(), only()},
                    ValueKind::quantity,
                    "",
                    "a pure number",
                    "number of values in x",
                    {{"count(3 gal, 4 gal)", "2"}, {"count(7)", "1"}}});
    rows.push_back({General::product,
                    "product",
                    "Product",
                    "Multiplies pure numbers. Blank cells are skipped; nothing at all gives 1.",
                    {Take("x", "", "ranges and single pure numbers").rangeOrValue()},
                    ValueKind::quantity,
                    "",
                    "the product",
                    "x1 * x2 * ...",
                    {{"product(2, 3, 4)", "24"}, {"product(1.02, 1.02)", "1.0404"}}});
}

void addStatistics(std::vector<Row> &rows)
{
    rows.push_back({General::stdev,
                    "stdev",
                    "Standard deviation",
                    "Standard deviation of a sample; needs two values. Blank cells are skipped.",
                    {values()},
                    ValueKind::quantity,
                    "'u",
                    "spread in the unit of x",
                    "sqrt(sum of (x - mean)^2 / (n - 1))",
                    {{"stdev(2, 4)", "1.4142135623730951"}, {"stdev(1 gal, 2 gal, 3 gal)", "1 gal"}}});
    rows.push_back({General::percentile,
                    "percentile",
                    "Percentile",
                    "The value below which a share p of the values lies: in ascending order the value at "
                    "rank 1 + p * (n - 1), between two ranks in "
                    "proportion, and never beyond the least or greatest value. Blank cells are skipped.",
                    {values().readings(), Take("p", "", "share, 0 to 1; 90 % may be typed").hard(0, 1)},
                    ValueKind::quantity,
                    "'u",
                    "a value in the unit of x",
                    "value at rank 1 + p * (n - 1)",
                    {{"percentile(1, 2, 3, 4, 0.5)", "2.5"}, {"percentile(1, 2, 3, 4, 25 %)", "1.75"}},
                    true});
}

void addFinding(std::vector<Row> &rows)
{
    const auto place = [] {
        return Take("place", "", "1 = first, 2 = runner-up ...").optional(1).hard(1, HUGE_VAL);
    };
    rows.push_back(
        {General::leastAt,
         "least_at",
         "Position of the least",
         "Position of the least value in a column, counted from 1 at the top of the range. A tie is the "
         "upper line, with a caution that "
         "names both. With no line left it is refused: nothing to choose from. As in pick(option[:], "
         "least_at(cost[:], works[:])).",
         {column("x", "'u", "the column searched; a blank is refused unless `only` says no there").readings(),
          only(), place()},
         ValueKind::quantity,
         "",
         "a position",
         "position of the least of x",
         {}});
    rows.push_back(
        {General::greatestAt,
         "greatest_at",
         "Position of the greatest",
         "Position of the greatest value in a column, counted from 1 at the top of the range; otherwise like "
         "least_at.",
         {column("x", "'u", "the column searched; a blank is refused unless `only` says no there").readings(),
          only(), place()},
         ValueKind::quantity,
         "",
         "a position",
         "position of the greatest of x",
         {}});
    rows.push_back({General::pick,
                    "pick",
                    "Value at a position",
                    "The value at a position of a column, counted from 1 at the top of the range.",
                    {column("x", "'u", "the column, of any kind").any(),
                     Take("position", "", "a whole number, 1 to the number of lines")},
                    ValueKind::quantity,
                    "'u",
                    "the value there, of the kind of x",
                    "x at position",
                    {}});
    rows.push_back(
        {General::lookup,
         "lookup",
         "Value beside a key",
         "Finds the first line of `keys` that equals `key` and gives the value of the same line of `values`. "
         "A key that is not there is refused.",
         {Take("key", "'k", "what to look for").same(), column("keys", "'k", "the column searched").same(),
          column("values", "'u", "the column that answers, of any kind, with as many lines").any()},
         ValueKind::quantity,
         "'u",
         "the value beside the key",
         "values where keys = key",
         {}});
    rows.push_back({General::list,
                    "list",
                    "List as words",
                    "The values of a column as words, with commas, or none when there is none.",
                    {column("x", "'u", "the column, of any kind; blank cells are skipped").any(), only()},
                    ValueKind::words,
                    "",
                    "words",
                    "x1, x2, ...",
                    {}});
}

void addLines(std::vector<Row> &rows)
{
    const auto x = [] { return column("xs", "'x", "the known x, ascending; a blank is refused"); };
    const auto y = [] { return column("ys", "'y", "the known y, with as many lines; a blank is refused"); };
    rows.push_back({General::interpolate,
                    "interpolate",
                    "Interpolate in a table",
                    "The y that belongs to x on straight lines between the rows of a table. Outside the "
                    "table it is refused: nothing is extrapolated.",
                    {Take("x", "'x", "where").readings(), x().readings(), y().readings()},
                    ValueKind::quantity,
                    "'y",
                    "y at x",
                    "y1 + (y2 - y1) * (x - x1) / (x2 - x1)",
                    {},
                    true});
    rows.push_back({General::slope,
                    "slope",
                    "Slope of the best line",
                    "Slope of the least-squares line through points; needs two different x.",
                    {column("xs", "'x", "the x of the points; a blank is refused"), y()},
                    ValueKind::quantity,
                    "'y/'x",
                    "y for each x",
                    "sum((x - mean x) * (y - mean y)) / sum((x - mean x)^2)",
                    {}});
    rows.push_back({General::intercept,
                    "intercept",
                    "Start of the best line",
                    "The y of the least-squares line where x is 0; needs two different x.",
                    {column("xs", "'x", "the x of the points; a blank is refused"), y()},
                    ValueKind::quantity,
                    "'y",
                    "y at x = 0",
                    "mean y - slope * mean x",
                    {}});
}

} // namespace

std::vector<Row> rangeRows()
{
    std::vector<Row> rows;
    addTotals(rows);
    addStatistics(rows);
    addFinding(rows);
    addLines(rows);
    return rows;
}

} // namespace puteal::general
