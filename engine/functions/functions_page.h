/// Help on functions: plain text for one, and the page of all of them that docs/functions.md holds.
#pragma once

#include <functional>
#include <string>

#include "functions/registry.h"

namespace puteal
{

/// What it is for, arguments with units, ranges and defaults, result, relation, sources, examples, cautions,
/// safety; lines of at most 100 characters where the words allow it. `obtained` tells what an example gives
/// here.
std::string functionHelp(const FunctionInfo &function, const Registry &registry,
                         const std::function<std::string(const ExampleInfo &)> &obtained = {});

/// All functions as a Markdown page: general ones, then each enabled plugin's, by plugin id.
std::string functionsPage(const Registry &registry);

/// "0 to 100 mg/L as Fe", "0 gpg or more", "at most 5", "" when both ends are open.
std::string rangeWords(double low, double high, const std::string &unit);

/// Default of a parameter with its unit: "5 gpg/(mg{Fe}/L)", "round table", "no".
std::string defaultWords(const ParameterInfo &parameter);

/// "T" -> "trade practice"; the one list of source marks.
std::string markWords(const std::string &mark);

} // namespace puteal
