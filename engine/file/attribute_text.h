/// The indented records under a cell or column: read one, write all.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheet/cell.h"

namespace puteal
{

/// Reads a limit as it stands in the file. Never fails: what is no limit is kept whole in `low` without a
/// comparison.
LimitText readLimit(std::string_view text);
/// Writes a limit so that readLimit gives it back (parentheses are put where a unit would look like a mark).
std::string limitWords(const LimitText &limit);

/// Adds one indented record (without its two blanks). Returns words when it must be refused, "" when all is
/// well.
std::string addAttribute(std::string_view record, Attributes &out);

/// Which of the attributes to write; a run writes what all its lines share once.
void writeAttributes(const Attributes &beside, std::string &out);

/// What all lines of a run share (never the name), and what one line has beyond it.
Attributes shared(const Attributes &a, const Attributes &b);
Attributes beyond(const Attributes &line, const Attributes &common);
/// `extra` laid over `base`: each attribute that `extra` has replaces that of `base`, unknown ones are added.
Attributes overlaid(const Attributes &base, const Attributes &extra);

} // namespace puteal
