/// Opening, saving, recent files, and what is said to the person about them.
#include <QDateTime>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QSettings>
#include <QStatusBar>

#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"

namespace puteal::desk
{

void MainWindow::say(const QString &words)
{
    m_words = words;
    m_message->setAccessibleName(words);
    m_message->setToolTip(words.toHtmlEscaped());
    elideMessage();
}

void MainWindow::elideMessage()
{
    m_message->setText(
        m_message->fontMetrics().elidedText(QString(m_words).replace(QLatin1Char('\n'), QLatin1Char(' ')),
                                            Qt::ElideRight, std::max(40, m_message->width() - 4)));
}

bool MainWindow::eventFilter(QObject *watched, QEvent *event)
{
    // The message has the room that the other words of the status line leave.
    if (watched == m_message && event->type() == QEvent::Resize)
        elideMessage();
    return QMainWindow::eventFilter(watched, event);
}

void MainWindow::refuse(const QString &words)
{
    m_refusal = words;
    say(words);
    if (m_quiet)
        return;
    QMessageBox box(QMessageBox::Information, QStringLiteral("Puteal"), {}, QMessageBox::Ok, this);
    box.setTextFormat(Qt::PlainText); // words may quote what a file says
    box.setText(words);
    box.exec();
}

bool MainWindow::openFile(const QString &path)
{
    auto session = Session::open(path.toStdString());
    if (!session) {
        const Error &error = session.error();
        if (!QFileInfo::exists(path))
            forget(path);
        const bool told = error.words.find("(file line ") != std::string::npos;
        refuse(error.place.fileLine > 0 && !told
                   ? tr("%1, file line %2: %3").arg(path).arg(error.place.fileLine).arg(fromUtf8(error.words))
               : told ? tr("%1: %2").arg(path, fromUtf8(error.words))
                      : fromUtf8(error.words));
        return false;
    }
    take(std::move(*session));
    remember(path);
    return true;
}

bool MainWindow::mayLeave()
{
    if (!mayMoveOn())
        return false;
    if (!m_session || !m_session->unsaved())
        return true;
    QMessageBox box(QMessageBox::Question, QStringLiteral("Puteal"), {}, QMessageBox::NoButton, this);
    box.setTextFormat(Qt::PlainText);
    box.setText(tr("%1 has changes that are not saved.").arg(fromUtf8(m_session->workbook().title)));
    auto *keep = box.addButton(tr("Save"), QMessageBox::AcceptRole);
    auto *drop = box.addButton(tr("Leave without saving"), QMessageBox::DestructiveRole);
    auto *stay = box.addButton(tr("Stay"), QMessageBox::RejectRole);
    box.setDefaultButton(keep);
    box.setEscapeButton(stay);
    box.exec();
    if (box.clickedButton() == keep)
        return save();
    return box.clickedButton() == drop;
}

bool MainWindow::save()
{
    if (!m_session || !mayMoveOn())
        return false;
    if (m_session->path().empty())
        return saveElsewhere();
    return saveAs(QString::fromStdString(m_session->path().string()));
}

bool MainWindow::saveElsewhere()
{
    // The ending is put on before the dialog asks about a file that is there already.
    QFileDialog dialog(this, tr("Save workbook"), QString(), tr("Workbooks (*.puteal)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setFileMode(QFileDialog::AnyFile);
    dialog.setDefaultSuffix(QStringLiteral("puteal"));
    if (!m_session->path().empty())
        dialog.selectFile(QString::fromStdString(m_session->path().string()));
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty())
        return false;
    return saveAs(dialog.selectedFiles().front());
}

/// Another program wrote to the file: whose changes are to stand is the person's choice.
bool MainWindow::mayReplace(const QString &path)
{
    const QString name = QFileInfo(path).fileName();
    m_refusal =
        tr("not saved: %1 was changed by another program since it was opened here; save under another "
           "name, or open it again")
            .arg(name);
    say(m_refusal);
    if (m_quiet)
        return false;
    QMessageBox box(QMessageBox::Question, QStringLiteral("Puteal"), {}, QMessageBox::NoButton, this);
    box.setTextFormat(Qt::PlainText);
    box.setText(tr("%1 was changed by another program since it was opened here.").arg(name));
    box.setInformativeText(
        tr("Replacing puts your workbook in its place; what stands there now is kept beside it "
           "as %1.before.")
            .arg(name));
    auto *other = box.addButton(tr("Save under another name"), QMessageBox::AcceptRole);
    auto *replace = box.addButton(tr("Replace"), QMessageBox::DestructiveRole);
    auto *stay = box.addButton(tr("Stay"), QMessageBox::RejectRole);
    box.setDefaultButton(other);
    box.setEscapeButton(stay);
    box.exec();
    if (box.clickedButton() == other)
        saveElsewhere();
    return box.clickedButton() == replace;
}

bool MainWindow::saveAs(const QString &path)
{
    if (!mayMoveOn())
        return false;
    if (path.toStdString() == m_session->path().string() && m_session->changedOnDisk()) {
        if (!mayReplace(path))
            return false;
        m_session->acceptDisk();
    }
    const auto saved = m_session->save(path.toStdString());
    if (!saved) {
        refuse(fromUtf8(saved.error().words));
        return false;
    }
    say({});
    m_saved->setText(tr("Saved %1").arg(QDateTime::currentDateTime().toString(QStringLiteral("HH:mm:ss"))));
    remember(path);
    refreshTitle();
    return true;
}

void MainWindow::remember(const QString &path)
{
    QSettings settings;
    QStringList recent = settings.value(QStringLiteral("recent")).toStringList();
    const QString whole = QFileInfo(path).absoluteFilePath();
    recent.removeAll(whole);
    recent.prepend(whole);
    while (recent.size() > 8)
        recent.removeLast();
    settings.setValue(QStringLiteral("recent"), recent);
    fillRecent();
}

void MainWindow::forget(const QString &path)
{
    QSettings settings;
    QStringList recent = settings.value(QStringLiteral("recent")).toStringList();
    if (recent.removeAll(QFileInfo(path).absoluteFilePath()) == 0)
        return;
    settings.setValue(QStringLiteral("recent"), recent);
    fillRecent();
}

void MainWindow::fillRecent()
{
    m_recent->clear();
    const QStringList recent = QSettings().value(QStringLiteral("recent")).toStringList();
    int number = 0;
    for (const QString &path : recent) {
        const QFileInfo file(path);
        QString words = tr("%1, in %2").arg(file.fileName(), file.absolutePath());
        words.replace(QLatin1Char('&'), QStringLiteral("&&"));
        auto *action = m_recent->addAction(QStringLiteral("&%1  %2").arg(++number).arg(words));
        // Opening fills this menu anew: not while it still tells of the click.
        connect(
            action, &QAction::triggered, this,
            [this, path] {
                if (mayLeave())
                    openFile(path);
            },
            Qt::QueuedConnection);
    }
    m_recent->setEnabled(!recent.isEmpty());
}

/// The title beside the menus, cut with dots where they leave too little room.
void MainWindow::fitTitle()
{
    const QString title = m_session ? fromUtf8(m_session->workbook().title) : QString();
    const int menus = menuBar()->actionGeometry(menuBar()->actions().back()).right();
    const int margins = m_title->contentsMargins().left() + m_title->contentsMargins().right();
    const int room = std::max(60, width() - menus - margins - 8);
    const QString shown = m_title->fontMetrics().elidedText(title, Qt::ElideRight, room);
    m_title->setText(shown);
    m_title->setToolTip(title.toHtmlEscaped());
    m_title->setFixedWidth(m_title->fontMetrics().horizontalAdvance(shown) + margins + 2);
    menuBar()->setCornerWidget(m_title, Qt::TopRightCorner); // else it keeps the width of the title before
}

void MainWindow::refreshTitle()
{
    const QString title = fromUtf8(m_session->workbook().title);
    fitTitle();
    setWindowTitle(
        QStringLiteral("%1%2 - Puteal").arg(title, m_session->unsaved() ? tr(" (not saved)") : QString()));
    if (m_session->unsaved())
        m_saved->setText(tr("not saved"));
    else if (m_saved->text() == tr("not saved"))
        m_saved->clear();
    setWindowFilePath(QString::fromStdString(m_session->path().string()));
}

} // namespace puteal::desk
