/// The one door of the engine for programs and tests: open, look, edit, undo, save, chart.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "recalc/program.h"
#include "session/edit.h"
#include "show/shown.h"

namespace puteal
{

/// What a cell shows.
struct CellView {
    std::string typed;      ///< as stored
    std::string shown;      ///< value as text, or the words; for an error its short words
    ShownQuantity quantity; ///< number and unit apart (quantities only)
    StaticType type;
    bool isFormula = false;
    std::optional<Error> error;
    LimitState state = LimitState::noLimit;
    std::string limit;      ///< "<= 7.0 mg/L as Cl2"
    std::string stateWords; ///< "near limit: 98 % of 7.0 mg/L as Cl2", "outside: ...", "missing test: ..."
    bool health = false;    ///< the limit is marked health
    /// The state that the shown word tells: a state read by `state(...)`, a verdict on a method.
    LimitState told = LimitState::noLimit;
    std::vector<std::string> cautions; ///< arisen here
    std::size_t cautionCount = 0;      ///< with inherited ones
    std::string reason;
    std::vector<MarkId> sources; ///< W for a formula without marks of its own
    std::string name;
    double number = 0.0;      ///< base units
    double numberShown = 0.0; ///< in `unit`
    Unit unit;
};

/// One card of the steps pane.
struct StepView {
    std::uint32_t sheet = 0;
    std::string title;
    LimitState worst = LimitState::noLimit; ///< outside > missing test > near > within > no limit
    std::size_t within = 0, near = 0, outside = 0, missing = 0, errors = 0;
    std::string headline;                  ///< one line: the sheet's headline result
    LimitState told = LimitState::noLimit; ///< what the headline tells, when it is a verdict or a state
    std::vector<std::uint32_t> feeds;      ///< sheets that read from this one
};

struct ChartSeries {
    std::string title;
    std::vector<double> x, y; ///< in the units of the axes; NaN where a value has an error
    std::string end;          ///< end label
};
struct ChartView {
    Chart chart;
    std::string xTitle, yTitle; ///< with units
    bool money = false;
    std::vector<ChartSeries> series;
    std::vector<std::string> leftOut;   ///< "Ozone: will not work" ...
    std::vector<std::string> crossings; ///< sentences naming all break-even years, last crossing first
    struct Crossing {
        double x, y;
        std::size_t a, b;
    };
    std::vector<Crossing> points;
    std::string stop; ///< "Arsenic is outside its health limit: ..."; "" when no health limit is passed
    std::optional<Error> error;
};

struct SheetCounts {
    std::size_t within = 0, near = 0, outside = 0, missing = 0, errors = 0, assumptions = 0, formulas = 0;
};

/// One result of `check`.
struct Finding {
    enum class Grade : std::uint8_t {
        error,
        outside,
        healthOutside,
        missingTest,
        healthMissing,
        near,
        caution,
        expectation
    };
    Grade grade;
    CellAt at;
    std::string place; ///< "sheet water line 9 (raw_iron)"
    std::string words;
};

/// What the slip shows while typing.
struct SlipView {
    Program::Preview preview;
    std::string units;  ///< the units row: the formula with each operand replaced by its unit
    std::string result; ///< the result row, or the error in words
};

struct Completion {
    enum class Kind : std::uint8_t { name, column, function, unit, sheet, substance, list, joint };
    Kind kind;
    std::string text;   ///< what is put in
    std::string detail; ///< units, arguments, item words; why it is offered when it does not begin so
    bool found = false; ///< it does not begin with what was typed: its words tell of it
};
struct Completions {
    std::vector<Completion> offers; ///< what begins with what was typed, then what was found by words
    std::size_t start = 0, end = 0; ///< bytes that the chosen one replaces
};
/// While typing nothing is offered before the first letter, except where little can stand.
enum class Offer : std::uint8_t { whileTyping, whenAsked };

/// The call in whose parentheses the caret stands.
struct CallHint {
    std::string function;               ///< "" = none
    std::vector<std::string> arguments; ///< "iron mg/L as Fe", "[reserve %]" where it may be left out
    std::size_t current = 0;            ///< from 0; past the end: more than it takes
    std::string meaning;                ///< of the current one
};

class Session
{
public:
    /// An empty workbook with one sheet (words column, amounts column, 30 lines).
    static std::unique_ptr<Session> createNew(const PluginFolders &folders = PluginFolders::standard());
    /// Reads a workbook file. Error only when the file cannot be read or is damaged (with the file line).
    static Result<std::unique_ptr<Session>> open(const std::filesystem::path &path,
                                                 const PluginFolders &folders = PluginFolders::standard());
    static Result<std::unique_ptr<Session>>
    fromText(std::string_view text, const PluginFolders &folders = PluginFolders::standard());
    virtual ~Session() = default;

    virtual const Workbook &workbook() const = 0;
    virtual const Program &program() const = 0;
    virtual const Values &values() const = 0;
    /// Sentences about the file: newer version, plugins missing, cells moved by another plugin version.
    virtual std::vector<std::string> openingNotes() const = 0;

    virtual CellView view(const CellAt &at) const = 0;
    virtual Calculation calculation(const CellAt &at) const = 0;
    virtual std::vector<StepView> steps() const = 0;
    virtual SheetCounts counts() const = 0;
    virtual std::vector<Finding> findings() const = 0;
    virtual std::vector<Program::ExpectationResult> expectations() const = 0;
    virtual ChartView chart(const std::string &key) const = 0;
    /// "sheet water line 9 (raw_iron)".
    virtual std::string placeWords(const CellAt &at) const = 0;
    /// "oxidant need" style label: item words, else name, else address.
    virtual std::string labelOf(const CellAt &at) const = 0;

    /// Finds a cell by `name`, `sheet.name`, `key[3]` of one sheet or `sheet.key[3]`. Errors: unknown, in
    /// several sheets.
    virtual Result<CellAt> find(std::string_view reference) const = 0;

    /// Refuses (error, nothing changed) only what would break the workbook; a wrong formula is stored as
    /// typed.
    virtual Result<ChangeSet> apply(const Edit &edit) = 0;
    virtual bool canUndo() const = 0;
    virtual bool canRedo() const = 0;
    virtual std::string undoWords() const = 0;
    virtual std::string redoWords() const = 0;
    virtual ChangeSet undo() = 0;
    virtual ChangeSet redo() = 0;
    virtual bool unsaved() const = 0;

    virtual SlipView slip(const CellAt &at, std::string_view text) const = 0;
    /// What could stand at byte `caret` of `text` typed into `at`.
    virtual Completions complete(const CellAt &at, std::string_view text, std::size_t caret,
                                 Offer offer) const = 0;
    virtual CallHint callHint(const CellAt &at, std::string_view text, std::size_t caret) const = 0;

    virtual std::filesystem::path path() const = 0;
    virtual std::string fileText() const = 0;
    /// Another program wrote to the file since it was opened or saved here.
    virtual bool changedOnDisk() const = 0;
    /// Somebody decided that what stands on disk now may be replaced (it is kept beside like any last save).
    virtual void acceptDisk() = 0;
    /// Safe save (temporary beside it, checked, renamed, folder synced); keeps the bytes of the last save
    /// beside as NAME.puteal.before when `keepCopy`. Afterwards unsaved() is false. Refused when the file is
    /// no longer what this session read or saved last, and when the copy cannot be kept.
    virtual Result<void> save(const std::filesystem::path &path, bool keepCopy = true) = 0;
};

} // namespace puteal
