/// Advice for one piece: a unit for a bare number, people for what is per person, another form of a
/// substance.
#include "check/advice.h"

#include <fmt/format.h>

#include "base/number.h"
#include "check/fixes.h"
#include "check/pairs.h"
#include "check/shown_unit.h"
#include "check/words.h"
#include "sdk/substances.h"

namespace puteal::checking
{

namespace
{

constexpr int one = 6; // sixths

std::string oneOf(const Unit &unit)
{
    return unit.text.starts_with('$') ? "($1" + unit.text.substr(1) + ")" : "(1 " + unit.text + ")";
}

/// "55 degF" where a difference was meant, "5 delta_degF" where a temperature was: the literal in the other
/// form.
void adviseOtherScale(const Draft &draft, Error &error, NodeIndex node)
{
    Unit unit = draft.at(node).shown;
    if (!isLiteral(draft, node) || unit.text.empty())
        return;
    constexpr std::string_view difference = "delta_";
    const bool isDifference = unit.text.starts_with(difference);
    unit.text = isDifference ? unit.text.substr(difference.size()) : std::string(difference) + unit.text;
    const std::string text = numberIn(draft, node, unit);
    error.words += fmt::format(": for a {} write {}", isDifference ? "temperature" : "difference", text);
    offer(draft, error, "write " + text, draft.span(node), text);
}

void adviseScale(const Draft &draft, Error &error, NodeIndex node, const Unit &wanted)
{
    const Scale given = draft.quantity(node).scale;
    if (isBareZero(draft, node)) {
        const std::string text = numberIn(draft, node, wanted);
        error.words += "; 0 is no temperature without its unit: write " + text;
        offer(draft, error, "write " + text, draft.span(node), text);
    } else if (wanted.type.scale == Scale::temperatureReading) {
        error.words += "; a difference of temperatures is no temperature";
        adviseOtherScale(draft, error, node);
    } else if (given == Scale::temperatureReading) {
        error.words += "; a temperature is no difference of temperatures";
        adviseOtherScale(draft, error, node);
    } else if (wanted.type.scale == Scale::absolutePressure) {
        error.words += fmt::format("; {} is measured against the air: use absolute({}, air)",
                                   quotedPiece(draft, node), source(draft, node));
    } else {
        error.words += fmt::format("; {} is an absolute pressure: use gauge({}, air)",
                                   quotedPiece(draft, node), source(draft, node));
    }
}

void adviseForm(const Draft &draft, Error &error, NodeIndex node, const QuantityType &wanted)
{
    const std::string from = soleSubstance(draft.quantity(node)), to = soleSubstance(wanted);
    if (from.empty() || to.empty())
        return;
    const std::string piece = source(draft, node);
    for (const PairFix &row : pairFixes(from, to)) {
        const bool asked = (row.replaces == PairFix::Replaces::first && row.first == from) ||
                           (row.replaces == PairFix::Replaces::second && row.second == from);
        if (!asked)
            continue;
        const std::string text =
            (row.text.starts_with("as_caco3") ? "as_caco3(" : "as_element(") + piece + ")";
        offerAloud(draft, error, fmt::format(fmt::runtime(row.words), text), draft.span(node), text);
        return;
    }
    if (elementOf(to) == from && (from == "N" || from == "S")) {
        const std::string text = fmt::format("{}(\"{}\", {})", from == "N" ? "nitrogen_as" : "sulfur_as",
                                             sdk::substances[sdk::substanceIndex(to.c_str())].name, piece);
        if (offerAloud(draft, error, "for the whole compound use " + text, draft.span(node), text))
            return;
    }
    if (elementOf(to) == from)
        error.words += fmt::format("; only the other way is told: as_element gives {} of {}", from, to);
    else
        error.words += fmt::format("; an amount of {} is none of {}", from, to);
}

} // namespace

std::string soleSubstance(const QuantityType &type)
{
    const auto &items = type.substances.items();
    return items.size() == 1 && items.front().second == one ? UnitTable::substanceWord(items.front().first)
                                                            : "";
}

std::string numberIn(const Draft &draft, NodeIndex literal, const Unit &unit)
{
    const std::string text = source(draft, literal);
    std::size_t begin = 0;
    while (begin < text.size() && (text[begin] < '0' || text[begin] > '9'))
        ++begin;
    const std::string sign = text.starts_with('-') ? "-" : "";
    const std::string number = text.substr(begin, numberLength(text, begin));
    if (unit.text.starts_with('$'))
        return sign + "$" + number + unit.text.substr(1);
    return unit.text.empty() ? sign + number : sign + number + " " + unit.text;
}

void adviseUnit(const Draft &draft, Error &error, NodeIndex node, const Unit &wanted, bool difference)
{
    Unit unit = wanted;
    if (difference && wanted.type.scale == Scale::temperatureReading)
        unit.text = "delta_" + unit.text;
    if (unit.text.empty())
        return;
    if (isLiteral(draft, node) && draft.at(node).shown.text == "%") {
        // the same figure with another unit would be a wrong amount: 5.25 % of chlorine are 52,500 mg/L
        error.words += (error.words.find(':') == std::string::npos ? ": " : "; ");
        error.words += fmt::format("{} is a share, work out the amount it stands for", source(draft, node));
        Unit ofBleach;
        ofBleach.text = "trade_pct";
        const std::string text = numberIn(draft, node, ofBleach);
        offerAloud(draft, error, "for bleach by volume write " + text, draft.span(node), text);
        return;
    }
    if (isLiteral(draft, node)) {
        const std::string text = numberIn(draft, node, unit);
        error.words += (error.words.find(':') == std::string::npos ? ": " : "; ");
        error.words += "give the number a unit, for example " + text;
        offer(draft, error, "write " + text, draft.span(node), text);
        return;
    }
    const std::string text = wrapped(draft, node) + " * " + oneOf(unit);
    error.words += (error.words.find(':') == std::string::npos ? ": " : "; ");
    error.words += "multiply the pure number by a unit, for example " + text;
    offer(draft, error, "write " + text, draft.span(node), text);
}

void adviseThings(const Draft &draft, Error &error, NodeIndex node, const QuantityType &wanted)
{
    Labels left = draft.quantity(node).things;
    for (const auto &[id, sixths] : wanted.things.items())
        left.add(id, -sixths);
    if (const auto &items = left.items(); items.size() == 2 &&
                                          draft.quantity(node).things.items().size() == 1 &&
                                          wanted.things.items().size() == 1) {
        // one counts this, the other that: a label or a thing is changed into no other
        error.words +=
            fmt::format("; {} and {} are counted apart: nothing turns one into the other",
                        draft.units().thingWord(items[0].first), draft.units().thingWord(items[1].first));
        return;
    }
    for (const auto &[id, sixths] : left.items()) {
        const std::string thing = draft.units().thingWord(id);
        const std::string piece = quotedPiece(draft, node);
        if (thing == "person" && sixths < 0) {
            const std::string people = peopleWord(draft);
            error.words += fmt::format("; {} is per person: multiply by {}", piece,
                                       people.empty() ? "the number of people" : people);
            if (!people.empty()) {
                const std::string text = wrapped(draft, node) + " * " + people;
                offer(draft, error, "write " + text, draft.span(node), text);
            }
            return;
        }
        const char *op = sixths < 0 ? "*" : "/";
        const std::string text = fmt::format("{} {} (1 {})", wrapped(draft, node), op, thing);
        const bool has = draft.quantity(node).things.sixths(id) != 0;
        const char *is =
            has ? (sixths < 0 ? "is per" : "counts") : (sixths < 0 ? "does not count" : "is not per");
        error.words += fmt::format("; {} {} {}: write {}", piece, is, thing, text);
        offer(draft, error, "write " + text, draft.span(node), text);
        return;
    }
}

void advise(const Draft &draft, Error &error, NodeIndex node, const Unit &wanted, Misfit why)
{
    switch (why) {
    case Misfit::none:
        return;
    case Misfit::dimension:
        if (draft.quantity(node).isPure()) {
            adviseUnit(draft, error, node, wanted, false);
        } else if (wanted.type.isPure() && !draft.at(node).shown.text.empty()) {
            const std::string text = wrapped(draft, node) + " / " + oneOf(draft.at(node).shown);
            error.words += ": divide by a unit first, as in " + text;
            offer(draft, error, "write " + text, draft.span(node), text);
        }
        return;
    case Misfit::scale:
        adviseScale(draft, error, node, wanted);
        return;
    case Misfit::things:
        adviseThings(draft, error, node, wanted.type);
        return;
    case Misfit::substance:
        adviseForm(draft, error, node, wanted.type);
        return;
    }
}

} // namespace puteal::checking
