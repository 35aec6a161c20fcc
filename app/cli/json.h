/// Values as JSON: full precision and the unit with its substance in braces.
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "session/session.h"

namespace puteal::cli
{

nlohmann::ordered_json valueJson(const StaticType &type, double number, const std::string &words,
                                 const Unit &unit, const Program &program);
/// The whole workbook: sheets, lines, cells with typed text, value, shown text, state, cautions, reason,
/// sources.
nlohmann::ordered_json workbookJson(const Session &session, const std::string &onlySheet);
nlohmann::ordered_json cellJson(const Session &session, const CellAt &at);

} // namespace puteal::cli
