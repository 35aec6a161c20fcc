/// The number at the start of a typed cell: grouped, whole-cell fraction, near misses refused; internal to
/// this folder.
#pragma once

#include <optional>
#include <string_view>

#include "base/result.h"

namespace puteal
{

struct TypedNumber {
    double value = 0.0;
    int figures = 0;     ///< significant figures as typed; 0 for a fraction
    std::size_t end = 0; ///< first byte after it
    bool isFraction = false;
};

/// Reads [-] digits with grouping commas, `3/4`, `1 1/2` at `pos`; none when no number starts there. Errors:
/// 1,5 and .5 and 5. with the text to write instead, a fraction over 0.
Result<std::optional<TypedNumber>> readTypedNumber(std::string_view text, std::size_t pos);

/// Three integers joined by dashes or slashes and nothing else.
bool looksLikeDate(std::string_view text);
/// Refusal of such a text, with the date as it should be typed where that is certain.
Error dateRefusal(std::string_view text);

} // namespace puteal
