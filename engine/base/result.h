/// Results, errors with a place, cautions: what every stage of the engine hands on instead of throwing.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

namespace puteal
{

/// Half-open range of byte offsets into one text (a formula, a typed cell, a live-words cell).
struct Span {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
    friend bool operator==(const Span &, const Span &) = default;
};

/// What kind of thing went wrong. Travels in the payload of a NaN, so at most 63 kinds.
enum class ErrorKind : std::uint8_t {
    none,
    syntax,     ///< the text cannot be read
    name,       ///< a name, key, sheet or function that does not exist
    unit,       ///< units do not fit
    substance,  ///< amounts of different substances
    kind,       ///< a yes/no, choice, date or words where something else is wanted
    arguments,  ///< wrong number or form of arguments
    range,      ///< a range reversed, outside the sheet, not homogeneous, or where none is allowed
    blank,      ///< refers to a blank cell
    gone,       ///< refers to a cell that was deleted
    circular,   ///< needs itself
    waiting,    ///< a cell it needs has an error
    refused,    ///< a function refused its arguments
    notFinite,  ///< divided by zero, root of a negative number, too large
    undecided,  ///< a bounded reading does not decide the comparison (missing test)
    plugin,     ///< plugin missing, not enabled, broken
    limit,      ///< one of the program's own bounds was passed
    unfinished, ///< the owner kept the text as unfinished
    file,       ///< file cannot be read or is damaged
    write,      ///< file cannot be written
    use         ///< wrong use of a command
};

/// Where: a span in a formula (and, for clashes, a second one), or a line of a file, or neither.
struct Place {
    std::optional<Span> span;
    std::optional<Span> other;
    std::uint32_t fileLine = 0; ///< 1-based; 0 = none
    friend bool operator==(const Place &, const Place &) = default;
};

/// One way out that was tested before it is offered: replace `span` by `text`.
struct Fix {
    std::string words; ///< what it does, lower case, no full stop
    Span span;
    std::string text;
    friend bool operator==(const Fix &, const Fix &) = default;
};

/// An error as a value: a lower-case sentence without a code, the smallest wrong piece, tested fixes.
struct Error {
    ErrorKind kind = ErrorKind::none;
    std::string words;
    std::vector<Fix> fixes;
    Place place;
    friend bool operator==(const Error &, const Error &) = default;
};

/// Something the reader must know although there is a result. Equal key and words = the same caution.
struct Caution {
    std::string key; ///< stable short word, e.g. "assumed_substance", "extrapolated"
    std::string words;
    std::optional<Span> span;
    friend bool operator==(const Caution &, const Caution &) = default;
};

template<class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(ErrorKind kind, std::string words, Span span)
{
    return tl::unexpected<Error>(Error{kind, std::move(words), {}, Place{span, {}, 0}});
}
inline tl::unexpected<Error> fail(ErrorKind kind, std::string words)
{
    return tl::unexpected<Error>(Error{kind, std::move(words), {}, {}});
}
inline tl::unexpected<Error> failAtLine(ErrorKind kind, std::string words, std::uint32_t fileLine)
{
    return tl::unexpected<Error>(Error{kind, std::move(words), {}, Place{{}, {}, fileLine}});
}

} // namespace puteal
