/// Turns one edit into an undo step (what will change), or refuses it; changes nothing itself.
#pragma once

#include <functional>

#include "session/session_state.h"

namespace puteal
{

struct Applier {
    explicit Applier(SessionState &session) : state(session) {}
    SessionState &state;
    std::optional<std::string> rewritten; ///< SetText: what is stored instead of what was typed

    Result<UndoStep> make(const SetText &edit);
    Result<UndoStep> make(const SetBlock &edit);
    Result<UndoStep> make(const ClearBlock &edit);
    Result<UndoStep> make(const FillDown &edit);
    Result<UndoStep> make(const SetAttributes &edit);
    Result<UndoStep> make(const InsertLines &edit);
    Result<UndoStep> make(const DeleteLines &edit);
    Result<UndoStep> make(const MoveLines &edit);
    Result<UndoStep> make(const RenameCell &edit);
    Result<UndoStep> make(const AddColumn &edit);
    Result<UndoStep> make(const ChangeColumn &edit);
    Result<UndoStep> make(const DeleteColumn &edit);
    Result<UndoStep> make(const AddSheet &edit);
    Result<UndoStep> make(const ChangeSheet &edit);
    Result<UndoStep> make(const DeleteSheet &edit);
    Result<UndoStep> make(const SetSources &edit);
    Result<UndoStep> make(const SetLists &edit);
    Result<UndoStep> make(const SetTitle &edit);
    Result<UndoStep> make(const SetCharts &edit);
    Result<UndoStep> make(const SetExpectations &edit);

private:
    using Alter = std::function<void(Workbook &)>;
    Result<void> place(const CellAt &at) const;
    Result<Cell> typed(const Sheet &sheet, std::uint32_t column, std::uint32_t line, const std::string &raw);
    void change(UndoStep &step, const CellAt &at, Cell after);
    /// Refuses a new name or key that would change what a bare word in a formula of the sheet means.
    Result<void> wordIsFree(std::uint32_t sheet, const std::string &word) const;
    Result<void> nameFits(const CellAt &at, const std::string &name) const;
    Result<void> keyFits(std::uint32_t sheet, const std::string &key,
                         std::optional<std::uint32_t> self) const;
    Result<void> markFits(const SourceMark &source) const;
    /// Attributes whose sources are declared in the same step.
    Result<UndoStep> declaredWith(const SetAttributes &edit, Cell cell);
    Result<void> sheetKeyFits(const std::string &key, std::optional<std::uint32_t> self) const;
    /// The workbook after a structural change: texts rewritten, then `alter` moves lines, columns or sheets.
    /// Refused when a text would outgrow its cell.
    Result<UndoStep> structural(std::string words, const StructuralChange &change, const Alter &alter);
    /// A change of records that no text refers to; no step when it changes nothing.
    UndoStep whole(std::string words, const Alter &alter);
};

} // namespace puteal
