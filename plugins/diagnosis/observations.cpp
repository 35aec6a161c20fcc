/// Scores the iron forms from cup tests and the laboratory pair.
///
/// Rules:
///  1 a blank observation gives no points; nothing seen at all is no error.
///  2 below pH 7 a standing cup counts only after 24 h: oxidation is too slow to show before.
///  3 "clear after 24 h" and "stays even" need 24 h at any pH.
///  4 the filtered share is ignored when total iron is below 0.3 mg/L: the readings are mostly noise there.
///  5 a bounded reading gives points only if all it allows gives the same ones.
#include "observations.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr double slowOxidationPh = 7.0; // cup tests below it need 24 h [common practice, no source]
constexpr double fullWait = 24.0;       // hours [common practice, no source]
constexpr double leastTotalIron = 0.3;  // mg/L, filtered share ignored below [common practice, no source]
constexpr double highShare = 0.8;       // mostly dissolved [common practice, no source]
constexpr double lowShare = 0.2;        // mostly particles [common practice, no source]
constexpr double tanninDisturbs = 0.5;  // mg/L, disturbs iron removal [common practice, no source]
constexpr double tanninAbsent = 0.1;    // mg/L, tested and absent [common practice, no source]

bool knownBelow(const Argument &a, double limit)
{
    return !a.missing() && lessThan(a.number(), limit);
}

// Points in the order dissolved, oxidized, bacterial, organic, colloidal [all: common practice, no source].
void scoreDraw(const Observations &seen, Scoring &out)
{
    if (seen.draw.missing())
        return;
    switch (seen.draw.choice()) {
    case drawnClear:
        return out.add({2, -3, 0, -2, -1}, "clear at the tap");
    case drawnTea:
        return out.add({-3, 2, 0, 1, 2}, "yellow or tea colored at the tap");
    case drawnRust:
        return out.add({-3, 2, 0, 1, 2}, "rust colored at the tap");
    case drawnMilky:
        out.notes.push_back("milky water that clears from below upward is gas: ask for a methane test first");
        return out.add({-1, 0, 0, 0, 2}, "milky at the tap");
    default:
        out.notes.push_back(
            "black water points to manganese or iron sulfide: test manganese and hydrogen sulfide");
    }
}

bool standingCounts(const Observations &seen, Scoring &out)
{
    const bool namesFullWait = seen.standing.choice() == staysClear;
    const bool shortWait = knownBelow(seen.waited, fullWait);
    const bool waitUnknown = seen.waited.missing() && !namesFullWait;
    if (knownBelow(seen.ph, slowOxidationPh) && (shortWait || waitUnknown)) {
        out.notes.push_back("the standing cup does not count: below pH 7 only a cup of 24 h counts");
        return false;
    }
    if (shortWait && (namesFullWait || seen.standing.choice() == staysEven)) {
        out.notes.push_back("the standing cup does not count: it needs 24 h");
        return false;
    }
    return true;
}

void scoreStanding(const Observations &seen, Scoring &out)
{
    if (seen.standing.missing() || !standingCounts(seen, out))
        return;
    out.standingCounts = true;
    const bool wasClear = !seen.draw.missing() && seen.draw.choice() == drawnClear;
    const bool wasColored = !seen.draw.missing() && !wasClear;
    switch (seen.standing.choice()) {
    case staysClear:
        // In acid water iron may stay dissolved, and clear, for days.
        if (seen.ph.missing() || knownBelow(seen.ph, slowOxidationPh))
            return out.add({0, -3, 0, 0, -1}, "still clear after 24 h");
        return out.add({-3, -3, 0, 0, -1}, "still clear after 24 h");
    case rustDeposit:
    case settles:
        // Color that was there at the tap and settles was oxidized before; a deposit in clear water was not.
        if (wasColored || (!wasClear && seen.standing.choice() == settles))
            return out.add({0, 3, 1, -3, -3}, "the color settles on standing");
        return out.add({3, 0, 0, -1, -1}, "a rust deposit forms on standing");
    default:
        return out.add({-1, -3, 0, 3, 3}, "the color stays even for 24 h");
    }
}

void scoreCupAndTank(const Observations &seen, Scoring &out)
{
    if (!seen.reducingCup.missing()) {
        if (seen.reducingCup.choice() == cupClears)
            out.add({0, 1, 0, -3, 1}, "a reducing agent clears it");
        else
            out.add({0, -2, 0, 3, -1}, "a reducing agent does not clear it");
    }
    if (!seen.slime.missing() && seen.slime.yes())
        out.add({0, 0, 5, 0, 0}, "slime in the tank");
    if (!seen.swampySmell.missing() && seen.swampySmell.yes())
        out.add({0, 0, 2, 0, 0}, "swampy or oily smell");
}

FilteredShare shareOf(const Observations &seen, Scoring &out)
{
    const Argument &total = seen.totalIron, &passed = seen.dissolvedIron;
    if (total.missing() || passed.missing())
        return FilteredShare::notKnown;
    if (lessThan(total.least(), leastTotalIron)) {
        out.notes.push_back("the filtered share is ignored: total iron is below 0.3 mg/L");
        return FilteredShare::notKnown;
    }
    const double least = passed.least() / total.most(), most = passed.most() / total.least();
    if (atMost(highShare, least))
        return FilteredShare::high;
    if (atMost(most, lowShare))
        return FilteredShare::low;
    if (lessThan(lowShare, least) && lessThan(most, highShare))
        return FilteredShare::between;
    out.notes.push_back("the laboratory pair does not decide the filtered share: ask for a finer test");
    return FilteredShare::notKnown;
}

void scoreLaboratory(const Observations &seen, Scoring &out)
{
    out.share = shareOf(seen, out);
    switch (out.share) {
    case FilteredShare::high:
        out.add({3, -3, 0, 1, 0}, "at least 0.8 of the iron passes the filter");
        break;
    case FilteredShare::between:
        out.add({1, 1, 0, 0, 0}, "part of the iron passes the filter");
        break;
    case FilteredShare::low:
        out.add({-3, 3, 1, -1, -2}, "at most 0.2 of the iron passes the filter");
        break;
    case FilteredShare::notKnown:
        break;
    }
    if (seen.tannin.missing())
        return;
    if (lessThan(tanninDisturbs, seen.tannin.least()))
        out.add({0, 0, 0, 3, 0}, "tannin " + seen.tannin.shown() + " is above 0.5 mg/L");
    else if (atMost(seen.tannin.most(), tanninAbsent))
        out.add({0, 0, 0, -3, 0}, "no tannin above 0.1 mg/L");
}

double confidenceOf(int points)
{
    // Author's judgment, not a published method [common practice, no source].
    return points >= 8 ? 0.95 : points >= 6 ? 0.90 : points >= 4 ? 0.75 : points >= 2 ? 0.50 : 0.0;
}

} // namespace

bool Observations::none() const
{
    return draw.missing() && standing.missing() && reducingCup.missing() && slime.missing() &&
           swampySmell.missing() && totalIron.missing() && dissolvedIron.missing() && tannin.missing();
}

void Scoring::add(std::array<int, scoredCount> row, std::string words)
{
    for (std::size_t i = 0; i < row.size(); ++i)
        points[i] += row[i];
    evidence.push_back(std::move(words));
}

/// A tie goes to the form that is harder to treat.
Scored Scoring::best() const
{
    Scored found = scoredBacterial;
    for (const Scored next : {scoredOrganic, scoredColloidal, scoredOxidized, scoredDissolved})
        if (points[next] > points[found])
            found = next;
    return found;
}

Scoring scoreOf(const Observations &seen)
{
    Scoring out;
    scoreDraw(seen, out);
    scoreStanding(seen, out);
    scoreCupAndTank(seen, out);
    scoreLaboratory(seen, out);
    return out;
}

FormVerdict verdictOf(const Observations &seen, const Scoring &scoring)
{
    if (seen.none())
        return {};
    constexpr IronForm forms[scoredCount] = {dissolved, oxidized, bacterial, organic, colloidal};
    const auto &points = scoring.points;
    // Bacteria come with one of the other forms and decide the treatment, so they are named first.
    if (points[scoredBacterial] >= enoughPoints)
        return {bacterial, confidenceOf(points[scoredBacterial])};
    const Scored best = scoring.best();
    const int top = points[best];
    const bool mineral = best == scoredDissolved || best == scoredOxidized || top < enoughPoints;
    const bool both = points[scoredDissolved] >= enoughPoints && points[scoredOxidized] >= enoughPoints;
    if (both || (scoring.share == FilteredShare::between && mineral))
        return {mixed, 0.8}; // [common practice, no source]
    if (top >= enoughPoints)
        return {forms[best], confidenceOf(top)};
    int close = 0;
    for (const int p : points)
        close += p >= top - 1 ? 1 : 0;
    const double leading = confidenceOf(top);
    return {unknownForm, close > 1 && leading > 0.3 ? 0.3 : leading};
}

} // namespace diagnosis
