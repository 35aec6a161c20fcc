/// What could come next while a formula is typed, and the call in which the caret stands.
#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "session/completer.h"
#include "session/session_state.h"

namespace puteal
{

namespace
{

using Wants = TypingPlace::Wants;

/// Where so little can stand that it is offered before a letter is typed.
bool offersByItself(const TypingPlace &place, std::string_view beforeCaret)
{
    switch (place.wants) {
    case Wants::substance:
    case Wants::listedWord:
    case Wants::cell:
        return true;
    case Wants::unit: // not while digits are typed
        return !beforeCaret.empty() && !std::isdigit(static_cast<unsigned char>(beforeCaret.back()));
    default:
        return !place.sheet.empty();
    }
}

} // namespace

/// A cell with choices: the whole of it is one of them.
std::vector<Completion> SessionState::choicesFor(const CellAt &at, std::string_view text, Offer offer) const
{
    const Sheet &sheet = m_workbook.sheets[at.sheet];
    const Attributes beside = sheet.effective(at.column, at.line);
    const ChoiceListText *list = m_workbook.listByName(beside.list);
    const std::vector<std::string> &words = list && beside.choices.empty() ? list->words : beside.choices;
    const bool asked = offer == Offer::whenAsked, inQuotes = text.starts_with('"');
    const auto written = [&](const std::string &word) { return inQuotes ? quoted(word) : word; };
    const bool all = asked && std::any_of(words.begin(), words.end(),
                                          [&](const std::string &word) { return written(word) == text; });
    std::vector<Completion> out;
    for (const std::string &word : words)
        if (all || ((asked || !text.empty()) && beginsWith(written(word), text)))
            out.push_back({Completion::Kind::list, written(word), "listed word", false});
    return out;
}

Completions SessionState::complete(const CellAt &at, std::string_view text, std::size_t caret,
                                   Offer offer) const
{
    const bool isWords = m_workbook.sheets[at.sheet].column(at.column).kind == ColumnKind::words;
    caret = std::min(caret, text.size());
    const TypingPlace place = typingPlace(text.substr(0, caret), isWords);
    Completions out;
    if (!isWords)
        out.offers = choicesFor(at, text, offer);
    if (!out.offers.empty() && (place.start != 0 || caret < text.size() || text.starts_with('"'))) {
        out.end = text.size();
        return out; // no lone word: nothing else begins so
    }
    out.start = place.start;
    out.end = endOfTypedWord(text, caret);
    if (place.wants == Wants::listedWord && out.end < text.size() && text[out.end] == '"')
        ++out.end;
    if (offer == Offer::whileTyping && place.word.empty() && !offersByItself(place, text.substr(0, caret)))
        return out;
    for (Completion &more : Completer(*this, at, place).offers())
        out.offers.push_back(std::move(more));
    return out;
}

CallHint SessionState::callHint(const CellAt &at, std::string_view text, std::size_t caret) const
{
    CallHint hint;
    if (m_workbook.sheets[at.sheet].column(at.column).kind == ColumnKind::words)
        return hint;
    const TypingPlace place = typingPlace(text.substr(0, std::min(caret, text.size())), false);
    const FunctionInfo *function = m_registry->find(place.function);
    if (!function)
        return hint;
    hint.function = function->name;
    for (std::size_t i = 0; i < function->parameters.size(); ++i) {
        const ParameterInfo &parameter = function->parameters[i];
        const std::string words = argumentWords(parameter) + (parameter.repeats ? " ..." : "");
        hint.arguments.push_back(parameter.hasDefault ? "[" + words + "]" : words);
    }
    hint.current = place.argument;
    if (const ParameterInfo *parameter = parameterAt(function, place.argument)) {
        hint.current = static_cast<std::size_t>(parameter - function->parameters.data());
        hint.meaning = parameter->meaning;
        if (!parameter->choices.empty())
            hint.meaning += fmt::format("{}one of {}", hint.meaning.empty() ? "" : "; ",
                                        fmt::join(parameter->choices, ", "));
    }
    return hint;
}

} // namespace puteal
