/// The window without a display: first paint against a bare main window, a large grid against the toolkit's
/// own table view, and an edit at the head of a long chain against recalculation and one repaint.
#include <clocale>

#include <QAbstractTableModel>
#include <QApplication>
#include <QFile>
#include <QHeaderView>
#include <QMainWindow>
#include <QMenuBar>
#include <QScrollBar>
#include <QSplitter>
#include <QTableView>
#include <QTemporaryDir>

#include <qcustomplot.h>

#include "bench/rounds.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"

using namespace puteal;
using namespace puteal::desk;
using puteal::test::median;
using puteal::test::processorMilliseconds;

namespace
{

/// A table of bare numbers.
class BareModel : public QAbstractTableModel
{
public:
    BareModel(int rows, int columns) : m_rows(rows), m_columns(columns) {}
    int rowCount(const QModelIndex & = {}) const override { return m_rows; }
    int columnCount(const QModelIndex & = {}) const override { return m_columns; }
    QVariant data(const QModelIndex &index, int role) const override
    {
        return role == Qt::DisplayRole ? QVariant(QString::number(index.row() * 7 + index.column()))
                                       : QVariant();
    }

private:
    int m_rows, m_columns;
};

struct Turns {
    std::vector<double> ours, floors, ratios;
    template<class Ours, class Floor>
    void take(int rounds, Ours mine, Floor floor)
    {
        for (int round = 0; round < rounds; ++round) {
            ours.push_back(processorMilliseconds(mine));
            floors.push_back(processorMilliseconds(floor));
            ratios.push_back(ours.back() / floors.back());
        }
    }
    void print(const char *name, double figure) const
    {
        std::printf(
            "{\"bench\":\"%s\",\"ours_ms\":%.3f,\"floor_ms\":%.3f,\"ratio\":%.2f,\"spread\":[%.2f,%.2f],"
            "\"figure\":%g}\n",
            name, median(ours), median(floors), median(ratios),
            *std::min_element(ratios.begin(), ratios.end()), *std::max_element(ratios.begin(), ratios.end()),
            figure);
        std::fflush(stdout);
    }
};

/// Milliseconds of processor time of each of many pieces; the median and the 95th percentile.
template<class Work>
void printMilliseconds(const char *name, double figure, int times, Work work)
{
    std::vector<double> all;
    for (int i = 0; i < times; ++i)
        all.push_back(processorMilliseconds([&] { work(i); }));
    std::sort(all.begin(), all.end());
    std::printf("{\"bench\":\"%s\",\"median_ms\":%.3f,\"ms_95\":%.3f,\"figure_ms\":%g}\n", name, median(all),
                all[all.size() * 95 / 100], figure);
    std::fflush(stdout);
}

void settle()
{
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents();
}

/// A sheet `s` of amounts columns q0 ..; `cell` gives the record of a place, "" for none.
std::string bookText(int columns, int lines, const std::function<std::string(int, int)> &cell)
{
    std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\n";
    for (int c = 0; c < columns; ++c)
        text += "column q" + std::to_string(c) + " amounts \"Column\" 10\n";
    for (int l = 0; l < lines; ++l) {
        text += "line\n";
        for (int c = 0; c < columns; ++c)
            text += cell(c, l);
    }
    return text + "end s " + std::to_string(lines) + "\nend workbook\n";
}

std::string typed(int c, int l)
{
    return "q" + std::to_string(c) + ": " + std::to_string((l * 7 + c) % 1000) + "." +
           std::to_string(l % 10) + " mg/L\n";
}

QString written(const QTemporaryDir &folder, const char *name, const std::string &text)
{
    QFile file(folder.filePath(QString::fromLatin1(name)));
    if (file.open(QIODevice::WriteOnly))
        file.write(text.data(), static_cast<qint64>(text.size()));
    return file.fileName();
}

/// A main window with menus, a table and a chart, and nothing of ours in it.
void bareWindow()
{
    BareModel model(30, 4);
    QMainWindow window;
    for (const char *name : {"Workbook", "Sheet", "Cell", "View", "Help"})
        for (int i = 0; i < 8; ++i)
            window.menuBar()->addMenu(QString::fromLatin1(name))->addAction(QStringLiteral("Do this"));
    auto *splitter = new QSplitter;
    auto *table = new QTableView;
    table->setModel(&model);
    splitter->addWidget(table);
    auto *plot = new QCustomPlot;
    plot->addGraph()->setData({0, 1, 2}, {0, 1, 2});
    plot->rescaleAxes();
    splitter->addWidget(plot);
    window.setCentralWidget(splitter);
    window.resize(1366, 768);
    window.show();
    settle();
    window.repaint();
}

void ourWindow(const QString &file)
{
    MainWindow window;
    window.setQuiet(true);
    if (file.isEmpty())
        window.newWorkbook();
    else
        window.openFile(file);
    window.show();
    settle();
    window.repaint();
}

void firstPaint(const QTemporaryDir &folder)
{
    const QString file = written(folder, "cells.puteal", bookText(10, 1000, typed));
    bareWindow();
    ourWindow({});
    ourWindow(file);
    Turns empty, filled;
    empty.take(
        9, [] { ourWindow({}); }, bareWindow);
    empty.print("window_first_paint_empty", 1.5);
    filled.take(
        9, [&] { ourWindow(file); }, [] { ourWindow({}); });
    filled.print("window_first_paint_10000_cells_against_empty", 1.1);
}

bool grid()
{
    constexpr int lines = 100000, columns = 26, full = 19; // a workbook holds two million filled cells
    auto session = Session::fromText(
        bookText(columns, lines, [](int c, int l) { return c < full ? typed(c, l) : std::string(); }),
        PluginFolders{});
    if (!session)
        return false;
    SheetView view;
    view.resize(1366, 768);
    view.setSheet(session->get(), 0);
    view.show();
    BareModel model(lines, columns);
    QTableView stock;
    stock.resize(1366, 768);
    stock.setModel(&model);
    stock.verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    stock.verticalHeader()->setDefaultSectionSize(view.verticalHeader()->defaultSectionSize());
    for (int c = 0; c < columns; ++c)
        stock.setColumnWidth(c, view.columnWidth(c));
    stock.setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    stock.show();
    settle();
    const auto page = [](QTableView &one) {
        one.verticalScrollBar()->triggerAction(QAbstractSlider::SliderPageStepAdd);
        settle();
    };
    Turns scroll, repaint;
    scroll.take(
        200, [&] { page(view); }, [&] { page(stock); });
    scroll.print("grid_100000x26_page_scroll", 1.0);
    repaint.take(
        50, [&] { view.viewport()->repaint(); }, [&] { stock.viewport()->repaint(); });
    repaint.print("grid_100000x26_full_repaint_against_stock", 1.0);
    printMilliseconds("grid_100000x26_full_repaint", 16.7, 100, [&](int) { view.viewport()->repaint(); });
    const auto line = static_cast<std::uint32_t>(view.rowAt(100));
    bool right = true;
    printMilliseconds("grid_100000x26_one_cell_change", 1.0, 100, [&](int i) {
        const auto change = (*session)->apply(SetText{{0, 1, line}, std::to_string(i) + ".5 mg/L"});
        right = right && change && change->changed.size() == 1;
        view.sheetModel()->cellsChanged(change->changed);
        settle();
    });
    return right && (*session)->view({0, 1, line}).shown == "99.5 mg/L";
}

bool chain(const QTemporaryDir &folder)
{
    constexpr int lines = 100000;
    const std::string text = bookText(1, lines, [](int, int l) {
        return l == 0 ? std::string("q0: 1\n")
                      : (l == 1 ? std::string("fill q0: q0[-1] + 1\n") : std::string()) +
                            (l == lines - 1 ? "stop q0\n" : "");
    });
    MainWindow window;
    window.setQuiet(true);
    if (!window.openFile(written(folder, "chain.puteal", text)))
        return false;
    window.show();
    settle();
    auto bare = Session::fromText(text, PluginFolders{});
    Workbook book = (*bare)->workbook();
    const UnitTable units;
    const auto program = Program::build(book, units, Registry::general(units));
    Values values = program->evaluate();
    int head = 1, bareHead = 1;
    const auto textOf = [](int number) {
        return std::make_shared<const std::string>(std::to_string(number));
    };
    Turns edit;
    edit.take(
        15,
        [&] {
            window.apply(SetText{{0, 0, 0}, std::to_string(++head)});
            settle();
        },
        [&] {
            book.sheets[0].setCell(0, 0, Cell{textOf(++bareHead), nullptr});
            program->update(book, {{0, 0, 0}}, values);
            window.view()->viewport()->repaint();
        });
    edit.print("edit_to_repaint_chain_100000", 2);
    return window.session()->view({0, 0, lines - 1}).number == head + lines - 1 &&
           values.number[lines - 1] == bareHead + lines - 1;
}

} // namespace

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qInstallMessageHandler([](QtMsgType, const QMessageLogContext &, const QString &) {});
    QApplication app(argc, argv);
    QApplication::setPalette(dayPalette());
    std::setlocale(LC_NUMERIC, "C");
    const QTemporaryDir folder;
    const std::string_view wanted = argc > 1 ? argv[1] : ""; // first, grid or chain; nothing for all
    if (wanted.empty() || wanted == "first")
        firstPaint(folder);
    if (((!wanted.empty() && wanted != "grid") || grid()) &&
        ((!wanted.empty() && wanted != "chain") || chain(folder)))
        return 0;
    std::fprintf(stderr, "a cell does not show what it should\n");
    return 1;
}
