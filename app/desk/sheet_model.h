/// One sheet as a table model: its columns, then the limit and source columns where the sheet has any.
#pragma once

#include <QAbstractTableModel>
#include <QSet>

#include <unordered_map>

#include "session/session.h"

namespace puteal::desk
{

class SheetModel : public QAbstractTableModel
{
    Q_OBJECT
public:
    explicit SheetModel(QObject *parent = nullptr);

    /// Shows a sheet of a session; resets the model.
    void setSheet(const Session *session, std::uint32_t sheet);
    std::uint32_t sheet() const { return m_sheet; }
    const Session *session() const { return m_session; }
    /// Some cells changed: repaints only those runs.
    void cellsChanged(const std::vector<CellAt> &cells);
    void everythingChanged();
    /// Names a formula being typed uses (cells of this sheet): their items are lit.
    void setLit(const std::vector<CellAt> &cells);

    enum class Role { words, amounts, limit, sources };
    Role roleOf(int column) const;
    /// The cell an index stands for: its own, or for limit and source columns the line's first amount that
    /// has one.
    CellAt cellOf(const QModelIndex &index) const;
    const CellView &viewOf(const CellAt &at) const;
    /// Blank, or an amount with a result: known without its view.
    bool isBareAmount(const CellAt &at) const;
    /// The cell of the line a words cell names: the first amounts cell right of it.
    CellAt amountOfLine(int line, int fromColumn) const;
    bool isLit(const CellAt &at) const;

    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

private:
    void countColumns();
    void placeColumns();
    bool bearsOut(std::optional<CellAt> &shown, bool (*shows)(const Cell &),
                  const std::vector<CellAt> &changed) const;
    const Sheet &book() const { return m_session->workbook().sheets[m_sheet]; }
    QString spoken(const CellAt &at, const CellView &view) const;

    const Session *m_session = nullptr;
    std::uint32_t m_sheet = 0;
    int m_columns = 0;
    int m_limitColumn = -1, m_sourceColumn = -1;
    /// A cell with a limit, a cell that is filled: while they are so, the columns stand without a search.
    std::optional<CellAt> m_limited, m_filled;
    /// Nodes stay where they are when others come: a view is held while the next one is asked for.
    mutable std::unordered_map<quint64, CellView> m_views;
    QSet<quint64> m_lit;
};

} // namespace puteal::desk
