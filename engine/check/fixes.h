/// Ways out of an error: each is tried before it is offered.
#pragma once

#include <string>

#include "check/draft.h"

namespace puteal::checking
{

/// The walk of check.cpp with no fixes tried.
Result<Checked> checkWithoutFixes(const Tree &tree, const Binding &binding, const CheckContext &context);
/// Does the formula parse, bind and check with `text` in place of `span`?
bool works(const Draft &draft, const Span &span, const std::string &text);
/// Adds the fix to the error when it works. Says whether it did.
bool offer(const Draft &draft, Error &error, std::string words, const Span &span, const std::string &text);
/// Offers the fix and, when it works, says so in the message too ("; for ... use ...").
bool offerAloud(const Draft &draft, Error &error, const std::string &words, const Span &span,
                const std::string &text);
/// How a formula here calls the number of people, "" when no cell counts persons.
std::string peopleWord(const Draft &draft);

} // namespace puteal::checking
