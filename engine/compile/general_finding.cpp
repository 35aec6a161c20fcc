/// Finding in ranges: positions of least and greatest, picking, looking up, the worst choice, lists as words.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "compile/error_number.h"
#include "compile/shown_text.h"
#include "compile/site.h"

namespace puteal
{

namespace
{

struct Candidate {
    double number = 0.0;
    std::uint32_t line = 0;
};

/// The lines to choose from; a blank among them is an error.
double candidates(const Lines &lines, std::vector<Candidate> &out)
{
    for (std::uint32_t i = 0; i < lines.count(); ++i) {
        double failed = 0.0;
        if (!lines.read(i, failed)) {
            if (std::isnan(failed))
                return failed;
            continue;
        }
        const double x = lines.number(i);
        if (std::isnan(x))
            return isBlankNumber(x) && errorOrigin(x) == lines.cell(i) ? lines.blank(i) : x;
        out.push_back({x, i});
    }
    return 0.0;
}

/// Moves the best of from..end to `from`; of equal ones the upper line.
void chooseNext(std::vector<Candidate> &all, std::size_t from, bool least)
{
    std::size_t best = from;
    for (std::size_t i = from + 1; i < all.size(); ++i) {
        const bool better =
            least ? lessThan(all[i].number, all[best].number) : lessThan(all[best].number, all[i].number);
        if (better || (nearlyEqual(all[i].number, all[best].number) && all[i].line < all[best].line))
            best = i;
    }
    std::rotate(all.begin() + static_cast<std::ptrdiff_t>(from),
                all.begin() + static_cast<std::ptrdiff_t>(best),
                all.begin() + static_cast<std::ptrdiff_t>(best) + 1);
}

void noteTie(EvalFrame &frame, const Site &site, const Lines &lines, const std::vector<Candidate> &all,
             std::size_t chosen)
{
    for (std::size_t i = chosen + 1; i < all.size(); ++i)
        if (nearlyEqual(all[i].number, all[chosen].number)) {
            frame.cautions.push_back({"tie",
                                      fmt::format("`{}` and `{}` are equal: the upper line is taken",
                                                  frame.host->cellWords(lines.cell(all[chosen].line)),
                                                  frame.host->cellWords(lines.cell(all[i].line))),
                                      frame.formula->tree->nodes[site.node].span});
            return;
        }
}

/// A whole number from 1 up, or 0.
std::uint32_t positionFrom(double x)
{
    const double whole = std::nearbyint(x);
    if (!(x > 0.5) || x > 4e9 || !nearlyEqual(x, whole))
        return 0;
    return static_cast<std::uint32_t>(whole);
}

std::size_t indexOf(const Site &site, const SiteArgument *argument)
{
    return static_cast<std::size_t>(argument - site.arguments.data());
}

SiteOutcome &outcomeOf(EvalFrame &frame, const Site &site)
{
    return frame.sites[static_cast<std::size_t>(&site - frame.formula->sites.data())];
}

double pickFrom(EvalFrame &frame, const Site &site, const double *numbers)
{
    const Lines lines(frame, site, indexOf(site, argumentOf(site, 0)), -1);
    const SiteArgument &where = *argumentOf(site, 1);
    const double at = numberOf(where, numbers);
    if (!std::isfinite(at))
        return std::isnan(at) ? at : notFiniteHere();
    const std::uint32_t position = positionFrom(at);
    if (position == 0 || position > lines.count())
        return refusedAt(frame, where.node,
                         fmt::format("a position here is a whole number from 1 to {}; it is {}",
                                     lines.count(), trimZeros(toFigures(at, 6))));
    const double x = lines.number(position - 1);
    if (std::isnan(x) && isBlankNumber(x) && errorOrigin(x) == lines.cell(position - 1))
        return lines.blank(position - 1);
    outcomeOf(frame, site).node = lines.cell(position - 1);
    return x;
}

double lookUp(EvalFrame &frame, const Site &site, const double *numbers)
{
    const SiteArgument &key = *argumentOf(site, 0);
    const double wanted = numberOf(key, numbers);
    if (!std::isfinite(wanted))
        return std::isnan(wanted) ? wanted : notFiniteHere();
    const Lines keys(frame, site, indexOf(site, argumentOf(site, 1)), -1);
    const Lines values(frame, site, indexOf(site, argumentOf(site, 2)), -1);
    for (std::uint32_t i = 0; i < keys.count(); ++i) {
        const double x = keys.number(i);
        if (std::isnan(x))
            return isBlankNumber(x) && errorOrigin(x) == keys.cell(i) ? keys.blank(i) : x;
        if (!nearlyEqual(x, wanted))
            continue;
        const double found = values.number(i);
        if (std::isnan(found) && isBlankNumber(found) && errorOrigin(found) == values.cell(i))
            return values.blank(i);
        outcomeOf(frame, site).node = values.cell(i);
        return found;
    }
    return refusedAt(frame, key.node,
                     fmt::format("{} is not in `{}`", shownPiece(frame, key.node, wanted),
                                 pieceText(frame, argumentOf(site, 1)->node)));
}

} // namespace

double positionOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    const Lines lines(frame, site, indexOf(site, argumentOf(site, 0)), rangeOf(site, 1));
    double place = 1.0;
    const SiteArgument *placeArgument = argumentOf(site, 2);
    if (placeArgument)
        place = numberOf(*placeArgument, numbers);
    if (!std::isfinite(place))
        return std::isnan(place) ? place : notFiniteHere();
    std::vector<Candidate> all;
    if (const double stopped = candidates(lines, all); std::isnan(stopped))
        return stopped;
    const std::uint32_t wanted = positionFrom(place);
    if (wanted == 0)
        return refusedAt(frame, placeArgument->node, "a place is a whole number from 1");
    if (wanted > all.size())
        return refusedAt(
            frame, site.node,
            all.empty() ? "nothing to choose from"
                        : fmt::format("nothing to choose from: place {} of {} lines", wanted, all.size()));
    const bool least = site.function->general == General::leastAt;
    if (wanted > 64) // far places: sorted, ties in line order
        std::stable_sort(all.begin(), all.end(), [&](const Candidate &a, const Candidate &b) {
            return least ? a.number < b.number : b.number < a.number;
        });
    else
        for (std::uint32_t i = 0; i < wanted; ++i)
            chooseNext(all, i, least);
    noteTie(frame, site, lines, all, wanted - 1);
    return static_cast<double>(all[wanted - 1].line) + 1.0;
}

double takenFrom(EvalFrame &frame, const Site &site, const double *numbers)
{
    return site.function->general == General::pick ? pickFrom(frame, site, numbers)
                                                   : lookUp(frame, site, numbers);
}

double worstOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    double worst = -1.0;
    SiteOutcome decided;
    const double stopped = forEachItem(frame, site, numbers, [&](const Item &item) {
        if (std::isnan(item.number)) {
            if (item.cell == noCell || !isBlankNumber(item.number) || errorOrigin(item.number) != item.cell)
                return item.number;
            return refusedAt(frame, site.arguments[item.argument].node,
                             fmt::format("`{}` is blank", frame.host->cellWords(item.cell)));
        }
        if (item.number > worst) {
            worst = item.number;
            decided.decided = static_cast<std::int32_t>(item.argument);
            decided.node = item.cell;
        }
        return 0.0;
    });
    if (std::isnan(stopped))
        return stopped;
    if (worst < 0.0)
        return refusedAt(frame, site.node, "nothing to choose from");
    outcomeOf(frame, site) = decided;
    return worst;
}

double listOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    std::string text;
    const double stopped = forEachItem(frame, site, numbers, [&](const Item &item) {
        if (std::isnan(item.number))
            return item.cell != noCell && isBlankNumber(item.number) && errorOrigin(item.number) == item.cell
                       ? 0.0
                       : item.number;
        const ShownFacts facts = frame.host->shownFacts(item.cell);
        text +=
            (text.empty() ? "" : ", ") + shownForReason(*frame.host, facts.type, facts.unit,
                                                        frame.number[item.cell], facts.figures, facts.places);
        return 0.0;
    });
    if (std::isnan(stopped))
        return stopped;
    return frame.host->intern(text.empty() ? "none" : text);
}

} // namespace puteal
