/// Rewrites the references of parsed formulas for one structural change; made once a change.
#pragma once

#include <optional>
#include <vector>

#include "formula/line_map.h"
#include "formula/rewriter.h"

namespace puteal
{

class ReferenceRewriter
{
public:
    ReferenceRewriter(const Workbook &before, const StructuralChange &change, const UnitTable &units);

    Rewritten rewrite(const Tree &tree, const FormulaPlace &place) const;
    /// The text of a line that joins the run at `place`.
    std::string takenText(const Tree &tree, const FormulaPlace &place) const;
    const LineMap &lines() const { return m_map; }
    const std::vector<Takeover> &takeovers() const { return m_takeovers; }

private:
    struct TextEdit {
        Span span;
        std::string text;
    };
    /// What rewriting one formula needs to know.
    struct Job {
        const Tree &tree;
        const FormulaPlace &place;
        Rewritten &result;
        std::vector<TextEdit> edits;
        bool joined = false;    ///< new lines join the formula's run
        bool ownChange = false; ///< the change is among the run's own lines
        bool asTaken = false;   ///< signed indices as written, whatever they point to
    };
    enum class Index : std::uint8_t { asWritten, onTarget };

    Job job(const Tree &tree, const FormulaPlace &place, Rewritten &result) const;
    void reference(Job &job, const ReferenceText &text) const;
    void renamed(Job &job, const ReferenceText &text, std::uint32_t sheet, bool isName) const;
    void deletedColumn(Job &job, const ReferenceText &text, std::uint32_t sheet) const;
    void deletedNameLine(Job &job, const ReferenceText &text, std::uint32_t sheet) const;
    void single(Job &job, const ReferenceText &text, std::uint32_t sheet) const;
    void range(Job &job, const ReferenceText &text, std::uint32_t sheet) const;
    void brokenRange(Job &job, const ReferenceText &text, std::uint32_t sheet) const;
    RangeEdges edgesOf(const Job &job, const LineRange &range, std::uint32_t sheet, bool isSigned) const;
    Index signedIndex(const Job &job, std::int64_t offset) const;
    bool reachesRun(const Job &job, std::int64_t offset) const;
    std::optional<std::uint32_t> lineOf(const Job &job, const IndexText &index, std::uint32_t sheet) const;
    void setIndex(Job &job, const IndexText &index, std::uint32_t line) const;
    void setGone(Job &job, const ReferenceText &text) const;
    void noteRange(Job &job, const ReferenceText &text, const LineRange &before,
                   const LineRange &after) const;
    std::string apply(Job &job) const;

    const Workbook &m_before;
    const StructuralChange &m_change;
    LineMap m_map;
    std::vector<Takeover> m_takeovers;
};

} // namespace puteal
