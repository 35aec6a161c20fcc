/// Typographic characters and the plain ones they are read as.
#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"

namespace puteal
{

namespace
{

struct Twin {
    std::string_view typed, plain;
};

// The degree sign is read before C and F only; before dH and fH it is decoration.
constexpr std::array<Twin, 32> twins{{
    {"\xC2\xB5", "u"}, // micro sign
    {"\xCE\xBC", "u"}, // Greek small mu
    {"\xC2\xB0"
     "C",
     "degC"}, //
    {"\xC2\xB0"
     "F",
     "degF"}, //
    {"\xC2\xB0"
     "dH",
     "dH"}, //
    {"\xC2\xB0"
     "fH",
     "fH"},                   //
    {"\xE2\x84\x83", "degC"}, // one-character degree Celsius
    {"\xE2\x84\x89", "degF"}, //
    {"\xE2\x81\xBB\xC2\xB9", "^-1"},
    {"\xE2\x81\xBB\xC2\xB2", "^-2"},
    {"\xE2\x81\xBB\xC2\xB3", "^-3"},
    {"\xC2\xB2", "^2"},     //
    {"\xC2\xB3", "^3"},     //
    {"\xC2\xB7", "*"},      // middle dot
    {"\xE2\x8B\x85", "*"},  // dot operator
    {"\xC3\x97", "*"},      // multiplication sign
    {"\xC3\xB7", "/"},      // division sign
    {"\xE2\x81\x84", "/"},  // fraction slash
    {"\xE2\x88\x92", "-"},  // minus sign
    {"\xE2\x89\xA4", "<="}, //
    {"\xE2\x89\xA5", ">="}, //
    {"\xE2\x89\xA0", "!="}, //
    {"\xE2\x80\x9C", "\""}, // curly quotes
    {"\xE2\x80\x9D", "\""}, //
    {"\xE2\x80\x9E", "\""}, //
    {"\xC2\xA0", " "},      // no-break blank
    {"\xE2\x80\xAF", " "},  // narrow no-break blank
    {"\xE2\x80\x89", " "},  // thin blank
    {"\xE2\x80\x87", " "},  // figure blank
    {"\xE2\x80\x88", " "},  // punctuation blank
    {"\xE2\x80\x8A", " "},  // hair blank
    {"\xE2\x86\x92", "->"}, // arrow
}};

} // namespace

PlainText plainTwins(std::string_view text)
{
    PlainText result;
    result.text.reserve(text.size());
    result.origin.reserve(text.size() + 1);
    std::size_t i = 0;
    while (i < text.size()) {
        std::string_view plain = text.substr(i, 1);
        std::size_t length = 1;
        if (static_cast<unsigned char>(text[i]) >= 0x80) {
            const auto *twin = std::find_if(twins.begin(), twins.end(), [&](const Twin &t) {
                return text.substr(i).starts_with(t.typed);
            });
            if (twin != twins.end()) {
                plain = twin->plain;
                length = twin->typed.size();
            }
        }
        result.text += plain;
        result.origin.insert(result.origin.end(), plain.size(), static_cast<std::uint32_t>(i));
        i += length;
    }
    result.origin.push_back(static_cast<std::uint32_t>(text.size()));
    return result;
}

} // namespace puteal
