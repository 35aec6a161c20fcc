/// What serves the call sites of a formula: plugin functions and the general functions on ranges.
#pragma once

#include "compile/frame.h"

namespace puteal
{

double callPlugin(EvalFrame &frame, const Site &site, SiteEntry &entry, const double *numbers);
double callGeneral(EvalFrame &frame, const Site &site, const double *numbers);

/// One item a general function meets: value, the cell it stands in (noCell for a single value), its argument.
struct Item {
    double number = 0.0;
    std::uint32_t cell = noCell;
    std::uint32_t argument = 0;
};

/// A range argument with its yes/no companion.
class Lines
{
public:
    /// `argument` is the position of the range among the site's arguments, `only` that of its yes/no range or
    /// -1.
    Lines(EvalFrame &frame, const Site &site, std::size_t argument, int only);
    std::uint32_t count() const { return m_count; }
    std::uint32_t cell(std::uint32_t i) const { return m_first + i; }
    /// Is the line to be read? An error or blank in the companion is `failed`.
    bool read(std::uint32_t i, double &failed) const;
    double number(std::uint32_t i) const;
    /// The error that a blank in line i is: "`cost[3]` is blank".
    double blank(std::uint32_t i) const;

private:
    EvalFrame &m_frame;
    NodeIndex m_node;
    std::uint32_t m_first, m_count;
    std::uint32_t m_onlyFirst = 0;
    bool m_hasOnly = false;
};

/// Visits every item of the site's arguments of parameter 0 that `only` lets through, blanks included; stops
/// with an error number when `visit` gives one (anything that is no NaN goes on).
template<class Visit>
double forEachItem(EvalFrame &frame, const Site &site, const double *numbers, Visit visit);

/// Position of the argument of a parameter that was given as a range, -1 = none.
int rangeOf(const Site &site, std::uint32_t parameter);
/// The argument of a parameter; null when left out.
const SiteArgument *argumentOf(const Site &site, std::uint32_t parameter);
/// The number of a single-valued parameter.
double numberOf(const SiteArgument &argument, const double *numbers);

double refusedAt(EvalFrame &frame, NodeIndex node, std::string words);

// general_totals.cpp, general_finding.cpp, general_lines.cpp
double totalOf(EvalFrame &frame, const Site &site, const double *numbers);
double spreadOf(EvalFrame &frame, const Site &site, const double *numbers);
double conditionsOf(EvalFrame &frame, const Site &site, const double *numbers);
double positionOf(EvalFrame &frame, const Site &site, const double *numbers);
double takenFrom(EvalFrame &frame, const Site &site, const double *numbers);
double worstOf(EvalFrame &frame, const Site &site, const double *numbers);
double listOf(EvalFrame &frame, const Site &site, const double *numbers);
double lineOf(EvalFrame &frame, const Site &site, const double *numbers);

template<class Visit>
double forEachItem(EvalFrame &frame, const Site &site, const double *numbers, Visit visit)
{
    const int only = rangeOf(site, 1);
    for (std::uint32_t a = 0; a < site.arguments.size(); ++a) {
        const SiteArgument &argument = site.arguments[a];
        if (argument.parameter != 0)
            continue;
        if (argument.from != ArgumentPlan::From::range) {
            const double stop = visit(Item{numberOf(argument, numbers), noCell, a});
            if (stop != stop)
                return stop;
            continue;
        }
        const Lines lines(frame, site, a, only);
        for (std::uint32_t i = 0; i < lines.count(); ++i) {
            double failed = 0.0;
            if (!lines.read(i, failed)) {
                if (failed != failed)
                    return failed;
                continue;
            }
            const double stop = visit(Item{lines.number(i), lines.cell(i), a});
            if (stop != stop)
                return stop;
        }
    }
    return 0.0;
}

} // namespace puteal
