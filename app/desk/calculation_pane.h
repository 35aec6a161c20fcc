/// The right pane: how the chosen cell came about, its limit, its sources, and who uses it.
#pragma once

#include <QTextBrowser>

#include "session/session.h"

namespace puteal::desk
{

class CalculationPane : public QTextBrowser
{
    Q_OBJECT
public:
    explicit CalculationPane(QWidget *parent = nullptr);
    void show(const Session &session, const CellAt &at);
    /// Help of a function, unit or name in place of the calculation.
    void showHelp(const QString &title, const QString &text);

signals:
    void cellWanted(const puteal::CellAt &at);

private:
    void followed(const QUrl &link);
    QString cellLinks(const Session &session, std::uint32_t sheet, const std::vector<CellAt> &cells) const;
};

} // namespace puteal::desk
