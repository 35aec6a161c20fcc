/// What is offered while a formula is typed: at every kind of place, before the first letter, by words of the
/// trade, and the call that is told.
#include <QTest>

#include "session/session.h"
#include "session/typing_place.h"

using namespace puteal;

namespace
{

const char *const bookText = R"(puteal workbook 1
title "A small job"
uses softening 1
list clarity "clear" "cloudy"
sheet water "Water test"
column item words "Item" 28
column amount amounts "Amount" 18
line
item: "Hardness"
amount: 10 gpg
  name hardness
  unit gpg
line
item: "Raw iron, dissolved"
amount: 1.8 mg/L as Fe
  name dissolved_iron
  unit mg/L as Fe
line
item: "Look of the water"
amount: clear
  name look
  choices clarity
line
item: "Pump"
amount: 7 gpm
  name pump_flow
line
end water 5
sheet costs "Cost by year"
column year amounts "Year" 8
column total amounts "Softener" 14
line
year: 0 yr
total: $100
  name first_cost
end costs 1
end workbook
)";

QString fromStd(const std::string &text)
{
    return QString::fromStdString(text);
}

} // namespace

class CompleteTest : public QObject
{
    Q_OBJECT
    std::unique_ptr<Session> m_session;

    /// `|` stands for the caret.
    Completions completed(const QString &typed, const CellAt &at = {0, 1, 4},
                          Offer offer = Offer::whenAsked) const
    {
        const std::string text = QString(typed).remove('|').toStdString();
        const auto caret = typed.left(typed.indexOf('|')).toUtf8().size();
        return m_session->complete(at, text, static_cast<std::size_t>(caret), offer);
    }
    static QStringList texts(const Completions &completions, bool found)
    {
        QStringList out;
        for (const Completion &offer : completions.offers)
            if (offer.found == found)
                out += fromStd(offer.text);
        return out;
    }

private slots:
    void initTestCase()
    {
        auto session = Session::fromText(bookText);
        QVERIFY2(session, session ? "" : session.error().words.c_str());
        m_session = std::move(*session);
    }

    void thePlaceOfTheCaret_data()
    {
        QTest::addColumn<QString>("before");
        QTest::addColumn<QString>("wants"); // kind start word sheet call argument
        const char *const rows[][3] = {
            {"nothing typed", "", "operand 0"},
            {"a word", "hard", "operand 0 hard"},
            {"after a sign", "a * ha", "operand 4 ha"},
            {"behind a value", "hardness ", "joint 9"},
            {"a joining word", "x > 1 gpg a", "joint 10 a"},
            {"its other side", "x > 1 gpg and ha", "operand 14 ha"},
            {"a number alone", "3", "unit 1"},
            {"after a number", "3 ", "unit 2"},
            {"a unit", "3.5 mg", "unit 4 mg"},
            {"a unit without a blank", "3mg", "unit 1 mg"},
            {"below its line", "3 mg/", "unit 5"},
            {"in parentheses below it", "62.5 gal/(person*d", "unit 17 d"},
            {"behind the whole unit", "62.5 gal/(person*day) ", "joint 22"},
            {"money", "$0.15/k", "unit 6 k"},
            {"of what", "3 mg/L as ", "substance 10"},
            {"of what, begun", "3 mg/L as F", "substance 10 F"},
            {"in braces", "0.64 mg{C", "substance 8 C"},
            {"a name that ends with a digit", "iron2 ", "joint 6"},
            {"the unit that is wanted", "flow -> g", "unit 8 g"},
            {"wanted of what", "flow -> mg/L as C", "substance 16 C"},
            {"a call", "max(hardness, ", "operand 14 call max 1"},
            {"calls inside each other", "max(min(a, b, ", "operand 14 call min 2"},
            {"a group is no call", "max((a + ", "operand 9 call  0"},
            {"behind a call", "max(a, b) ", "joint 10"},
            {"in a sheet", "costs.fi", "operand 6 fi in costs"},
            {"in brackets", "cost[", "nothing 5"},
            {"quoted words", "look == \"cl", "listedWord 8 cl to look"},
            {"after a comparison", "look == ", "operand 8 to look"},
            {"live words", "\"uses {ir", "cell 7 ir"},
            {"typographic letters before it", "3 µg/L · ha", "operand 11 ha"},
        };
        for (const auto &row : rows)
            QTest::newRow(row[0]) << row[1] << row[2];
    }
    void thePlaceOfTheCaret()
    {
        QFETCH(QString, before);
        QFETCH(QString, wants);
        const char *const names[] = {"nothing",   "operand", "joint",     "unit",
                                     "substance", "cell",    "listedWord"};
        const TypingPlace place = typingPlace(before.toStdString(), false);
        QString told = QStringLiteral("%1 %2").arg(names[static_cast<int>(place.wants)]).arg(place.start);
        if (!place.word.empty())
            told += ' ' + fromStd(place.word);
        if (!place.sheet.empty())
            told += " in " + fromStd(place.sheet);
        if (!place.compared.empty())
            told += " to " + fromStd(place.compared);
        if (before.contains('(') && place.wants == TypingPlace::Wants::operand)
            told += QStringLiteral(" call %1 %2").arg(fromStd(place.function)).arg(place.argument);
        QCOMPARE(told, wants);
    }
    void wordsOfAWordsColumn()
    {
        QCOMPARE(typingPlace("the {ir", true).wants, TypingPlace::Wants::cell);
        QCOMPARE(typingPlace("the {iron -> m", true).wants, TypingPlace::Wants::unit);
        QCOMPARE(typingPlace("the {{ir", true).wants, TypingPlace::Wants::nothing);
        QCOMPARE(typingPlace("the ir", true).wants, TypingPlace::Wants::nothing);
    }

    void whatBeginsSo_data()
    {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("offered"); // the first ones that begin so
        const char *const rows[][2] = {
            {"dis|", "dissolved_iron discounted_payback"},
            {"fir|", "costs.first_cost"},
            {"costs.|", "first_cost year total"},
            {"costs.f|", "first_cost"},
            {"cos|", "cos costs."},
            {"3 |", "gpg mg/L as Fe"},
            {"3 mg/L as F|", "F Fe"},
            {"look == \"|", "\"clear\" \"cloudy\""},
            {"look == cl|", "\"clear\" \"cloudy\" clamp"},
            {"hardness |", "and or ->"},
            {"hardness a|", "and"},
        };
        for (const auto &row : rows)
            QTest::newRow(row[0]) << row[0] << row[1];
    }
    void whatBeginsSo()
    {
        QFETCH(QString, typed);
        QFETCH(QString, offered);
        const QString first = texts(completed(typed), false).join(' ');
        QVERIFY2(first.startsWith(offered), qPrintable(first.left(200)));
    }
    void beforeTheFirstLetterEverythingThatCanStand()
    {
        const QStringList all = texts(completed("hardness + |"), false);
        QCOMPARE(all.mid(0, 4), (QStringList{"dissolved_iron", "hardness", "look", "pump_flow"}));
        for (const char *word : {"amount", "costs.", "compensated_hardness", "max"})
            QVERIFY2(all.contains(word), word);
        QVERIFY(!all.contains("gpg"));
        // Unasked, nothing comes up before a letter.
        QVERIFY(completed("hardness + |", {0, 1, 4}, Offer::whileTyping).offers.empty());
        QVERIFY(completed("3|", {0, 1, 4}, Offer::whileTyping).offers.empty());
        QVERIFY(!completed("3 |", {0, 1, 4}, Offer::whileTyping).offers.empty());
    }
    void whatFitsTheArgumentComesFirst()
    {
        QCOMPARE(texts(completed("compensated_hardness(hardness, |"), false).mid(0, 2),
                 (QStringList{"dissolved_iron", "hardness"}));
        const Completions units = completed("compensated_hardness(hardness, 3 |");
        QCOMPARE(fromStd(units.offers.front().text), QString("mg/L as Fe"));
        QCOMPARE(fromStd(units.offers.front().detail), QString("what `iron` takes"));
    }

    void wordsOfTheTradeAreFound_data()
    {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("found");
        QTest::addColumn<QString>("why");
        QTest::newRow("rust") << "rust|"
                              << "iron_form"
                              << "for \"rust\": Form of the iron";
        QTest::newRow("bleach") << "2 * bleach|"
                                << "hypochlorite_strength"
                                << "for \"bleach\": Strength of bleach";
        QTest::newRow("grains") << "grains|"
                                << "total_hardness"
                                << "for \"grains\": Total hardness";
        QTest::newRow("two words") << "contact_tank|"
                                   << "contact_volume"
                                   << "for \"contact tank\": Contact tank volume";
        QTest::newRow("a word of an item") << "raw|"
                                           << "dissolved_iron"
                                           << "for \"raw\": Raw iron, dissolved  1.8 mg/L as Fe";
        QTest::newRow("a unit by its name") << "3 minut|"
                                            << "min"
                                            << "for \"minut\": minutes";
        QTest::newRow("a substance by its name") << "3 mg/L as iro|"
                                                 << "Fe"
                                                 << "for \"iro\": iron";
    }
    void wordsOfTheTradeAreFound()
    {
        QFETCH(QString, typed);
        QFETCH(QString, found);
        QFETCH(QString, why);
        const Completions all = completed(typed, {0, 1, 4}, Offer::whileTyping);
        bool below = false;
        QString told;
        for (const Completion &offer : all.offers) {
            QVERIFY2(offer.found || !below, "what begins so stands above what is found");
            below = offer.found;
            if (fromStd(offer.text) == found)
                told = fromStd(offer.detail);
        }
        QCOMPARE(told, why);
    }

    void aCellWithChoicesOffersThem()
    {
        QCOMPARE(texts(completed("\"cl|", {0, 1, 2}), false), (QStringList{"\"clear\"", "\"cloudy\""}));
        QCOMPARE(texts(completed("\"clear\"|", {0, 1, 2}), false), (QStringList{"\"clear\"", "\"cloudy\""}));
        const CellAt look{0, 1, 2};
        QCOMPARE(texts(completed("|", look), false).mid(0, 2), (QStringList{"clear", "cloudy"}));
        QCOMPARE(texts(completed("clo|", look, Offer::whileTyping), false).value(0), QString("cloudy"));
        // What stands there already is no reason to hide the others.
        QCOMPARE(texts(completed("clear|", look), false).mid(0, 2), (QStringList{"clear", "cloudy"}));
    }
    void whatIsReplaced_data()
    {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("replaced");
        QTest::newRow("to the end of the word") << "2 * hard|nes + 1"
                                                << "hardnes";
        QTest::newRow("behind the point") << "costs.fir|"
                                          << "fir";
        QTest::newRow("with both quotation marks") << "look == \"cl|\""
                                                   << "\"cl\"";
        QTest::newRow("behind two-byte letters") << "3 µg/L * hard|"
                                                 << "hard";
    }
    void whatIsReplaced()
    {
        QFETCH(QString, typed);
        QFETCH(QString, replaced);
        const Completions all = completed(typed);
        const QByteArray text = QString(typed).remove('|').toUtf8();
        QCOMPARE(
            QString::fromUtf8(text.mid(static_cast<int>(all.start), static_cast<int>(all.end - all.start))),
            replaced);
    }

    void theCallIsTold()
    {
        const auto hint = [&](const std::string &text) {
            return m_session->callHint({0, 1, 4}, text, text.size());
        };
        QCOMPARE(hint("hardness + ").function, std::string());
        const CallHint first = hint("compensated_hardness(");
        QCOMPARE(first.function, std::string("compensated_hardness"));
        QCOMPARE(first.arguments.size(), 5U);
        QCOMPARE(first.arguments[1], std::string("iron mg/L as Fe"));
        QVERIFY(first.arguments[2].front() == '[');
        QCOMPARE(first.current, 0U);
        QCOMPARE(hint("compensated_hardness(hardness, iron, ").current, 2U);
        QCOMPARE(hint("compensated_hardness(max(hardness, ").function, std::string("max"));
        QCOMPARE(hint("max(hardness, hardness, hardness, ").current, 0U);
        QCOMPARE(hint("compensated_hardness(hardness, iron) ").function, std::string());
    }
};

QTEST_APPLESS_MAIN(CompleteTest)
#include "complete_test.moc"
