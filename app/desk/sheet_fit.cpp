/// Widths of columns and heights of lines, so that words and headings are whole.
#include <QEvent>
#include <QHeaderView>
#include <QTimer>

#include "desk/items_in_sight.h"
#include "desk/look.h"
#include "desk/sheet_view.h"

namespace puteal::desk
{

namespace
{

/// Lines of larger sheets keep one height: measuring them all would take too long. Words that are cut there
/// are whole in the tooltip and in the calculation pane.
constexpr int mostLinesMeasured = 1000;
constexpr int headerPadding = 14;

int longestWord(const QString &title, const QFontMetrics &metrics)
{
    int longest = 0;
    for (const QString &word : title.split(QLatin1Char(' ')))
        longest = std::max(longest, metrics.horizontalAdvance(word));
    return longest;
}

} // namespace

/// As wide as its longest limit, within reason.
int SheetView::limitWidth(int column) const
{
    const int letter = fontMetrics().averageCharWidth();
    const QFontMetrics small(smallFont(font()));
    int width = letter * 24;
    for (int line = 0; line < m_model->rowCount() && m_model->rowCount() <= mostLinesMeasured; ++line) {
        const QString limit = m_model->data(m_model->index(line, column), Qt::DisplayRole).toString();
        width = std::max(width, small.horizontalAdvance(limit) + fontMetrics().height() + 18);
    }
    return std::min(width, letter * 44);
}

/// Room for the widest number, its unit under it; within reason.
int SheetView::numberWidth(int column) const
{
    int width = 0;
    for (int line = 0; line < m_model->rowCount() && m_model->rowCount() <= mostLinesMeasured; ++line)
        if (const CellView &view = m_model->viewOf(m_model->cellOf(m_model->index(line, column)));
            !view.error && view.type.kind == ValueKind::quantity)
            width = std::max(width, fontMetrics().horizontalAdvance(fromUtf8(view.quantity.number)));
    return std::min(width + headerPadding, fontMetrics().averageCharWidth() * 30);
}

/// Asked for by the sheet, at least the longest word of the heading.
std::vector<int> SheetView::wantedWidths() const
{
    const Sheet &sheet = m_session->workbook().sheets[m_model->sheet()];
    const int letter = fontMetrics().averageCharWidth();
    std::vector<int> widths;
    for (int c = 0; c < m_model->columnCount(); ++c) {
        const SheetModel::Role role = m_model->roleOf(c);
        int width = role == SheetModel::Role::limit ? limitWidth(c) : letter * 11;
        if (role == SheetModel::Role::words || role == SheetModel::Role::amounts) {
            const auto asked = sheet.column(static_cast<std::uint32_t>(c)).width;
            width = letter * static_cast<int>(std::clamp<std::uint32_t>(asked, 6, 80)) + 14;
            if (role == SheetModel::Role::amounts)
                width = std::max(width, numberWidth(c));
        }
        const QString title = m_model->headerData(c, Qt::Horizontal, Qt::DisplayRole).toString();
        widths.push_back(std::max(width, longestWord(title, fontMetrics()) + headerPadding));
    }
    return widths;
}

/// Columns of the role give way down to `least`, the last ones first; returns how much is still over.
int SheetView::giveWay(std::vector<int> &widths, SheetModel::Role role, int least, int over) const
{
    for (int c = m_model->columnCount() - 1; c >= 0 && over > 0; --c) {
        int &width = widths[static_cast<std::size_t>(c)];
        if (m_model->roleOf(c) != role || width <= least)
            continue;
        const int less = std::min(over, width - least);
        width -= less;
        over -= less;
    }
    return over;
}

void SheetView::fitColumns()
{
    if (!m_session) {
        m_items->place();
        return;
    }
    std::vector<int> widths = wantedWidths();
    int over = -viewport()->width();
    for (const int width : widths)
        over += width;
    // Words take more rows when they must, so words columns give way first, then wide columns of answers;
    // numbers, limits and marks stay whole. Remarks at the right give way before the items at the left.
    const int letter = fontMetrics().averageCharWidth();
    over = giveWay(widths, SheetModel::Role::words, letter * 30, over);
    over = giveWay(widths, SheetModel::Role::amounts, letter * 30, over);
    // Narrower still where all of the sheet is then in sight; else one scrolls, and words stay comfortable.
    if (std::vector<int> narrow = widths; over > 0) {
        over = giveWay(narrow, SheetModel::Role::words, letter * 20, over);
        if (giveWay(narrow, SheetModel::Role::amounts, letter * 22, over) <= 0)
            widths = std::move(narrow);
    }
    for (int c = 0; c < m_model->columnCount(); ++c)
        setColumnWidth(c, widths[static_cast<std::size_t>(c)]);
    fitHeader();
    placeLimitsAndSources();
    verticalHeader()->setDefaultSectionSize(CellDelegate::lineHeight(font()));
    fitLines(0, m_model->rowCount() - 1);
    m_items->place();
}

void SheetView::fitHeader()
{
    int height = fontMetrics().height();
    for (int c = 0; c < m_model->columnCount(); ++c)
        height = std::max(
            height, fontMetrics()
                        .boundingRect(QRect(0, 0, columnWidth(c) - headerPadding, 1000), Qt::TextWordWrap,
                                      m_model->headerData(c, Qt::Horizontal, Qt::DisplayRole).toString())
                        .height());
    horizontalHeader()->setFixedHeight(std::min(height, fontMetrics().height() * 4) + 10);
}

/// Limit and sources stand beside the amounts, before any further words.
void SheetView::placeLimitsAndSources()
{
    QHeaderView *head = horizontalHeader();
    for (int c = 0; c < m_model->columnCount(); ++c)
        head->moveSection(head->visualIndex(c), c);
    int lastAmount = -1;
    for (int c = 0; c < m_model->columnCount(); ++c)
        if (m_model->roleOf(c) == SheetModel::Role::amounts)
            lastAmount = c;
    int after = lastAmount + 1;
    for (int c = 0; lastAmount >= 0 && c < m_model->columnCount(); ++c)
        if (m_model->roleOf(c) == SheetModel::Role::limit || m_model->roleOf(c) == SheetModel::Role::sources)
            head->moveSection(head->visualIndex(c), after++);
}

int SheetView::lineHeightOf(int line) const
{
    int height = CellDelegate::lineHeight(font());
    if (m_model->rowCount() > mostLinesMeasured)
        return height;
    for (int c = 0; c < m_model->columnCount(); ++c)
        height = std::max(height, m_delegate->neededHeight(m_model->index(line, c), columnWidth(c), font()));
    return height;
}

void SheetView::fitLines(int first, int last)
{
    for (int line = first; line <= last && m_model->rowCount() <= mostLinesMeasured; ++line)
        if (const int height = lineHeightOf(line); line != m_openLine && height != rowHeight(line))
            verticalHeader()->resizeSection(line, height);
}

/// The last column takes the room that is left only later; a person drags a column many times.
void SheetView::refitLinesSoon()
{
    if (m_refitting)
        return;
    m_refitting = true;
    QTimer::singleShot(0, this, [this] {
        m_refitting = false;
        fitLines(0, m_model->rowCount() - 1);
        placeSlip();
    });
}

void SheetView::changeEvent(QEvent *event)
{
    QTableView::changeEvent(event);
    if (event->type() != QEvent::FontChange || !m_slip)
        return;
    m_slip->useFont(font());
    fitColumns();
    placeSlip();
}

} // namespace puteal::desk
