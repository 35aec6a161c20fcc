/// The table model of one sheet.
#include "desk/sheet_model.h"

#include "desk/look.h"
#include "units/unit.h"

namespace puteal::desk
{

namespace
{
quint64 keyOf(const CellAt &at)
{
    return (quint64{at.column} << 32) | at.line;
}
bool hasLimit(const Cell &cell)
{
    return cell.attributes && cell.attributes->limit.has_value();
}
bool isFilled(const Cell &cell)
{
    return !cell.blank();
}
} // namespace

SheetModel::SheetModel(QObject *parent) : QAbstractTableModel(parent) {}

void SheetModel::setSheet(const Session *session, std::uint32_t sheet)
{
    beginResetModel();
    m_session = session;
    m_sheet = sheet;
    m_views.clear();
    m_lit.clear();
    countColumns();
    endResetModel();
}

void SheetModel::countColumns()
{
    m_limited.reset();
    m_filled.reset();
    for (std::uint32_t c = 0; m_session && c < book().columnCount(); ++c)
        for (std::uint32_t l = 0; l < book().lineCount() && !(m_limited && m_filled); ++l) {
            const Cell &cell = book().cell(c, l);
            if (!m_limited && hasLimit(cell))
                m_limited = CellAt{m_sheet, c, l};
            if (!m_filled && isFilled(cell))
                m_filled = CellAt{m_sheet, c, l};
        }
    placeColumns();
}

void SheetModel::placeColumns()
{
    m_columns = m_session ? static_cast<int>(book().columnCount()) : 0;
    m_limitColumn = m_sourceColumn = -1;
    int amounts = 0;
    for (std::uint32_t c = 0; m_session && c < book().columnCount(); ++c)
        amounts += book().column(c).kind == ColumnKind::amounts ? 1 : 0;
    if (amounts == 0)
        return;
    if (m_limited)
        m_limitColumn = m_columns;
    if (m_filled && amounts <= 2)
        m_sourceColumn = m_columns + (m_limited ? 1 : 0);
}

/// After an edit: the cell that showed it still does, or one of the changed ones does now. False: search.
bool SheetModel::bearsOut(std::optional<CellAt> &shown, bool (*shows)(const Cell &),
                          const std::vector<CellAt> &changed) const
{
    if (shown)
        return shows(book().cell(shown->column, shown->line));
    for (const CellAt &at : changed)
        if (shows(book().cell(at.column, at.line))) {
            shown = at;
            break;
        }
    return true;
}

void SheetModel::cellsChanged(const std::vector<CellAt> &cells)
{
    std::vector<CellAt> mine;
    for (const CellAt &at : cells)
        if (at.sheet == m_sheet)
            mine.push_back(at);
    if (mine.size() > m_views.size())
        m_views.clear();
    else
        for (const CellAt &at : mine)
            m_views.erase(keyOf(at));
    const int before = columnCount();
    if (bearsOut(m_limited, hasLimit, mine) && bearsOut(m_filled, isFilled, mine))
        placeColumns();
    else
        countColumns();
    if (before != columnCount()) {
        everythingChanged();
        return;
    }
    // One signal a run of lines; the words column of a line shows what its amounts say.
    for (std::size_t i = 0; i < mine.size();) {
        std::size_t j = i + 1;
        while (j < mine.size() && mine[j].column == mine[i].column && mine[j].line == mine[j - 1].line + 1)
            ++j;
        emit dataChanged(index(static_cast<int>(mine[i].line), 0),
                         index(static_cast<int>(mine[j - 1].line), columnCount() - 1));
        i = j;
    }
}

void SheetModel::everythingChanged()
{
    beginResetModel();
    m_views.clear();
    countColumns();
    endResetModel();
}

void SheetModel::setLit(const std::vector<CellAt> &cells)
{
    QSet<quint64> lit;
    for (const CellAt &at : cells)
        if (at.sheet == m_sheet)
            lit.insert(keyOf(at));
    if (lit == m_lit)
        return;
    m_lit = std::move(lit);
    if (rowCount() > 0)
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1), {Qt::BackgroundRole});
}

bool SheetModel::isLit(const CellAt &at) const
{
    return m_lit.contains(keyOf(at));
}

SheetModel::Role SheetModel::roleOf(int column) const
{
    if (column == m_limitColumn)
        return Role::limit;
    if (column == m_sourceColumn)
        return Role::sources;
    return book().column(static_cast<std::uint32_t>(column)).kind == ColumnKind::words ? Role::words
                                                                                       : Role::amounts;
}

CellAt SheetModel::amountOfLine(int line, int fromColumn) const
{
    const auto l = static_cast<std::uint32_t>(line);
    std::optional<CellAt> first;
    for (auto c = static_cast<std::uint32_t>(fromColumn); c < book().columnCount(); ++c) {
        if (book().column(c).kind != ColumnKind::amounts)
            continue;
        const CellAt at{m_sheet, c, l};
        if (!first)
            first = at;
        if (!book().cell(c, l).blank() || book().cell(c, l).attributes)
            return at;
    }
    return first.value_or(CellAt{m_sheet, static_cast<std::uint32_t>(fromColumn), l});
}

CellAt SheetModel::cellOf(const QModelIndex &index) const
{
    const Role role = roleOf(index.column());
    if (role == Role::words || role == Role::amounts)
        return {m_sheet, static_cast<std::uint32_t>(index.column()), static_cast<std::uint32_t>(index.row())};
    for (std::uint32_t c = 0; c < book().columnCount(); ++c) {
        const Cell &cell = book().cell(c, static_cast<std::uint32_t>(index.row()));
        if (role == Role::limit ? cell.beside().limit.has_value()
                                : (book().column(c).kind == ColumnKind::amounts && !cell.blank()))
            return {m_sheet, c, static_cast<std::uint32_t>(index.row())};
    }
    return amountOfLine(index.row(), 0);
}

const CellView &SheetModel::viewOf(const CellAt &at) const
{
    const auto key = keyOf(at);
    auto found = m_views.find(key);
    if (found == m_views.end())
        found = m_views.emplace(key, m_session->view(at)).first;
    return found->second;
}

bool SheetModel::isBareAmount(const CellAt &at) const
{
    const Program &program = m_session->program();
    const NodeId node = program.nodeOf(at);
    return book().cell(at.column, at.line).blank() || (program.typeOf(node).kind == ValueKind::quantity &&
                                                       m_session->values().status[node] == ErrorKind::none);
}

int SheetModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() || !m_session ? 0 : static_cast<int>(book().lineCount());
}

int SheetModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : m_columns + (m_limitColumn >= 0 ? 1 : 0) + (m_sourceColumn >= 0 ? 1 : 0);
}

QString SheetModel::spoken(const CellAt &at, const CellView &view) const
{
    QString words = fromUtf8(m_session->labelOf(at));
    if (view.error)
        return words + QStringLiteral(", ") + fromUtf8(view.shown);
    if (view.type.kind == ValueKind::quantity && !view.quantity.number.empty())
        words += QStringLiteral(", ") + fromUtf8(view.quantity.number) + QLatin1Char(' ') +
                 fromUtf8(spokenUnit(view.unit, m_session->program().units()));
    else if (!view.shown.empty())
        words += QStringLiteral(", ") + fromUtf8(view.shown);
    if (view.state != LimitState::noLimit)
        words += QStringLiteral(", ") + stateWord(view.state);
    return words;
}

QVariant SheetModel::data(const QModelIndex &index, int role) const
{
    if (!index.isValid() || !m_session)
        return {};
    const CellAt at = cellOf(index);
    const Role column = roleOf(index.column());
    switch (role) {
    case Qt::DisplayRole: {
        const CellView &view = viewOf(at);
        if (column == Role::limit)
            return fromUtf8(view.limit);
        if (column == Role::sources) {
            QStringList marks;
            for (const auto &mark : view.sources)
                marks += fromUtf8(mark);
            return marks.join(QLatin1Char(' '));
        }
        return fromUtf8(view.shown);
    }
    case Qt::EditRole:
        return fromUtf8(viewOf(at).typed);
    case Qt::ToolTipRole: {
        const CellView &view = viewOf(at);
        QStringList lines;
        // What may be cut in the cell is whole here.
        if ((column == Role::words || column == Role::amounts) &&
            (view.error || view.type.kind != ValueKind::quantity) && view.shown.size() > 30)
            lines += fromUtf8(view.shown);
        if (column == Role::limit || view.state == LimitState::near || view.state == LimitState::outside)
            lines += fromUtf8(view.stateWords);
        if (!view.reason.empty())
            lines += fromUtf8(view.reason);
        for (const auto &caution : view.cautions)
            lines += fromUtf8(caution);
        return lines.join(QLatin1Char('\n')).toHtmlEscaped();
    }
    case Qt::AccessibleTextRole:
        return column == Role::words ? fromUtf8(viewOf(at).shown) : spoken(at, viewOf(at));
    case Qt::AccessibleDescriptionRole:
        return tr("line %1").arg(index.row() + 1);
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(
            Qt::Alignment(Qt::AlignVCenter | (column == Role::amounts ? Qt::AlignRight : Qt::AlignLeft)));
    default:
        return {};
    }
}

QVariant SheetModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (!m_session)
        return {};
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(int(Qt::AlignLeft) | int(Qt::AlignVCenter) | int(Qt::TextWordWrap));
    const Role column = roleOf(section);
    if (role == Qt::DisplayRole) {
        if (column == Role::limit)
            return tr("Limit");
        if (column == Role::sources)
            return tr("Sources");
        return fromUtf8(book().column(static_cast<std::uint32_t>(section)).title);
    }
    if (role == Qt::ToolTipRole && (column == Role::words || column == Role::amounts))
        return tr("column %1").arg(fromUtf8(book().column(static_cast<std::uint32_t>(section)).key));
    return {};
}

Qt::ItemFlags SheetModel::flags(const QModelIndex &index) const
{
    Q_UNUSED(index);
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

} // namespace puteal::desk
