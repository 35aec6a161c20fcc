/// `puteal`: the engine on the command line, without a window.
#include <algorithm>
#include <map>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "cli/arguments.h"
#include "cli/command.h"

using namespace puteal::cli;

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
    const std::map<std::string, Format> formats{
        {"text", Format::text}, {"json", Format::json}, {"csv", Format::csv}, {"html", Format::html}};
    const auto common = [&](CLI::App *command) {
        command->add_option("--plugin-dir", options.pluginFolders, "look for plugins here first")
            ->allow_extra_args(false);
    };
    const auto withFile = [&](CLI::App *command) {
        command->add_option("FILE", options.file, "workbook")->required();
        common(command);
    };
    const auto withFormat = [&](CLI::App *command) {
        command->add_option_function<std::string>(
            "--format",
            [&](const std::string &word) {
                const auto found = formats.find(word);
                if (found == formats.end())
                    throw CLI::ValidationError(
                        "--format", fmt::format("`{}` is not a format; text, json, csv or html", word));
                options.format = found->second;
            },
            "text, json, csv or html");
    };

    auto *eval =
        app.add_subcommand("eval", "one formula: puteal eval 'compensated_hardness(10 gpg, 1 mg/L as Fe)'");
    eval->add_option("--figures", options.figures, "significant figures to show")
        ->check(CLI::Validator(
            [](const std::string &word) {
                const bool good = (word.size() == 1 && word[0] >= '1' && word[0] <= '9') ||
                                  (word.size() == 2 && word[0] == '1' && word[1] >= '0' && word[1] <= '7');
                return good ? std::string() : fmt::format("`{}` is no number from 1 to 17", word);
            },
            "1 to 17"));
    withFormat(eval);
    common(eval);
    eval->callback([&] { code = evalCommand(options); });

    auto *work = app.add_subcommand("work", "recalculate a workbook and print it");
    withFile(work);
    withFormat(work);
    work->add_option("--sheet", options.sheet, "only this sheet (its key)");
    work->add_option("--cell", options.cell, "only this cell: name, sheet.name or sheet.key[line]");
    work->add_option("--set", options.sets, "NAME=VALUE, repeated: --set raw_iron=\"3 mg/L as Fe\"")
        ->allow_extra_args(false);
    work->add_flag("--page", options.page, "the result as a page to read");
    work->add_option("--picture", options.picture, "an SVG file to put on the html page");
    work->callback([&] { code = workCommand(options); });

    auto *check = app.add_subcommand("check", "limits, missing tests, expectations and errors of a workbook");
    withFile(check);
    withFormat(check);
    check->add_option("--set", options.sets, "NAME=VALUE, repeated")->allow_extra_args(false);
    check->callback([&] { code = checkCommand(options); });

    auto *functions = app.add_subcommand("functions", "all functions, the help of one, or a search");
    std::vector<std::string> searched;
    functions->add_option("WORD", searched, "a function, a plugin, or words of the trade: head loss");
    common(functions);
    functions->callback([&] {
        options.word = fmt::format("{}", fmt::join(searched, " "));
        code = functionsCommand(options);
    });

    auto *units = app.add_subcommand("units", "all unit words, or one with its factor and source");
    units->add_option("WORD", options.word, "a unit word");
    units->callback([&] { code = unitsCommand(options); });

    auto *plugins = app.add_subcommand("plugins", "the plugins found");
    common(plugins);
    auto *verify =
        plugins->add_subcommand("verify", "run every worked example and refusal of every function");
    common(verify);
    plugins->callback([&] {
        if (!verify->parsed())
            code = pluginsCommand(options);
    });
    verify->callback([&] { code = verifyCommand(options); });

    auto *recount = app.add_subcommand("recount", "set the line counts of a merged workbook right");
    recount->add_option("FILE", options.file, "workbook")->required();
    recount->callback([&] { code = recountCommand(options); });

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
