/// Word search over the functions: every word of the search must stand somewhere in a function's words.
#include "functions/search.h"

#include <algorithm>
#include <cctype>

#include "functions/trade_words.h"

namespace puteal
{
namespace
{

using Words = std::vector<std::string>;

Words wordsOf(std::string_view text)
{
    Words out;
    bool inWord = false;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (!std::isalnum(byte)) {
            inWord = false;
            continue;
        }
        if (!inWord)
            out.emplace_back();
        out.back() += static_cast<char>(std::tolower(byte));
        inWord = true;
    }
    return out;
}

/// The words of a search without those that stand everywhere, unless there are no others.
Words tellingWords(std::string_view text)
{
    Words all = wordsOf(text), telling;
    for (const auto &word : all)
        if (word != "of" && word != "the" && word != "a" && word != "for" && word != "in" && word != "and" &&
            word != "to")
            telling.push_back(word);
    return telling.empty() ? all : telling;
}

/// How well a word of the search meets a word of a function: 1 the same, less for a beginning or a plural.
double meets(const std::string &searched, const std::string &there)
{
    if (searched == there)
        return 1.0;
    const auto shorter = std::min(searched.size(), there.size());
    if (shorter < 4)
        return 0.0;
    const auto differs =
        std::mismatch(searched.begin(), searched.begin() + static_cast<long>(shorter), there.begin());
    const auto same = static_cast<std::size_t>(differs.first - searched.begin());
    if (same == searched.size())
        return 0.8;
    // "softeners" meets "softener", "neutralizing" meets "neutralizer"
    if (same == there.size() && searched.size() - same <= 2)
        return 0.8;
    return same >= 6 && searched.size() - same <= 4 && there.size() - same <= 4 ? 0.6 : 0.0;
}

/// Words of one function, the telling ones first.
struct Field {
    double weight;
    Words words;
};

std::vector<Field> fieldsOf(const FunctionInfo &function)
{
    Words names, choices = wordsOf(function.resultMeaning), meanings, warnings = wordsOf(function.safety);
    const auto add = [](Words &to, std::string_view text) {
        for (auto &word : wordsOf(text))
            to.push_back(std::move(word));
    };
    for (const auto &choice : function.resultChoices)
        add(choices, choice);
    for (const auto &parameter : function.parameters) {
        add(names, parameter.name);
        add(meanings, parameter.meaning);
        for (const auto &choice : parameter.choices)
            add(choices, choice);
    }
    return {{60, wordsOf(function.name)}, {45, wordsOf(function.title)}, {20, wordsOf(function.purpose)},
            {18, std::move(names)},       {12, std::move(choices)},      {8, std::move(meanings)},
            {4, std::move(warnings)}};
}

/// Mean weight of the words, and how many of them stand nowhere.
struct Weighed {
    double score = 0.0;
    std::size_t missing = 0;
};

Weighed weigh(const Words &searched, const std::vector<Field> &fields)
{
    Weighed out;
    bool allInName = true;
    for (const auto &word : searched) {
        double best = 0.0;
        for (const auto &field : fields)
            for (const auto &there : field.words)
                best = std::max(best, field.weight * meets(word, there));
        out.score += best / static_cast<double>(searched.size());
        out.missing += best == 0.0 ? 1 : 0;
        allInName = allInName && best > fields[1].weight;
    }
    const Words &name = fields[0].words;
    if (allInName) { // the more of the name was said, and its beginning, the more likely it is meant
        out.score += 40.0 * static_cast<double>(std::min(searched.size(), name.size())) /
                     static_cast<double>(name.size());
        out.score += searched == name ? 10.0 : meets(searched.front(), name.front()) > 0 ? 5.0 : 0.0;
    }
    return out;
}

/// A row of the table met in the words, at `at` and `size` words long.
struct Met {
    const TradeWord *row;
    std::size_t at, size;
    bool within(const Met &other) const
    {
        return size < other.size && at >= other.at && at + size <= other.at + other.size;
    }
};

/// The rows met; "pump" is none where "injection pump" is.
std::vector<Met> metIn(const Words &words)
{
    std::vector<Met> met;
    for (const auto &row : tradeWords()) {
        const Words said = tellingWords(row.said);
        const auto at = std::search(words.begin(), words.end(), said.begin(), said.end());
        if (at != words.end())
            met.push_back({&row, static_cast<std::size_t>(at - words.begin()), said.size()});
    }
    std::vector<Met> out;
    for (const Met &one : met)
        if (std::none_of(met.begin(), met.end(), [&](const Met &other) { return one.within(other); }))
            out.push_back(one);
    return out;
}

/// The words as they are, then with the trade's other words put in, one place at a time.
std::vector<Words> readings(const Words &words, std::vector<std::string> &alsoSaid)
{
    std::vector<Words> out{words};
    for (const Met &met : metIn(words)) {
        const auto begin = words.begin() + static_cast<long>(met.at);
        for (const auto here : met.row->here) {
            Words reading(words.begin(), begin);
            for (auto &word : wordsOf(here))
                reading.push_back(std::move(word));
            reading.insert(reading.end(), begin + static_cast<long>(met.size), words.end());
            out.push_back(std::move(reading));
            if (std::find(alsoSaid.begin(), alsoSaid.end(), here) == alsoSaid.end())
                alsoSaid.emplace_back(here);
        }
    }
    return out;
}

struct Ranked {
    double score;
    const FunctionInfo *function;
};

/// `missing` words of a reading may stand nowhere.
std::vector<Ranked> ranked(const Registry &registry, const std::vector<Words> &asked, std::size_t missing)
{
    constexpr double otherWord = 0.85, next = 0.02; // what was said itself comes before what it also means
    std::vector<Ranked> out;
    for (const auto &function : registry.functions()) {
        const auto fields = fieldsOf(function);
        double best = 0.0;
        for (std::size_t i = 0; i < asked.size(); ++i) {
            const auto weighed = weigh(asked[i], fields);
            if (weighed.missing <= missing && weighed.missing < asked[i].size())
                best = std::max(
                    best, weighed.score *
                              (i == 0 ? 1.0 : otherWord - next * std::min(static_cast<double>(i), 10.0)));
        }
        if (best > 0.0)
            out.push_back({best, &function});
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const Ranked &a, const Ranked &b) { return a.score > b.score; });
    return out;
}

} // namespace

FunctionSearch searchFunctions(const Registry &registry, std::string_view words)
{
    FunctionSearch out;
    const Words asked = tellingWords(words);
    if (asked.empty())
        return out;
    const auto all = readings(asked, out.alsoSaid);
    auto found = ranked(registry, all, 0);
    for (std::size_t missing = 1; found.empty() && missing < asked.size(); ++missing) {
        out.everyWord = false;
        found = ranked(registry, all, missing);
    }
    // of the best: a word in passing says nothing beside a name
    const double worthTelling = out.everyWord ? 0.2 : 0.5;
    for (const auto &one : found)
        if (one.score >= worthTelling * found.front().score)
            out.found.push_back(one.function);
    return out;
}

} // namespace puteal
