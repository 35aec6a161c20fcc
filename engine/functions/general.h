/// The general functions: descriptors in the same form as those of plugins; the checker and the compiler do
/// their work.
#pragma once

#include "functions/signature.h"

namespace puteal
{

/// All general functions in the order they are listed. Examples that need a range of cells cannot stand in
/// one line, so functions that take only ranges carry theirs in words.
///
/// The yes/no range `only` of sum, mean, min, max, count, list, least_at and greatest_at: for sum, mean, min,
/// max and count it is the last of two or more arguments when that argument is a range of yes/no cells;
/// elsewhere it is the second argument. It has as many lines as the range before it.
std::vector<FunctionInfo> generalFunctions(const UnitTable &units);

/// Their names in the same order, and one group of them: building all of them costs more than a program's
/// start.
struct GeneralGroup {
    std::vector<const char *> names;
    std::vector<FunctionInfo> (*build)(const UnitTable &units); ///< in the order of `names`
};
const std::vector<GeneralGroup> &generalGroups();

/// The one list of words a general function gives: the states of a limit.
const std::vector<std::string> &generalChoices();

/// The source the general functions cite.
const std::vector<SourceInfo> &generalSources();

} // namespace puteal
