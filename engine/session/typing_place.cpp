/// Walks over a formula from its beginning to the caret.
#include "session/typing_place.h"

#include <cctype>
#include <utility>
#include <vector>

#include "formula/plain_formula.h"

namespace puteal
{

namespace
{

using Wants = TypingPlace::Wants;

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

bool isWordByte(char c)
{
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || static_cast<unsigned char>(c) >= 0x80;
}

bool isUnitByte(char c)
{
    return isWordByte(c) || c == '%' || c == '$';
}

class Walk
{
public:
    explicit Walk(std::string_view text) : m_text(text) {}

    void formula()
    {
        while (!m_done && m_pos < m_text.size())
            step();
        if (!m_done)
            at(m_next, m_pos);
    }
    /// Everything is words; braces are live.
    void words(char closing)
    {
        const std::size_t begin = m_pos;
        while (m_pos < m_text.size()) {
            const char c = m_text[m_pos];
            if (closing != 0 && c == closing) {
                ++m_pos;
                m_next = Wants::joint;
                return;
            }
            if (closing != 0 && c == '\\')
                m_pos += 2;
            else if (c == '{' && m_text.substr(m_pos).starts_with("{{"))
                m_pos += 2;
            else if (c == '{')
                live();
            else
                ++m_pos;
            if (m_done)
                return;
        }
        m_pos = m_text.size();
        at(closing == 0 ? Wants::nothing : Wants::listedWord, begin);
    }
    TypingPlace place()
    {
        if (!m_open.empty()) {
            m_place.function = m_open.back().function;
            m_place.argument = m_open.back().argument;
        }
        return m_place;
    }

private:
    struct Open {
        std::string function;
        std::size_t argument = 0;
    };

    /// The caret stands here, in or before a word that begins at `start`.
    void at(Wants wants, std::size_t start)
    {
        m_done = true;
        m_place.wants = wants;
        m_place.start = start;
        m_place.word = std::string(m_text.substr(start));
    }
    char now() const { return m_pos < m_text.size() ? m_text[m_pos] : '\0'; }
    void blanks()
    {
        while (now() == ' ')
            ++m_pos;
    }
    std::string_view identifier()
    {
        const std::size_t begin = m_pos;
        while (m_pos < m_text.size() && isWordByte(m_text[m_pos]))
            ++m_pos;
        return m_text.substr(begin, m_pos - begin);
    }

    void step()
    {
        const char c = now();
        if (c == ' ') {
            ++m_pos;
        } else if (c == '"') {
            ++m_pos;
            words('"');
            if (m_done && m_place.wants == Wants::listedWord)
                --m_place.start; // the quotation mark is replaced along with the word
            else if (!m_done)
                m_place.compared.clear();
        } else if (isDigit(c) || (c == '$' && m_pos + 1 < m_text.size() && isDigit(m_text[m_pos + 1]))) {
            number();
        } else if (isWordByte(c)) {
            word();
        } else if (c == '[') {
            index();
        } else if (m_text.substr(m_pos).starts_with("->")) {
            m_pos += 2;
            blanks();
            unit(false);
        } else {
            sign(c);
        }
    }

    void sign(char c)
    {
        const std::string_view two = m_text.substr(m_pos, 2);
        m_place.compared.clear();
        if (c == '(')
            m_open.push_back({std::exchange(m_callee, {}), 0});
        if (c == ')' && !m_open.empty())
            m_open.pop_back();
        if (c == ',' && !m_open.empty())
            ++m_open.back().argument;
        if (two == "==" || two == "!=")
            m_place.compared = m_reference;
        m_pos += two == "==" || two == "!=" || two == "<=" || two == ">=" ? 2 : 1;
        m_next = c == ')' ? Wants::joint : Wants::operand;
        m_callee.clear();
        m_reference.clear();
    }

    void index()
    {
        const std::size_t end = m_text.find(']', m_pos);
        if (end == std::string_view::npos)
            return at(Wants::nothing, m_text.size());
        m_pos = end + 1;
        m_next = Wants::joint;
    }

    void number()
    {
        const bool money = now() == '$';
        m_place.compared.clear();
        m_reference.clear();
        m_pos += money ? 1 : 0;
        while (isDigit(now()) || now() == '.')
            ++m_pos;
        if ((now() == 'e' || now() == 'E') && m_pos + 1 < m_text.size() &&
            (isDigit(m_text[m_pos + 1]) || m_text[m_pos + 1] == '-'))
            for (m_pos += 2; isDigit(now());)
                ++m_pos;
        m_next = Wants::joint;
        if (money) {
            if (now() == '/')
                unit(true);
            return;
        }
        blanks();
        if (m_pos < m_text.size() && !isUnitByte(now()))
            return;
        const std::size_t begin = m_pos;
        if (const std::string_view joining = identifier();
            m_pos < m_text.size() && (joining == "and" || joining == "or")) {
            m_next = Wants::operand;
            return;
        }
        m_pos = begin;
        unit(true);
    }

    /// A unit from here on, then perhaps of what.
    void unit(bool afterNumber)
    {
        const std::size_t first = m_pos;
        std::size_t begin = m_pos;
        int depth = 0;
        m_place.afterNumber = afterNumber;
        while (m_pos < m_text.size()) {
            const char c = now();
            if (c == '{') {
                const std::size_t end = m_text.find('}', m_pos);
                if (end == std::string_view::npos)
                    return at(Wants::substance, m_pos + 1);
                m_pos = begin = end + 1;
                continue;
            }
            const bool opens = c == '(' && (m_pos == first || !isUnitByte(m_text[m_pos - 1]));
            const bool closes = c == ')' && depth > 0;
            const bool power = c == '-' && m_pos > first && m_text[m_pos - 1] == '^';
            if (!isUnitByte(c) && c != '/' && c != '^' && !opens && !closes && !power &&
                !(c == '*' && depth > 0))
                break;
            depth += opens ? 1 : closes ? -1 : 0;
            ++m_pos;
            if (!isUnitByte(c))
                begin = m_pos;
        }
        m_next = Wants::joint;
        m_place.firstOfUnit = begin == first;
        const char last = m_pos > first ? m_text[m_pos - 1] : ' ';
        if (m_pos == m_text.size() && last != ')' && last != '}' && last != '^')
            return at(Wants::unit, begin);
        m_callee = std::string(m_text.substr(begin, m_pos - begin));
        ofWhat();
    }

    /// " as Fe", if it stands here.
    void ofWhat()
    {
        const std::size_t back = m_pos;
        blanks();
        const std::size_t begin = m_pos;
        if (identifier() != "as" || now() != ' ' || begin == back) {
            m_pos = back;
            return;
        }
        blanks();
        const std::size_t start = m_pos;
        identifier();
        if (m_pos == m_text.size())
            at(Wants::substance, start);
    }

    /// A word where a value or a joining word stands.
    void word()
    {
        const std::size_t begin = m_pos;
        const std::string_view one = identifier();
        if (m_next == Wants::joint) {
            if (m_pos == m_text.size())
                return at(Wants::joint, begin);
            m_next = one == "and" || one == "or" ? Wants::operand : Wants::joint;
            return;
        }
        if (m_pos == m_text.size())
            return at(Wants::operand, begin);
        if (now() == '.') {
            ++m_pos;
            const std::size_t after = m_pos;
            identifier();
            if (m_pos == m_text.size()) {
                at(Wants::operand, after);
                m_place.sheet = std::string(one);
                return;
            }
        }
        m_place.compared.clear();
        m_reference = std::string(m_text.substr(begin, m_pos - begin));
        m_callee = m_reference;
        m_next = one == "not" ? Wants::operand : Wants::joint;
    }

    /// {reference [-> unit] [, figures]} inside words.
    void live()
    {
        const std::size_t begin = ++m_pos;
        const std::size_t end = m_text.find('}', begin);
        if (end != std::string_view::npos) {
            m_pos = end + 1;
            return;
        }
        if (const std::size_t arrow = m_text.find("->", begin); arrow != std::string_view::npos) {
            m_pos = arrow + 2;
            blanks();
            unit(false);
            if (!m_done)
                at(Wants::nothing, m_text.size());
            return;
        }
        blanks();
        std::size_t start = m_pos;
        std::string_view sheet = identifier();
        if (now() == '.') {
            start = ++m_pos;
            identifier();
        } else {
            sheet = {};
        }
        if (m_pos < m_text.size())
            return at(Wants::nothing, m_text.size());
        at(Wants::cell, start);
        m_place.sheet = std::string(sheet);
    }

    std::string_view m_text;
    std::size_t m_pos = 0;
    bool m_done = false;
    Wants m_next = Wants::operand;
    std::vector<Open> m_open;
    std::string m_callee, m_reference;
    TypingPlace m_place;
};

} // namespace

TypingPlace typingPlace(std::string_view beforeCaret, bool isWordsCell)
{
    const PlainFormula plain(beforeCaret, isWordsCell);
    Walk walk(plain.text());
    if (isWordsCell)
        walk.words('\0');
    else
        walk.formula();
    TypingPlace place = walk.place();
    const auto start = static_cast<std::uint32_t>(place.start);
    place.start = plain.typedSpan({start, start}).begin;
    return place;
}

std::size_t endOfTypedWord(std::string_view text, std::size_t caret)
{
    while (caret < text.size() && isWordByte(text[caret]))
        ++caret;
    return caret;
}

} // namespace puteal
