/// 10,000 random structural changes against an oracle that gives every line an identity: each reference must
/// mean the cell it meant, or, inside a filled run, the same place of the run.
#include <QTest>

#include <algorithm>
#include <functional>
#include <random>
#include <unordered_map>

#include "formula/binder.h"
#include "support/line_identities.h"
#include "support/structure.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

constexpr unsigned seed = 20261125;
constexpr int workbooks = 500, editsEach = 20;
using Kind = StructuralChange::Kind;

class Trial
{
public:
    explicit Trial(std::mt19937 &random) : m_random(random) { makeWorkbook(); }
    void edit();
    std::size_t checked = 0, keptPlace = 0, goneCount = 0, joinedCount = 0;
    std::vector<std::string> failures;

private:
    void makeWorkbook();
    std::string someFormula(std::uint32_t sheet, std::uint32_t line);
    std::string someReference(std::uint32_t sheet, std::uint32_t line);
    StructuralChange someChange();
    Told tell(const StructuralChange &change) const;
    std::vector<Formula> formulas() const;
    bool joins(const Formula &formula, const Told &told) const;
    bool oneRunJoins(std::uint32_t column, const Ids &run, const std::string &text, const Told &told) const;
    Ids runAt(std::uint32_t sheet, std::uint32_t column, int id) const;
    std::string textAt(std::uint32_t sheet, std::uint32_t column, int id) const;
    void check(const Formula &formula, const Told &told, const Workbook &afterBook, const World &after,
               const std::string &newText);
    void checkSingle(const Formula &formula, const Told &told, const World &after, const ReferenceText &was,
                     const ReferenceText &is, const Meaning &before, const Meaning &now);
    void checkRange(const Formula &formula, const Told &told, const World &after, const ReferenceText &was,
                    const ReferenceText &is, const Meaning &before, const Meaning &now);
    bool keepsPlace(const Formula &formula, const Told &told, const World &after, const IndexText &index,
                    int target) const;
    Ids expectedRange(const Formula &formula, const Told &told, const World &after, const Ids &range,
                      bool touchAsRun) const;
    bool isOwnChange(const Formula &formula, const Told &told) const;
    void fail(const Formula &formula, const std::string &newText, const char *why);
    std::uint32_t draw(std::uint32_t below) { return static_cast<std::uint32_t>(m_random() % below); }

    std::mt19937 &m_random;
    Workbook m_book;
    World m_world;
    int m_next = 0;
    std::string m_change;
};

// ---- making
// ---------------------------------------------------------------------------------------------------------

std::string Trial::someReference(std::uint32_t sheet, std::uint32_t line)
{
    static constexpr const char *keys[] = {"a", "b", "c"};
    const std::uint32_t lines = m_book.sheets[sheet].lineCount();
    const std::string key = keys[draw(3)];
    const auto index = [&] { return std::to_string(1 + draw(lines)); };
    const auto relative = [&] {
        const int offset = static_cast<int>(draw(lines)) - static_cast<int>(line);
        return (offset < 0 ? "" : "+") + std::to_string(offset);
    };
    const std::string other = m_book.sheets[1 - sheet].key();
    const std::uint32_t a = 1 + draw(lines), b = 1 + draw(lines);
    switch (draw(9)) {
    case 0:
        return "iron";
    case 1:
        return other + "." + key + "[" + index() + "]";
    case 2:
        return key + "[" + relative() + "]";
    case 3:
        return key + "[" + index() + "]";
    case 4:
        return "sum(" + key + "[" + std::to_string(std::min(a, b)) + ":" + std::to_string(std::max(a, b)) +
               "])";
    case 5:
        return "sum(" + other + "." + key + "[1:" + std::to_string(std::max(a, b)) + "])";
    case 6:
        return line > 0 ? "sum(" + key + "[1:-1])" : "sum(" + key + "[:])";
    case 7:
        return "sum(" + key + "[" + relative() + ":" + relative() + "])"; // may run upward
    default:
        return key;
    }
}

std::string Trial::someFormula(std::uint32_t sheet, std::uint32_t line)
{
    const std::string first = someReference(sheet, line);
    return draw(2) ? first : first + " + " + someReference(sheet, line);
}

void Trial::makeWorkbook()
{
    for (std::uint32_t s = 0; s < 2; ++s) {
        const std::uint32_t lines = 10 + draw(10);
        m_book.sheets.push_back(test::sheetOf(s == 0 ? "here" : "there", {"a", "b", "c"}, lines));
        m_world.lines.emplace_back();
        for (std::uint32_t l = 0; l < lines; ++l)
            m_world.lines[s].push_back(m_next++);
    }
    static constexpr const char *fills[] = {
        "c[-1] + a",      "c[-1] + c[-2]", "c[+1] * 2",           "sum(b[1:+0])",  "sum(b[1:-1])",
        "mean(a[-2:+0])", "a * b[2]",      "c[-1] + sum(b[1:3])", "b[-1] - a[+1]", "max(c[-1:+1])"};
    for (std::uint32_t s = 0; s < 2; ++s) {
        Sheet &sheet = m_book.sheets[s];
        const std::uint32_t lines = sheet.lineCount();
        test::setName(sheet, 1, draw(lines), "iron");
        for (std::uint32_t l = 0; l < lines; ++l) {
            test::setText(sheet, 0, l, draw(3) ? std::to_string(draw(100)) : "");
            test::setText(sheet, 1, l, draw(3) ? std::to_string(draw(100)) : someFormula(s, l));
        }
        const std::uint32_t first = draw(lines - 4), last = first + 2 + draw(lines - first - 2);
        const std::string fill = fills[draw(10)];
        for (std::uint32_t l = 0; l < lines; ++l)
            test::setText(sheet, 2, l, l >= first && l <= last ? fill : draw(2) ? someFormula(s, l) : "");
    }
}

StructuralChange Trial::someChange()
{
    StructuralChange change;
    change.sheet = draw(2);
    Sheet &sheet = m_book.sheets[change.sheet];
    const std::uint32_t lines = sheet.lineCount();
    const std::uint32_t kind = draw(10);
    change.count = 1 + draw(3);
    if (kind < 4 && lines < 30) {
        change.kind = Kind::insertLines;
        change.at = draw(lines + 1);
        change.side = change.at == 0                  ? InsertSide::above
                      : change.at == lines || draw(2) ? InsertSide::below
                                                      : InsertSide::above;
    } else if (kind < 6 && lines > 8) {
        change.kind = Kind::deleteLines;
        change.at = draw(lines - change.count);
    } else if (kind < 9) {
        change.kind = Kind::moveLines;
        change.at = draw(lines - change.count);
        change.to = draw(lines + 1);
    } else {
        static constexpr Kind kinds[] = {Kind::renameName, Kind::renameColumn, Kind::renameSheet};
        change.kind = kinds[draw(3)];
        change.oldWord = change.kind == Kind::renameName ? sheet.named("iron", 0) ? "iron" : "no_such_name"
                         : change.kind == Kind::renameColumn ? sheet.column(draw(3)).key
                                                             : sheet.key();
        change.newWord = "w" + std::to_string(m_next++);
    }
    return change;
}

// ---- telling
// --------------------------------------------------------------------------------------------------------

std::string Trial::textAt(std::uint32_t sheet, std::uint32_t column, int id) const
{
    const int line = positionOf(m_world.lines[sheet], id);
    return line < 0 ? "" : m_book.sheets[sheet].cell(column, static_cast<std::uint32_t>(line)).typed();
}

Ids Trial::runAt(std::uint32_t sheet, std::uint32_t column, int id) const
{
    const Ids &ids = m_world.lines[sheet];
    const std::string text = textAt(sheet, column, id);
    if (text.empty() || referencesIn(text).empty())
        return {id};
    int first = positionOf(ids, id), last = first;
    const auto same = [&](int line) {
        return textAt(sheet, column, ids[static_cast<std::size_t>(line)]) == text;
    };
    while (first > 0 && same(first - 1))
        --first;
    while (last + 1 < static_cast<int>(ids.size()) && same(last + 1))
        ++last;
    return Ids(ids.begin() + first, ids.begin() + last + 1);
}

std::vector<Formula> Trial::formulas() const
{
    std::vector<Formula> all;
    for (std::uint32_t s = 0; s < m_book.sheets.size(); ++s)
        for (std::uint32_t c = 0; c < 3; ++c)
            for (const int id : m_world.lines[s])
                if (const std::string text = textAt(s, c, id); !text.empty() && !referencesIn(text).empty())
                    all.push_back({s, c, id, text, runAt(s, c, id)});
    return all;
}

Told Trial::tell(const StructuralChange &change) const
{
    Told told;
    told.sheet = change.sheet;
    told.side = change.side;
    const Ids &ids = m_world.lines[change.sheet];
    told.isInsertion = change.kind == Kind::insertLines;
    told.isDeletion = change.kind == Kind::deleteLines;
    told.isMove =
        change.kind == Kind::moveLines && (change.to < change.at || change.to > change.at + change.count);
    if (told.isDeletion || told.isMove)
        told.block.assign(ids.begin() + change.at, ids.begin() + change.at + change.count);
    const std::uint32_t gap = told.isInsertion ? change.at : change.to;
    if (told.isInsertion || told.isMove) {
        told.above = gap > 0 ? ids[gap - 1] : -1;
        told.below = gap < ids.size() ? ids[gap] : -1;
    }
    return told;
}

/// Does one run take the lines at the gap?
bool Trial::oneRunJoins(std::uint32_t column, const Ids &run, const std::string &text, const Told &told) const
{
    if (run.size() < 2)
        return false;
    for (const int id : told.block)
        if (told.isMove && holds(run, id))
            return false;
    bool up = false, down = false;
    for (const ReferenceText &reference : referencesIn(text))
        for (const auto &index : {reference.first, reference.last})
            if (index && index->isSigned) {
                up = up || index->value < 0;
                down = down || index->value > 0;
            }
    if (holds(run, told.above) && holds(run, told.below))
        return true;
    if (told.below == run.front())
        return (told.isInsertion && told.side == InsertSide::above) || (up && told.above >= 0);
    if (told.above != run.back())
        return false;
    if ((told.isInsertion && told.side == InsertSide::below) || (down && told.below >= 0))
        return true;
    const std::string under = textAt(told.sheet, column, told.below);
    if (under.empty())
        return false;
    for (const ReferenceText &reference : referencesIn(under)) {
        if (!reference.last)
            continue;
        const Sheet &sheet = m_book.sheets[told.sheet];
        const bool here = reference.sheet.empty() || reference.sheet == sheet.key();
        if (here && reference.word == sheet.column(column).key &&
            m_world.at(*reference.last, told.sheet, told.below) == run.back())
            return true;
    }
    return false;
}

/// Do the lines put in join this formula's run? Where two runs meet, the side of the command goes first.
bool Trial::joins(const Formula &formula, const Told &told) const
{
    if (formula.sheet != told.sheet || (!told.isInsertion && !told.isMove) || !formula.inRun())
        return false;
    Ids sides = told.side == InsertSide::above ? Ids{told.below, told.above} : Ids{told.above, told.below};
    for (const int side : sides) {
        if (side < 0)
            continue;
        const Ids run = runAt(told.sheet, formula.column, side);
        if (oneRunJoins(formula.column, run, textAt(told.sheet, formula.column, side), told))
            return run == formula.run;
    }
    return false;
}

bool Trial::isOwnChange(const Formula &formula, const Told &told) const
{
    if (!formula.inRun() || formula.sheet != told.sheet)
        return false;
    if (told.isInsertion)
        return joins(formula, told);
    const auto isOwn = [&](int id) { return holds(formula.run, id); };
    if (!told.block.empty() && std::all_of(told.block.begin(), told.block.end(), isOwn))
        return true;
    return told.isMove && joins(formula, told) &&
           std::all_of(told.block.begin(), told.block.end(),
                       [&](int id) { return textAt(formula.sheet, formula.column, id).empty(); });
}

// ---- checking
// -------------------------------------------------------------------------------------------------------

void Trial::fail(const Formula &formula, const std::string &newText, const char *why)
{
    failures.push_back(std::string(why) + ": `" + formula.text + "` became `" + newText + "` on " + m_change);
}

/// Would the index as written mean a line of the run, one that joined it, or a cell the run leaned on with
/// it?
bool Trial::keepsPlace(const Formula &formula, const Told &told, const World &after, const IndexText &index,
                       int target) const
{
    if (!holds(formula.run, target) && !isOwnChange(formula, told))
        return false;
    const int now = after.at(index, formula.sheet, formula.id);
    if (holds(formula.run, now))
        return true;
    Ids leaned;
    for (const int member : formula.run)
        leaned.push_back(m_world.at(index, formula.sheet, member));
    const bool isMovedIn =
        told.isMove && holds(told.block, now); // also the cell leaned on, put among the run's lines
    if (holds(leaned, now) && !isMovedIn)
        return true;
    const bool isNew = now >= 0 && positionOf(m_world.lines[formula.sheet], now) < 0;
    if (isNew)
        return joins(formula, told);
    return isMovedIn && joins(formula, told) && textAt(formula.sheet, formula.column, now).empty();
}

void Trial::checkSingle(const Formula &formula, const Told &told, const World &after,
                        const ReferenceText &was, const ReferenceText &is, const Meaning &before,
                        const Meaning &now)
{
    const int target = before.lines.front();
    const bool isSigned = was.first && was.first->isSigned;
    if (isSigned && formula.inRun() && was.first->value != 0 && formula.sheet == told.sheet &&
        keepsPlace(formula, told, after, *was.first, target)) {
        ++keptPlace;
        if (is.gone || is.first->value != was.first->value)
            fail(formula, "", "the place was not kept");
        return;
    }
    if (positionOf(after.lines[before.sheet], target) < 0) {
        ++goneCount;
        if (!is.gone)
            fail(formula, "", "SILENT: a deleted cell is not told");
    } else if (now.lines != before.lines || now.sheet != before.sheet || now.column != before.column) {
        fail(formula, "", "SILENT: another cell");
    }
}

/// The lines a range holds afterwards, by lists of identities.
Ids Trial::expectedRange(const Formula &formula, const Told &told, const World &after, const Ids &range,
                         bool touchAsRun) const
{
    const bool touches = formula.sheet == told.sheet && !(told.isMove && holds(told.block, formula.id));
    const int top = touchAsRun ? formula.run.front() : formula.id,
              bottom = touchAsRun ? formula.run.back() : formula.id;
    const Ids &order = after.lines[told.sheet];
    Ids rest;
    for (const int id : range)
        if (!holds(told.block, id))
            rest.push_back(id);
    if (told.isDeletion)
        return rest;
    if (told.isMove && rest.empty())
        return range;
    if (!told.isMove && !told.isInsertion)
        return range;
    Ids put; // what stands at the gap now, in order
    for (const int id : order)
        if (told.isMove ? holds(told.block, id) : positionOf(m_world.lines[told.sheet], id) < 0)
            put.push_back(id);
    const int at = positionOf(order, put.front());
    const int x = at > 0 ? order[static_cast<std::size_t>(at) - 1] : -1;
    const std::size_t behind = static_cast<std::size_t>(at) + put.size();
    const int y = behind < order.size() ? order[behind] : -1;
    Ids joined;
    const auto own = [&] {
        Ids some;
        for (const int id : put)
            if (holds(range, id))
                some.push_back(id);
        return some;
    };
    if (holds(rest, x) && holds(rest, y))
        joined = put;
    else if (y == rest.front())
        joined = (told.isInsertion && told.side == InsertSide::above) || (touches && x >= 0 && x == bottom)
                     ? put
                 : holds(range, put.back()) ? own()
                                            : Ids{};
    else if (x == rest.back())
        joined = (told.isInsertion && told.side == InsertSide::below) || (touches && y >= 0 && y == top) ? put
                 : holds(range, put.front()) ? own()
                                             : Ids{};
    Ids result;
    for (const int id : order)
        if (holds(rest, id) || holds(joined, id))
            result.push_back(id);
    return result;
}

void Trial::checkRange(const Formula &formula, const Told &told, const World &after, const ReferenceText &was,
                       const ReferenceText &is, const Meaning &before, const Meaning &now)
{
    const bool anySigned = was.first->isSigned || was.last->isSigned;
    const bool isHere = before.sheet == told.sheet;
    const Ids expected =
        isHere ? expectedRange(formula, told, after, before.lines, formula.inRun() && !anySigned)
               : before.lines;
    const auto isOwnLine = [](const IndexText &index) { return index.isSigned && index.value == 0; };
    const bool byPlace =
        isHere && anySigned && (formula.inRun() || isOwnLine(*was.first) || isOwnLine(*was.last));
    if (!byPlace) {
        if (expected.empty() ? !is.gone : now.lines != expected)
            fail(formula, "", "SILENT: other lines in a range");
        return;
    }
    if (is.gone) {
        if (!expected.empty())
            fail(formula, "", "a range is gone that has lines");
        return;
    }
    // an end keeps its text (its place in the run, its own line), or stands on the edge of what the range
    // holds
    const auto endIsRight = [&](const IndexText &old, const IndexText &fresh, int target, int edge,
                                const Ids &wide, bool isFirst) {
        const int means = after.at(fresh, before.sheet, formula.id);
        if (old.isSigned && old.value == fresh.value &&
            (old.value == 0 || (formula.inRun() && keepsPlace(formula, told, after, old, target))))
            return true;
        return means == edge || (isOwnChange(formula, told) && !wide.empty() &&
                                 means == (isFirst ? wide.front() : wide.back()));
    };
    Ids wide = before.lines; // the widest range of the run
    for (const int member : formula.run) {
        Meaning other = m_world.meaning(m_book, was, formula.sheet, member);
        if (other.lines.size() > wide.size())
            wide = other.lines;
    }
    wide = expectedRange(formula, told, after, wide, false);
    const int firstEdge = expected.empty() ? -9 : expected.front(),
              lastEdge = expected.empty() ? -9 : expected.back();
    if (!endIsRight(*was.first, *is.first, before.lines.front(), firstEdge, wide, true) ||
        !endIsRight(*was.last, *is.last, before.lines.back(), lastEdge, wide, false))
        fail(formula, "", "SILENT: an end of a range means another line");
}

void Trial::check(const Formula &formula, const Told &told, const Workbook &afterBook, const World &after,
                  const std::string &newText)
{
    const auto &was = referencesIn(formula.text);
    const auto &is = referencesIn(newText);
    const std::size_t soFar = failures.size();
    if (was.size() != is.size())
        return fail(formula, newText, "another number of references");
    for (std::size_t i = 0; i < was.size(); ++i) {
        ++checked;
        const Meaning before = m_world.meaning(m_book, was[i], formula.sheet, formula.id);
        const Meaning now = after.meaning(afterBook, is[i], formula.sheet, formula.id);
        if (before.gone || !before.points) {
            const bool stays = before.gone ? is[i].gone : !is[i].gone;
            if (!stays)
                fail(formula, newText, "what pointed nowhere changed");
        } else if (was[i].whole) {
            if (now.lines != after.lines[now.sheet] || now.column != before.column)
                fail(formula, newText, "the whole column changed");
        } else if (was[i].last) {
            checkRange(formula, told, after, was[i], is[i], before, now);
        } else {
            checkSingle(formula, told, after, was[i], is[i], before, now);
        }
    }
    if (failures.size() > soFar)
        failures.back() += " -> `" + newText + "`";
}

void Trial::edit()
{
    const StructuralChange change = someChange();
    m_change = "kind " + std::to_string(int(change.kind)) + " sheet " + std::to_string(change.sheet) +
               " at " + std::to_string(change.at) + " count " + std::to_string(change.count) + " to " +
               std::to_string(change.to) + " side " + std::to_string(int(change.side));
    const Told told = tell(change);
    const std::vector<Formula> before = formulas();
    Workbook afterBook = m_book;
    World after = m_world;
    const RewrittenWorkbook rewritten = test::carryOut(afterBook, change, units());
    joinedCount += rewritten.taken.size();
    Ids &ids = after.lines[change.sheet];
    if (told.isInsertion) {
        for (std::uint32_t i = 0; i < change.count; ++i)
            ids.insert(ids.begin() + change.at + i, m_next++);
    } else if (told.isDeletion) {
        ids.erase(ids.begin() + change.at, ids.begin() + change.at + change.count);
    } else if (told.isMove) {
        Ids rest;
        for (const int id : ids)
            if (!holds(told.block, id))
                rest.push_back(id);
        const int at = told.below >= 0 ? positionOf(rest, told.below) : static_cast<int>(rest.size());
        rest.insert(rest.begin() + at, told.block.begin(), told.block.end());
        ids = rest;
    }
    for (const Formula &formula : before) {
        const int line = positionOf(after.lines[formula.sheet], formula.id);
        if (line >= 0)
            check(formula, told, afterBook, after,
                  afterBook.sheets[formula.sheet]
                      .cell(formula.column, static_cast<std::uint32_t>(line))
                      .typed());
    }
    m_book = std::move(afterBook);
    m_world = std::move(after);
}

} // namespace

class StructureRandomTest : public QObject
{
    Q_OBJECT
private slots:
    void everyReferenceKeepsItsCell();
};

void StructureRandomTest::everyReferenceKeepsItsCell()
{
    qInfo("seed %u", seed);
    std::mt19937 random(seed);
    std::size_t checked = 0, kept = 0, gone = 0, joined = 0;
    QStringList failures;
    for (int w = 0; w < workbooks; ++w) {
        Trial trial(random);
        for (int e = 0; e < editsEach; ++e)
            trial.edit();
        checked += trial.checked;
        kept += trial.keptPlace;
        gone += trial.goneCount;
        joined += trial.joinedCount;
        for (const std::string &failure : trial.failures)
            failures << QString::fromStdString(failure);
    }
    qInfo(
        "%d changes, %zu references checked, %zu kept their place in a run, %zu gone, %zu cells joined a run",
        workbooks * editsEach, checked, kept, gone, joined);
    QVERIFY2(failures.isEmpty(), qPrintable(QString("%1 failures, first:\n").arg(failures.size()) +
                                            failures.mid(0, 5).join("\n")));
    QVERIFY(checked > 100000 && kept > 1000 && gone > 500 && joined > 500);
}

QTEST_APPLESS_MAIN(StructureRandomTest)
#include "structure_random_test.moc"
