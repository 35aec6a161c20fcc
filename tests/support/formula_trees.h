/// Comparing formula trees apart from spans, for tests.
#pragma once

#include <algorithm>

#include "formula/tree.h"

namespace puteal::test
{

inline bool sameIndex(const std::optional<IndexText> &a, const std::optional<IndexText> &b)
{
    return a.has_value() == b.has_value() && (!a || (a->isSigned == b->isSigned && a->value == b->value));
}

inline bool sameReference(const ReferenceText &a, const ReferenceText &b)
{
    return a.sheet == b.sheet && a.word == b.word && a.indexed == b.indexed && a.whole == b.whole &&
           a.gone == b.gone && sameIndex(a.first, b.first) && sameIndex(a.last, b.last);
}

/// The same meaning: kinds, operators, numbers, units, words, references; not spans and not how a substance
/// was typed.
inline bool sameTree(const Tree &a, NodeIndex i, const Tree &b, NodeIndex j)
{
    const Node &x = a.nodes[i], &y = b.nodes[j];
    if (x.kind != y.kind || x.name != y.name || x.children.size() != y.children.size())
        return false;
    if (x.kind == NodeKind::binary && x.op != y.op)
        return false;
    if (x.kind == NodeKind::number && (x.typed != y.typed || x.number != y.number))
        return false;
    if ((x.kind == NodeKind::yesNo || x.kind == NodeKind::date) && x.number != y.number)
        return false;
    if ((x.kind == NodeKind::number || x.kind == NodeKind::convert) && !(a.units[x.unit] == b.units[y.unit]))
        return false;
    if (x.kind == NodeKind::reference && !sameReference(a.references[x.extra], b.references[y.extra]))
        return false;
    if (x.kind == NodeKind::words) {
        const auto &p = a.wordsParts[x.extra], &q = b.wordsParts[y.extra];
        const auto same = [&](const LivePart &s, const LivePart &t) {
            return s.before == t.before && s.figures == t.figures && s.places == t.places &&
                   sameTree(a, s.value, b, t.value);
        };
        if (!std::equal(p.begin(), p.end(), q.begin(), q.end(), same))
            return false;
    }
    for (std::size_t c = 0; c < x.children.size(); ++c)
        if (!sameTree(a, x.children[c], b, y.children[c]))
            return false;
    return true;
}

inline bool sameTree(const Tree &a, const Tree &b)
{
    return sameTree(a, a.root, b, b.root);
}

} // namespace puteal::test
