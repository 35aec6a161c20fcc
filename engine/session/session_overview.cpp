/// The workbook as a whole: steps, counts, findings, expectations.
#include <algorithm>

#include <fmt/format.h>

#include "functions/general.h"
#include "session/session_state.h"

namespace puteal
{

namespace
{

/// How urgent a state is: outside before missing test before near before within.
int urgency(LimitState state)
{
    switch (state) {
    case LimitState::outside:
        return 4;
    case LimitState::missingTest:
        return 3;
    case LimitState::near:
        return 2;
    case LimitState::within:
        return 1;
    case LimitState::noLimit:
        break;
    }
    return 0;
}

template<class Visit>
void eachCell(const Workbook &book, std::uint32_t s, Visit visit)
{
    const Sheet &sheet = book.sheets[s];
    for (std::uint32_t l = 0; l < sheet.lineCount(); ++l)
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            if (const Cell &cell = sheet.cell(c, l); !cell.blank() || cell.attributes)
                visit(CellAt{s, c, l}, cell);
}

} // namespace

std::vector<StepView> SessionState::steps() const
{
    if (!m_stepsSeen)
        m_stepsSeen = stepsNow();
    return *m_stepsSeen;
}

std::vector<StepView> SessionState::stepsNow() const
{
    std::vector<StepView> steps(m_workbook.sheets.size());
    for (std::uint32_t s = 0; s < steps.size(); ++s) {
        StepView &step = steps[s];
        step.sheet = s;
        step.title = m_workbook.sheets[s].title();
        std::optional<CellAt> headline;
        std::size_t typed = 0;
        eachCell(m_workbook, s, [&](const CellAt &at, const Cell &cell) {
            const NodeId node = m_program->nodeOf(at);
            if (!cell.blank() && m_values.status[node] != ErrorKind::none)
                ++step.errors;
            if (cell.beside().limit) {
                const LimitState state = m_program->state(at, m_values);
                (state == LimitState::within    ? step.within
                 : state == LimitState::near    ? step.near
                 : state == LimitState::outside ? step.outside
                                                : step.missing) += 1;
                if (urgency(state) > urgency(step.worst))
                    step.worst = state;
            }
            const StaticType &type = m_program->typeOf(node);
            const LimitState told = toldBy(type, m_values.number[node], m_program->lists());
            // A sheet that gathers the states of others (a gate) is as urgent as the worst of them.
            if (urgency(told) > urgency(step.worst) &&
                m_program->lists().words(type.list) == generalChoices())
                step.worst = told;
            if (m_workbook.sheets[s].column(at.column).kind != ColumnKind::amounts)
                return;
            const bool formula = m_program->isFormula(node);
            if (!cell.blank() && !formula)
                ++typed;
            if (formula && !cell.beside().name.empty() && !cell.beside().hide &&
                m_values.status[node] == ErrorKind::none)
                headline = at;
        });
        if (headline) {
            const CellView seen = view(*headline);
            const auto &shown = seen.shown;
            step.told = seen.told;
            step.headline = m_program->facts(m_program->nodeOf(*headline)).type.kind == ValueKind::quantity
                                ? fmt::format("{}: {}", labelOf(*headline), shown)
                                : shown;
        } else if (typed > 0) {
            step.headline = fmt::format("{} typed value{}", typed, typed == 1 ? "" : "s");
        }
    }
    for (const auto &[from, to] : m_program->sheetEdges())
        if (from != to)
            steps[from].feeds.push_back(to);
    return steps;
}

SheetCounts SessionState::counts() const
{
    SheetCounts counts;
    for (const StepView &step : steps()) {
        counts.within += step.within;
        counts.near += step.near;
        counts.outside += step.outside;
        counts.missing += step.missing;
        counts.errors += step.errors;
    }
    for (std::uint32_t s = 0; s < m_workbook.sheets.size(); ++s)
        eachCell(m_workbook, s, [&](const CellAt &at, const Cell &cell) {
            if (cell.blank())
                return;
            if (m_program->isFormula(m_program->nodeOf(at)))
                ++counts.formulas;
            const auto &own = cell.beside().sources;
            for (const auto &mark :
                 own.empty() ? m_workbook.sheets[s].column(at.column).attributes.sources : own)
                if (mark.front() == 'A') {
                    ++counts.assumptions;
                    break;
                }
        });
    return counts;
}

std::vector<Finding> SessionState::findings() const
{
    std::vector<Finding> findings;
    using Grade = Finding::Grade;
    const auto add = [&](Grade grade, const CellAt &at, std::string words) {
        findings.push_back({grade, at, placeWords(at), std::move(words)});
    };
    for (std::uint32_t s = 0; s < m_workbook.sheets.size(); ++s)
        eachCell(m_workbook, s, [&](const CellAt &at, const Cell &cell) {
            const NodeId node = m_program->nodeOf(at);
            if (!cell.blank()) {
                if (const auto error = m_program->errorOf(node, m_values); error) {
                    // Undecided readings are missing tests; a cell that only waits repeats what its origin
                    // says.
                    if (error->kind == ErrorKind::undecided)
                        add(Grade::missingTest, at, error->words);
                    else if (error->kind != ErrorKind::waiting)
                        add(Grade::error, at, errorLine(*error));
                }
                for (const auto id : m_values.pool.members(m_values.ownCautions[node]))
                    add(Grade::caution, at, m_values.pool.caution(id).words);
            }
            if (!cell.beside().limit)
                return;
            if (const auto problem = limitProblem(at)) {
                add(Grade::error, at, *problem);
                return;
            }
            const bool health = cell.beside().limit->health;
            const LimitState state = m_program->state(at, m_values);
            if (state == LimitState::outside)
                add(health ? Grade::healthOutside : Grade::outside, at, stateSentence(at, state));
            else if (state == LimitState::missingTest)
                add(health ? Grade::healthMissing : Grade::missingTest, at, stateSentence(at, state));
            else if (state == LimitState::near)
                add(Grade::near, at, stateSentence(at, state));
        });
    for (const auto &result : expectations())
        if (!result.met)
            findings.push_back({Grade::expectation,
                                {result.sheet, 0, 0},
                                fmt::format("sheet {}", m_workbook.sheets[result.sheet].key()),
                                result.words});
    return findings;
}

std::vector<Program::ExpectationResult> SessionState::expectations() const
{
    return m_program->expectations(m_workbook, m_values);
}

} // namespace puteal
