/// The row in force on a day, the strictest of all places, and the words for a row.
#include "limits.h"
#include "reading.h"

#include <cstring>

using namespace puteal::sdk;

namespace limits
{
namespace
{

constexpr const char *limitNames[] = {"health limit", "advisory", "aesthetic objective", "treatment goal"};

bool isInForce(const Limit &row, double day)
{
    return row.from <= day && day <= row.until;
}

bool isAsked(const Limit &row, const Asked &what, int place, Purpose purpose, double day)
{
    return row.item == what.item && row.place == place && purposeOf(row.kind) == purpose &&
           isInForce(row, day);
}

bool isInBasis(const Limit &row, const Asked &what)
{
    return std::strcmp(row.basis, what.substance) == 0;
}

/// The day from which the table knows a limit of this kind; infinite where it never does.
double firstKnown(const Asked &what, int place, Purpose purpose)
{
    double first = open;
    for (const Limit &row : table)
        if (row.item == what.item && row.place == place && purposeOf(row.kind) == purpose && row.from < first)
            first = row.from;
    return first;
}

std::string unitAfter(const Limit &row, const Asked &what)
{
    switch (row.item) {
    case ph:
        return "";
    case color:
        return " CU";
    case odor:
        return " TON";
    case totalColiform:
    case eColi:
        return " in 100 mL";
    default:
        return std::string(" mg/L as ") + what.substance;
    }
}

} // namespace

const Limit *inForce(const Asked &what, int place, Purpose purpose, double day)
{
    const Limit *found = nullptr;
    for (const Limit &row : table)
        if (isAsked(row, what, place, purpose, day) && (!found || isInBasis(row, what)))
            found = &row;
    return found;
}

const Limit *strictest(const Asked &what, Purpose purpose, double day)
{
    const Limit *least = nullptr;
    for (int place = 0; place < placeCount; ++place) {
        const Limit *row = inForce(what, place, purpose, day);
        if (row && row->high < noLimit &&
            (!least || inBasis(row->high, *row, what) < inBasis(least->high, *least, what)))
            least = row;
    }
    return least;
}

double inBasis(double value, const Limit &row, const Asked &what)
{
    if (row.high == noLimit || isInBasis(row, what) || !*what.substance)
        return value;
    return value * molarMass(what.substance) / molarMass(row.basis);
}

std::string valueWords(const Limit &row, const Asked &what)
{
    if (row.high == noLimit)
        return "none";
    if (row.low > 0.0)
        return figures(row.low) + " to " + figures(row.high);
    if (row.item == totalColiform || row.item == eColi)
        return "none" + unitAfter(row, what);
    const bool converted = *what.substance && !isInBasis(row, what);
    const std::string own = figures(row.high) + " mg/L as " + row.basis;
    return figures(inBasis(row.high, row, what), converted ? 4 : 3) + unitAfter(row, what) +
           (converted ? ", printed as " + own : "");
}

std::string limitWords(const Limit &row, const Asked &what)
{
    std::string words = std::string(kindWords[row.kind]) + " " + valueWords(row, what) + " (" +
                        placeWords[row.place] + ", in force from " + dateWords(row.from);
    words += row.day == recalled ? ", day recalled" : row.day == yearOfSource ? " at the latest" : "";
    if (row.until < open)
        words += ", until " + dateWords(row.until);
    words += row.value == recalled ? std::string("; recalled") : std::string("; source ") + row.source;
    if (row.kind == actionLevel)
        words += std::string("; ") + row.note;
    return words + ")";
}

double refuseNone(const Asked &what, int place, Purpose purpose, double day, const Places &at, Reply &reply)
{
    const std::string limit = limitNames[purpose], of = " for " + nameOf(what) + " of " + placeWords[place];
    const double first = firstKnown(what, place, purpose);
    if (first == open)
        return reply.refuse(at.what,
                            "the table has no " + limit + of + ": ask another purpose or jurisdiction");
    if (day < first)
        return reply.refuse(at.date, "the table knows no " + limit + of + " before " + dateWords(first) +
                                         ": check the date " + dateWords(day));
    return reply.refuse(at.date, "there was no " + limit + of + " on " + dateWords(day) +
                                     ": ask another jurisdiction");
}

bool refusedTooEarly(const Asked &what, int place, double day, std::uint32_t at, Reply &reply)
{
    double first = open;
    for (const Purpose purpose : {forHealth, forAdvice, forAesthetics})
        first = std::fmin(first, firstKnown(what, place, purpose));
    if (first == open || first <= day)
        return false;
    reply.refuse(at, "the table knows no limit for " + nameOf(what) + " of " + placeWords[place] +
                         " before " + dateWords(first) + ": check the date " + dateWords(day));
    return true;
}

Side sideOf(const Reading &reading, double limit, double band)
{
    // The bound of ">3" is itself not reached, so it is already over a limit of 3.
    if (lessThan(limit, reading.least) || (reading.above && atMost(limit, reading.least)))
        return Side::over;
    if (!atMost(reading.most, limit))
        return Side::unclear;
    return lessThan(limit - band, reading.least) ? Side::close : Side::under;
}

void laterCaution(double day, Reply &reply)
{
    if (day > keptUntil)
        reply.caution("later_than_table", "the table was kept until " + dateWords(keptUntil) +
                                              ": look for newer rules before you rely on it");
}

void recalledCaution(const Limit &row, Reply &reply)
{
    reply.caution("recalled", std::string("the ") + kindWords[row.kind] + " of " + placeWords[row.place] +
                                  " for " + itemNames[row.item] +
                                  " is known from memory: look it up before it decides");
}

void cautionsOf(const Limit &row, double day, Reply &reply)
{
    laterCaution(day, reply);
    if (row.value == recalled)
        recalledCaution(row, reply);
}

} // namespace limits
