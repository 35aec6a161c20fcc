/// The dated table of limits against what its sources print, its windows of days, and the page people read.
#include <QFile>
#include <QTest>

#include <algorithm>
#include <set>

#include "../plugins/limits/table.h"
#include "plugins/check_rows.h"

using namespace called;
using namespace limits;

namespace
{

const Plugin &plugin()
{
    static const Plugin one("limits");
    return one;
}

/// A row as its source prints it, typed anew: what, whose, kind, low, high, basis, first day, last day (""
/// while nothing follows), source. NaN stands for "no value".
struct Printed {
    Item item;
    Place place;
    Kind kind;
    double low, high;
    const char *basis, *from, *until, *source;
};
constexpr double noValue = HUGE_VAL;

// 40 CFR 143.3 (law.cornell.edu), the whole table but corrosivity, foaming agents and silver; its history
// names 44 FR 42198 of July 19, 1979, 51 FR 11412 of Apr. 2, 1986 and 56 FR 3597 of Jan. 30, 1991.
constexpr Printed secondary[] = {
    {aluminum, us, aesthetic, 0, 0.2, "Al", "1991-01-30", "", "cfr143_3"}, // prints 0.05 to 0.2
    {chloride, us, aesthetic, 0, 250, "Cl", "1979-07-19", "", "cfr143_3"},
    {color, us, aesthetic, 0, 15, "", "1979-07-19", "", "cfr143_3"},
    {copper, us, aesthetic, 0, 1.0, "Cu", "1979-07-19", "", "cfr143_3"},
    {fluoride, us, aesthetic, 0, 2.0, "F", "1986-04-02", "", "cfr143_3"},
    {iron, us, aesthetic, 0, 0.3, "Fe", "1979-07-19", "", "cfr143_3"},
    {manganese, us, aesthetic, 0, 0.05, "Mn", "1979-07-19", "", "cfr143_3"},
    {odor, us, aesthetic, 0, 3, "", "1979-07-19", "", "cfr143_3"},
    {ph, us, aesthetic, 6.5, 8.5, "", "1979-07-19", "", "cfr143_3"},
    {sulfate, us, aesthetic, 0, 250, "SO4", "1979-07-19", "", "cfr143_3"},
    {dissolvedSolids, us, aesthetic, 0, 500, "TDS", "1979-07-19", "", "cfr143_3"},
    {zinc, us, aesthetic, 0, 5, "Zn", "1979-07-19", "", "cfr143_3"},
};
constexpr Printed primary[] = {
    // 40 CFR 141.11(b): "0.05 milligrams per liter ... until January 23, 2006"
    {arsenic, us, healthLimit, 0, 0.05, "As", "1977-06-24", "2006-01-22", "cfr141_11"},
    // EPA 816-R-05-008
    {arsenic, us, healthLimit, 0, 0.010, "As", "2006-01-23", "", "epa_arsenic"},
    // 40 CFR 265 appendix III, interim primary standards
    {lead, us, healthLimit, 0, 0.05, "Pb", "1977-06-24", "1992-12-06", "cfr265_iii"},
    {barium, us, healthLimit, 0, 1.0, "Ba", "1977-06-24", "1992-12-31", "cfr265_iii"},
    {nitrate, us, healthLimit, 0, 10, "N", "1977-06-24", "", "cfr265_iii"},
    // 89 FR 86418 of October 30, 2024
    {lead, us, actionLevel, 0, 0.015, "Pb", "1992-12-07", "2027-10-31", "fr_lead_2024"},
    {lead, us, actionLevel, 0, 0.010, "Pb", "2027-11-01", "", "fr_lead_2024"},
    // 65 FR 76708, effective 2003-12-08; COMAR 26.04.01.09 prints 30
    {uranium, us, healthLimit, 0, 0.030, "U", "2003-12-08", "", "fr_radionuclides"},
    // 40 CFR 141.52: total coliforms until March 31, 2016, E. coli from April 1, 2016, both zero
    {totalColiform, us, treatmentGoal, 0, 0, "", "1990-12-31", "2016-03-31", "cfr141_52"},
    {totalColiform, us, treatmentGoal, 0, noValue, "", "2016-04-01", "", "cfr141_52"},
    {eColi, us, treatmentGoal, 0, 0, "", "2016-04-01", "", "cfr141_52"},
    // AWWA DrinkTap page: lifetime 0.3; EPA 822-R-03-006: 20; Potwora 2009: 4 as Cl2
    {manganese, us, advisory, 0, 0.3, "Mn", "2004-01-01", "", "drinktap_manganese"},
    {sodium, us, advisory, 0, 20, "Na", "2003-01-01", "", "epa_sodium"},
    {chlorine, us, healthLimit, 0, 4, "Cl2", "2002-01-01", "", "trade_mrdl"},
};
constexpr Printed canadian[] = {
    // open.canada.ca summaries
    {iron, canada, aesthetic, 0, 0.3, "Fe", "1987-01-01", "2024-12-27", "canada_open"},
    {chloride, canada, aesthetic, 0, 250, "Cl", "1987-01-01", "", "canada_open"},
    {sulfate, canada, aesthetic, 0, 500, "SO4", "1994-01-01", "", "canada_open"},
    {color, canada, aesthetic, 0, 15, "", "1987-01-01", "", "canada_open"},
    {nitrate, canada, healthLimit, 0, 45, "NO3", "1987-01-01", "", "canada_open"},
    {nitrate, canada, healthLimit, 0, 10, "N", "1987-01-01", "", "canada_open"},
    // notice in the Canada Gazette of 28 December 2024
    {iron, canada, aesthetic, 0, 0.1, "Fe", "2024-12-28", "", "canada_iron_2024"},
    // canada.ca, guideline technical documents on lead (published March 8, 2019) and arsenic (May 2006)
    {lead, canada, healthLimit, 0, 0.005, "Pb", "2019-03-08", "", "canada_lead_2019"},
    {arsenic, canada, healthLimit, 0, 0.010, "As", "2006-05-01", "", "canada_arsenic"},
    // princetonbc.com, guide to uranium in drinking water: Health Canada confirmed 0.020 mg/L
    {uranium, canada, healthLimit, 0, 0.02, "U", "2001-01-01", "", "canada_uranium"},
    // esemag.com 2019
    {manganese, canada, aesthetic, 0, 0.02, "Mn", "2019-05-10", "", "journal_manganese"},
    {manganese, canada, healthLimit, 0, 0.12, "Mn", "2019-05-10", "", "journal_manganese"},
};
constexpr Printed world[] = {
    // FAO y4263e annex 3, table A3.1 and A3.2, after WHO 1996 and 1998
    {arsenic, who, guideline, 0, 0.01, "As", "1996-01-01", "", "fao_who"},
    {copper, who, guideline, 0, 2, "Cu", "1996-01-01", "", "fao_who"},
    {lead, who, guideline, 0, 0.01, "Pb", "1996-01-01", "", "fao_who"},
    {manganese, who, guideline, 0, 0.5, "Mn", "1996-01-01", "2003-12-31", "fao_who"},
    {nitrate, who, guideline, 0, 50, "NO3", "1996-01-01", "", "fao_who"},
    {nitrite, who, guideline, 0, 3, "NO2", "1996-01-01", "", "fao_who"},
    {uranium, who, guideline, 0, 0.002, "U", "1998-01-01", "2003-12-31", "fao_who"},
    {eColi, who, guideline, 0, 0, "", "1996-01-01", "", "fao_who"},
    // extract of the same tables, waterquality.de
    {barium, who, guideline, 0, 0.7, "Ba", "1996-01-01", "2016-12-31", "who_1996_extract"},
    {fluoride, who, guideline, 0, 1.5, "F", "1996-01-01", "", "who_1996_extract"},
    // Frisbie et al. 2012: 0.4 dropped in 2011
    {manganese, who, guideline, 0, 0.4, "Mn", "2004-01-01", "2011-06-30", "frisbie_2012"},
    {manganese, who, guideline, 0, noValue, "Mn", "2011-07-01", "2022-03-20", "frisbie_2012"},
    // heavymetalindex.com on the edition of 2022
    {manganese, who, guideline, 0, 0.08, "Mn", "2022-03-21", "", "who_2022_review"},
    {barium, who, guideline, 0, 1.3, "Ba", "2017-01-01", "", "who_2022_review"},
};
// From memory, confirmed nowhere: the table must say so.
constexpr Printed fromMemory[] = {
    {copper, us, actionLevel, 0, 1.3, "Cu", "1992-12-07", "", "recalled_us"},
    {copper, us, treatmentGoal, 0, 1.3, "Cu", "1992-12-07", "", "recalled_us"},
    {arsenic, us, treatmentGoal, 0, 0, "As", "2006-01-23", "", "recalled_us"},
    {lead, us, treatmentGoal, 0, 0, "Pb", "1992-12-07", "", "recalled_us"},
    {uranium, us, treatmentGoal, 0, 0, "U", "2003-12-08", "", "recalled_us"},
    {barium, us, healthLimit, 0, 2, "Ba", "1993-01-01", "", "recalled_us"},
    {fluoride, us, healthLimit, 0, 4.0, "F", "1987-10-02", "", "recalled_us"}, // the day: 40 CFR 141.60
    {nitrite, us, healthLimit, 0, 1, "N", "1992-07-30", "", "recalled_us"},
    {totalColiform, us, healthLimit, 0, 0, "", "1990-12-31", "2016-03-31", "recalled_us"},
    {totalColiform, us, actionLevel, 0, 0, "", "2016-04-01", "", "recalled_us"},
    {eColi, us, healthLimit, 0, 0, "", "1990-12-31", "", "recalled_us"},
    {manganese, canada, aesthetic, 0, 0.05, "Mn", "1987-01-01", "2019-05-09", "recalled_canada"},
    {copper, canada, aesthetic, 0, 1, "Cu", "1992-01-01", "", "recalled_canada"},
    {copper, canada, healthLimit, 0, 2, "Cu", "2019-06-01", "", "recalled_canada"},
    {zinc, canada, aesthetic, 0, 5, "Zn", "1987-01-01", "", "recalled_canada"},
    {aluminum, canada, treatmentGoal, 0, 0.1, "Al", "1998-01-01", "", "recalled_canada"},
    {aluminum, canada, healthLimit, 0, 2.9, "Al", "2021-03-01", "", "recalled_canada"},
    {arsenic, canada, healthLimit, 0, 0.025, "As", "1989-01-01", "2006-04-30", "recalled_canada"},
    {lead, canada, healthLimit, 0, 0.01, "Pb", "1992-01-01", "2019-03-07", "recalled_canada"},
    {barium, canada, healthLimit, 0, 1.0, "Ba", "1990-01-01", "2019-12-31", "recalled_canada"},
    {barium, canada, healthLimit, 0, 2.0, "Ba", "2020-01-01", "", "recalled_canada"},
    {strontium, canada, healthLimit, 0, 7.0, "Sr", "2019-05-01", "", "recalled_canada"},
    {sodium, canada, aesthetic, 0, 200, "Na", "1992-01-01", "", "recalled_canada"},
    {sulfide, canada, aesthetic, 0, 0.05, "H2S", "1992-01-01", "", "recalled_canada"},
    {fluoride, canada, healthLimit, 0, 1.5, "F", "1996-01-01", "", "recalled_canada"},
    {nitrite, canada, healthLimit, 0, 3, "NO2", "1987-01-01", "", "recalled_canada"},
    {nitrite, canada, healthLimit, 0, 1, "N", "1987-01-01", "", "recalled_canada"},
    {dissolvedSolids, canada, aesthetic, 0, 500, "TDS", "1991-01-01", "", "recalled_canada"},
    {ph, canada, aesthetic, 6.5, 8.5, "", "1987-01-01", "2014-12-31", "recalled_canada"},
    {ph, canada, aesthetic, 7.0, 10.5, "", "2015-01-01", "", "recalled_canada"},
    {totalColiform, canada, healthLimit, 0, 0, "", "2006-01-01", "", "recalled_canada"},
    {eColi, canada, healthLimit, 0, 0, "", "2006-01-01", "", "recalled_canada"},
    {iron, who, aesthetic, 0, 0.3, "Fe", "1993-01-01", "", "recalled_who"},
    {zinc, who, aesthetic, 0, 3, "Zn", "1993-01-01", "", "recalled_who"},
    {aluminum, who, aesthetic, 0, 0.2, "Al", "1993-01-01", "", "recalled_who"},
    {uranium, who, guideline, 0, 0.015, "U", "2004-01-01", "2011-06-30", "recalled_who"},
    {uranium, who, guideline, 0, 0.03, "U", "2011-07-01", "", "recalled_who"},
    {sodium, who, aesthetic, 0, 200, "Na", "1993-01-01", "", "recalled_who"},
    {chloride, who, aesthetic, 0, 250, "Cl", "1993-01-01", "", "recalled_who"},
    {sulfate, who, aesthetic, 0, 250, "SO4", "1993-01-01", "", "recalled_who"},
    {sulfide, who, aesthetic, 0, 0.05, "H2S", "1993-01-01", "", "recalled_who"},
    {chlorine, who, guideline, 0, 5, "Cl2", "1993-01-01", "", "recalled_who"},
    {dissolvedSolids, who, aesthetic, 0, 1000, "TDS", "1993-01-01", "", "recalled_who"},
    {color, who, aesthetic, 0, 15, "", "1993-01-01", "", "recalled_who"},
};

std::string words(const Limit &row)
{
    return std::string(itemNames[row.item]) + " " + placeWords[row.place] + " " + kindWords[row.kind] +
           " from " + puteal::sdk::dateWords(row.from);
}
bool isRow(const Limit &row, const Printed &p)
{
    return row.item == p.item && row.place == p.place && row.kind == p.kind && row.low == p.low &&
           row.high == p.high && std::string(row.basis) == p.basis &&
           puteal::sdk::dateWords(row.from) == p.from &&
           (row.until < open ? puteal::sdk::dateWords(row.until) : std::string()) == p.until &&
           std::string(row.source) == p.source;
}

QString unitOf(const Limit &row)
{
    return *row.basis          ? QString(" mg/L as ") + row.basis
           : row.item == color ? " CU"
           : row.item == odor  ? " TON"
                               : "";
}
QString valueOf(const Limit &row)
{
    if (row.high == noLimit)
        return "no value";
    if (row.item == totalColiform || row.item == eColi)
        return "none in 100 mL";
    const QString high = QString::number(row.high) + unitOf(row);
    return row.low > 0 ? QString::number(row.low) + " to " + high : high;
}
QString dayOfRow(const Limit &row)
{
    const QString day = QString::fromStdString(puteal::sdk::dateWords(row.from));
    return row.day == recalled       ? day + " (recalled)"
           : row.day == yearOfSource ? day.left(4) + " at the latest"
                                     : day;
}

QString page()
{
    QString text =
        "# Drinking-water limits\n\nWritten by `tests/limits_table_test` from the table of the plugin "
        "`limits` "
        "(`PUTEAL_UPDATE=1`); do not edit. Kept until " +
        QString::fromStdString(puteal::sdk::dateWords(keptUntil)) +
        ".\n\nLimits bind public supplies; for a private well they are targets. Being below one says nothing "
        "about what was not tested. **Recalled** rows are known from memory and confirmed in no source: look "
        "them up before they decide. Health limits, action levels and guidelines answer to the purpose "
        "*health*; the others to their own.\n\n"
        "| of | whose | kind | limit | in force from | until | source | note |\n"
        "| --- | --- | --- | --- | --- | --- | --- | --- |\n";
    std::vector<const Limit *> rows;
    for (const Limit &row : table)
        rows.push_back(&row);
    std::stable_sort(rows.begin(), rows.end(), [](const Limit *a, const Limit *b) {
        return std::tuple(a->item, a->place, purposeOf(a->kind), a->from) <
               std::tuple(b->item, b->place, purposeOf(b->kind), b->from);
    });
    for (const Limit *row : rows)
        text += QString("| %1 | %2 | %3 | %4 | %5 | %6 | %7 | %8 |\n")
                    .arg(itemNames[row->item], placeWords[row->place], kindWords[row->kind], valueOf(*row),
                         dayOfRow(*row),
                         row->until < open ? QString::fromStdString(puteal::sdk::dateWords(row->until))
                                           : QString(),
                         row->value == recalled ? QString("**recalled**") : QString(row->source), row->note);
    text += "\n## Sources\n\n";
    const puteal_plugin &self = plugin().table();
    for (std::size_t i = 0; i < self.source_count; ++i)
        text += QString("- %1: %2\n").arg(self.sources[i].key, self.sources[i].words);
    return text;
}

} // namespace

class LimitsTableTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(plugin().isOpen()); }

    /// Every row of the table is one of the rows typed here from the sources, and the other way round.
    void rowsAreWhatTheSourcesPrint()
    {
        std::vector<Printed> all;
        for (const auto &group :
             {std::pair(secondary, std::size(secondary)), std::pair(primary, std::size(primary)),
              std::pair(canadian, std::size(canadian)), std::pair(world, std::size(world)),
              std::pair(fromMemory, std::size(fromMemory))})
            all.insert(all.end(), group.first, group.first + group.second);
        for (const Printed &p : all)
            QVERIFY2(std::count_if(std::begin(table), std::end(table),
                                   [&](const Limit &row) { return isRow(row, p); }) == 1,
                     qPrintable(QString("%1 of %2, %3 from %4 is not in the table as printed")
                                    .arg(itemNames[p.item], placeWords[p.place], kindWords[p.kind], p.from)));
        for (const Limit &row : table)
            QVERIFY2(std::any_of(all.begin(), all.end(), [&](const Printed &p) { return isRow(row, p); }),
                     words(row).c_str());
    }

    void memoryIsSaidOpenly()
    {
        std::size_t remembered = 0;
        for (const Limit &row : table) {
            const bool fromMemorySource = std::string(row.source).starts_with("recalled_");
            QVERIFY2((row.value == recalled) == fromMemorySource, words(row).c_str());
            QVERIFY2(row.value != recalled || row.day == recalled, words(row).c_str());
            remembered += row.value == recalled ? 1 : 0;
        }
        QCOMPARE(remembered, std::size(fromMemory));
    }

    void everySourceExists()
    {
        std::set<std::string> keys, used;
        const puteal_plugin &self = plugin().table();
        for (std::size_t i = 0; i < self.source_count; ++i)
            keys.insert(self.sources[i].key);
        for (const Limit &row : table) {
            QVERIFY2(keys.count(row.source), (words(row) + ": " + row.source).c_str());
            used.insert(row.source);
        }
        used.insert("practice");
        QVERIFY(used == keys); // no source without a row
    }

    /// Of one jurisdiction, thing, basis and purpose the windows follow each other day by day.
    void windowsNeitherOverlapNorLeaveAGap()
    {
        int followed = 0;
        for (const Limit &row : table) {
            QVERIFY2(row.from <= row.until && row.low <= row.high && row.high >= 0, words(row).c_str());
            bool isLast = row.until == open;
            for (const Limit &other : table) {
                if (&other == &row || other.item != row.item || other.place != row.place ||
                    std::string(other.basis) != row.basis || purposeOf(other.kind) != purposeOf(row.kind))
                    continue;
                QVERIFY2(other.until < row.from || row.until < other.from,
                         (words(row) + " and " + words(other)).c_str());
                if (other.from == row.until + 1) {
                    isLast = true;
                    ++followed;
                }
            }
            QVERIFY2(isLast, (words(row) + " ends and nothing follows").c_str());
        }
        QVERIFY(followed >= 12);
    }

    void pageIsTheTable()
    {
        const QString path = QStringLiteral(PUTEAL_SOURCE_DIR "/docs/limits.md");
        if (qEnvironmentVariableIsSet("PUTEAL_UPDATE")) {
            QFile file(path);
            QVERIFY(file.open(QIODevice::WriteOnly));
            file.write(page().toUtf8());
        }
        QFile file(path);
        QVERIFY2(file.open(QIODevice::ReadOnly), qPrintable(path));
        QCOMPARE(page(), QString::fromUtf8(file.readAll()));
    }
};

QTEST_APPLESS_MAIN(LimitsTableTest)
#include "limits_table_test.moc"
