/// Builders for the tables a plugin hands over: parameters, examples, sources, cautions, functions, the
/// plugin.
#pragma once

#include <cstddef>
#include <cstdint>

#include "sdk/contract.h"

namespace puteal::sdk
{

/// Rows of the other tables.
constexpr puteal_example example(const char *formula, const char *expected, double tolerance,
                                 const char *origin, const char *source)
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

/// Builds a function row; every table is a static array, its rows are counted here.
struct Function : puteal_function {
    constexpr Function(const char *functionName, const char *functionTitle, const char *whatFor,
                       puteal_call f)
        : puteal_function{sizeof(puteal_function),
                          functionName,
                          functionTitle,
                          whatFor,
                          nullptr,
                          0,
                          PUTEAL_QUANTITY,
                          "",
                          "",
                          nullptr,
                          "",
                          nullptr,
                          nullptr,
                          0,
                          nullptr,
                          0,
                          nullptr,
                          0,
                          "",
                          f}
    {
    }
    template<std::size_t N>
    constexpr Function takes(const puteal_parameter (&rows)[N]) const
    {
        auto f = *this;
        f.parameters = rows;
        f.parameter_count = N;
        return f;
    }
    constexpr Function gives(const char *unit, const char *meaning) const
    {
        auto f = *this;
        f.result_unit = unit;
        f.result_meaning = meaning;
        return f;
    }
    constexpr Function givesYesNo(const char *meaning) const
    {
        auto f = gives("", meaning);
        f.result_kind = PUTEAL_YES_NO;
        return f;
    }
    constexpr Function givesOneOf(const char *const *words, const char *meaning) const
    {
        auto f = gives("", meaning);
        f.result_kind = PUTEAL_CHOICE;
        f.result_choices = words;
        return f;
    }
    /// The function returns whole days since 1970-01-01.
    constexpr Function givesDate(const char *meaning) const
    {
        auto f = gives("", meaning);
        f.result_kind = PUTEAL_DATE;
        return f;
    }
    constexpr Function by(const char *text) const
    {
        auto f = *this;
        f.relation = text;
        return f;
    }
    /// Keys, closed by nullptr.
    constexpr Function from(const char *const *keys) const
    {
        auto f = *this;
        f.sources = keys;
        return f;
    }
    template<std::size_t N>
    constexpr Function shownBy(const puteal_example (&rows)[N]) const
    {
        auto f = *this;
        f.examples = rows;
        f.example_count = N;
        return f;
    }
    template<std::size_t N>
    constexpr Function refusing(const puteal_example (&rows)[N]) const
    {
        auto f = *this;
        f.refusals = rows;
        f.refusal_count = N;
        return f;
    }
    template<std::size_t N>
    constexpr Function warning(const puteal_caution (&rows)[N]) const
    {
        auto f = *this;
        f.cautions = rows;
        f.caution_count = N;
        return f;
    }
    constexpr Function safely(const char *words) const
    {
        auto f = *this;
        f.safety = words;
        return f;
    }
};

/// The plugin itself, for the one exported symbol.
template<std::size_t S, std::size_t F>
constexpr puteal_plugin plugin(const char *id, const char *title, std::uint32_t major, std::uint32_t minor,
                               const puteal_source (&sources)[S], const puteal_function (&functions)[F])
{
    return {sizeof(puteal_plugin), PUTEAL_CONTRACT, id, title, major, minor, sources, S, functions, F};
}

} // namespace puteal::sdk
