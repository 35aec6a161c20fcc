/// A cheap reading of typed texts: operands, operators, references.
#include "sheet/typed_text.h"

#include <algorithm>

#include "base/number.h"
#include "base/text.h"

namespace puteal
{

namespace
{

bool isWordStart(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
bool isWordPart(char c)
{
    return isWordStart(c) || isDigit(c) || c == '_';
}

/// One walk over a formula text.
class Walk
{
public:
    Walk(std::string_view text, const UnitTable &units) : m_text(text), m_units(units)
    {
        while (m_pos < m_text.size() && !m_done)
            step();
    }
    bool refers = false;     ///< a name, key or live words
    bool operates = false;   ///< an operator, call or index
    bool juxtaposed = false; ///< two operands side by side: no formula

private:
    void operand()
    {
        juxtaposed = juxtaposed || !m_wantsOperand;
        m_wantsOperand = false;
    }
    void step()
    {
        const char c = m_text[m_pos];
        if (c == ' ') {
            ++m_pos;
        } else if (c == '"') {
            quotedWords();
        } else if (isDigit(c) || c == '$') {
            number();
        } else if (isWordStart(c)) {
            word();
        } else if (m_text.substr(m_pos, 2) == "->") {
            operates = m_done = true;
        } else if (c == '(') {
            operand();
            m_wantsOperand = true;
            ++m_pos;
        } else if (c == ')') {
            m_wantsOperand = false;
            ++m_pos;
        } else if (c == '[') {
            operates = true;
            const auto close = m_text.find(']', m_pos);
            m_pos = close == std::string_view::npos ? m_text.size() : close + 1;
        } else {
            operates = m_wantsOperand = true;
            ++m_pos;
        }
    }
    void quotedWords()
    {
        operand();
        for (++m_pos; m_pos < m_text.size() && m_text[m_pos] != '"'; ++m_pos) {
            if (m_text[m_pos] == '\\') {
                ++m_pos;
            } else if (m_text[m_pos] == '{') {
                if (m_text.substr(m_pos, 2) == "{{")
                    ++m_pos;
                else
                    refers = true;
            }
        }
        m_pos = std::min(m_pos + 1, m_text.size());
    }
    void number()
    {
        operand();
        const bool money = m_text[m_pos] == '$';
        if (money)
            ++m_pos;
        const std::size_t length = numberLength(m_text, m_pos);
        if (length == 0) {
            while (m_pos < m_text.size() && isWordPart(m_text[m_pos]))
                ++m_pos;
            return;
        }
        m_pos += length;
        std::size_t unitAt = m_pos;
        if (money && unitAt < m_text.size() && m_text[unitAt] == '/')
            ++unitAt;
        else
            while (unitAt < m_text.size() && m_text[unitAt] == ' ')
                ++unitAt;
        if (unitAt >= m_text.size())
            return;
        if (const auto unit = scanUnit(m_text, unitAt, m_units); unit && *unit)
            m_pos = (*unit)->end;
    }
    void word()
    {
        const std::size_t begin = m_pos;
        while (m_pos < m_text.size() && isWordPart(m_text[m_pos]))
            ++m_pos;
        const std::string_view word = m_text.substr(begin, m_pos - begin);
        std::size_t next = m_pos;
        while (next < m_text.size() && m_text[next] == ' ')
            ++next;
        if (word == "and" || word == "or") {
            operates = m_wantsOperand = true;
        } else if (word == "not") {
            operates = true;
            m_pos = next < m_text.size() && m_text[next] == '(' ? next + 1 : m_pos;
        } else if (word == "as") { // a substance follows
            for (m_pos = next; m_pos < m_text.size() && isWordPart(m_text[m_pos]); ++m_pos) {
            }
        } else if (next < m_text.size() && m_text[next] == '(') {
            operand();
            operates = m_wantsOperand = true;
            m_pos = next + 1;
        } else {
            operand();
            refers = refers || (word != "yes" && word != "no" && word != "pi");
            if (m_pos < m_text.size() && m_text[m_pos] == '.') { // sheet.name
                operates = m_wantsOperand = true;
                ++m_pos;
            }
        }
    }

    std::string_view m_text;
    const UnitTable &m_units;
    std::size_t m_pos = 0;
    bool m_wantsOperand = true;
    bool m_done = false;
};

bool hasChoices(const Attributes &beside)
{
    return !beside.list.empty() || !beside.choices.empty();
}

} // namespace

/// The shipped table serves all texts without a declared thing: making one is far dearer than judging a text.
const UnitTable &TextJudge::unitsFor(std::string_view text) const
{
    static const UnitTable shipped;
    const auto has = [&](const std::string &thing) { return text.find(thing) != std::string_view::npos; };
    if (std::none_of(m_things.begin(), m_things.end(), has))
        return shipped;
    if (!m_own) {
        m_own = std::make_unique<UnitTable>(shipped);
        for (const std::string &thing : m_things)
            (void)m_own->declareThing(thing);
    }
    return *m_own;
}

Result<Typed> TextJudge::read(std::string_view text) const
{
    TypedContext context;
    context.units = &unitsFor(text);
    return readTyped(text, context);
}

bool TextJudge::refersToCell(std::string_view text) const
{
    const auto typed = read(text);
    return (!typed || typed->form == TypedForm::formula) && Walk(text, unitsFor(text)).refers;
}

bool TextJudge::isFormula(std::string_view text) const
{
    const auto typed = read(text);
    if (!typed || typed->form != TypedForm::formula)
        return false;
    const Walk walk(text, unitsFor(text));
    return walk.operates && !walk.juxtaposed;
}

bool TextJudge::isChoice(std::string_view text, const Attributes &beside) const
{
    if (text.size() >= 2 && text.front() == '"' && text.back() == '"')
        text = text.substr(1, text.size() - 2);
    const auto has = [&](const std::vector<std::string> &words) {
        return std::find(words.begin(), words.end(), text) != words.end();
    };
    return has(beside.choices) ||
           std::any_of(m_lists.begin(), m_lists.end(), [&](const ChoiceListText &list) {
               return list.name == beside.list && has(list.words);
           });
}

std::optional<std::string> clashWithin(const Attributes &beside)
{
    if (beside.figures > 0 && beside.places >= 0)
        return "`figures` and `places` exclude each other: keep one";
    if (hasChoices(beside)) {
        const char *other = !beside.tolerance.empty() ? "tolerance"
                            : !beside.unit.empty()    ? "unit"
                            : beside.limit            ? "limit"
                                                      : nullptr;
        if (other)
            return std::string("`choices` and `") + other +
                   "` exclude each other: a choice is no amount, keep one";
    }
    if (!beside.ask.empty() && (beside.hide || beside.lock))
        return std::string("`ask` and `") + (beside.hide ? "hide" : "lock") +
               "` exclude each other: what is asked must be seen and typed, keep one";
    return std::nullopt;
}

std::optional<std::string> clashWithText(const Attributes &beside, std::string_view text, ColumnKind kind,
                                         const TextJudge &judge)
{
    if (!beside.tolerance.empty() && kind == ColumnKind::words)
        return "`tolerance` belongs to a quantity, not to words: take it away";
    if (text.empty() || kind == ColumnKind::words || judge.isChoice(text, beside))
        return std::nullopt;
    if (!beside.ask.empty() && judge.isFormula(text))
        return "`ask` belongs to a cell that is typed, not to a formula: take it away";
    if (beside.tolerance.empty())
        return std::nullopt;
    if (judge.isFormula(text))
        return "`tolerance` belongs to a typed quantity, not to a formula: take it away";
    const auto typed = judge.read(text);
    if (!typed || typed->form != TypedForm::value)
        return std::nullopt; // unfinished: kept as it is
    const TypedValue &value = typed->value;
    if (value.type.kind == ValueKind::quantity && value.type.bound == Bound::exact)
        return std::nullopt;
    const char *what = value.type.kind == ValueKind::quantity ? "a bounded reading"
                       : value.type.kind == ValueKind::yesNo  ? "yes or no"
                       : value.type.kind == ValueKind::date   ? "a date"
                                                              : "words";
    return std::string("`tolerance` belongs to a quantity, not to ") + what + ": take it away";
}

bool isCleanTyped(std::string_view text)
{
    if (text.empty())
        return true;
    return text.front() != ' ' && text.back() != ' ' &&
           std::none_of(text.begin(), text.end(), [](char c) { return (c >= 0 && c < ' ') || c == '\x7f'; });
}

std::string cleanTyped(std::string_view text)
{
    std::string out(text);
    for (char &c : out)
        if ((c >= 0 && c < ' ') || c == '\x7f')
            c = ' ';
    const auto first = out.find_first_not_of(' ');
    if (first == std::string::npos)
        return {};
    return out.substr(first, out.find_last_not_of(' ') - first + 1);
}

} // namespace puteal
