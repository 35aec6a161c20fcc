/// Worked examples and refusals of functions, run through the real formula path.
#pragma once

#include <string>

#include "session/session.h"

namespace puteal
{

struct ExampleRun {
    bool holds = false;
    std::string obtained; ///< the value with its unit, or the words of the refusal
};

/// `empty`: a new session, where examples that bring no cells of their own are tried.
/// Holds when value, dimension and substances are those expected, within the example's tolerance.
ExampleRun runExample(const Session &empty, const ExampleInfo &example, const PluginFolders &folders);
/// Holds when it is refused with exactly the words expected.
ExampleRun runRefusal(const Session &empty, const ExampleInfo &refusal, const PluginFolders &folders);

/// `functionHelp` with what each example gives here and now beside what its source says.
std::string helpWithResults(const FunctionInfo &function, const Registry &registry,
                            const PluginFolders &folders);

} // namespace puteal
