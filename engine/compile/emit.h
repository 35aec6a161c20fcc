/// Writes the emitted expression of one tree and notes what it needs: slots, ranges, sites, kept values.
#pragma once

#include "compile/compile.h"

namespace puteal
{

/// Used once: `run` fills the formula it was given and returns the expression's text.
class Emitter
{
public:
    explicit Emitter(CompiledFormula &out);
    std::string run(NodeIndex root);

private:
    /// `raw`: a bounded reading is passed on as its bound instead of by the workbook's rule.
    std::string emit(NodeIndex n, bool raw);
    std::string reference(NodeIndex n, bool raw);
    std::string words(NodeIndex n);
    std::string binary(NodeIndex n);
    std::string power(NodeIndex left, NodeIndex right);
    std::string comparison(Op op, NodeIndex left, NodeIndex right);
    std::string call(NodeIndex n, bool raw);
    std::string site(NodeIndex n);
    /// A guarded form of the arguments that are written out.
    std::string plainCall(NodeIndex n, std::string_view name, bool raw);
    static std::string number(double x);

    bool isAtom(NodeIndex n) const;
    Bound bound(NodeIndex n) const { return m_checked.nodes[n].type.bound; }
    std::uint32_t referenceIndex(NodeIndex n) const;
    int slot(std::uint32_t reference, OperandUse use);
    int range(NodeIndex n);
    int keep(NodeIndex n);
    void noteReferences(NodeIndex n);
    bool mayHaveReason(NodeIndex n) const;

    CompiledFormula &m_out;
    const Tree &m_tree;
    const Checked &m_checked;
    int m_kept = 0;
    std::vector<std::uint32_t> m_liveReferences; ///< read by words, not by the expression
};

} // namespace puteal
