/// The arguments before the option parser sees them, and its refusals in our words.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace CLI
{
class App;
}

namespace puteal::cli
{

/// Puts the command in front of options that stand before it. A first word that is no command: what to write.
std::optional<std::string> commandFirst(std::vector<std::string> &arguments);
/// eval's formula may start with a minus, which the option parser would take for an option: it is taken out
/// before. What stands behind `--` is the formula, whatever it looks like.
std::string takeFormula(std::vector<std::string> &arguments);
/// An option with an empty value, as a script leaves it whose variable is not set.
std::optional<std::string> emptyValue(const std::vector<std::string> &arguments);
/// The first argument that no command takes, told with what it may be.
std::string notExpected(const std::vector<std::string> &left, const std::vector<CLI::App *> &commands);
/// What is missing: a command, or the file of one.
std::string required(const std::string &parserWords, const std::vector<CLI::App *> &commands);

} // namespace puteal::cli
