/// A chart of the workbook on the screen, with its sentences, and the same chart as a file. Only this folder
/// knows the plotting library.
#pragma once

#include <QColor>
#include <QWidget>

#include "session/session.h"

namespace puteal::charts
{

/// Draws a ChartView: series told apart by dash, marker and end label as well as color; break-even points
/// ringed.
class ChartPane : public QWidget
{
    Q_OBJECT
public:
    explicit ChartPane(QWidget *parent = nullptr);
    ~ChartPane() override;
    void show(const ChartView &view);
    QString sentences() const;

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    void draw();
    void shareHeight();

    struct Parts;
    Parts *m_parts;
};

/// Colors of the lines, in the order they are used; each stands on white as text too.
std::vector<QColor> lineColors();

/// Writes the chart as .svg, .png or .pdf by the ending of `path`. False with `why` filled in when it cannot.
bool exportChart(const ChartView &view, const QString &path, QString &why, const QSize &size = {1100, 640});

/// The chart as SVG text, for a page.
QByteArray chartSvg(const ChartView &view, const QSize &size = {1000, 560});

} // namespace puteal::charts
