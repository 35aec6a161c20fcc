/// What F1 and the search for a word tell in the calculation pane.
#include <algorithm>

#include <QStackedWidget>

#include "base/text.h"
#include "desk/calculation_pane.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"
#include "functions/search.h"
#include "session/example_run.h"

namespace puteal::desk
{

namespace
{

constexpr std::size_t mostFound = 40; ///< functions listed for a word

QString unitHelp(const UnitWord &unit)
{
    QString out =
        QStringLiteral("%1: %2\n%3").arg(fromUtf8(unit.word), fromUtf8(unit.name), fromUtf8(unit.definition));
    if (const auto spellings = unit.spellings(); !spellings.empty())
        out += QObject::tr("\nalso written: %1").arg(fromUtf8(joined(spellings)));
    if (!unit.note.empty())
        out += QLatin1Char('\n') + fromUtf8(unit.note);
    return out;
}

/// The words that join values, which are no functions.
QString jointHelp(const std::string &word)
{
    const char *const rows[][2] = {
        {"and", "and: both conditions hold, as in iron > 0.3 mg/L as Fe and ph < 7"},
        {"or", "or: one of two conditions holds"},
        {"not", "not( ): the condition does not hold, as in not(has_softener)"},
        {"yes", "yes: a condition that holds"},
        {"no", "no: a condition that does not hold"},
        {"as", "as: says of what an amount is, as in 3 mg/L as Fe"},
        {"pi", "pi: 3.14159..."},
        {"->", "-> at the end of a formula: the unit the result is wanted in, as in flow * time -> gal"}};
    for (const auto &row : rows)
        if (word == row[0])
            return QObject::tr(row[1]);
    return {};
}

} // namespace

void MainWindow::showPane(bool shown)
{
    m_calculation->setVisible(shown);
    m_paneShown->setChecked(shown);
}

void MainWindow::showHelpFor(const QString &word)
{
    if (word.trimmed().isEmpty())
        say(tr("put the caret in a word to have it explained; Shift+F1 asks for one"));
    else if (!explain(word))
        say(tr("nothing is known about \"%1\"").arg(word));
}

void MainWindow::explainHere()
{
    showPane(true);
    const CellAt at = m_view->meantCell();
    if (m_center->currentWidget() != m_view || !m_session->workbook().cell(at))
        return refreshAround();
    const Program &program = m_session->program();
    std::vector<std::pair<std::uint32_t, const FunctionInfo *>> calls;
    if (const auto &tree = program.facts(program.nodeOf(at)).tree)
        for (const Node &node : tree->nodes)
            if (const FunctionInfo *function =
                    node.kind == NodeKind::call ? program.registry().find(node.name) : nullptr;
                function && std::none_of(calls.begin(), calls.end(),
                                         [&](const auto &call) { return call.second == function; }))
                calls.emplace_back(node.span.begin, function);
    std::sort(calls.begin(), calls.end());
    if (calls.empty()) {
        m_calculation->show(*m_session, at);
        say(tr("no function is called here; Shift+F1 asks for a word"));
        return;
    }
    if (m_explained != at || m_nextExplained >= calls.size())
        m_nextExplained = 0;
    m_explained = at;
    const FunctionInfo &function = *calls[m_nextExplained++].second;
    m_calculation->showHelp(
        tr("FUNCTION %1 of %2 in this cell").arg(m_nextExplained).arg(calls.size()),
        fromUtf8(helpWithResults(function, program.registry(), PluginFolders::standard())));
    say(calls.size() > 1
            ? tr("%1 explained; F1 again for the next function of this cell").arg(fromUtf8(function.name))
            : tr("%1 explained").arg(fromUtf8(function.name)));
}

/// A cell by its name here before one elsewhere, a column, a sheet; false when nothing is called so.
bool MainWindow::explainPlace(const std::string &word)
{
    const Workbook &workbook = m_session->workbook();
    const std::uint32_t here = m_view->sheetModel()->sheet();
    if (here < workbook.sheets.size()) {
        if (const auto at = workbook.sheets[here].named(word, here)) {
            m_calculation->show(*m_session, *at);
            return true;
        }
        if (const auto c = workbook.sheets[here].columnByKey(word)) {
            m_calculation->showHelp(
                tr("COLUMN"), tr("%1: %2\nalone it is the cell on the same line; %1[3] is "
                                 "line 3, %1[:] the whole column")
                                  .arg(fromUtf8(word), fromUtf8(workbook.sheets[here].column(*c).title)));
            return true;
        }
    }
    if (const auto at = m_session->find(word)) {
        m_calculation->show(*m_session, *at);
        return true;
    }
    const std::string key = word.ends_with('.') ? word.substr(0, word.size() - 1) : word;
    if (const auto sheet = workbook.sheetByKey(key)) {
        m_calculation->showHelp(tr("SHEET"),
                                tr("%1: %2\nits cells are called %1.NAME in other sheets")
                                    .arg(fromUtf8(key), fromUtf8(workbook.sheets[*sheet].title())));
        return true;
    }
    return false;
}

/// Functions that words of the trade lead to.
bool MainWindow::explainFound(const std::string &words)
{
    const FunctionSearch search = searchFunctions(m_session->program().registry(), words);
    if (search.found.empty() || !search.everyWord)
        return false;
    QString before = tr("functions for \"%1\"").arg(fromUtf8(words));
    if (!search.alsoSaid.empty())
        before += tr(", read as %1 too").arg(fromUtf8(joined(search.alsoSaid)));
    QList<CalculationPane::Word> rows;
    for (const FunctionInfo *function : search.found)
        if (static_cast<std::size_t>(rows.size()) < mostFound)
            rows.push_back({fromUtf8(function->name), fromUtf8(function->title)});
    m_calculation->showWords(tr("FOUND"), before, rows);
    return true;
}

bool MainWindow::explain(const QString &asked)
{
    const std::string word = asked.trimmed().toStdString();
    const Registry &registry = m_session->program().registry();
    const UnitTable &units = m_session->program().units();
    if (word.empty())
        return false;
    showPane(true); // what is asked for must be seen
    if (const FunctionInfo *function = registry.find(word)) {
        m_calculation->showHelp(tr("FUNCTION"),
                                fromUtf8(helpWithResults(*function, registry, PluginFolders::standard())));
        return true;
    }
    if (const UnitWord *unit = units.find(word)) {
        m_calculation->showHelp(tr("UNIT"), unitHelp(*unit));
        return true;
    }
    if (const QString joint = jointHelp(word); !joint.isEmpty()) {
        m_calculation->showHelp(tr("IN FORMULAS"), joint);
        return true;
    }
    if (explainPlace(word))
        return true;
    if (const auto substance = UnitTable::substanceId(word)) {
        m_calculation->showHelp(tr("SUBSTANCE"),
                                tr("%1: %2\nit stands after as: 3 mg/L as %1")
                                    .arg(fromUtf8(word), fromUtf8(UnitTable::substanceName(*substance))));
        return true;
    }
    if (const auto composed = readUnit(word, units); composed && !composed->text.empty()) {
        m_calculation->showHelp(
            tr("UNIT"),
            QStringLiteral("%1: %2").arg(fromUtf8(composed->text), fromUtf8(spokenUnit(*composed, units))));
        return true;
    }
    return explainFound(word);
}

} // namespace puteal::desk
