/// The grid: keys, selection, the slip under the line, clipboard of plain text.
#pragma once

#include <functional>

#include <QTableView>

#include "desk/cell_delegate.h"
#include "desk/slip.h"

namespace puteal::desk
{

class ItemsInSight;

class SheetView : public QTableView
{
    Q_OBJECT
public:
    explicit SheetView(QWidget *parent = nullptr);

    void setSheet(Session *session, std::uint32_t sheet);
    SheetModel *sheetModel() const { return m_model; }
    Slip *slip() const { return m_slip; }
    CellAt currentCell() const;
    void setCurrentCell(const CellAt &at);
    /// The cell that names, limits and marks are meant for: for an item, the amount it names.
    CellAt meantCell() const;
    /// While a formula is typed, a cell pointed at puts its name in; false when nothing is typed.
    bool putsIn(const QModelIndex &index);
    /// Lines and columns of the selection, cells only (limit and source columns left out).
    struct Block {
        std::uint32_t left, right, first, last;
    };
    std::optional<Block> block() const;
    void openSlip(const QString &start, bool replace);
    /// Keeps what is typed; false when that is refused: it stays open then, with the sentence.
    bool finishTyping();
    /// Carries an edit out, or hands the error back.
    void setCarryOut(std::function<std::optional<Error>(const Edit &)> carryOut)
    {
        m_carryOut = std::move(carryOut);
    }
    void leaveSlip();
    void fitColumns();
    /// The selection as lines of tab-separated text; a cell without a result gives its formula.
    struct Copied {
        QString text;
        int formulas = 0; ///< cells that gave their formula
    };
    Copied copied() const;
    /// Height of a line without the slip that may be open under it.
    int lineHeightOf(int line) const;

signals:
    void edited(const puteal::Edit &edit);
    void cellChosen(const puteal::CellAt &at);
    void helpWanted(const QString &word);
    void said(const QString &words);
    void limitWanted();
    void sourcesWanted();

public:
    /// Scrolls sideways only when the cell is out of sight: the items beside it should stay.
    void scrollTo(const QModelIndex &index, ScrollHint hint = EnsureVisible) override;

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void inputMethodEvent(QInputMethodEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void scrollContentsBy(int dx, int dy) override;
    void currentChanged(const QModelIndex &current, const QModelIndex &previous) override;
    void changeEvent(QEvent *event) override;

private:
    void dressHeaders();
    std::vector<int> wantedWidths() const;
    int limitWidth(int column) const;
    int numberWidth(int column) const;
    int giveWay(std::vector<int> &widths, SheetModel::Role role, int least, int over) const;
    void fitHeader();
    void placeLimitsAndSources();
    void fitLines(int first, int last);
    void refitLinesSoon();
    void placeSlip();
    bool keep(int lineStep, int columnStep);
    QString referenceTo(const CellAt &at) const;

    Session *m_session = nullptr;
    SheetModel *m_model;
    CellDelegate *m_delegate;
    ItemsInSight *m_items;
    Slip *m_slip;
    std::function<std::optional<Error>(const Edit &)> m_carryOut;
    int m_openLine = -1;
    bool m_refitting = false; ///< lines are measured anew when the columns have come to rest
};

} // namespace puteal::desk
