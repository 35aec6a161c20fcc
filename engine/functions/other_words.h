/// Words known from mathematics and spreadsheets for what is named or written otherwise here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace puteal
{

/// Functions that take the same arguments under another name; empty for a word that is none of these.
std::vector<std::string> otherWordsFor(std::string_view name);

/// What is written in another way here: with a sign, or with an argument that other programs do not take, so
/// that the same call under another name would give another number. Empty for other words.
std::string_view signFor(std::string_view name);

} // namespace puteal
