/// Reading formulas: random trees read back, and spoiled texts are refused at a place in them.
#include <QTest>

#include <random>

#include <rapidcheck.h>

#include "support/formula_trees.h"
#include "support/parsed_formula.h"

using namespace puteal;
using test::parse, test::units;

namespace
{

constexpr unsigned seed = 20261125;

/// Draws random trees; every draw shrinks.
class TreeMaker
{
public:
    Tree make()
    {
        Tree tree;
        for (const char *text : unitTexts)
            if (*text)
                tree.units.push_back(*readUnit(text, units()));
        m_tree = &tree;
        tree.root = node(4);
        if (draw(4) == 0) {
            Node convert;
            convert.kind = NodeKind::convert;
            convert.unit = static_cast<std::uint32_t>(1 + draw(unitCount - 1));
            convert.children = {tree.root};
            tree.root = add(convert);
        }
        return tree;
    }

private:
    static constexpr const char *unitTexts[] = {
        "",  "mg/L", "mg/L as Fe",       "gal/day", "$",     "$/kWh",
        "%", "degC", "gal/(day*person)", "ft^2",    "1/day", "mg{Cl2}/mg{Fe}"};
    static constexpr int unitCount = 12;

    static int draw(int below) { return *rc::gen::inRange(0, below); }
    NodeIndex add(const Node &node)
    {
        m_tree->nodes.push_back(node);
        return static_cast<NodeIndex>(m_tree->nodes.size() - 1);
    }
    NodeIndex node(int depth)
    {
        switch (depth == 0 ? draw(5) : draw(10)) {
        case 0:
            return number();
        case 1:
        case 2:
            return reference();
        case 3:
            return words();
        case 4: {
            Node simple;
            const int which = draw(3);
            simple.kind = which == 0 ? NodeKind::pi : which == 1 ? NodeKind::yesNo : NodeKind::date;
            simple.number = which == 0 ? 0 : which == 1 ? draw(2) : 10000 + draw(20000);
            return add(simple);
        }
        case 5: {
            Node call;
            call.kind = NodeKind::call;
            call.name = draw(2) ? "max" : "if_error";
            for (int i = draw(4); i > 0; --i)
                call.children.push_back(node(depth - 1));
            return add(call);
        }
        case 6: {
            Node unary;
            unary.kind = draw(2) ? NodeKind::negate : NodeKind::logicalNot;
            unary.children = {node(depth - 1)};
            return add(unary);
        }
        case 7: {
            Node choice;
            choice.kind = NodeKind::ternary;
            choice.children = {node(depth - 1), node(depth - 1), node(depth - 1)};
            return add(choice);
        }
        default:
            return binary(depth);
        }
    }
    NodeIndex binary(int depth)
    {
        Node result;
        result.kind = NodeKind::binary;
        result.op = static_cast<Op>(draw(13));
        const NodeIndex left = node(depth - 1);
        NodeIndex right = 0;
        if (result.op == Op::power && draw(2)) {
            Node exponent; // bare exponents may be negative
            exponent.typed = exponent.number = draw(9) - 4;
            right = add(exponent);
        } else {
            right = node(depth - 1);
        }
        result.children = {left, right};
        return add(result);
    }
    NodeIndex number()
    {
        Node result;
        const int unit = draw(unitCount);
        const int digits = draw(100000);
        result.typed = digits / (draw(2) ? 100.0 : 1.0) * (draw(5) == 0 ? 1e20 : 1.0);
        if (unit == 7 && draw(2))
            result.typed = -result.typed;
        result.unit = static_cast<std::uint32_t>(unit);
        result.number = m_tree->units[result.unit].toBase(result.typed);
        return add(result);
    }
    NodeIndex reference()
    {
        ReferenceText text;
        text.word = draw(2) ? "cost" : "o2";
        text.sheet = draw(3) == 0 ? "costs" : "";
        const auto index = [] {
            IndexText i;
            i.isSigned = draw(2) == 1;
            i.value = i.isSigned ? draw(21) - 10 : 1 + draw(30);
            return i;
        };
        const int form = draw(5);
        text.gone = form == 1;
        text.whole = form == 2;
        text.indexed = form >= 2;
        if (form >= 3)
            text.first = index();
        if (form == 4)
            text.last = index();
        Node result;
        result.kind = NodeKind::reference;
        result.extra = static_cast<std::uint32_t>(m_tree->references.size());
        m_tree->references.push_back(text);
        return add(result);
    }
    std::string someWords()
    {
        static constexpr const char *pieces[] = {
            "iron", " ", "{", "}", "\"", "\\", "\n", "\xC2\xB5", "\xE2\x80\x9D", "u{41}", "->"};
        std::string text;
        for (int i = draw(5); i > 0; --i)
            text += pieces[draw(11)];
        return text;
    }
    NodeIndex words()
    {
        std::vector<LivePart> parts;
        for (int i = draw(3); i > 0; --i) {
            LivePart part;
            part.before = someWords();
            part.value = reference();
            if (draw(2)) {
                Node convert;
                convert.kind = NodeKind::convert;
                convert.unit = static_cast<std::uint32_t>(1 + draw(unitCount - 1));
                convert.children = {part.value};
                part.value = add(convert);
            }
            const int format = draw(3);
            part.figures = format == 1 ? 1 + draw(15) : 0;
            part.places = format == 2 ? draw(16) : -1;
            parts.push_back(part);
        }
        Node result;
        result.kind = NodeKind::words;
        result.name = someWords();
        result.extra = static_cast<std::uint32_t>(m_tree->wordsParts.size());
        m_tree->wordsParts.push_back(parts);
        return add(result);
    }

    Tree *m_tree = nullptr;
};

} // namespace

class ParserRandomTest : public QObject
{
    Q_OBJECT
private slots:
    void initTestCase();
    void randomTreesReadBack();
    void mutationsNeverCrash();
};

void ParserRandomTest::initTestCase()
{
    qputenv("RC_PARAMS", "seed=20261125 max_success=400");
    qInfo("seed %u", seed);
}

void ParserRandomTest::randomTreesReadBack()
{
    QVERIFY(rc::check("a printed tree reads back to itself", [] {
        const Tree made = TreeMaker().make();
        const std::string text = printFormula(made);
        RC_PRE(text.size() <= 1800U);
        const auto read = parse(text);
        if (!read)
            RC_FAIL(text + ": " + read.error().words);
        if (!test::sameTree(made, *read))
            RC_FAIL(text + " reads as " + printFormula(*read));
        RC_ASSERT(printFormula(*read) == text);
    }));
}

void ParserRandomTest::mutationsNeverCrash()
{
    const std::vector<std::string> corpus = {
        "compensated_hardness(hardness, raw_iron) -> gpg",
        "26000 gal / (4 person * 62.5 gal/(person*day)) -> day",
        "balance[-1] * (1 + rate) - payment",
        "\"use {use -> gal/day, 2 places} a \\\"day\\\"\" == words",
        "a ? b[2:9] : costs.total[gone]",
        "3 m\xC2\xB2 \xE2\x89\xA5 \xE2\x80\x9Cso\xE2\x80\x9D and not(x^-2 > $1.5/kWh)",
        "max(1,250, .5, 5., 2^3^2) + 2026-05-12",
        "-5 degC + 3 mg/L as Fe * 12 gal/day/person"};
    const std::vector<std::string> pieces = {"(",        ")",
                                             "[",        "]",
                                             "{",        "}",
                                             "\"",       "'",
                                             ",",        ".",
                                             ":",        "?",
                                             "->",       "^",
                                             "*",        "/",
                                             "+",        "-",
                                             "=",        "<",
                                             "!",        "&",
                                             "|",        "$",
                                             "%",        " ",
                                             "1",        "250",
                                             "1/2",      "as",
                                             "Fe",       "gal",
                                             "gone",     "not",
                                             "\\",       "\\u{",
                                             "\xC2\xB5", "\xE2\x80\x9C",
                                             "\xC2\xB0", "\xF0\x9F\x98\x80",
                                             "\xFF"};
    std::mt19937 random(seed);
    const auto draw = [&](std::size_t below) { return random() % below; };
    int refusedCount = 0;
    for (int round = 0; round < 20000; ++round) {
        std::string text = corpus[draw(corpus.size())];
        for (std::size_t i = 1 + draw(4); i > 0; --i) {
            const std::size_t at = draw(text.size() + 1);
            const std::size_t count = std::min(draw(6), text.size() - at);
            const std::string slice = text.substr(at, count);
            switch (draw(3)) {
            case 0:
                text.erase(at, count);
                break;
            case 1:
                text.insert(at, pieces[draw(pieces.size())]);
                break;
            default:
                text.insert(draw(text.size() + 1), slice);
                break;
            }
        }
        for (const bool isWords : {false, true}) {
            if (isWords && round % 4 != 0)
                continue;
            const auto tree = isWords ? parseWordsCell(text, units()) : parse(text);
            if (tree) {
                const std::string shown = isWords ? printWordsCell(*tree) : printFormula(*tree);
                const auto again = isWords ? parseWordsCell(shown, units()) : parse(shown);
                QVERIFY2(again && test::sameTree(*tree, *again), (text + " shows as " + shown).c_str());
                continue;
            }
            refusedCount += isWords ? 0 : 1;
            const Error &error = tree.error();
            QVERIFY2(error.place.span && error.place.span->begin <= error.place.span->end &&
                         error.place.span->end <= text.size(),
                     text.c_str());
            QVERIFY2(!error.words.empty() && error.words.back() != '.', text.c_str());
            for (const Fix &fix : error.fixes)
                QVERIFY2(fix.span.begin <= fix.span.end && fix.span.end <= text.size(), text.c_str());
        }
    }
    QVERIFY(refusedCount > 10000);
}

QTEST_APPLESS_MAIN(ParserRandomTest)
#include "parser_random_test.moc"
