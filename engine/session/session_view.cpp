/// What one cell shows: value, state against its limit, sources, labels.
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "base/text.h"
#include "functions/general.h"
#include "sdk/choices.h"
#include "session/session_state.h"

namespace puteal
{

namespace
{

/// Splits a typed quantity into number and unit as typed ("<0.05 mg/L" -> "<0.05", "mg/L").
ShownQuantity splitTyped(const std::string &typed)
{
    if (typed.find('$') != std::string::npos)
        return {typed, ""};
    std::size_t i = 0;
    if (typed.rfind("ND ", 0) == 0)
        i = 3;
    while (i < typed.size() &&
           std::string_view("0123456789.,<>-+/ ").find(typed[i]) != std::string_view::npos)
        ++i;
    // an exponent belongs to the number, a unit never starts with e and a digit
    if (i + 1 < typed.size() && (typed[i] == 'e' || typed[i] == 'E') &&
        (std::isdigit(typed[i + 1]) || typed[i + 1] == '-')) {
        i += 2;
        while (i < typed.size() && std::isdigit(typed[i]))
            ++i;
    }
    std::size_t end = i;
    while (end > 0 && typed[end - 1] == ' ')
        --end;
    while (i < typed.size() && typed[i] == ' ')
        ++i;
    return {typed.substr(0, end), typed.substr(i)};
}

const char *const stateNames[] = {"within", "near limit", "outside", "no limit", "missing test"};

} // namespace

Rounding SessionState::roundingOf(const CellAt &at) const
{
    const auto effective = m_workbook.sheets[at.sheet].effective(at.column, at.line);
    return {effective.figures, effective.places};
}

std::string SessionState::labelOf(const CellAt &at) const
{
    const Sheet &sheet = m_workbook.sheets[at.sheet];
    if (at.line < sheet.lineCount()) {
        if (const auto &words = sheet.itemWords(at.column, at.line); !words.empty())
            return words;
        if (const auto &name = sheet.cell(at.column, at.line).beside().name; !name.empty())
            return name;
    }
    return fmt::format("{}[{}]", sheet.column(at.column).key, at.line + 1);
}

std::string SessionState::placeWords(const CellAt &at) const
{
    const Sheet &sheet = m_workbook.sheets[at.sheet];
    const auto &name = sheet.cell(at.column, at.line).beside().name;
    return fmt::format("sheet {} line {} ({})", sheet.key(), at.line + 1,
                       name.empty() ? sheet.column(at.column).key : name);
}

std::string SessionState::limitWords(const CellAt &at) const
{
    const auto &limit = m_workbook.cell(at)->beside().limit;
    if (!limit)
        return {};
    const auto boundText = [&](NodeId node, const std::string &typed) {
        if (node == noNode || m_values.status[node] != ErrorKind::none)
            return typed;
        const NodeFacts &facts = m_program->facts(node);
        if (facts.type.kind != ValueKind::quantity)
            return typed;
        return showPlain(facts.type, m_values.number[node], {}, facts.shown, 6, m_program->lists(),
                         m_program->units());
    };
    const std::string low = boundText(m_program->limitLow(at), limit->low);
    if (limit->comparison == "..")
        return low + " .. " + boundText(m_program->limitHigh(at), limit->high);
    return limit->comparison + " " + low;
}

std::string SessionState::stateSentence(const CellAt &at, LimitState state) const
{
    if (state == LimitState::noLimit)
        return {};
    const auto &limit = *m_workbook.cell(at)->beside().limit;
    std::string out = stateNames[static_cast<int>(state)];
    const NodeId node = m_program->nodeOf(at);
    const NodeId low = m_program->limitLow(at);
    const std::string words = limitWords(at);
    if (state == LimitState::missingTest) {
        const Cell *cell = m_workbook.cell(at);
        if (const auto problem = limitProblem(at))
            return fmt::format("{}: {}", out, *problem);
        if (cell->blank())
            return fmt::format("{}: no value yet, the limit is {}", out, words);
        if (m_values.number[node] < 0.0)
            return fmt::format("{}: `{}` is below zero, which is no reading; look at the laboratory sheet",
                               out, cell->typed());
        return fmt::format("{}: `{}` does not show whether it is {}; ask for a finer test", out,
                           cell->typed(), words);
    }
    if (limit.comparison != ".." && low != noNode && m_values.status[low] == ErrorKind::none &&
        m_values.number[low] != 0.0 && m_program->facts(low).type.kind == ValueKind::quantity &&
        m_program->facts(low).shown.offset == 0.0) {
        const double share = m_values.number[node] / m_values.number[low] * 100.0;
        return fmt::format("{}: {} % of {}", out, share >= 100.0 ? toPlaces(share, 0) : toFigures(share, 3),
                           words);
    }
    return fmt::format("{}: {}", out, words);
}

std::optional<std::string> SessionState::limitProblem(const CellAt &at) const
{
    const LimitText &limit = *m_workbook.cell(at)->beside().limit;
    if (limit.comparison.empty())
        return fmt::format("the limit `{}` cannot be read: write one like <= 0.3 mg/L, >= 7 or 6.5 .. 8.5",
                           limit.low);
    const NodeId low = m_program->limitLow(at), high = m_program->limitHigh(at);
    for (const auto &[end, text] : {std::pair{low, &limit.low}, {high, &limit.high}}) {
        if (end == noNode)
            continue;
        // an end that waits for a value says so elsewhere
        const auto error = m_program->errorOf(end, m_values);
        if (error && error->kind != ErrorKind::blank && error->kind != ErrorKind::waiting &&
            error->kind != ErrorKind::undecided)
            return fmt::format("the limit `{}` is no limit here: {}", *text, errorLine(*error));
    }
    if (low != noNode && high != noNode && m_values.number[high] < m_values.number[low])
        return fmt::format("the limit {} runs downward: write the lower end first", limitWords(at));
    return std::nullopt;
}

LimitState toldBy(const StaticType &type, double number, const ChoiceLists &lists)
{
    if (type.kind != ValueKind::choice || !(number >= 0.0))
        return LimitState::noLimit;
    const auto &words = lists.words(type.list);
    const auto at = static_cast<std::size_t>(number);
    if (words == generalChoices()) // in the order of LimitState
        return at < words.size() ? static_cast<LimitState>(at) : LimitState::noLimit;
    static const std::vector<std::string> verdicts(sdk::verdictWords, sdk::verdictWords + 4);
    if (words != verdicts)
        return LimitState::noLimit;
    static constexpr LimitState told[] = {LimitState::within, LimitState::near, LimitState::missingTest,
                                          LimitState::outside};
    return at < std::size(told) ? told[at] : LimitState::noLimit;
}

CellView SessionState::view(const CellAt &at) const
{
    CellView view;
    const Cell *cell = m_workbook.cell(at);
    if (!cell)
        return view;
    const Attributes &beside = cell->beside();
    view.typed = cell->typed();
    view.name = beside.name;
    const NodeId node = m_program->nodeOf(at);
    const NodeFacts &facts = m_program->facts(node);
    view.isFormula = facts.isFormula;
    view.type = facts.type;
    view.unit = facts.shown;
    view.sources = m_workbook.sheets[at.sheet].effective(at.column, at.line).sources;
    if (facts.isFormula && view.sources.empty() &&
        m_workbook.sheets[at.sheet].column(at.column).kind == ColumnKind::amounts)
        view.sources = {"W"};
    view.error = m_program->errorOf(node, m_values);
    if (beside.limit) {
        view.state = m_program->state(at, m_values);
        view.limit = limitWords(at);
        view.stateWords = stateSentence(at, view.state);
        view.health = beside.limit->health;
    }
    for (const auto id : m_values.pool.members(m_values.ownCautions[node]))
        view.cautions.push_back(m_values.pool.caution(id).words);
    view.cautionCount = m_values.pool.members(m_values.cautions[node]).size();
    view.reason = m_values.words.words(m_values.reason[node]);
    if (view.error) {
        view.shown = errorLine(*view.error);
        return view;
    }
    if (facts.type.kind == ValueKind::blank)
        return view;
    view.number = m_values.number[node];
    view.told = toldBy(facts.type, view.number, m_program->lists());
    view.numberShown =
        facts.type.kind == ValueKind::quantity ? facts.shown.fromBase(view.number) : view.number;
    const std::string &words = facts.type.kind == ValueKind::words
                                   ? m_values.words.words(static_cast<std::uint32_t>(view.number))
                                   : m_values.words.words(0);
    if (facts.type.kind == ValueKind::quantity) {
        view.quantity = facts.isFormula
                            ? showQuantity(view.number, facts.type.bound, facts.shown, roundingOf(at))
                            : splitTyped(view.typed);
        view.shown = view.quantity.text();
    } else {
        view.shown = showValue(facts.type, view.number, words, facts.shown, roundingOf(at),
                               m_program->lists(), m_program->units());
    }
    return view;
}

Calculation SessionState::calculation(const CellAt &at) const
{
    return calculationOf(*m_program, m_workbook, m_values, at);
}

Result<CellAt> SessionState::find(std::string_view reference) const
{
    std::vector<CellAt> hits;
    std::vector<std::string> names;
    const auto dot = reference.find('.');
    const std::string_view sheetKey =
        dot == std::string_view::npos ? std::string_view{} : reference.substr(0, dot);
    const std::string_view word = dot == std::string_view::npos ? reference : reference.substr(dot + 1);
    const auto bracket = word.find('[');
    for (std::uint32_t s = 0; s < m_workbook.sheets.size(); ++s) {
        const Sheet &sheet = m_workbook.sheets[s];
        if (!sheetKey.empty() && sheet.key() != sheetKey)
            continue;
        if (bracket != std::string_view::npos && word.back() == ']') {
            const auto column = sheet.columnByKey(word.substr(0, bracket));
            const auto line = readNumber(word.substr(bracket + 1, word.size() - bracket - 2));
            if (column && line && *line >= 1 && *line <= sheet.lineCount() && *line == std::floor(*line))
                hits.push_back({s, *column, static_cast<std::uint32_t>(*line) - 1});
        } else if (auto at = sheet.named(word, s)) {
            hits.push_back(*at);
        }
        for (const auto &[name, place] : sheet.names())
            names.push_back(name);
    }
    if (hits.size() == 1)
        return hits.front();
    if (hits.empty() && !sheetKey.empty() && !m_workbook.sheetByKey(sheetKey)) {
        std::vector<std::string> keys;
        for (const Sheet &sheet : m_workbook.sheets)
            keys.push_back(sheet.key());
        return fail(ErrorKind::name, fmt::format("there is no sheet `{}`; this workbook has {}", sheetKey,
                                                 fmt::join(keys, ", ")));
    }
    if (hits.empty()) {
        for (const Sheet &sheet : m_workbook.sheets)
            if ((sheetKey.empty() || sheet.key() == sheetKey) && sheet.columnByKey(word))
                return fail(ErrorKind::name,
                            fmt::format("`{0}` is a column: say which line, as in {1}.{2}[1]", reference,
                                        sheet.key(), word));
        const auto close = closest(word, names);
        return fail(ErrorKind::name,
                    fmt::format("no cell is called `{}`{}", reference,
                                close.empty() ? std::string() : "; did you mean " + joined(close) + "?"));
    }
    std::vector<std::string> places;
    places.reserve(hits.size());
    for (const auto &hit : hits)
        places.push_back(fmt::format("{}.{}", m_workbook.sheets[hit.sheet].key(), word));
    return fail(ErrorKind::name,
                fmt::format("`{}` is in several sheets; write {}", reference, joined(places)));
}

} // namespace puteal
