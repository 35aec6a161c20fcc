/// What the readers of workbook, sheet and chart records share while one text is read.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "file/line_scanner.h"
#include "sheet/typed_text.h"
#include "sheet/workbook.h"

namespace puteal
{

using IsUnitWord = bool (*)(std::string_view);

/// A count that does not agree with its sheet: where its digits stand and what they should be.
struct CountCorrection {
    std::size_t offset = 0;
    std::size_t length = 0;
    std::uint32_t count = 0;
};

struct ReadState {
    ReadState(std::string_view text, IsUnitWord unitWord) : scanner(text), isUnitWord(unitWord) {}

    LineScanner scanner;
    IsUnitWord isUnitWord;
    Workbook book;
    std::optional<Error> error;
    std::vector<std::string> pending; ///< comments, blanks and unknown records before the next record
    bool pendingUnknown = false;      ///< the last of them may have indented lines of its own
    std::vector<CountCorrection> *corrections = nullptr; ///< null = a wrong count is refused
    std::string sheet;                                   ///< words of the place: key of the sheet being read
    std::uint32_t sheetLine = 0;                         ///< its line, 0 = before the first one
    std::size_t filled = 0, places = 0, others = 0;      ///< counted against base/limits.h

    struct MarkUse {
        std::string place;
        std::uint32_t fileLine;
    };
    std::unordered_map<std::string, MarkUse>
        marksUsed; ///< first use of each, compared with the sources at the end

    /// Notes the refusal (the first one counts) and returns false.
    bool refuse(const std::string &words) { return refuseAt(words, scanner.number, sheetLine); }
    bool refuseAt(const std::string &words, std::uint32_t fileLine, std::uint32_t line);
    std::string place(std::uint32_t fileLine, std::uint32_t line) const;

    /// Counts records that are no cells.
    bool countOther(std::size_t n = 1);
    /// The next line, false at the end or at a line that cannot stand (then `error` is set).
    bool next();
    /// Keeps a comment, blank or unknown record. True when the line was one of those, or refused (see
    /// `error`).
    bool keep();
    /// Hands the kept records over, anchored.
    void settle(std::vector<Kept> &to, const std::string &before);
    void useMark(const std::string &mark);
    const TextJudge &judge();

private:
    std::optional<TextJudge> m_judge;
};

/// Leading word of a record: letters a-z, digits and _.
std::string_view leadingWord(std::string_view line);
/// A record keyword of this version; such a record is never unknown.
bool isKeyword(std::string_view word);

/// Reads from the `sheet` record (the current line) to its `end`. False when refused.
bool readSheet(ReadState &state);

} // namespace puteal
