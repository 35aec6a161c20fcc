/// Trees of unit words: simplified, printed, multiplied out.
#include "units/unit_tree.h"

#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace puteal
{

namespace
{

constexpr int sixthsOfOne = 6;
constexpr int mostSixths = 126; // int8 with room

bool isOne(const UnitPart &part)
{
    return part.numerator == part.denominator;
}

std::string powerText(const UnitPart &part)
{
    if (isOne(part))
        return {};
    if (part.denominator == 1)
        return fmt::format("^{}", part.numerator);
    return fmt::format("^({}/{})", part.numerator, part.denominator);
}

std::string inner(const UnitPart &group, bool braces);

std::string factorText(const UnitPart &part, bool braces)
{
    if (!part.word)
        return "(" + inner(part, braces) + ")" + powerText(part);
    // `$` stands only in front of a number: inside a unit it is spelled out
    std::string text = (part.word->word == "$" ? "USD" : part.word->word) + powerText(part);
    if (braces && part.substance >= 0)
        text += "{" + UnitTable::substanceWord(static_cast<std::uint16_t>(part.substance)) + "}";
    return text;
}

std::string productText(const std::vector<UnitPart> &parts, bool braces)
{
    std::string text;
    for (const UnitPart &part : parts)
        text += (text.empty() ? "" : "*") + factorText(part, braces);
    return text;
}

/// `a*b/c`, as it stands inside parentheses.
std::string inner(const UnitPart &group, bool braces)
{
    std::string text = group.top.empty() ? "1" : productText(group.top, braces);
    if (group.bottom.empty())
        return text;
    const std::string below = productText(group.bottom, braces);
    return text + "/" + (group.bottom.size() > 1 ? "(" + below + ")" : below);
}

/// Exponents summed as plain integers, so that an overflow is seen.
struct Sums {
    std::array<int, baseCount> dimension{};
    std::vector<std::pair<std::uint16_t, int>> things, substances;
    bool tooLarge = false;
};

void addLabel(std::vector<std::pair<std::uint16_t, int>> &labels, std::uint16_t id, int sixths)
{
    for (auto &item : labels)
        if (item.first == id) {
            item.second += sixths;
            return;
        }
    labels.emplace_back(id, sixths);
}

void addWord(const UnitPart &part, int sixths, Sums &sums)
{
    const QuantityType &type = part.word->type;
    for (std::size_t i = 0; i < baseCount; ++i)
        sums.dimension[i] += type.dimension.sixths[i] * sixths / sixthsOfOne;
    for (const auto &[id, own] : type.things.items())
        addLabel(sums.things, id, own * sixths / sixthsOfOne);
    for (const auto &[id, own] : type.substances.items())
        addLabel(sums.substances, id, own * sixths / sixthsOfOne);
    if (part.substance >= 0 && type.substances.empty())
        addLabel(sums.substances, static_cast<std::uint16_t>(part.substance), sixths);
}

void sumUp(const UnitPart &part, long sixths, Sums &sums)
{
    const long own = sixths * part.numerator / part.denominator;
    if (std::labs(own) > mostSixths) {
        sums.tooLarge = true;
        return;
    }
    if (part.word) {
        addWord(part, static_cast<int>(own), sums);
        return;
    }
    for (const UnitPart &p : part.top)
        sumUp(p, own, sums);
    for (const UnitPart &p : part.bottom)
        sumUp(p, -own, sums);
}

double raised(double factor, int numerator, int denominator)
{
    if (denominator != 1)
        return std::pow(factor, static_cast<double>(numerator) / denominator);
    double result = 1.0;
    for (int i = 0; i < std::abs(numerator); ++i)
        result *= factor;
    return numerator < 0 ? 1.0 / result : result;
}

double factorOf(const UnitPart &part)
{
    double factor = 1.0;
    if (part.word) {
        factor = part.word->factor;
    } else {
        bool first = true;
        for (const UnitPart &p : part.top) {
            factor = first ? factorOf(p) : factor * factorOf(p);
            first = false;
        }
        for (const UnitPart &p : part.bottom)
            factor /= factorOf(p);
    }
    return isOne(part) ? factor : raised(factor, part.numerator, part.denominator);
}

/// A reading or absolute pressure that does not stand alone.
const UnitPart *scaleInside(const UnitPart &part)
{
    if (part.word)
        return part.word->type.scale == Scale::plain ? nullptr : &part;
    for (const auto *list : {&part.top, &part.bottom})
        for (const UnitPart &p : *list)
            if (const UnitPart *found = scaleInside(p))
                return found;
    return nullptr;
}

tl::unexpected<Error> scaleError(const UnitPart &part)
{
    const std::string &word = part.word->word;
    const bool isTemperature = part.word->type.scale == Scale::temperatureReading;
    const std::string other = isTemperature ? "delta_" + word : word.substr(0, word.find("_abs"));
    auto error = fail(ErrorKind::unit,
                      fmt::format("`{}` is {} and cannot be part of a larger unit: write {}", word,
                                  isTemperature ? "a temperature reading" : "an absolute pressure", other),
                      part.span);
    error.value().fixes.push_back({"write " + other, part.span, other});
    return error;
}

bool readLabels(const std::vector<std::pair<std::uint16_t, int>> &from, Labels &to)
{
    for (const auto &[id, sixths] : from) {
        if (std::abs(sixths) > mostSixths)
            return false;
        to.add(id, sixths);
    }
    return true;
}

void flatten(std::vector<UnitPart> &parts, std::vector<UnitPart> &other)
{
    std::vector<UnitPart> result;
    for (UnitPart &part : parts) {
        simplify(part);
        const bool plainGroup = !part.word && isOne(part);
        // a group stays together when it has a bottom and others stand beside it
        if (plainGroup && (part.bottom.empty() || part.top.empty())) {
            result.insert(result.end(), part.top.begin(), part.top.end());
            other.insert(other.end(), part.bottom.begin(), part.bottom.end());
        } else if (!part.word && part.bottom.empty() && part.top.size() == 1 &&
                   part.top[0].denominator == 1 && part.denominator == 1) {
            UnitPart only = part.top[0];
            only.numerator *= part.numerator;
            result.push_back(std::move(only));
        } else {
            result.push_back(std::move(part));
        }
    }
    parts = std::move(result);
}

} // namespace

std::string unitText(const UnitPart &root, bool braces)
{
    if (root.top.empty() && root.bottom.empty())
        return {};
    if (root.top.size() <= 1) {
        const std::string text = inner(root, braces);
        const bool dollars = !root.top.empty() && isOne(root.top[0]) && text.starts_with("USD");
        return dollars ? "$" + text.substr(3) : text;
    }
    UnitPart below = root;
    below.top.clear();
    const std::string above = "(" + productText(root.top, braces) + ")";
    return root.bottom.empty() ? above : above + inner(below, braces).substr(1);
}

void simplify(UnitPart &root)
{
    if (root.word)
        return;
    std::vector<UnitPart> moreTop, moreBottom;
    flatten(root.top, moreBottom);
    flatten(root.bottom, moreTop);
    root.top.insert(root.top.end(), moreTop.begin(), moreTop.end());
    root.bottom.insert(root.bottom.end(), moreBottom.begin(), moreBottom.end());
    if (root.top.size() == 1 && root.bottom.empty() && isOne(root)) {
        UnitPart only = root.top[0];
        if (only.word && only.numerator < 0) {
            only.numerator = -only.numerator;
            root.bottom.push_back(std::move(only));
            root.top.clear();
        } else if (!only.word && isOne(only)) {
            root = std::move(only);
        }
    }
}

std::vector<AmountWord> amountWords(UnitPart &root)
{
    std::vector<AmountWord> found;
    struct Walk {
        std::vector<AmountWord> &found;
        void operator()(UnitPart &part, int sixths)
        {
            const int own = sixths * part.numerator / part.denominator;
            if (part.word && part.word->isAmount)
                found.push_back({&part, own});
            for (UnitPart &p : part.top)
                (*this)(p, own);
            for (UnitPart &p : part.bottom)
                (*this)(p, -own);
        }
    };
    Walk{found}(root, sixthsOfOne);
    return found;
}

Result<Unit> unitOf(const UnitPart &root)
{
    Unit unit;
    const bool alone =
        root.top.size() == 1 && root.bottom.empty() && root.top[0].word && isOne(root.top[0]) && isOne(root);
    if (alone) {
        unit.offset = root.top[0].word->offset;
    } else if (const UnitPart *inside = scaleInside(root)) {
        return scaleError(*inside);
    }
    Sums sums;
    sumUp(root, sixthsOfOne, sums);
    for (std::size_t i = 0; i < baseCount; ++i) {
        sums.tooLarge = sums.tooLarge || std::abs(sums.dimension[i]) > mostSixths;
        unit.type.dimension.sixths[i] = static_cast<std::int8_t>(sums.tooLarge ? 0 : sums.dimension[i]);
    }
    if (sums.tooLarge || !readLabels(sums.things, unit.type.things) ||
        !readLabels(sums.substances, unit.type.substances))
        return fail(ErrorKind::unit, "the powers of this unit are too large: 21 at most");
    if (alone)
        unit.type.scale = root.top[0].word->type.scale;
    unit.factor = factorOf(root);
    UnitPart copy = root;
    const std::vector<AmountWord> amounts = amountWords(copy);
    const bool one = amounts.size() == 1;
    unit.text = unitText(root, !one);
    if (one && amounts[0].part->substance >= 0 && amounts[0].part->word->type.substances.empty())
        unit.text +=
            " as " + UnitTable::substanceWord(static_cast<std::uint16_t>(amounts[0].part->substance));
    return unit;
}

} // namespace puteal
