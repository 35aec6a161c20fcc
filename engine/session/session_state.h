/// What a session holds; its files implement one group of the door's answers each.
#pragma once

#include <functional>

#include "formula/rewrite_all.h"
#include "session/session.h"

namespace puteal
{

/// One undo step: either single cells, or the whole workbook before and after (texts are shared, so that is
/// cheap).
struct UndoStep {
    std::string words;
    struct CellChange {
        CellAt at;
        Cell before, after;
    };
    std::vector<CellChange> cells;
    std::shared_ptr<const Workbook> before, after; ///< null for cell steps
    std::vector<std::string> notes;
    std::optional<CellAt> focus;
};

/// What a file held, as its size and a hash: enough to see that somebody changed it, without keeping the
/// bytes.
struct FileMark {
    std::size_t size = 0, hash = 0;
    FileMark() = default;
    explicit FileMark(std::string_view bytes) : size(bytes.size()), hash(std::hash<std::string_view>{}(bytes))
    {
    }
    friend bool operator==(const FileMark &, const FileMark &) = default;
};

class SessionState final : public Session
{
public:
    SessionState(Workbook workbook, PluginFolders folders);

    const Workbook &workbook() const override { return m_workbook; }
    const Program &program() const override { return *m_program; }
    const Values &values() const override { return m_values; }
    std::vector<std::string> openingNotes() const override;

    CellView view(const CellAt &at) const override;
    Calculation calculation(const CellAt &at) const override;
    std::vector<StepView> steps() const override { return overview().steps; }
    SheetCounts counts() const override { return overview().counts; }
    std::vector<Finding> findings() const override;
    std::vector<Program::ExpectationResult> expectations() const override;
    std::string healthStop() const;
    /// The units row of a formula that has an error: units of what is known, "?" for the rest.
    std::string unitsSoFar(const CellAt &at, std::string_view text, std::shared_ptr<const Tree> tree) const;
    std::string clashingUnits(const CellAt &at, std::string_view text, const Error &error) const;
    ChartView chart(const std::string &key) const override;
    std::string placeWords(const CellAt &at) const override;
    std::string labelOf(const CellAt &at) const override;
    Result<CellAt> find(std::string_view reference) const override;

    Result<ChangeSet> apply(const Edit &edit) override;
    bool canUndo() const override { return m_done > 0; }
    bool canRedo() const override { return m_done < m_steps.size(); }
    std::string undoWords() const override { return canUndo() ? m_steps[m_done - 1].words : std::string(); }
    std::string redoWords() const override { return canRedo() ? m_steps[m_done].words : std::string(); }
    ChangeSet undo() override;
    ChangeSet redo() override;
    bool unsaved() const override { return m_done != m_saved; }

    SlipView slip(const CellAt &at, std::string_view text) const override;
    Completions complete(const CellAt &at, std::string_view text, std::size_t caret,
                         Offer offer) const override;
    std::vector<Completion> choicesFor(const CellAt &at, std::string_view text, Offer offer) const;
    CallHint callHint(const CellAt &at, std::string_view text, std::size_t caret) const override;

    std::filesystem::path path() const override { return m_path; }
    std::string fileText() const override;
    bool changedOnDisk() const override;
    void acceptDisk() override;
    Result<void> save(const std::filesystem::path &path, bool keepCopy) override;

    void setPath(std::filesystem::path path, std::string_view bytes)
    {
        m_path = std::move(path);
        m_onDisk = FileMark(bytes);
    }

private:
    friend struct Applier;
    /// The workbook as a whole, as its cells stand.
    struct Overview {
        std::vector<StepView> steps;
        SheetCounts counts;
    };
    const Overview &overview() const;
    void lookThrough(std::uint32_t s, Overview &seen, std::optional<CellAt> &headline,
                     std::size_t &typed) const;
    void rebuild();
    Result<void> mayReplace(const std::filesystem::path &path, const std::string &bytes, bool keepCopy) const;
    ChangeSet carryOut(UndoStep step);
    /// Makes the step, or takes it back.
    ChangeSet goThrough(const UndoStep &step, bool forward);
    ChangeSet applyCells(const std::vector<UndoStep::CellChange> &cells, bool forward);
    std::vector<std::string> chartKeys() const;
    Rounding roundingOf(const CellAt &at) const;
    std::string limitWords(const CellAt &at) const;
    std::string stateSentence(const CellAt &at, LimitState state) const;
    /// Why a cell's limit says nothing: it cannot be read or checked, or runs downward.
    std::optional<std::string> limitProblem(const CellAt &at) const;

    Workbook m_workbook;
    PluginFolders m_folders;
    UnitTable m_units;
    std::shared_ptr<const Registry> m_registry;
    std::unique_ptr<Program> m_program;
    Values m_values;
    mutable std::optional<Overview> m_overview; ///< until the next edit
    std::vector<UndoStep> m_steps;
    std::size_t m_done = 0;
    std::size_t m_saved =
        0; ///< value of m_done at the last save; none when that state can no longer be reached
    std::filesystem::path m_path;
    FileMark m_onDisk; ///< the file as this session read or saved it last
};

/// Is the word a unit of the shipped table?
bool shippedUnitWord(std::string_view word);

/// A new sheet: a words column, an amounts column, 30 blank lines.
Sheet freshSheet(const std::string &key, const std::string &title);

/// The state a listed word tells: "works" within, "marginal" near, "will not work" outside, "cannot tell yet"
/// missing test; the words of states themselves; noLimit for anything else.
LimitState toldBy(const StaticType &type, double number, const ChoiceLists &lists);

} // namespace puteal
