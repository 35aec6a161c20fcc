/// Word search over the functions: words of the trade lead to what they name here, and the table of trade
/// words stays in step with the functions.
#include <QTest>

#include <algorithm>

#include "functions/search.h"
#include "functions/trade_words.h"

using namespace puteal;

namespace
{

std::string phrase(std::string text)
{
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return std::isalnum(c) ? std::tolower(c) : ' '; });
    return " " + text + " ";
}

} // namespace

class SearchTest : public QObject
{
    Q_OBJECT
    std::shared_ptr<const Registry> m_registry = Registry::create(UnitTable(), PluginFolders::standard());

private slots:
    void finds_data()
    {
        QTest::addColumn<QString>("words");
        QTest::addColumn<QString>("best");    // first of the list
        QTest::addColumn<QString>("another"); // somewhere in it
        const char *rows[][3] = {
            {"retention", "contact_time", "contact_tank_size"},
            {"Retention Tank", "contact_tank_size", "contact_volume"},
            {"contact", "contact_time", "empty_bed_contact_time"},
            {"injection pump", "feed_rate", "feed_setting"},
            {"brine", "brine_strength", "brine_fill"},
            {"head loss", "hazen_williams_loss", "rose_head_loss"},
            {"CT", "ct_value", "virus_ct_required"},
            {"Langelier", "langelier_index", "langelier_class"},
            {"langelier index", "langelier_index", "langelier_index"},
            {"backwash", "backwash_flow", "media_backwash_rate"},
            {"payback", "simple_payback", "discounted_payback"},
            {"EBCT", "empty_bed_contact_time", "empty_bed_contact_time"},
            {"TDH", "total_dynamic_head", "total_dynamic_head"},
            {"gpg", "total_hardness", "hardness_class"},
            {"acid neutralizer", "neutralizer_medium", "calcite_per_year"},
            {"shock", "shock_chlorination_dose", "shock_chlorination_by_rule"},
            {"tank drawdown", "tank_drawdown", "tank_drawdown"},
            {"rotten egg", "complaint_cause", "hydrogen_sulfide_share"},
            {"softeners", "softener_capacity_needed", "softener_iron_verdict"},
            {"hardness", "total_hardness", "hardness_class"},
            {"number of people", "daily_use", "recommended_flow"},
            {"vacuum breaker", "train_order", "train_order"},
            {"short cycling", "motor_starts", "most_motor_starts"},
        };
        for (const auto &row : rows)
            QTest::newRow(row[0]) << row[0] << row[1] << row[2];
    }
    void finds()
    {
        QFETCH(QString, words);
        QFETCH(QString, best);
        QFETCH(QString, another);
        const auto search = searchFunctions(*m_registry, words.toStdString());
        QVERIFY(search.everyWord);
        QVERIFY(!search.found.empty());
        QCOMPARE(QString::fromStdString(search.found.front()->name), best);
        QVERIFY(std::any_of(search.found.begin(), search.found.end(),
                            [&](const FunctionInfo *f) { return another == f->name.c_str(); }));
    }

    void findsEveryFunctionByItsName()
    {
        for (const FunctionInfo &function : m_registry->functions()) {
            const auto search = searchFunctions(*m_registry, function.name);
            QVERIFY2(!search.found.empty() && search.found.front()->name == function.name,
                     function.name.c_str());
        }
    }

    void findsNothingForOtherWords()
    {
        for (const char *words : {"zzz", "", "?", "xylophone"})
            QVERIFY2(searchFunctions(*m_registry, words).found.empty(), words);
    }

    void tellsWhenNoFunctionHasAllWords()
    {
        const auto search = searchFunctions(*m_registry, "xylophone brine");
        QVERIFY(!search.everyWord);
        QCOMPARE(QString::fromStdString(search.found.front()->name), QString("brine_strength"));
    }

    void tradeWordsNameFunctions()
    {
        std::vector<std::string> heads;
        for (const FunctionInfo &function : m_registry->functions())
            heads.push_back(phrase(function.name) + "|" + phrase(function.title));
        std::string before;
        for (const TradeWord &row : tradeWords()) {
            const std::string said(row.said);
            QVERIFY2(before < said, ("order of the alphabet: " + said).c_str());
            QVERIFY2(!row.here.empty(), said.c_str());
            before = said;
            for (const auto here : row.here) {
                // every word of it stands in the name or title of one function
                const bool known = std::any_of(heads.begin(), heads.end(), [&](const std::string &head) {
                    std::string rest = phrase(std::string(here));
                    std::size_t at = 1;
                    while (at < rest.size()) {
                        const auto end = rest.find(' ', at);
                        if (head.find(" " + rest.substr(at, end - at) + " ") == std::string::npos)
                            return false;
                        at = end + 1;
                    }
                    return true;
                });
                QVERIFY2(known, (said + ": " + std::string(here)).c_str());
            }
        }
        QVERIFY(tradeWords().size() >= 100);
    }
};

QTEST_APPLESS_MAIN(SearchTest)
#include "search_test.moc"
