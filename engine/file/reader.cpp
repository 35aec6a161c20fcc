/// Workbook records: header, book records, charts, and the checks that need the whole file.
#include "file/reader.h"

#include <algorithm>
#include <unordered_set>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "file/read_state.h"

namespace puteal
{

namespace
{

class BookReader
{
public:
    BookReader(std::string_view text, IsUnitWord isUnitWord, std::vector<CountCorrection> *corrections)
        : m_state(text, isUnitWord), m_bytes(text.size())
    {
        m_state.corrections = corrections;
    }
    Result<Workbook> read()
    {
        if (header() && records() && ended() && marksDeclared())
            return std::move(m_state.book);
        return tl::unexpected(std::move(*m_state.error));
    }

private:
    bool header();
    bool records();
    bool record(std::string_view word, Parts parts);
    bool required(Parts parts);
    bool title(Parts parts);
    bool uses(Parts parts);
    bool thing(Parts parts);
    bool below(Parts parts);
    bool units(Parts parts);
    bool list(Parts parts);
    bool source(Parts parts);
    bool sheet();
    bool chart(Parts parts);
    bool plot(Parts parts);
    bool ended();
    bool marksDeclared();
    bool refuse(const std::string &words) { return m_state.refuse(words); }
    bool settle(const std::string &before)
    {
        m_state.settle(m_state.book.kept, before);
        return m_state.countOther();
    }

    ReadState m_state;
    std::size_t m_bytes;
    bool m_titled = false, m_ended = false, m_recordSeen = false;
    Chart *m_chart = nullptr; ///< the last known record belongs to it
    std::unordered_set<std::string> m_plots;
};

bool BookReader::header()
{
    if (m_bytes == 0)
        return refuse("the file is empty: there is no workbook in it");
    if (m_bytes > limits::fileBytes)
        return refuse(fmt::format("the file has {} bytes, {} are the most: split the workbook", m_bytes,
                                  limits::fileBytes));
    if (!m_state.next())
        return false;
    Parts parts(m_state.scanner.line);
    std::uint64_t major = 0;
    if (parts.word() != "puteal" || parts.word() != "workbook" || !parts.count(major) || !parts.atEnd() ||
        major == 0 || major > 1000000)
        return refuse(
            "the first line is not `puteal workbook 1`: this is some other file, or its first line was lost");
    m_state.book.formatMajor = static_cast<std::uint32_t>(major);
    return true;
}

bool BookReader::records()
{
    while (!m_ended && m_state.next()) {
        const std::string_view line = m_state.scanner.line;
        if (line.starts_with("!require")) {
            if (!required(Parts(line)))
                return false;
            continue;
        }
        if (m_state.keep()) {
            if (m_state.error)
                return false;
            m_recordSeen = m_recordSeen || m_state.pendingUnknown;
            continue;
        }
        const std::string_view word = leadingWord(line);
        if (!word.empty() && line.substr(word.size()).starts_with(':'))
            return refuse(fmt::format(
                "the cell `{}` stands outside a sheet: put it under a `line` of its sheet", word));
        if (word.empty() || !isKeyword(word) || (word.size() < line.size() && line[word.size()] != ' '))
            return refuse(
                fmt::format("`{}` is no record: take it out, or put # in front to keep it as a comment",
                            cleanTyped(line.substr(0, 40))));
        Parts parts(line);
        m_recordSeen = true;
        if (!record(parts.word(), parts))
            return false;
    }
    return !m_state.error;
}

bool BookReader::record(std::string_view word, Parts parts)
{
    if (word == "plot")
        return plot(parts);
    m_chart = nullptr;
    if (word == "title")
        return title(parts);
    if (word == "uses")
        return uses(parts);
    if (word == "thing")
        return thing(parts);
    if (word == "below")
        return below(parts);
    if (word == "units")
        return units(parts);
    if (word == "list")
        return list(parts);
    if (word == "source")
        return source(parts);
    if (word == "sheet")
        return sheet();
    if (word == "chart")
        return chart(parts);
    if (word == "end" && parts.rest() == "workbook") {
        m_state.settle(m_state.book.kept, "end workbook");
        return m_ended = true;
    }
    if (word == "puteal")
        return refuse("a second first line stands here: two workbooks were joined, keep one");
    return refuse(fmt::format("`{}` stands outside a sheet: put it between `sheet` and its `end`", word));
}

bool BookReader::required(Parts parts)
{
    const bool keyword = parts.word() == "!require";
    const std::string_view word = parts.word();
    if (!keyword || !isName(word) || !parts.atEnd())
        return refuse("`!require` takes one word, as in !require studies");
    if (m_recordSeen)
        return refuse("`!require` stands directly under the first line: move it there");
    auto &known = m_state.book.required;
    if (std::find(known.begin(), known.end(), word) != known.end())
        return refuse(fmt::format("`!require {}` stands twice: keep one", word));
    known.emplace_back(word);
    return settle(fmt::format("!require {}", word));
}

bool BookReader::title(Parts parts)
{
    if (m_titled)
        return refuse("a second `title` stands here: keep one");
    m_titled = true;
    if (!parts.quotedWords(m_state.book.title) || !parts.atEnd())
        return refuse("`title` takes words in quotation marks, as in title \"Cutbank Road house\"");
    return settle("title");
}

bool BookReader::uses(Parts parts)
{
    PluginUse use;
    use.id = parts.word();
    std::uint64_t major = 0;
    if (!isName(use.id) || !parts.count(major) || !parts.atEnd() || major > 1000000)
        return refuse("`uses` takes a plugin and its major version, as in uses softening 1");
    for (const PluginUse &other : m_state.book.uses)
        if (other.id == use.id)
            return refuse(fmt::format("the plugin {} is used twice: keep one `uses {}`", use.id, use.id));
    use.major = static_cast<std::uint32_t>(major);
    m_state.book.uses.push_back(use);
    return settle("uses " + use.id);
}

bool BookReader::thing(Parts parts)
{
    const std::string_view word = parts.word();
    if (!isName(word) || !parts.atEnd())
        return refuse("`thing` takes one word, as in thing tank");
    auto &things = m_state.book.things;
    if (std::find(things.begin(), things.end(), word) != things.end())
        return refuse(fmt::format("the counted thing {} is declared twice: keep one `thing {}`", word, word));
    things.emplace_back(word);
    return settle(fmt::format("thing {}", word));
}

bool BookReader::below(Parts parts)
{
    if (m_state.book.belowSaid)
        return refuse("a second `below` stands here: keep one");
    m_state.book.belowSaid = true;
    const std::string_view word = parts.rest();
    if (word == "bound")
        m_state.book.below = BelowRule::bound;
    else if (word == "half")
        m_state.book.below = BelowRule::half;
    else if (word == "zero")
        m_state.book.below = BelowRule::zero;
    else
        return refuse("`below` takes bound, half or zero");
    return settle("below");
}

bool BookReader::units(Parts parts)
{
    if (m_state.book.unitsSaid)
        return refuse("a second `units` stands here: keep one");
    m_state.book.unitsSaid = true;
    m_state.book.si = parts.rest() == "SI";
    if (!m_state.book.si && parts.rest() != "US")
        return refuse("`units` takes US or SI");
    return settle("units");
}

bool BookReader::list(Parts parts)
{
    ChoiceListText list;
    list.name = parts.word();
    std::unordered_set<std::string> seen;
    bool good = isName(list.name) && !parts.atEnd();
    while (good && !parts.atEnd()) {
        std::string words;
        good = parts.quotedWords(words) && !words.empty();
        if (good && !seen.insert(words).second)
            return refuse(
                fmt::format("the word {} stands twice in the list {}: keep one", quoted(words), list.name));
        list.words.push_back(std::move(words));
    }
    if (!good)
        return refuse("`list` takes a name and words in quotation marks, best first, as in list verdict "
                      "\"works\" \"marginal\"");
    if (m_state.book.listByName(list.name))
        return refuse(fmt::format("the list {} is declared twice: keep one", list.name));
    if (!m_state.countOther(list.words.size()))
        return false;
    m_state.book.lists.push_back(std::move(list));
    return settle("list " + m_state.book.lists.back().name);
}

bool BookReader::source(Parts parts)
{
    SourceMark source;
    source.id = parts.word();
    source.kind = parts.word();
    if (!isMarkId(source.id))
        return refuse("`source` takes a mark, its word and words in quotation marks, as in source L1 "
                      "laboratory \"sheet 7\"; "
                      "marks begin with one of L F M D S H E P T R C A W");
    if (const auto word = markWord(source.id.front()); source.kind != word)
        return refuse(fmt::format("the mark {} goes with the word {}, not with {}: change one of them",
                                  source.id, word, cleanTyped(std::string_view(source.kind).substr(0, 40))));
    if (!parts.quotedWords(source.words) || !parts.atEnd())
        return refuse(
            fmt::format("`source {0} {1}` takes words in quotation marks, as in source {0} {1} \"sheet 7\"",
                        source.id, source.kind));
    if (m_state.book.sourceById(source.id))
        return refuse(
            fmt::format("the source {} is declared twice: give one of them another number", source.id));
    m_state.book.sources.push_back(std::move(source));
    return settle("source " + m_state.book.sources.back().id);
}

bool BookReader::sheet()
{
    if (m_state.book.sheets.size() >= limits::sheets)
        return refuse(fmt::format("there are more than {} sheets: split the workbook", limits::sheets));
    return readSheet(m_state);
}

bool BookReader::chart(Parts parts)
{
    Chart chart;
    chart.key = parts.word();
    const std::string_view kind = parts.word();
    bool good = isName(chart.key, true) && (kind == "lines" || kind == "bars" || kind == "steps");
    good = good && parts.quotedWords(chart.title) && parts.word() == "x" && !parts.atEnd() &&
           isCleanTyped(parts.rest());
    if (!good)
        return refuse("`chart` takes a key, lines, bars or steps, words and x with a reference, as in chart "
                      "cost lines \"Cost\" x "
                      "costs.year[:]");
    chart.kind = kind == "lines" ? ChartKind::lines : kind == "bars" ? ChartKind::bars : ChartKind::steps;
    chart.x = parts.rest();
    for (const Chart &other : m_state.book.charts)
        if (other.key == chart.key)
            return refuse(fmt::format("the chart {} stands twice: give one of them another key", chart.key));
    m_state.book.charts.push_back(std::move(chart));
    m_chart = &m_state.book.charts.back();
    m_plots.clear();
    return settle("chart " + m_chart->key);
}

bool BookReader::plot(Parts parts)
{
    if (!m_chart)
        return refuse("`plot` stands under no chart: put it under its `chart`");
    Plot plot;
    std::string_view rest = parts.rest();
    const auto take = [](std::string_view text) {
        return isCleanTyped(text) ? std::string(text) : std::string();
    };
    const auto quote = rest.find(" \"");
    if (quote == std::string_view::npos) {
        const auto only = rest.find(" only ");
        plot.reference = take(rest.substr(0, only));
        if (only != std::string_view::npos)
            plot.only = take(rest.substr(only + 6));
    } else {
        Parts after(rest.substr(quote + 1));
        plot.reference = take(rest.substr(0, quote));
        const bool titled = after.quotedWords(plot.title) && !plot.title.empty();
        if (titled && !after.atEnd() && after.word() == "only")
            plot.only = take(after.rest());
        if (!titled || (!after.atEnd() && plot.only.empty()))
            plot.reference.clear();
    }
    if (plot.reference.empty() || plot.reference.front() == '"')
        return refuse("`plot` takes a reference, words in quotation marks and perhaps only with a yes/no "
                      "cell, as in plot "
                      "costs.balance[:] \"Balance\"");
    if (!m_plots.insert(plot.reference).second)
        return refuse(fmt::format("the chart {} plots {} twice: keep one", m_chart->key, plot.reference));
    m_chart->plots.push_back(std::move(plot));
    return settle("plot " + m_chart->key + ' ' + m_chart->plots.back().reference);
}

bool BookReader::ended()
{
    if (!m_ended) {
        ++m_state.scanner.number;
        return refuse("the file ends without `end workbook`, so it was cut: take the copy kept beside it");
    }
    if (m_state.next())
        return refuse("something stands after `end workbook`: take it out, or put it in front");
    return !m_state.error;
}

bool BookReader::marksDeclared()
{
    const ReadState::MarkUse *first = nullptr;
    std::string_view mark;
    for (const auto &[id, use] : m_state.marksUsed)
        if (!m_state.book.sourceById(id) && (!first || use.fileLine < first->fileLine)) {
            first = &use;
            mark = id;
        }
    if (!first)
        return true;
    m_state.error = Error{
        ErrorKind::file,
        fmt::format("{}: the source {} is not declared: add the record source {} {} \"...\" above the sheets",
                    first->place, mark, mark, markWord(mark.front())),
        {},
        Place{{}, {}, first->fileLine}};
    return false;
}

} // namespace

Result<Workbook> readWorkbook(std::string_view text, bool (*isUnitWord)(std::string_view))
{
    return BookReader(text, isUnitWord, nullptr).read();
}

Result<std::string> recounted(std::string_view text)
{
    std::vector<CountCorrection> corrections;
    if (auto book = BookReader(text, nullptr, &corrections).read(); !book)
        return tl::unexpected(book.error());
    std::string out;
    std::size_t done = 0;
    for (const CountCorrection &correction : corrections) {
        out += text.substr(done, correction.offset - done);
        out += std::to_string(correction.count);
        done = correction.offset + correction.length;
    }
    out += text.substr(done);
    return out;
}

} // namespace puteal
