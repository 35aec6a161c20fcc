/// Reads unit patterns of signatures and counts and prints their arguments.
#include "functions/signature.h"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "base/limits.h"

namespace puteal
{
namespace
{

/// Splits at `separator` outside brackets.
std::vector<std::string> split(std::string_view text, char separator)
{
    std::vector<std::string> parts(1);
    int depth = 0;
    for (const char c : text) {
        depth += c == '(' || c == '{' ? 1 : c == ')' || c == '}' ? -1 : 0;
        if (c == separator && depth == 0)
            parts.emplace_back();
        else
            parts.back() += c;
    }
    return parts;
}

/// 'u, 'u^2, 'u^(1/2): the letter and its exponent in sixths.
Result<std::pair<char, int>> readVariable(const std::string &factor)
{
    const auto wrong = [&] {
        return fail(ErrorKind::unit,
                    fmt::format("\"{}\" is no unit variable: write 'u, 'u^2 or 'u^(1/2)", factor));
    };
    if (factor.size() < 2 || factor[1] < 'a' || factor[1] > 'z')
        return wrong();
    if (factor.size() == 2)
        return std::pair<char, int>{factor[1], 6};
    std::string power = factor.substr(2);
    if (power[0] != '^')
        return wrong();
    power.erase(0, 1);
    if (power.size() > 2 && power.front() == '(' && power.back() == ')')
        power = power.substr(1, power.size() - 2);
    int top = 0, bottom = 1;
    const char *end = power.data() + power.size();
    auto read = std::from_chars(power.data(), end, top);
    if (read.ec == std::errc{} && read.ptr != end && *read.ptr == '/')
        read = std::from_chars(read.ptr + 1, end, bottom);
    if (read.ec != std::errc{} || read.ptr != end || bottom <= 0 || top * 6 % bottom != 0 || top > 10 ||
        top < -10)
        return wrong();
    return std::pair<char, int>{factor[1], top * 6 / bottom};
}

std::string joinedBy(const std::vector<std::string> &parts, const char *separator)
{
    return fmt::format("{}", fmt::join(parts, separator));
}

/// Takes the variables out of a text without "as"; what is left is the fixed part.
Result<std::string> takeVariables(const std::string &text, UnitPattern &pattern)
{
    const auto sides = split(text, '/');
    std::vector<std::string> fixed[2];
    for (std::size_t side = 0; side < sides.size(); ++side) {
        if (side > 1)
            return fail(ErrorKind::unit, fmt::format("\"{}\" has two \"/\": write one", text));
        for (const auto &factor : split(sides[side], '*')) {
            if (factor.empty() || factor[0] != '\'') {
                fixed[side].push_back(factor);
                continue;
            }
            const auto variable = readVariable(factor);
            if (!variable)
                return tl::unexpected(variable.error());
            pattern.variables.emplace_back(variable->first, side == 0 ? variable->second : -variable->second);
        }
    }
    if (fixed[0] == std::vector<std::string>{"1"})
        fixed[0].clear();
    const auto oneSide = [](const std::vector<std::string> &factors) {
        return factors.size() > 1 ? "(" + joinedBy(factors, "*") + ")" : joinedBy(factors, "");
    };
    if (fixed[1].empty())
        return oneSide(fixed[0]);
    return (fixed[0].empty() ? "1" : oneSide(fixed[0])) + "/" + oneSide(fixed[1]);
}

Result<int> choiceWithSubstances(const std::string &name, const std::vector<ParameterInfo> &parameters)
{
    for (std::size_t i = 0; i < parameters.size(); ++i) {
        const auto &p = parameters[i];
        if (p.name != name)
            continue;
        if (p.kind != ValueKind::choice || p.choiceSubstances.size() != p.choices.size())
            break;
        return static_cast<int>(i);
    }
    return fail(ErrorKind::name,
                fmt::format("no choice parameter `{}` with substances beside its words", name));
}

} // namespace

Result<UnitPattern> readPattern(const std::string &text, const UnitTable &units,
                                const std::vector<ParameterInfo> &parameters)
{
    UnitPattern pattern;
    pattern.text = text;
    std::string fixed = text;
    if (const auto as = text.find(" as '"); as != std::string::npos) {
        const auto from = choiceWithSubstances(text.substr(as + 5), parameters);
        if (!from)
            return tl::unexpected(from.error());
        pattern.substanceFrom = *from;
        fixed = text.substr(0, as);
    }
    if (fixed.find('\'') != std::string::npos) {
        auto rest = takeVariables(fixed, pattern);
        if (!rest)
            return tl::unexpected(rest.error());
        fixed = std::move(*rest);
    }
    if (fixed.empty())
        return pattern;
    auto unit = readUnit(fixed, units);
    if (!unit)
        return tl::unexpected(unit.error());
    pattern.unit = std::move(*unit);
    return pattern;
}

std::size_t FunctionInfo::leastArguments() const
{
    return static_cast<std::size_t>(std::count_if(parameters.begin(), parameters.end(),
                                                  [](const ParameterInfo &p) { return !p.hasDefault; }));
}

std::size_t FunctionInfo::mostArguments() const
{
    const bool open =
        std::any_of(parameters.begin(), parameters.end(), [](const ParameterInfo &p) { return p.repeats; });
    return open ? limits::arguments : parameters.size();
}

std::string FunctionInfo::call() const
{
    std::string text = name + "(";
    for (const auto &p : parameters) {
        if (&p != &parameters.front())
            text += ", ";
        const std::string shown = p.repeats ? p.name + "..." : p.name;
        text += p.hasDefault ? "[" + shown + "]" : shown;
    }
    return text + ")";
}

} // namespace puteal
