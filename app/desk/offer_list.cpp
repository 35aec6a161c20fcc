/// Rows of a word and what it is, placed where the screen has room for them.
#include "desk/offer_list.h"

#include <QPainter>
#include <QScreen>
#include <QScrollBar>
#include <QStyledItemDelegate>

#include "desk/look.h"

namespace puteal::desk
{

namespace
{

constexpr int rowsShown = 8, gap = 16, edge = 6;
enum { detailRole = Qt::UserRole };

/// The word in the letters of formulas, what it is beside it in quiet ones, all details one under another.
class OfferRow : public QStyledItemDelegate
{
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    int across = 0; ///< room of the words
    QFont details;

    QSize sizeHint(const QStyleOptionViewItem &option, const QModelIndex &) const override
    {
        return {100, QFontMetrics(option.font).height() + 4};
    }
    void paint(QPainter *painter, const QStyleOptionViewItem &option, const QModelIndex &index) const override
    {
        const bool chosen = option.state & QStyle::State_Selected;
        const QRect box = option.rect.adjusted(edge, 0, -edge, 0);
        painter->save();
        painter->fillRect(option.rect, chosen ? color::chosen : color::paper);
        painter->setFont(option.font);
        painter->setPen(color::text);
        QRect word = box;
        word.setWidth(across);
        painter->drawText(word, Qt::AlignVCenter | Qt::AlignLeft,
                          QFontMetrics(option.font)
                              .elidedText(index.data(Qt::DisplayRole).toString(), Qt::ElideMiddle, across));
        QRect detail = box;
        detail.setLeft(box.left() + across + gap);
        painter->setFont(details);
        painter->setPen(chosen ? color::text : color::quiet);
        painter->drawText(detail, Qt::AlignVCenter | Qt::AlignLeft,
                          QFontMetrics(details).elidedText(index.data(detailRole).toString(), Qt::ElideRight,
                                                           detail.width()));
        painter->restore();
    }
};

} // namespace

OfferList::OfferList(QWidget *parent) : QListWidget(parent)
{
    setWindowFlags(Qt::ToolTip);
    setFocusPolicy(Qt::NoFocus);
    setAccessibleName(tr("what could come next"));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setUniformItemSizes(true);
    setItemDelegate(new OfferRow(this));
    hide();
}

void OfferList::useFonts(const QFont &words, const QFont &details)
{
    setFont(words);
    // What a font leaves open a painter takes from the widget, whose letters are those of formulas.
    QFont plain = details;
    plain.setFamily(details.family());
    plain.setPointSizeF(details.pointSizeF());
    plain.setStyleHint(QFont::AnyStyle);
    plain.setFixedPitch(false);
    static_cast<OfferRow *>(itemDelegate())->details = plain;
}

void OfferList::offer(const Completions &completions, const QString &typed, const QRect &caret)
{
    m_completions = completions;
    m_walked = false;
    clear();
    // Nothing is to be chosen where the only word is typed already.
    if (completions.offers.empty() || (completions.offers.size() == 1 && !typed.isEmpty() &&
                                       fromUtf8(completions.offers.front().text) == typed)) {
        hide();
        return;
    }
    int row = 0, across = 0;
    const QFontMetrics metrics(font());
    for (const Completion &offer : completions.offers) {
        const QString word = fromUtf8(offer.text), detail = fromUtf8(offer.detail);
        auto *item = new QListWidgetItem(word, this);
        item->setData(detailRole, detail);
        item->setData(Qt::AccessibleTextRole, word + QStringLiteral(", ") + detail);
        if (word == typed && row == 0)
            row = count() - 1;
        across = std::max(across, metrics.horizontalAdvance(word) + 2);
    }
    static_cast<OfferRow *>(itemDelegate())->across = std::min(across, metrics.averageCharWidth() * 34);
    setCurrentRow(row);
    place(caret);
}

/// Below the caret; above it where the screen ends, and never beyond its sides.
void OfferList::place(const QRect &caret)
{
    const QRect there = screen()->availableGeometry();
    const int row = std::max(1, sizeHintForRow(0));
    const int below = there.bottom() - caret.bottom() - 8, above = caret.top() - there.top() - 8;
    const int wanted = row * std::min(rowsShown, count()) + 2 * frameWidth();
    const bool goesBelow = wanted <= below || below >= above;
    const int high = std::clamp(wanted, row + 2 * frameWidth(), std::max(row, goesBelow ? below : above));
    const int wide = std::min(there.width(), fontMetrics().averageCharWidth() * 84);
    const int left = std::clamp(caret.left(), there.left(), std::max(there.left(), there.right() - wide));
    setGeometry(left, goesBelow ? caret.bottom() + 4 : caret.top() - 4 - high, wide, high);
    show();
}

bool OfferList::walk(int key)
{
    const int step = key == Qt::Key_Down       ? 1
                     : key == Qt::Key_Up       ? -1
                     : key == Qt::Key_PageDown ? rowsShown
                     : key == Qt::Key_PageUp   ? -rowsShown
                                               : 0;
    if (step == 0)
        return false;
    // One step goes round; a page stops at the ends.
    const bool one = step == 1 || step == -1;
    setCurrentRow(one ? (currentRow() + step + count()) % count()
                      : std::clamp(currentRow() + step, 0, count() - 1));
    m_walked = true;
    return true;
}

const Completion *OfferList::chosen() const
{
    const int row = currentRow();
    return isVisible() && row >= 0 ? &m_completions.offers[static_cast<std::size_t>(row)] : nullptr;
}

} // namespace puteal::desk
