/// The arguments before the option parser sees them, and its refusals in our words.
#include "cli/arguments.h"

#include <algorithm>
#include <array>
#include <string_view>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "base/text.h"

namespace puteal::cli
{

namespace
{

const std::vector<std::string> &commands()
{
    static const std::vector<std::string> words{"eval",  "work",    "check",  "functions",
                                                "units", "plugins", "recount"};
    return words;
}

bool isCommand(const std::string &word)
{
    return std::find(commands().begin(), commands().end(), word) != commands().end();
}

/// Options with a value behind them.
bool takesValue(const std::string &word)
{
    static constexpr std::array<std::string_view, 7> options{
        "--figures", "--format", "--plugin-dir", "--sheet", "--cell", "--set", "--picture"};
    return std::find(options.begin(), options.end(), word) != options.end();
}

} // namespace

std::optional<std::string> commandFirst(std::vector<std::string> &arguments)
{
    if (arguments.empty() || isCommand(arguments.front()))
        return std::nullopt;
    if (arguments.front().starts_with('-')) {
        for (auto it = arguments.begin(); it != arguments.end(); ++it) {
            if (isCommand(*it)) {
                std::rotate(arguments.begin(), it, std::next(it));
                return std::nullopt;
            }
            if (takesValue(*it) && ++it == arguments.end())
                break;
        }
        return std::nullopt;
    }
    if (arguments.front() == "help") {
        arguments = {"--help"};
        return std::nullopt;
    }
    if (arguments.front().ends_with(".puteal"))
        return fmt::format("a command is missing: write puteal work {0}, or puteal check {0}",
                           arguments.front());
    const auto close = closest(arguments.front(), commands());
    return fmt::format("`{}` is no command; {}", arguments.front(),
                       close.empty() ? joined(commands()) : close.front() + "?");
}

std::string takeFormula(std::vector<std::string> &arguments)
{
    if (arguments.empty() || arguments.front() != "eval")
        return {};
    for (auto it = std::next(arguments.begin()); it != arguments.end(); ++it) {
        if (takesValue(*it)) {
            if (++it == arguments.end())
                break;
            continue;
        }
        if (*it == "--") {
            const auto next = std::next(it);
            std::string formula = next == arguments.end() ? std::string() : *next;
            arguments.erase(it, next == arguments.end() ? next : std::next(next));
            return formula;
        }
        const bool option = it->size() > 2 && it->starts_with("--") &&
                            (((*it)[2] >= 'a' && (*it)[2] <= 'z') || ((*it)[2] >= 'A' && (*it)[2] <= 'Z'));
        if (*it == "-h" || option)
            continue;
        std::string formula = *it;
        arguments.erase(it);
        return formula;
    }
    return {};
}

std::optional<std::string> emptyValue(const std::vector<std::string> &arguments)
{
    for (std::size_t i = 0; i + 1 < arguments.size(); ++i)
        if (takesValue(arguments[i]) && arguments[i + 1].empty())
            return fmt::format("{} has an empty value: leave it out, or say what is meant", arguments[i]);
    for (const std::string &argument : arguments)
        if (argument.ends_with('=') && takesValue(argument.substr(0, argument.size() - 1)))
            return fmt::format("{} has an empty value: leave it out, or say what is meant",
                               argument.substr(0, argument.size() - 1));
    return std::nullopt;
}

std::string notExpected(const std::vector<std::string> &left, const std::vector<CLI::App *> &commands)
{
    const std::string first = left.empty() ? std::string() : left.front();
    const std::string command = commands.empty() ? std::string() : commands.front()->get_name();
    if (first.starts_with("--") || (first.size() == 2 && first.front() == '-'))
        return command.empty() ? fmt::format("`{}` is no option", first)
                               : fmt::format("`{}` is no option of {}", first, command);
    if (command == "eval")
        return fmt::format("`{}` is one argument too many: put the whole formula in quotation marks", first);
    if (command == "work" || command == "check")
        return fmt::format(
            "`{}` is one argument too many: {} takes one workbook, and each value to set its own "
            "--set",
            first, command);
    return fmt::format("`{}` is one argument too many", first);
}

std::string required(const std::string &parserWords, const std::vector<CLI::App *> &commands)
{
    if (commands.empty())
        return fmt::format("a command is missing: {}", joined(puteal::cli::commands()));
    if (parserWords.starts_with("FILE"))
        return fmt::format("the workbook is missing: write puteal {} FILE", commands.front()->get_name());
    return parserWords;
}

} // namespace puteal::cli
