/// Turns a plain C++ function into the contract's call: arguments, reply, and the adapter between them.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <type_traits>
#include <utility>

#include "sdk/contract.h"

namespace puteal::sdk
{

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
    /// The ends of what a reading allows: <0.05 lies between 0 and 0.05, >10 between 10 and infinity.
    double least() const { return below() ? 0.0 : m_raw.number; }
    double most() const { return above() ? HUGE_VAL : m_raw.number; }
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

namespace detail
{
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
        try {
            if constexpr (std::is_same_v<typename Split::last, Reply &>) {
                Reply reply(raw);
                raw->number = invokeReplying<F>(typename Split::type{}, a, reply,
                                                std::make_index_sequence<sizeof...(A) - 1>{});
            } else {
                raw->number = invoke(F, a, std::index_sequence_for<A...>{});
            }
        } catch (...) { // no exception may cross the border
            raw->number = std::nan("");
            raw->refuse(raw, 0, "failed inside the plugin; tell its author");
        }
    }
};
} // namespace detail

/// The contract call for a plain C++ function of a fixed number of arguments.
template<auto F>
inline constexpr puteal_call call = &detail::Adapter<F, decltype(F)>::call;

} // namespace puteal::sdk
