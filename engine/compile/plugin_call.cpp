/// Calls of plugin functions: units, ranges, missing and bounded readings; texts only for calls that speak.
#include <fmt/format.h>

#include <array>
#include <cmath>

#include "base/limits.h"
#include "base/number.h"
#include "compile/error_number.h"
#include "compile/shown_text.h"
#include "compile/site.h"
#include "functions/functions_page.h"
#include "units/dates.h"
#include "units/shown_quantity.h"

namespace puteal
{

namespace
{

/// What a plugin said besides its number.
struct Said {
    bool spoke = false;  ///< something was said
    bool listen = false; ///< second call: labels are there, words count
    std::uint32_t refusedArgument = 0;
    std::string refusal, reason;
    std::vector<std::pair<std::string, std::string>> cautions;
};

void onRefuse(puteal_reply *reply, uint32_t argument, const char *words)
{
    auto &said = *static_cast<Said *>(reply->host);
    reply->refused = 1;
    said.spoke = true;
    said.refusedArgument = argument;
    if (said.listen)
        said.refusal = words ? words : "";
}
void onCaution(puteal_reply *reply, const char *key, const char *words)
{
    auto &said = *static_cast<Said *>(reply->host);
    said.spoke = true;
    if (said.listen)
        said.cautions.emplace_back(key ? key : "", words ? words : "");
}
void onReason(puteal_reply *reply, const char *words)
{
    auto &said = *static_cast<Said *>(reply->host);
    said.spoke = true;
    if (said.listen)
        said.reason = words ? words : "";
}

/// A number in a parameter's unit, trailing zeros dropped.
std::string inUnit(double x, const Unit &unit)
{
    constexpr int figures = 6;
    return showTrimmed(unit.toBase(x), Bound::exact, unit, figures).text();
}

/// A default the sheet did not type, as its help words it.
std::string fallbackShown(const ParameterInfo &info, double x)
{
    return info.kind == ValueKind::quantity ? inUnit(x, info.pattern.unit) : defaultWords(info);
}

/// Texts and items of one call; reused by the thread.
struct Scratch {
    std::array<puteal_argument, limits::arguments> arguments;
    std::array<std::string, limits::arguments> labels, shown;
    std::array<std::vector<double>, limits::arguments> items;
};
Scratch &scratch()
{
    static thread_local Scratch one;
    return one;
}

class Call
{
public:
    Call(EvalFrame &frame, const Site &site, const double *numbers)
        : m_frame(frame), m_site(site), m_numbers(numbers), m_scratch(scratch())
    {
    }

    /// Fills the arguments; an error number stops the call. Cautions come when all of them may be given.
    double prepare()
    {
        for (std::size_t i = 0; i < m_site.arguments.size(); ++i)
            if (const double stop = prepare(i); stop != stop)
                return stop;
        if (m_unusual)
            tellUnusual();
        return 0.0;
    }

    void addTexts()
    {
        for (std::size_t i = 0; i < m_site.arguments.size(); ++i) {
            const SiteArgument &argument = m_site.arguments[i];
            Scratch &s = m_scratch;
            s.labels[i] = label(argument);
            s.shown[i].clear();
            if (argument.from == ArgumentPlan::From::node)
                s.shown[i] = shownPiece(m_frame, argument.node, m_numbers[argument.place]);
            else if (argument.from == ArgumentPlan::From::constant)
                s.shown[i] = fallbackShown(parameter(argument), s.arguments[i].number);
            s.arguments[i].label = s.labels[i].c_str();
            s.arguments[i].shown = s.shown[i].c_str();
        }
    }

    const puteal_argument *arguments() const { return m_scratch.arguments.data(); }
    std::size_t count() const { return m_site.arguments.size(); }

private:
    const ParameterInfo &parameter(const SiteArgument &a) const
    {
        return m_site.function->parameters[a.parameter];
    }

    std::string label(const SiteArgument &argument) const
    {
        if (argument.from == ArgumentPlan::From::constant)
            return parameter(argument).name;
        if (argument.slot >= 0)
            return m_frame.host->label(m_frame.operands[argument.slot]);
        return pieceText(m_frame, argument.node);
    }

    double prepare(std::size_t i)
    {
        const SiteArgument &argument = m_site.arguments[i];
        const ParameterInfo &info = parameter(argument);
        puteal_argument &out = m_scratch.arguments[i];
        out = puteal_argument{sizeof(puteal_argument), 0, 0.0, nullptr, 0, "", ""};
        if (argument.from == ArgumentPlan::From::constant) {
            out.number = info.hasDefault ? info.fallback : argument.constant;
            return 0.0;
        }
        if (argument.from == ArgumentPlan::From::range)
            return range(i, argument, info, out);
        const double x = m_numbers[argument.place];
        if (std::isnan(x)) {
            const bool ownBlank =
                argument.slot >= 0 && isBlankNumber(x) && errorOrigin(x) == m_frame.operands[argument.slot];
            if (!info.mayBeMissing || !ownBlank)
                return x;
            out.flags |= PUTEAL_MISSING;
            out.number = std::nan("");
            return 0.0;
        }
        if (std::isinf(x))
            return notFiniteHere();
        if (argument.bounded)
            out.flags |=
                static_cast<std::uint32_t>(boundOf(argument) == Bound::below ? PUTEAL_BELOW : PUTEAL_ABOVE);
        out.number = given(info, x);
        if (info.kind != ValueKind::quantity)
            return 0.0;
        m_unusual = m_unusual || isUnusual(info, out.number);
        return checkHard(argument, info, out.number);
    }

    static bool isUnusual(const ParameterInfo &info, double x)
    {
        return !atMost(info.usualLow, x) || !atMost(x, info.usualHigh);
    }

    /// A number of the sheet as the contract hands it over.
    double given(const ParameterInfo &info, double x) const
    {
        if (info.kind == ValueKind::date)
            return wholeDays(x, m_frame.host->dayInBase());
        return info.kind == ValueKind::quantity ? info.pattern.unit.fromBase(x) : x;
    }

    Bound boundOf(const SiteArgument &argument) const
    {
        if (argument.slot >= 0 && m_frame.bounds)
            return static_cast<Bound>(m_frame.bounds[m_frame.operands[argument.slot]]);
        return m_frame.formula->checked->nodes[argument.node].type.bound;
    }

    double range(std::size_t i, const SiteArgument &argument, const ParameterInfo &info, puteal_argument &out)
    {
        std::vector<double> &items = m_scratch.items[i];
        const std::uint32_t first = m_frame.rangeFirst(argument.range),
                            count = m_frame.rangeCount(argument.range);
        items.resize(count);
        for (std::uint32_t k = 0; k < count; ++k) {
            double x = m_frame.number[first + k];
            if (std::isnan(x) && !isBlankNumber(x))
                return x;
            if (m_frame.bounds)
                x = m_frame.ruled(x, static_cast<Bound>(m_frame.bounds[first + k]));
            items[k] = std::isnan(x) ? std::nan("") : given(info, x);
        }
        out.items = items.data();
        out.count = count;
        return 0.0;
    }

    /// A bare 12.5 where a share is asked for was meant as 12.5 %; said only where that would do.
    std::string percentWords(const SiteArgument &argument, const ParameterInfo &info, double x) const
    {
        const std::string typed = pieceText(m_frame, argument.node);
        const bool share = info.pattern.unit.text.empty() && atMost(info.hardHigh, 1.0);
        const bool bare = !typed.empty() && typed.find_first_not_of("0123456789.") == std::string::npos;
        const bool fits = atMost(info.hardLow, x / 100.0) && atMost(x / 100.0, info.hardHigh);
        return share && bare && fits ? fmt::format(": for {} percent write {} %", typed, typed)
                                     : std::string();
    }

    double checkHard(const SiteArgument &argument, const ParameterInfo &info, double x)
    {
        const bool low = !atMost(info.hardLow, x), high = !atMost(x, info.hardHigh);
        if (!low && !high)
            return 0.0;
        return m_frame.failed(Error{
            ErrorKind::refused,
            fmt::format("`{}` must be at {} {}; it is {}{}", info.name, low ? "least" : "most",
                        inUnit(low ? info.hardLow : info.hardHigh, info.pattern.unit),
                        inUnit(x, info.pattern.unit), high ? percentWords(argument, info, x) : std::string()),
            {},
            Place{m_frame.formula->tree->nodes[argument.node].span, {}, 0}});
    }

    void tellUnusual();

    EvalFrame &m_frame;
    const Site &m_site;
    const double *m_numbers;
    Scratch &m_scratch;
    bool m_unusual = false; ///< some argument is outside what is usual
};

/// Cautions for values outside what is usual.
void Call::tellUnusual()
{
    for (std::size_t i = 0; i < m_site.arguments.size(); ++i) {
        const SiteArgument &argument = m_site.arguments[i];
        const ParameterInfo &info = parameter(argument);
        const puteal_argument &given = m_scratch.arguments[i];
        if (argument.from != ArgumentPlan::From::node || info.kind != ValueKind::quantity ||
            (given.flags & PUTEAL_MISSING) != 0)
            continue;
        const bool low = !atMost(info.usualLow, given.number);
        if (isUnusual(info, given.number))
            m_frame.cautions.push_back(
                {"unusual",
                 fmt::format("`{}` is usually at {} {}; here it is {}", info.name, low ? "least" : "most",
                             inUnit(low ? info.usualLow : info.usualHigh, info.pattern.unit),
                             inUnit(given.number, info.pattern.unit)),
                 m_frame.formula->tree->nodes[argument.node].span});
    }
}

double resultOf(EvalFrame &frame, const Site &site, double number)
{
    const FunctionInfo &function = *site.function;
    const Span span = frame.formula->tree->nodes[site.node].span;
    const auto nonsense = [&] {
        return frame.failed(Error{
            ErrorKind::plugin,
            fmt::format("`{}` gave no usable result for these arguments: tell the author of the plugin `{}`",
                        function.name, function.plugin),
            {},
            Place{span, {}, 0}});
    };
    if (!std::isfinite(number))
        return nonsense();
    if (function.resultKind == ValueKind::quantity)
        return function.result.unit.toBase(number);
    if (function.resultKind == ValueKind::yesNo)
        return number != 0.0 ? 1.0 : 0.0;
    if (function.resultKind == ValueKind::date)
        return number == std::floor(number) && number >= firstDay && number <= lastDay
                   ? number * frame.host->dayInBase()
                   : nonsense();
    if (number < 0.0 || number >= static_cast<double>(function.resultChoices.size()) ||
        number != std::floor(number))
        return nonsense();
    return number;
}

double refusalOf(EvalFrame &frame, const Site &site, const Said &said)
{
    Span span = frame.formula->tree->nodes[site.node].span;
    if (said.refusedArgument > 0 && said.refusedArgument <= site.arguments.size()) {
        const SiteArgument &argument = site.arguments[said.refusedArgument - 1];
        if (argument.from != ArgumentPlan::From::constant)
            span = frame.formula->tree->nodes[argument.node].span;
    }
    return frame.failed(Error{ErrorKind::refused, said.refusal, {}, Place{span, {}, 0}});
}

} // namespace

double callPlugin(EvalFrame &frame, const Site &site, SiteEntry &entry, const double *numbers)
{
    puteal_call call = entry.call.load(std::memory_order_acquire);
    if (!call) {
        const auto found = frame.formula->registry->callOf(*site.function);
        if (!found) {
            Error error = found.error();
            error.place.span = frame.formula->tree->nodes[site.node].span;
            return frame.failed(std::move(error));
        }
        call = *found;
        entry.call.store(call, std::memory_order_release);
    }
    Call prepared(frame, site, numbers);
    if (const double stop = prepared.prepare(); stop != stop)
        return stop;
    Said said;
    puteal_reply reply{sizeof(puteal_reply), 0, 0.0, &said, onRefuse, onCaution, onReason};
    call(prepared.arguments(), prepared.count(), &reply);
    if (!said.spoke)
        return resultOf(frame, site, reply.number);
    // It has something to say: called again with the names and values its words may use (functions are pure).
    prepared.addTexts();
    said = Said{};
    said.listen = true;
    reply = puteal_reply{sizeof(puteal_reply), 0, 0.0, &said, onRefuse, onCaution, onReason};
    call(prepared.arguments(), prepared.count(), &reply);
    if (reply.refused)
        return refusalOf(frame, site, said);
    for (auto &[key, words] : said.cautions)
        frame.cautions.push_back({key, words, frame.formula->tree->nodes[site.node].opSpan});
    if (!said.reason.empty())
        frame.sites[static_cast<std::size_t>(&site - frame.formula->sites.data())].reason =
            frame.host->intern(said.reason);
    return resultOf(frame, site, reply.number);
}

} // namespace puteal
