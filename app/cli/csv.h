/// Sheets as comma-separated values (RFC 4180), inert in programs that run formulas.
#pragma once

#include <string>

#include "session/session.h"

namespace puteal::cli
{

/// One record a line: sheet, line, then the shown cells of the sheet's columns; a heading record for each
/// sheet.
std::string workbookCsv(const Session &session, const std::string &onlySheet);

/// One field: quoted where RFC 4180 asks for it; words that another program could run as a formula get a
/// leading '.
std::string csvField(const std::string &words, bool isNumber);

} // namespace puteal::cli
