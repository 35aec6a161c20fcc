/// `puteal`: the engine on the command line, without a window.
#include <algorithm>
#include <map>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "cli/arguments.h"
#include "cli/command.h"

using namespace puteal::cli;

namespace
{

/// What the commands are built into: the parser, what they fill, and where the exit code goes.
struct Building {
    CLI::App &app;
    Options &options;
    int &code;
};

void addFolders(CLI::App *command, Options &options)
{
    command->add_option("--plugin-dir", options.pluginFolders, "look for plugins here first")
        ->allow_extra_args(false);
}

void addFile(CLI::App *command, Options &options)
{
    command->add_option("FILE", options.file, "workbook")->required();
}

void addFormat(CLI::App *command, Options &options)
{
    command->add_option_function<std::string>(
        "--format",
        [&options](const std::string &word) {
            static const std::map<std::string, Format> formats{
                {"text", Format::text}, {"json", Format::json}, {"csv", Format::csv}, {"html", Format::html}};
            const auto found = formats.find(word);
            if (found == formats.end())
                throw CLI::ValidationError(
                    "--format", fmt::format("`{}` is not a format; text, json, csv or html", word));
            options.format = found->second;
        },
        "text, json, csv or html");
}

void addEval(const Building &to)
{
    auto *eval = to.app.add_subcommand(
        "eval", "one formula: puteal eval 'compensated_hardness(10 gpg, 1 mg/L as Fe)'");
    eval->add_option("--figures", to.options.figures, "significant figures to show")
        ->check(CLI::Validator(
            [](const std::string &word) {
                const bool good = (word.size() == 1 && word[0] >= '1' && word[0] <= '9') ||
                                  (word.size() == 2 && word[0] == '1' && word[1] >= '0' && word[1] <= '7');
                return good ? std::string() : fmt::format("`{}` is no number from 1 to 17", word);
            },
            "1 to 17"));
    addFormat(eval, to.options);
    addFolders(eval, to.options);
    eval->callback([to] { to.code = evalCommand(to.options); });
}

void addWork(const Building &to)
{
    auto *work = to.app.add_subcommand("work", "recalculate a workbook and print it");
    addFile(work, to.options);
    addFolders(work, to.options);
    addFormat(work, to.options);
    work->add_option("--sheet", to.options.sheet, "only this sheet (its key)");
    work->add_option("--cell", to.options.cell, "only this cell: name, sheet.name or sheet.key[line]");
    work->add_option("--set", to.options.sets, "NAME=VALUE, repeated: --set raw_iron=\"3 mg/L as Fe\"")
        ->allow_extra_args(false);
    work->add_flag("--page", to.options.page, "the result as a page to read");
    work->add_option("--picture", to.options.picture, "an SVG file to put on the html page");
    work->callback([to] { to.code = workCommand(to.options); });
}

void addCheck(const Building &to)
{
    auto *check =
        to.app.add_subcommand("check", "limits, missing tests, expectations and errors of a workbook");
    addFile(check, to.options);
    addFolders(check, to.options);
    addFormat(check, to.options);
    check->add_option("--set", to.options.sets, "NAME=VALUE, repeated")->allow_extra_args(false);
    check->callback([to] { to.code = checkCommand(to.options); });
}

void addFunctions(const Building &to)
{
    auto *functions = to.app.add_subcommand("functions", "all functions, the help of one, or a search");
    functions->add_option("WORD", to.options.searched,
                          "a function, a plugin, or words of the trade: head loss");
    addFolders(functions, to.options);
    functions->callback([to] {
        to.options.word = fmt::format("{}", fmt::join(to.options.searched, " "));
        to.code = functionsCommand(to.options);
    });
}

void addUnits(const Building &to)
{
    auto *units = to.app.add_subcommand("units", "all unit words, or one with its factor and source");
    units->add_option("WORD", to.options.word, "a unit word");
    units->callback([to] { to.code = unitsCommand(to.options); });
}

void addPlugins(const Building &to)
{
    auto *plugins = to.app.add_subcommand("plugins", "the plugins found");
    addFolders(plugins, to.options);
    auto *verify =
        plugins->add_subcommand("verify", "run every worked example and refusal of every function");
    addFolders(verify, to.options);
    plugins->callback([to, verify] {
        if (!verify->parsed())
            to.code = pluginsCommand(to.options);
    });
    verify->callback([to] { to.code = verifyCommand(to.options); });
}

void addRecount(const Building &to)
{
    auto *recount = to.app.add_subcommand("recount", "set the line counts of a merged workbook right");
    addFile(recount, to.options);
    recount->callback([to] { to.code = recountCommand(to.options); });
}

/// Adds the commands; where the first word is one, only those that are named, for building the others takes
/// longer than a short formula.
void addCommands(const Building &to, const std::vector<std::string> &arguments)
{
    struct Command {
        std::string_view name;
        void (*add)(const Building &);
    };
    static constexpr Command commands[] = {
        {"eval", addEval},   {"work", addWork},       {"check", addCheck},    {"functions", addFunctions},
        {"units", addUnits}, {"plugins", addPlugins}, {"recount", addRecount}};
    const auto first = std::find_if(std::begin(commands), std::end(commands), [&](const Command &command) {
        return !arguments.empty() && arguments.front() == command.name;
    });
    for (const auto &[name, add] : commands) {
        if (first == std::end(commands) ||
            std::find(arguments.begin(), arguments.end(), name) != arguments.end())
            add(to);
    }
}

} // namespace

int main(int argc, char **argv)
{
    std::vector<std::string> arguments(argv + 1, argv + argc);
    Options options;
    if (const auto wrong = commandFirst(arguments)) {
        complain(*wrong);
        return wrongUse;
    }
    options.formula = takeFormula(arguments);

    CLI::App app("Puteal: work out how to make private well water fit to use.\n"
                 "A page or a number from here does not say that water is safe to drink.",
                 "puteal");
    app.set_version_flag("--version", std::string("puteal ") + PUTEAL_VERSION);
    app.require_subcommand(1);
    app.footer("exit codes: 0 good; 1 a limit is outside, a health test is missing or an expectation fails; "
               "2 wrong use;\n"
               "3 cannot read or damaged; 4 a formula has an error; 5 cannot write; 6 a plugin failed");
    int code = good;
    addCommands({app, options, code}, arguments);
    if (const auto empty = emptyValue(arguments)) {
        complain(*empty);
        return wrongUse;
    }
    std::reverse(arguments.begin(), arguments.end());
    try {
        app.parse(arguments);
    } catch (const CLI::CallForHelp &help) {
        app.exit(help);
        return put({});
    } catch (const CLI::CallForAllHelp &help) {
        app.exit(help);
        return put({});
    } catch (const CLI::CallForVersion &version) {
        app.exit(version);
        return put({});
    } catch (const CLI::ExtrasError &) {
        complain(notExpected(app.remaining(true), app.get_subcommands()));
        fmt::print(stderr, "puteal --help tells how it is used\n");
        return wrongUse;
    } catch (const CLI::ArgumentMismatch &error) {
        const std::string words = error.what();
        complain(words.substr(0, words.find(':')) + " needs a value behind it");
        fmt::print(stderr, "puteal --help tells how it is used\n");
        return wrongUse;
    } catch (const CLI::RequiredError &error) {
        complain(required(error.what(), app.get_subcommands()));
        fmt::print(stderr, "puteal --help tells how it is used\n");
        return wrongUse;
    } catch (const CLI::ParseError &error) {
        complain(error.what());
        fmt::print(stderr, "puteal --help tells how it is used\n");
        return wrongUse;
    } catch (const std::exception &error) {
        complain(error.what());
        return cannotRead;
    }
    return code;
}
