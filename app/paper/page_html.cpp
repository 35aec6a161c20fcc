/// The page as one self-contained HTML file: no scripts, nothing fetched.
#include <fmt/format.h>

#include "paper/page.h"

namespace puteal::paper
{

std::string htmlEscaped(const std::string &text)
{
    std::string out;
    out.reserve(text.size());
    for (const char c : text) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

namespace
{

const char *const style =
    R"(body{font:11pt/1.45 "DejaVu Sans",sans-serif;color:#15181c;max-width:62em;margin:2em auto;padding:0 1em}
h1{font-size:1.5em}h2{font-size:1.15em;border-bottom:1px solid #8a8f98;padding-bottom:.2em;margin-top:1.6em}
table{border-collapse:collapse;width:100%}th{text-align:left;color:#555b66;font-weight:normal}
td,th{padding:.18em .7em .18em 0;vertical-align:top;border-bottom:1px solid #e3e5e8}
td.n{text-align:right;white-space:nowrap}td.m{color:#0b4f91;white-space:nowrap;font-size:.85em}
p{margin:.4em 0}.near{color:#8a5a00}.outside{color:#b3261e}.within{color:#0b6b50}.missing{color:#555b66}
svg{max-width:100%;height:auto}ul{padding-left:1.2em}@media print{body{margin:0}})";

const char *stateClass(LimitState state)
{
    switch (state) {
    case LimitState::within:
        return "within";
    case LimitState::near:
        return "near";
    case LimitState::outside:
        return "outside";
    case LimitState::missingTest:
        return "missing";
    case LimitState::noLimit:
        break;
    }
    return "";
}

void addSheet(std::string &out, const PageSheet &sheet)
{
    out += fmt::format("<h2>{}</h2>\n<table>\n<tr>", htmlEscaped(sheet.title));
    for (const auto &column : sheet.columns)
        out += fmt::format("<th>{}</th>", htmlEscaped(column));
    out += "<th>Limit</th><th>Sources</th></tr>\n";
    for (const PageLine &line : sheet.lines) {
        if (line.lead) {
            std::string words;
            for (const auto &cell : line.cells)
                if (!cell.words.empty())
                    words += (words.empty() ? "" : " ") + htmlEscaped(cell.words);
            out += fmt::format("<tr><td colspan=\"{}\">{}</td></tr>\n", sheet.columns.size() + 2, words);
            continue;
        }
        out += "<tr>";
        for (const auto &cell : line.cells)
            out += fmt::format("<td{}>{}</td>", cell.amount ? " class=\"n\"" : "", htmlEscaped(cell.words));
        const std::string state = line.limit == LimitState::within ? "within" : line.state;
        out += fmt::format("<td class=\"{}\">{}</td><td class=\"m\">{}</td></tr>\n", stateClass(line.limit),
                           htmlEscaped(state), htmlEscaped(line.marks));
    }
    out += "</table>\n";
}

void addList(std::string &out, const char *title, const std::vector<std::string> &items)
{
    if (items.empty())
        return;
    out += fmt::format("<h2>{}</h2>\n<ul>\n", title);
    for (const auto &item : items)
        out += fmt::format("<li>{}</li>\n", htmlEscaped(item));
    out += "</ul>\n";
}

} // namespace

std::string pageHtml(const Page &page, const std::string &chartSvg)
{
    const std::string title = htmlEscaped(page.title);
    std::string out = fmt::format(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>{}</title>\n"
        "<style>{}</style>\n</head>\n<body>\n<h1>{}</h1>\n",
        title, style, title);
    for (std::size_t i = 0; i < page.sheets.size(); ++i) {
        addSheet(out, page.sheets[i]);
        if (i == 0 && !chartSvg.empty())
            out += chartSvg + "\n";
    }
    addList(out, "When one becomes cheaper than the other", page.breakEven);
    addList(out, "Outside a limit, missing, or wrong", page.attention);
    addList(out, "Assumed", page.assumptions);
    addList(out, "Sources", page.sources);
    addList(out, "Cautions", page.cautions);
    out += "</body>\n</html>\n";
    return out;
}

} // namespace puteal::paper
