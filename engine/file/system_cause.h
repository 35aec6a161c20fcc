/// Failed system calls in words: the cause, and what to do next.
#pragma once

#include <filesystem>
#include <string>

namespace puteal
{

/// "the disk is full (needs 240 kB, 12 kB free)"; `bytes` is what was to be written.
std::string causeWords(int error, const std::filesystem::path &target, std::size_t bytes);
/// "free some space or save elsewhere"
std::string nextStep(int error);

} // namespace puteal
