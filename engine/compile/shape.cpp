/// Emitted expressions as compiled evaluators: a lean muParser object each.
#include "compile/shape.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <deque>
#include <mutex>
#include <unordered_map>

#include <muParser.h>

#include "base/limits.h"
#include "base/number.h"
#include "compile/error_number.h"
#include "compile/frame.h"
#include "compile/guards.h"
#include "compile/shape_run.h"

namespace puteal
{

namespace
{

/// muParser's own number reader copies the rest of the text into a stream at every number and every variable.
/// "m15" is the number -15: muParser would take the sign for an operation.
int readEmittedNumber(const char *text, int *pos, double *value)
{
    const bool negative = *text == 'm';
    if (negative)
        ++text;
    if (*text < '0' || *text > '9')
        return 0;
    const std::string_view view(text);
    const std::size_t length = numberLength(view, 0);
    if (length == 0)
        return 0;
    const auto read = std::from_chars(text, text + length, *value);
    if (read.ec != std::errc())
        return 0;
    *pos += static_cast<int>(length) + (negative ? 1 : 0);
    if (negative)
        *value = -*value;
    return 1;
}

/// muParser without its default functions and constants: only what an emitted text names is defined.
class LeanParser : public mu::ParserBase
{
public:
    LeanParser()
    {
        DefineNameChars("0123456789abcdefghijklmnopqrstuvwxyz");
        DefineOprtChars("+-*^/?<>=#!$%&|~'_");
        DefineInfixOprtChars("/+-*^?<>=#!$%&|~'_");
        AddValIdent(readEmittedNumber);
        EnableOptimizer(false);
    }

protected:
    void InitCharSets() override {}
    void InitFun() override {}
    void InitConst() override {}
    void InitOprt() override {}
};

/// kn(i, x): keeps x in place i, tells whether it is an error.
double keepTest(void *kept, double place, double x)
{
    static_cast<double *>(kept)[static_cast<int>(place)] = x;
    return std::isnan(x) ? 1.0 : 0.0;
}
/// ke(i, x): keeps x in place i, tells whether it is an error or not finite.
double keepValue(void *kept, double place, double x)
{
    static_cast<double *>(kept)[static_cast<int>(place)] = x;
    return std::isfinite(x) ? 0.0 : 1.0;
}
/// fn(site, arguments...): every function of a plugin and every general function on ranges.
double callSite(void *cache, const double *arguments, int count)
{
    EvalFrame *frame = static_cast<ShapeCache *>(cache)->frame;
    return evaluateSite(*frame, static_cast<std::uint32_t>(arguments[0]), arguments + 1, count - 1);
}
/// wd(node): words of a formula, live parts put in.
double wordsSite(void *cache, double node)
{
    EvalFrame *frame = static_cast<ShapeCache *>(cache)->frame;
    return evaluateWords(*frame, static_cast<std::uint32_t>(node));
}

/// er(n): a piece that is known to fail.
double failureSite(void *cache, double node)
{
    EvalFrame *frame = static_cast<ShapeCache *>(cache)->frame;
    return evaluateFailure(*frame, static_cast<std::uint32_t>(node));
}

struct Identifiers {
    int slots = 0;
    int kept = 0;
    std::vector<std::string_view> functions;
};

/// Names an emitted text uses.
Identifiers identifiersOf(std::string_view text)
{
    Identifiers found;
    std::size_t i = 0;
    while (i < text.size()) {
        const char c = text[i];
        if (c >= '0' && c <= '9') {
            i += std::max<std::size_t>(1, numberLength(text, i));
            continue;
        }
        if (c < 'a' || c > 'z' ||
            (c == 'm' && i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9')) {
            ++i;
            continue;
        }
        std::size_t end = i;
        while (end < text.size() && std::isalnum(static_cast<unsigned char>(text[end])))
            ++end;
        const std::string_view word = text.substr(i, end - i);
        if (end < text.size() && text[end] == '(') {
            if (std::find(found.functions.begin(), found.functions.end(), word) == found.functions.end())
                found.functions.push_back(word);
        } else {
            int index = 0;
            std::from_chars(word.data() + 1, word.data() + word.size(), index);
            int &most = word[0] == 'r' ? found.slots : found.kept;
            most = std::max(most, index + 1);
        }
        i = end;
    }
    return found;
}

void defineGuard(LeanParser &parser, const Guard &guard)
{
    const std::string name(guard.name);
    if (guard.one)
        parser.DefineFun(name, guard.one, false);
    else if (guard.two)
        parser.DefineFun(name, guard.two, false);
    else if (guard.three)
        parser.DefineFun(name, guard.three, false);
    else if (guard.five)
        parser.DefineFun(name, guard.five, false);
    else
        parser.DefineFun(name, guard.many, false);
}

void defineFunctions(LeanParser &parser, const std::vector<std::string_view> &names, double *kept,
                     ShapeCache *cache)
{
    for (const std::string_view name : names) {
        if (name == "kn")
            parser.DefineFunUserData("kn", keepTest, kept, false);
        else if (name == "ke")
            parser.DefineFunUserData("ke", keepValue, kept, false);
        else if (name == "fn")
            parser.DefineFunUserData("fn", callSite, cache, false);
        else if (name == "wd")
            parser.DefineFunUserData("wd", wordsSite, cache, false);
        else if (name == "er")
            parser.DefineFunUserData("er", failureSite, cache, false);
        else
            for (const Guard &guard : guards())
                if (guard.name == name)
                    defineGuard(parser, guard);
    }
}

/// Texts of all shapes of the process: ids are never given twice.
struct ShapeTexts {
    std::mutex mutex;
    std::unordered_map<std::string, ShapeId> ids;
    std::deque<const std::string *> texts;
};
ShapeTexts &shapeTexts()
{
    static ShapeTexts texts;
    return texts;
}

} // namespace

struct Shape::Parser : LeanParser {
};

Shape::Shape(const std::string &text)
{
    const Identifiers used = identifiersOf(text);
    m_slots.resize(static_cast<std::size_t>(used.slots) + 1);
    m_kept.resize(static_cast<std::size_t>(used.kept) + 1);
    try {
        m_parser = std::make_unique<Parser>();
        m_running = m_parser.get();
        for (int i = 0; i < used.slots; ++i)
            m_parser->DefineVar("r" + std::to_string(i), &m_slots[static_cast<std::size_t>(i)]);
        for (int i = 0; i < used.kept; ++i)
            m_parser->DefineVar("k" + std::to_string(i), &m_kept[static_cast<std::size_t>(i)]);
        defineFunctions(*m_parser, used.functions, m_kept.data(), &ShapeCache::ofThread());
        m_parser->SetExpr(text);
        // The first evaluation builds the byte code. Without operands every call in it would see nonsense, so
        // the slots hold errors, which every function hands on.
        std::fill(m_slots.begin(), m_slots.end(), errorNumber(ErrorKind::waiting, originHere));
        EvalFrame *running = ShapeCache::ofThread().frame;
        EvalFrame dry;
        ShapeCache::ofThread().frame = &dry;
        try {
            m_parser->Eval();
        } catch (...) {
            ShapeCache::ofThread().frame = running;
            throw;
        }
        ShapeCache::ofThread().frame = running;
    } catch (const mu::ParserError &error) {
        m_broken = true;
        m_problem = error.GetMsg();
    } catch (const std::exception &error) {
        m_broken = true;
        m_problem = error.what();
    }
}

Shape::~Shape() = default;

double Shape::eval() const
{
    if (m_broken)
        return errorNumber(ErrorKind::limit, originHere);
    return evalAtOnce();
}

ShapeId shapeId(const std::string &text)
{
    ShapeTexts &all = shapeTexts();
    const std::lock_guard<std::mutex> lock(all.mutex);
    const auto [at, isNew] = all.ids.try_emplace(text, static_cast<ShapeId>(all.texts.size()));
    if (isNew)
        all.texts.push_back(&at->first);
    return at->second;
}

const std::string &shapeText(ShapeId id)
{
    ShapeTexts &all = shapeTexts();
    const std::lock_guard<std::mutex> lock(all.mutex);
    return *all.texts[id];
}

ShapeCache &ShapeCache::ofThread()
{
    static thread_local ShapeCache cache;
    return cache;
}

Shape &ShapeCache::compile(ShapeId id)
{
    ++m_clock; // what is in use by an evaluation around this one stays younger than what has to go
    if (m_live >= limits::shapesPerThread)
        makeRoom();
    if (id >= m_byId.size())
        m_byId.resize(std::max<std::size_t>(id + 1, m_byId.size() * 2));
    auto shape = std::make_unique<Shape>(shapeText(id));
    ++m_compiles;
    ++m_live;
    m_byId[id].shape = std::move(shape);
    m_byId[id].used = m_clock;
    return *m_byId[id].shape;
}

/// Drops the oldest quarter: rare, and cheap per shape that is dropped.
void ShapeCache::makeRoom()
{
    std::vector<std::pair<std::uint32_t, ShapeId>> ages;
    for (ShapeId id = 0; id < m_byId.size(); ++id)
        if (m_byId[id].shape)
            ages.emplace_back(m_byId[id].used, id);
    const auto quarter = ages.begin() + static_cast<std::ptrdiff_t>(ages.size() / 4 + 1);
    std::nth_element(ages.begin(), quarter - 1, ages.end());
    for (auto at = ages.begin(); at != quarter; ++at) {
        m_byId[at->second].shape.reset();
        --m_live;
    }
    ++m_evictions;
}

} // namespace puteal
