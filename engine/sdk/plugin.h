/// Header-only C++ on top of the contract: an author writes plain functions and two small tables.
///
///     static double saltPerYear(double saltPerEvent, double daysBetween) { return saltPerEvent * 365 / daysBetween; }
///     ... function("salt_per_year", ..., call<saltPerYear>)
///
/// A function takes its arguments in order, each as `double` (number in the declared unit; choice: index; yes/no: bool),
/// or as `const Argument &` (range, missing, bounded, label), and may take `Reply &` last to refuse, caution or reason.
#pragma once

#include <cmath>
#include <cstdio>
#include <string>
#include <type_traits>
#include <utility>

#include "sdk/contract.h"
#include "sdk/substances.h"

namespace puteal::sdk {

/// One argument as the host passes it.
class Argument
{
public:
    explicit Argument(const puteal_argument &raw) : m_raw(raw) {}
    bool missing() const { return (m_raw.flags & PUTEAL_MISSING) != 0; }
    bool below() const { return (m_raw.flags & PUTEAL_BELOW) != 0; }
    bool above() const { return (m_raw.flags & PUTEAL_ABOVE) != 0; }
    double number() const { return m_raw.number; }
    bool yes() const { return m_raw.number != 0.0; }
    int choice() const { return static_cast<int>(m_raw.number); }
    const double *begin() const { return m_raw.items; }
    const double *end() const { return m_raw.items + m_raw.count; }
    std::size_t count() const { return m_raw.count; }
    std::string label() const { return m_raw.label ? m_raw.label : ""; }
    std::string shown() const { return m_raw.shown ? m_raw.shown : ""; }

private:
    const puteal_argument &m_raw;
};

/// What goes back besides the number.
class Reply
{
public:
    explicit Reply(puteal_reply *raw) : m_raw(raw) {}
    /// Refuses; return any number afterwards. `argument` counts from 1, 0 = none in particular.
    double refuse(std::uint32_t argument, const std::string &words)
    {
        m_raw->refuse(m_raw, argument, words.c_str());
        return std::nan("");
    }
    void caution(const char *key, const std::string &words) { m_raw->caution(m_raw, key, words.c_str()); }
    void reason(const std::string &words) { m_raw->reason(m_raw, words.c_str()); }

private:
    puteal_reply *m_raw;
};

namespace detail {
template<class T>
struct Take;
template<>
struct Take<double> {
    static double from(const puteal_argument &a) { return a.number; }
};
template<>
struct Take<bool> {
    static bool from(const puteal_argument &a) { return a.number != 0.0; }
};
template<>
struct Take<int> {
    static int from(const puteal_argument &a) { return static_cast<int>(a.number); }
};
template<>
struct Take<const Argument &> {
    static Argument from(const puteal_argument &a) { return Argument(a); }
};

template<class R, class... A, std::size_t... I>
double invoke(R (*f)(A...), const puteal_argument *a, std::index_sequence<I...>)
{
    return static_cast<double>(f(Take<A>::from(a[I])...));
}
template<auto F, class R, class... A>
void run(R (*)(A...), const puteal_argument *a, puteal_reply *reply)
{
    reply->number = invoke(F, a, std::index_sequence_for<A...>{});
}

template<class List>
struct SplitLast;
template<class... A>
struct Pack {
};
template<class Done, class Rest>
struct Front;
template<class... D, class Last>
struct Front<Pack<D...>, Pack<Last>> {
    using type = Pack<D...>;
    using last = Last;
};
template<class... D, class N, class M, class... R>
struct Front<Pack<D...>, Pack<N, M, R...>> : Front<Pack<D..., N>, Pack<M, R...>> {
};

template<auto F, class... D, std::size_t... I>
double invokeReplying(Pack<D...>, const puteal_argument *a, Reply &reply, std::index_sequence<I...>)
{
    return static_cast<double>(F(Take<D>::from(a[I])..., reply));
}

template<auto F, class Sig>
struct Adapter;
template<auto F, class R, class... A>
struct Adapter<F, R (*)(A...)> {
    using Split = Front<Pack<>, Pack<A...>>;
    static void call(const puteal_argument *a, std::size_t, puteal_reply *raw)
    {
        if constexpr (std::is_same_v<typename Split::last, Reply &>) {
            Reply reply(raw);
            raw->number = invokeReplying<F>(typename Split::type{}, a, reply,
                                            std::make_index_sequence<sizeof...(A) - 1>{});
        } else {
            raw->number = invoke(F, a, std::index_sequence_for<A...>{});
        }
    }
};
} // namespace detail

/// The contract call for a plain C++ function of a fixed number of arguments.
template<auto F>
inline constexpr puteal_call call = &detail::Adapter<F, decltype(F)>::call;

/// Builds a parameter row; chain the setters.
struct Parameter : puteal_parameter {
    constexpr Parameter(const char *n, const char *u, const char *m)
        : puteal_parameter{sizeof(puteal_parameter), PUTEAL_QUANTITY, 0, n, u, m, -HUGE_VAL, HUGE_VAL, -HUGE_VAL,
                           HUGE_VAL, 0.0, "", nullptr, nullptr}
    {
    }
    constexpr Parameter hard(double low, double high) const { auto p = *this; p.hard_low = low; p.hard_high = high; return p; }
    constexpr Parameter usual(double low, double high) const { auto p = *this; p.usual_low = low; p.usual_high = high; return p; }
    constexpr Parameter otherwise(double value, const char *mark) const
    {
        auto p = *this;
        p.flags |= PUTEAL_HAS_DEFAULT;
        p.fallback = value;
        p.fallback_mark = mark;
        return p;
    }
    constexpr Parameter mayBeMissing() const { auto p = *this; p.flags |= PUTEAL_MAY_BE_MISSING; return p; }
    constexpr Parameter mayBeBounded() const { auto p = *this; p.flags |= PUTEAL_MAY_BE_BOUNDED; return p; }
    constexpr Parameter range() const { auto p = *this; p.flags |= PUTEAL_RANGE; return p; }
    constexpr Parameter repeats() const { auto p = *this; p.flags |= PUTEAL_REPEATS; return p; }
    constexpr Parameter yesNo() const { auto p = *this; p.kind = PUTEAL_YES_NO; return p; }
    constexpr Parameter oneOf(const char *const *words, const char *const *standFor = nullptr) const
    {
        auto p = *this;
        p.kind = PUTEAL_CHOICE;
        p.choices = words;
        p.choice_substances = standFor;
        return p;
    }
};

/// Rows of the other tables.
constexpr puteal_example example(const char *formula, const char *expected, double tolerance, const char *origin,
                                 const char *source)
{
    return {sizeof(puteal_example), formula, expected, tolerance, origin, source};
}
constexpr puteal_example refusal(const char *formula, const char *message)
{
    return {sizeof(puteal_example), formula, message, 0.0, "", ""};
}
constexpr puteal_source source(const char *key, const char *mark, const char *words)
{
    return {sizeof(puteal_source), key, mark, words};
}
constexpr puteal_caution caution(const char *key, const char *when)
{
    return {sizeof(puteal_caution), key, when};
}

/// The one comparison of the product: relative slack 1e-12, the same as in formulas.
inline bool atMost(double a, double b)
{
    return a <= b + 1e-12 * std::fmax(std::fabs(a), std::fabs(b));
}
inline bool lessThan(double a, double b)
{
    return !atMost(b, a);
}
inline bool nearlyEqual(double a, double b)
{
    return atMost(a, b) && atMost(b, a);
}

/// "%.4g"-like short text for words a function writes itself.
inline std::string figures(double x, int n = 3)
{
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.*g", n, x);
    return buffer;
}

} // namespace puteal::sdk

#define PUTEAL_EXPORT extern "C" __attribute__((visibility("default")))
