/// The unit table: rows turned into words, spellings, counted things, and the base units rescaled where a
/// test asks.
#include <algorithm>
#include <atomic>
#include <cmath>

#include "base/text.h"
#include "sdk/substances.h"
#include "units/unit.h"
#include "units/unit_rows.h"

namespace puteal
{

namespace
{

constexpr int sixthsOfOne = 6;

std::vector<std::string> split(std::string_view text)
{
    std::vector<std::string> items;
    while (!text.empty()) {
        const std::size_t blank = std::min(text.find(' '), text.size());
        if (blank > 0)
            items.emplace_back(text.substr(0, blank));
        text.remove_prefix(std::min(blank + 1, text.size()));
    }
    return items;
}

double rescaled(double factor, const Dimension &dimension, const std::array<double, baseCount> &rescale)
{
    for (std::size_t i = 0; i < baseCount; ++i)
        if (dimension.sixths[i] != 0)
            factor *= std::pow(rescale[i], static_cast<double>(dimension.sixths[i]) / sixthsOfOne);
    return factor;
}

/// A word that is a mass, an amount or a concentration: it can be "of" a substance.
bool carriesAmount(const Dimension &d)
{
    Dimension mass, amount, concentration;
    mass.sixths[static_cast<std::size_t>(Base::mass)] = sixthsOfOne;
    amount.sixths[static_cast<std::size_t>(Base::amount)] = sixthsOfOne;
    concentration = mass;
    concentration.sixths[static_cast<std::size_t>(Base::length)] = -3 * sixthsOfOne;
    return d == mass || d == amount || d == concentration;
}

UnitWord wordOf(const UnitRow &row)
{
    UnitWord word;
    word.word = row.word;
    word.spellings = split(row.spellings);
    word.name = row.plural;
    word.singular = row.singular;
    word.definition = row.definition;
    word.source = row.source;
    word.note = row.note;
    word.factor = row.factor;
    word.offset = row.offset;
    word.shownAs = row.shownAs;
    for (std::size_t i = 0; i < baseCount; ++i)
        word.type.dimension.sixths[i] = static_cast<std::int8_t>(row.exponents[i] * sixthsOfOne);
    word.type.scale = row.scale;
    if (row.substance[0] != '\0')
        word.type.substances.add(static_cast<std::uint16_t>(sdk::substanceIndex(row.substance)), sixthsOfOne);
    word.isAmount = carriesAmount(word.type.dimension);
    return word;
}

std::uint64_t nextSerial()
{
    static std::atomic<std::uint64_t> last{0};
    return ++last;
}

} // namespace

UnitTable::UnitTable(const std::array<double, baseCount> &rescale)
{
    std::vector<std::string> labels;
    for (const UnitRows &rows : {spaceRows(), amountRows(), physicsRows(), labelRows()}) {
        for (const UnitRow *row = rows.first; row != rows.first + rows.count; ++row) {
            UnitWord word = wordOf(*row);
            word.factor = rescaled(word.factor, word.type.dimension, rescale);
            word.offset *= rescale[static_cast<std::size_t>(Base::temperature)];
            if (row->label[0] != '\0') {
                const auto at = std::find(labels.begin(), labels.end(), row->label);
                word.type.things.add(static_cast<std::uint16_t>(at - labels.begin()), sixthsOfOne);
                word.countedThing = at == labels.end();
                if (word.countedThing)
                    labels.emplace_back(row->label);
            }
            m_words.push_back(std::move(word));
        }
    }
    m_things = static_cast<std::uint16_t>(labels.size());
    m_serial = nextSerial();
    // sorted once: one insertion after another took a third of a program's start
    for (std::uint32_t i = 0; i < m_words.size(); ++i) {
        m_index.emplace_back(m_words[i].word, i);
        for (const std::string &spelling : m_words[i].spellings)
            m_index.emplace_back(spelling, i);
    }
    std::sort(m_index.begin(), m_index.end()); // of equal spellings the earlier word counts
    const auto same = [](const auto &a, const auto &b) { return a.first == b.first; };
    m_index.erase(std::unique(m_index.begin(), m_index.end(), same), m_index.end());
}

void UnitTable::addSpelling(std::string_view spelling, std::uint32_t word)
{
    const auto at = std::lower_bound(m_index.begin(), m_index.end(), spelling,
                                     [](const auto &entry, std::string_view s) { return entry.first < s; });
    if (at == m_index.end() || at->first != spelling)
        m_index.insert(at, {std::string(spelling), word});
}

const std::vector<UnitSource> &UnitTable::sources()
{
    static const std::vector<UnitSource> list{
        {"nist811", "NIST Special Publication 811, Guide for the Use of the International System of Units "
                    "(2008), appendix B"},
        {"nist44", "NIST Handbook 44, appendix C, General Tables of Units of Measurement"},
        {"si", "The International System of Units (SI Brochure), 9th edition, BIPM 2019"},
        {"iupac", "IUPAC standard atomic weights, abridged values of 2021"},
        {"trade", "common practice of the trade and its accounting, no single source"},
        {"usage", "a word for what is counted; no conversion, so no source"},
        {"memory", "from memory, not confirmed in a text"},
    };
    return list;
}

const UnitWord *UnitTable::find(std::string_view word) const
{
    const auto at = std::lower_bound(m_index.begin(), m_index.end(), word,
                                     [](const auto &entry, std::string_view s) { return entry.first < s; });
    return at != m_index.end() && at->first == word ? &m_words[at->second] : nullptr;
}

bool UnitTable::isUnitWord(std::string_view word) const
{
    const UnitWord *found = find(word);
    if (!found)
        return false;
    return found->word == word || !(found->countedThing || word == "year" || word == "years");
}

std::vector<std::string> UnitTable::closestWords(std::string_view word) const
{
    std::vector<std::string> spellings;
    for (const auto &entry : m_index)
        spellings.push_back(entry.first);
    std::vector<std::string> result;
    for (const std::string &spelling : closest(word, spellings, 6)) {
        const std::string &canonical = find(spelling)->word;
        if (std::find(result.begin(), result.end(), canonical) == result.end() && result.size() < 3)
            result.push_back(canonical);
    }
    return result;
}

Result<void> UnitTable::declareThing(std::string_view word)
{
    if (!isName(word))
        return fail(ErrorKind::name,
                    "`" + std::string(word) +
                        "` cannot be a counted thing: write it in small letters, digits and _");
    if (isReservedWord(word))
        return fail(ErrorKind::name,
                    "`" + std::string(word) + "` is a word of the formula language: choose another");
    if (find(word))
        return fail(ErrorKind::name, "`" + std::string(word) + "` is a unit word already");
    UnitWord row;
    row.word = word;
    row.singular = word;
    row.name = row.word + "s";
    row.spellings = {row.name};
    row.definition = "counted thing of this workbook";
    row.source = "usage";
    row.countedThing = true;
    row.type.things.add(m_things++, sixthsOfOne);
    m_words.push_back(row);
    m_serial = nextSerial();
    addSpelling(row.word, static_cast<std::uint32_t>(m_words.size() - 1));
    addSpelling(row.name, static_cast<std::uint32_t>(m_words.size() - 1));
    return {};
}

std::string UnitTable::thingWord(std::uint16_t id) const
{
    for (const UnitWord &word : m_words)
        if (word.countedThing && word.type.things.sixths(id) != 0)
            return word.word;
    return {};
}

bool UnitTable::thingStays(std::uint16_t id) const
{
    static constexpr std::array<std::string_view, 7> staying{"person", "NTU", "CU", "TON",
                                                             "cfu",    "mpn", "pCi"};
    const std::string word = thingWord(id);
    return std::find(staying.begin(), staying.end(), word) != staying.end();
}

std::string UnitTable::substanceWord(std::uint16_t id)
{
    return id < sdk::substanceCount ? sdk::substances[id].word : "";
}

std::string UnitTable::substanceName(std::uint16_t id)
{
    return id < sdk::substanceCount ? sdk::substances[id].name : "";
}

double UnitTable::substanceMolarMass(std::uint16_t id)
{
    return id < sdk::substanceCount ? sdk::substances[id].molarMass : 0.0;
}

int UnitTable::substanceCharge(std::uint16_t id)
{
    return id < sdk::substanceCount ? sdk::substances[id].charge : 0;
}

std::optional<std::uint16_t> UnitTable::substanceId(std::string_view word)
{
    for (std::size_t i = 0; i < sdk::substanceCount; ++i)
        if (word == sdk::substances[i].word)
            return static_cast<std::uint16_t>(i);
    return {};
}

} // namespace puteal
