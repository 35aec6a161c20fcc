/// Writes attributes in their order, and splits those of a run into shared and own.
#include "file/attribute_text.h"

#include <iterator>

#include <fmt/format.h>

#include "base/text.h"
#include "sheet/typed_text.h"

namespace puteal
{

namespace
{

void tail(std::string &out, std::string_view keyword, const std::string &text)
{
    if (const std::string clean = cleanTyped(text); !clean.empty())
        ((((out += "  ") += keyword) += ' ') += clean) += '\n';
}

void words(std::string &out, std::string_view keyword, const std::string &text)
{
    if (!text.empty())
        ((((out += "  ") += keyword) += ' ') += quoted(text)) += '\n';
}

/// Calls `each` with the same field of all given attribute sets, the name apart.
template<class Each>
void forFields(Each each)
{
    each([](auto &a) -> auto & { return a.unit; });
    each([](auto &a) -> auto & { return a.sources; });
    each([](auto &a) -> auto & { return a.figures; });
    each([](auto &a) -> auto & { return a.places; });
    each([](auto &a) -> auto & { return a.list; });
    each([](auto &a) -> auto & { return a.choices; });
    each([](auto &a) -> auto & { return a.limit; });
    each([](auto &a) -> auto & { return a.tolerance; });
    each([](auto &a) -> auto & { return a.ask; });
    each([](auto &a) -> auto & { return a.hide; });
    each([](auto &a) -> auto & { return a.lock; });
    each([](auto &a) -> auto & { return a.note; });
}

const Attributes nothing;

} // namespace

void writeAttributes(const Attributes &beside, std::string &out)
{
    tail(out, "name", beside.name);
    tail(out, "unit", beside.unit);
    if (!beside.sources.empty()) {
        out += "  source";
        for (const MarkId &mark : beside.sources)
            (out += ' ') += mark;
        out += '\n';
    }
    if (beside.figures > 0)
        out += fmt::format("  figures {}\n", beside.figures);
    if (beside.places >= 0)
        out += fmt::format("  places {}\n", beside.places);
    if (!beside.list.empty()) {
        out += fmt::format("  choices {}\n", beside.list);
    } else if (!beside.choices.empty()) {
        out += "  choices";
        for (const std::string &choice : beside.choices)
            (out += ' ') += quoted(choice);
        out += '\n';
    }
    if (beside.limit)
        tail(out, "limit", limitWords(*beside.limit));
    if (!beside.tolerance.empty())
        tail(out, "tolerance +-", beside.tolerance);
    words(out, "ask", beside.ask);
    if (beside.hide)
        out += "  hide\n";
    if (beside.lock)
        out += "  lock\n";
    words(out, "note", beside.note);
    for (const std::string &record : beside.unknown)
        ((out += "  ") += record) += '\n';
}

Attributes shared(const Attributes &a, const Attributes &b)
{
    Attributes out;
    forFields([&](auto field) {
        if (field(a) == field(b))
            field(out) = field(a);
    });
    if (a.unknown == b.unknown)
        out.unknown = a.unknown;
    return out;
}

Attributes beyond(const Attributes &line, const Attributes &common)
{
    Attributes out;
    out.name = line.name;
    forFields([&](auto field) {
        if (field(line) != field(common))
            field(out) = field(line);
    });
    if (line.unknown != common.unknown)
        out.unknown = line.unknown;
    return out;
}

Attributes overlaid(const Attributes &base, const Attributes &extra)
{
    Attributes out = base;
    out.name = extra.name;
    if (!extra.list.empty() || !extra.choices.empty()) {
        out.list.clear();
        out.choices.clear();
    }
    forFields([&](auto field) {
        if (field(extra) != field(nothing))
            field(out) = field(extra);
    });
    out.unknown.insert(out.unknown.end(), extra.unknown.begin(), extra.unknown.end());
    return out;
}

} // namespace puteal
