/// Reads one sheet: its columns, lines, cells and filled runs, refusing what docs/file_format.md says.
#pragma once

#include <unordered_set>

#include "file/read_state.h"

namespace puteal
{

using SharedText = std::shared_ptr<const std::string>;
using SharedAttributes = std::shared_ptr<const Attributes>;

class SheetReader
{
public:
    explicit SheetReader(ReadState &state) : m_state(state) {}
    bool read();

private:
    /// What is known of a column while lines come in.
    struct Open {
        std::string prefix; ///< "key:"
        std::vector<Cell> cells;
        SharedText text; ///< of the run that is open, null = none
        SharedAttributes beside;
        std::uint32_t runBegin = 0, runFileLine = 0;
        std::uint32_t given = 0;   ///< last line with a cell or fill record
        std::uint32_t givenAt = 0; ///< last line with an `at` record
        std::uint32_t stopped = 0; ///< last line that ended a run
    };

    enum class Under { cell, fill, at };

    bool head();
    bool record();
    bool column(Parts parts);
    bool line();
    bool skip(Parts parts);
    bool addLines(std::uint64_t count, bool skipped);
    void reserveLines();
    std::optional<std::uint32_t> keyOf(std::string_view record);
    bool cell(std::uint32_t c, std::string_view tail);
    bool fill(std::string_view rest);
    bool stop(Parts parts);
    bool at(std::string_view key);
    bool expect(std::string_view rest);
    bool end(Parts parts);
    bool finish();
    bool goodTail(std::string_view key, std::string_view tail);
    bool shortEnough(std::string_view text);
    bool unknownKey(std::string_view key);
    bool beside(std::uint32_t c, Under under, std::string_view text, SharedAttributes &out);
    bool besideChecked(std::uint32_t c, Under under, std::string_view text, Attributes &out);
    bool checkedName(const std::string &name);
    bool refuse(const std::string &words) { return m_state.refuse(words); }
    void keepBefore(const std::string &before)
    {
        if (!m_state.pending.empty())
            m_state.settle(m_lines.back().kept, before);
        m_state.pendingUnknown = false;
    }

    ReadState &m_state;
    Sheet m_sheet{"", ""};
    std::vector<Open> m_open;
    std::vector<Line> m_lines;
    std::size_t m_begin = 0;     ///< bytes left when the sheet began
    std::uint32_t m_last = 0;    ///< column of the last cell record: the next one probably follows it
    std::uint32_t m_running = 0; ///< runs open
    bool m_ended = false;
    std::unordered_set<std::string> m_expected;
    std::unordered_map<std::string, std::uint32_t> m_named; ///< name -> line
    std::unordered_map<std::string_view, SharedAttributes>
        m_seen; ///< equal blocks of attributes are read once
};

} // namespace puteal
