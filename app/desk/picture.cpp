/// Putting the window into a state and grabbing it.
#include "desk/picture.h"

#include <QApplication>
#include <QImage>

#include "charts/chart_view.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"

namespace puteal::desk
{

bool takePicture(MainWindow &window, const PictureWish &wish, QString &why)
{
    window.resize(wish.size);
    window.show();
    QApplication::processEvents();
    if (!wish.cell.isEmpty()) {
        const auto at = window.session()->find(wish.cell.toStdString());
        if (!at) {
            why = QString::fromStdString(at.error().words);
            return false;
        }
        window.goTo(*at);
        QApplication::processEvents();
        if (!wish.typed.isEmpty()) {
            window.view()->openSlip(wish.typed, true);
            QApplication::processEvents();
        }
    }
    if (!wish.chart.isEmpty()) {
        const auto &charts = window.session()->workbook().charts;
        if (charts.empty()) {
            why = QStringLiteral("this workbook has no chart");
            return false;
        }
        window.showChart(wish.chart == QLatin1String("*") ? QString::fromStdString(charts.front().key)
                                                          : wish.chart);
    }
    for (int i = 0; i < 3; ++i) // what is laid out anew may be drawn anew
        QApplication::processEvents();
    const QPixmap picture = window.grab();
    if (picture.save(wish.out, "PNG"))
        return true;
    why = QStringLiteral("the file cannot be written");
    return false;
}

} // namespace puteal::desk
