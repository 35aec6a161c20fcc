/// A workbook as a page people read: the result first, then what it rests on. Rendered as text and as HTML.
#pragma once

#include <string>
#include <vector>

#include "session/session.h"

namespace puteal::paper
{

/// One cell of a page line.
struct PageCell {
    std::string words;   ///< what the cell shows
    bool amount = false; ///< right-aligned
};
struct PageLine {
    std::uint32_t number = 0;
    std::vector<PageCell> cells;
    std::string state; ///< "outside: 2067 % of <= 0.3 mg/L as Fe", "" within or without a limit
    std::string marks; ///< "L1"
    LimitState limit = LimitState::noLimit;
    bool lead = false; ///< only words on this line: a heading or a paragraph
};
struct PageSheet {
    std::string key, title;
    std::vector<std::string> columns;
    std::vector<PageLine> lines;
};
struct Page {
    std::string title;
    std::vector<PageSheet> sheets;
    std::vector<std::string> breakEven;   ///< sentences of the charts
    std::vector<std::string> attention;   ///< outside, missing tests, errors
    std::vector<std::string> assumptions; ///< cells marked A or R
    std::vector<std::string> sources;     ///< "L1 laboratory: ..."
    std::vector<std::string> cautions;    ///< the usual ones that stand on every page
};

/// Which sheets stand on the page.
enum class PageScope { result, everything };

/// Builds the page: `result` takes the last sheet only (what the work comes to) and what it rests on.
Page buildPage(const Session &session, PageScope scope);

std::string pageText(const Page &page, std::size_t width = 100);
/// `chartSvg` is put in after the first sheet; may be empty.
std::string pageHtml(const Page &page, const std::string &chartSvg = {});

/// Text wrapped at `width` characters, continued lines indented.
std::string wrapped(const std::string &text, std::size_t width, std::size_t indent);
std::string htmlEscaped(const std::string &text);

} // namespace puteal::paper
