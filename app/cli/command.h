/// What every command of `puteal` shares: exit codes, options, messages with place and next step.
#pragma once

#include <cstdio>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "session/session.h"

namespace puteal::cli
{

enum Exit : int {
    good = 0,
    outside = 1, ///< a limit is outside, a health test is missing or an expectation fails
    wrongUse = 2,
    cannotRead = 3, ///< cannot read, or damaged
    formulaError = 4,
    cannotWrite = 5,
    pluginFailed = 6
};

enum class Format { text, json, csv, html };

/// Options of all commands, filled by main.
struct Options {
    std::vector<std::string> pluginFolders;
    std::string file, formula, word, sheet, cell, picture;
    std::vector<std::string> sets, searched;
    Format format = Format::text;
    int figures = 6;
    bool page = false;
    bool write = false;
};

int evalCommand(const Options &options);
int workCommand(const Options &options);
int checkCommand(const Options &options);
int functionsCommand(const Options &options);
int unitsCommand(const Options &options);
int pluginsCommand(const Options &options);
int verifyCommand(const Options &options);
int recountCommand(const Options &options);

PluginFolders foldersOf(const Options &options);
/// Opens the file and puts the --set values in; on failure prints why and returns the exit code in `code`.
Session *openWith(const Options &options, int &code);
/// Keeps a session to the end of the program: the system takes back all memory at once, we would piece by
/// piece.
Session &kept(std::unique_ptr<Session> session);
/// Standard error: "puteal: words" and, when there are any, the ways out.
void complain(const std::string &words);
void complain(const Error &error);
/// The error under the text with carets.
void complainAt(std::string_view text, const Error &error);
/// Writes to standard output; exit code cannotWrite when that fails.
int put(const std::string &text);
/// The exit code a worked workbook has.
int verdictOf(const Session &session);

} // namespace puteal::cli
