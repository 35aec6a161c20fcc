/// A picture of the window without a display: for the README and for looking at every view by script.
#pragma once

#include <QSize>
#include <QString>

namespace puteal::desk
{

class MainWindow;

/// What the picture shows.
struct PictureWish {
    QString out;
    QSize size{1366, 768};
    QString cell;  ///< "sheet.name" to put the cursor on
    QString typed; ///< text typed into that cell, slip left open
    QString chart; ///< chart key instead of a sheet; "*" = the first
};

/// Shows the window offscreen in that state and writes it as PNG. False with `why`.
bool takePicture(MainWindow &window, const PictureWish &wish, QString &why);

} // namespace puteal::desk
