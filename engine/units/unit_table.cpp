/// The unit table: rows turned into words, spellings, counted things, and the base units rescaled where a
/// test asks.
#include <algorithm>
#include <atomic>
#include <cmath>

#include "base/text.h"
#include "base/word_index.h"
#include "sdk/substances.h"
#include "units/unit.h"
#include "units/unit_rows.h"

namespace puteal
{

namespace
{

constexpr int sixthsOfOne = 6;

using Rescale = std::array<double, baseCount>;
constexpr Rescale asShipped = {1, 1, 1, 1, 1, 1, 1};

/// Calls `use` for every word of a text separated by blanks.
template<class Use>
void eachWord(std::string_view text, Use use)
{
    while (!text.empty()) {
        const std::size_t blank = std::min(text.find(' '), text.size());
        if (blank > 0)
            use(text.substr(0, blank));
        text.remove_prefix(std::min(blank + 1, text.size()));
    }
}

double rescaled(double factor, const Dimension &dimension, const Rescale &rescale)
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
    word.otherSpellings = row.spellings;
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

struct UnitTable::Content {
    explicit Content(const Rescale &rescale);
    void addSpelling(std::string_view spelling, std::size_t word);

    std::vector<UnitWord> words;
    WordIndex spellings;                                   ///< views into the shipped rows and into `texts`
    std::vector<std::uint32_t> spelled;                    ///< the word of each spelling
    std::vector<std::shared_ptr<const std::string>> texts; ///< of the counted things declared
    std::uint16_t things = 0;
    std::uint64_t serial = 0;
};

UnitTable::Content::Content(const Rescale &rescale)
{
    const std::array<UnitRows, 4> all = {spaceRows(), amountRows(), physicsRows(), labelRows()};
    std::size_t count = 0;
    for (const UnitRows &rows : all)
        count += rows.count;
    words.reserve(count);
    spellings = WordIndex(3 * count); // a word has some two more spellings
    spelled.reserve(3 * count);
    std::vector<std::string_view> labels;
    for (const UnitRows &rows : all) {
        for (const UnitRow *row = rows.first; row != rows.first + rows.count; ++row) {
            UnitWord &word = words.emplace_back(wordOf(*row));
            if (rescale != asShipped) {
                word.factor = rescaled(word.factor, word.type.dimension, rescale);
                word.offset *= rescale[static_cast<std::size_t>(Base::temperature)];
            }
            if (row->label[0] != '\0') {
                const auto at = std::find(labels.begin(), labels.end(), row->label);
                word.type.things.add(static_cast<std::uint16_t>(at - labels.begin()), sixthsOfOne);
                word.countedThing = at == labels.end();
                if (word.countedThing)
                    labels.emplace_back(row->label);
            }
            addSpelling(row->word, words.size() - 1);
            eachWord(row->spellings, [&](std::string_view other) { addSpelling(other, words.size() - 1); });
        }
    }
    things = static_cast<std::uint16_t>(labels.size());
    serial = nextSerial();
}

/// Of equal spellings the earlier word counts.
void UnitTable::Content::addSpelling(std::string_view spelling, std::size_t word)
{
    if (spellings.add(spelling))
        spelled.push_back(static_cast<std::uint32_t>(word));
}

UnitTable::UnitTable(const Rescale &rescale)
{
    static const auto shipped = std::make_shared<Content>(asShipped);
    m_content = rescale == asShipped ? shipped : std::make_shared<Content>(rescale);
}

const std::vector<UnitWord> &UnitTable::words() const
{
    return m_content->words;
}

std::uint64_t UnitTable::serial() const
{
    return m_content->serial;
}

std::vector<std::string> UnitWord::spellings() const
{
    std::vector<std::string> all;
    eachWord(otherSpellings, [&](std::string_view other) { all.emplace_back(other); });
    return all;
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
    const auto at = m_content->spellings.find(word);
    return at ? &m_content->words[m_content->spelled[*at]] : nullptr;
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
    const auto &known = m_content->spellings.words();
    std::vector<std::string> spellings(known.begin(), known.end());
    std::sort(spellings.begin(), spellings.end());
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
    if (m_content.use_count() > 1)
        m_content = std::make_shared<Content>(*m_content);
    Content &own = *m_content;
    const auto text = own.texts.emplace_back(std::make_shared<const std::string>(word));
    const auto plural = own.texts.emplace_back(std::make_shared<const std::string>(*text + "s"));
    UnitWord &row = own.words.emplace_back();
    row.word = *text;
    row.singular = *text;
    row.name = *plural;
    row.otherSpellings = *plural;
    row.definition = "counted thing of this workbook";
    row.source = "usage";
    row.countedThing = true;
    row.type.things.add(own.things++, sixthsOfOne);
    own.serial = nextSerial();
    own.addSpelling(*text, own.words.size() - 1);
    own.addSpelling(*plural, own.words.size() - 1);
    return {};
}

std::string UnitTable::thingWord(std::uint16_t id) const
{
    for (const UnitWord &word : words())
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
