/// `puteal-desk`: the window; `chart` and `page` write files without a display.
#include <clocale>
#include <cstdio>
#include <cstring>
#include <string>

#include <QApplication>
#include <QFileInfo>

#include "charts/chart_view.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/pdf_page.h"
#include "desk/picture.h"

using namespace puteal;

namespace
{

const char *const usage =
    "usage: puteal-desk [WORKBOOK]\n"
    "       puteal-desk chart WORKBOOK -o FILE.svg|.png|.pdf [--chart KEY]\n"
    "       puteal-desk page WORKBOOK -o FILE.pdf\n"
    "       puteal-desk picture WORKBOOK -o FILE.png [--cell SHEET.NAME] [--type TEXT] [--chart KEY|*]\n"
    "                           [--size 1366x768]\n"
    "       puteal-desk --help | --version\n";

struct Command {
    std::string verb, file, out, chart, cell, typed, size;
};

int complain(int code, const std::string &words)
{
    std::fprintf(stderr, "puteal-desk: %s\n", words.c_str());
    return code;
}

/// 2 wrong use; 0 fine.
int readCommand(int argc, char **argv, Command &command)
{
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        std::string *value = word == "-o"        ? &command.out
                             : word == "--chart" ? &command.chart
                             : word == "--cell"  ? &command.cell
                             : word == "--type"  ? &command.typed
                             : word == "--size"  ? &command.size
                                                 : nullptr;
        if (value && i + 1 < argc)
            *value = argv[++i];
        else if (i == 1 && (word == "chart" || word == "page" || word == "picture"))
            command.verb = word;
        else if (command.file.empty() && (word[0] != '-' || word.size() == 1))
            command.file = word;
        else
            return complain(2, "`" + word + "` is not understood; puteal-desk --help tells how it is used");
    }
    if (!command.verb.empty() && (command.file.empty() || command.out.empty()))
        return complain(2, command.verb + " needs a workbook and -o FILE");
    return 0;
}

int writePicture(const Command &command)
{
    desk::MainWindow window;
    window.setQuiet(true);
    if (!window.openFile(QString::fromStdString(command.file)))
        return complain(3, window.lastRefusal().toStdString());
    desk::PictureWish wish;
    wish.out = QString::fromStdString(command.out);
    wish.cell = QString::fromStdString(command.cell);
    wish.typed = QString::fromStdString(command.typed);
    wish.chart = QString::fromStdString(command.chart);
    if (const auto x = command.size.find('x'); x != std::string::npos)
        wish.size = QSize(std::atoi(command.size.c_str()), std::atoi(command.size.c_str() + x + 1));
    QString why;
    return desk::takePicture(window, wish, why)
               ? 0
               : complain(5, command.out + " was not written: " + why.toStdString());
}

int writeFile(const Command &command)
{
    const std::string &out = command.out;
    if (command.verb == "page" && (out.size() < 5 || out.substr(out.size() - 4) != ".pdf"))
        return complain(2, "a page is written as .pdf; " + out + " ends otherwise");
    const auto session = Session::open(command.file);
    if (!session) {
        const Error &error = session.error();
        return complain(3, error.place.fileLine > 0
                               ? command.file + ", file line " + std::to_string(error.place.fileLine) + ": " +
                                     error.words
                               : error.words);
    }
    QString why;
    const QString target = QString::fromStdString(out);
    bool written = false;
    if (command.verb == "chart") {
        const ChartView view = (*session)->chart(command.chart);
        if (view.error)
            return complain(2, view.error->words);
        written = charts::exportChart(view, target, why);
    } else {
        written = desk::writePdfPage(**session, target, why);
    }
    return written ? 0 : complain(5, command.out + " was not written: " + why.toStdString());
}

} // namespace

int main(int argc, char **argv)
{
    for (int i = 1; i < argc; ++i) {
        if (std::strcmp(argv[i], "--help") == 0 || std::strcmp(argv[i], "-h") == 0) {
            std::fputs(usage, stdout);
            return 0;
        }
        if (std::strcmp(argv[i], "--version") == 0) {
            std::printf("puteal-desk %s\n", PUTEAL_VERSION);
            return 0;
        }
    }
    Command command;
    if (const int wrong = readCommand(argc, argv, command))
        return wrong;
    if (!command.verb.empty()) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        // A file is written, nobody sees a window: the toolkit's notes about displays would only confuse.
        qInstallMessageHandler([](QtMsgType type, const QMessageLogContext &, const QString &words) {
            if (type == QtCriticalMsg || type == QtFatalMsg)
                std::fprintf(stderr, "puteal-desk: %s\n", words.toUtf8().constData());
        });
    }
    if (command.verb.empty() && qEnvironmentVariableIsEmpty("DISPLAY") &&
        qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") && qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        return complain(2, "there is no display; puteal work FILE prints a workbook, puteal-desk chart and "
                           "page write files");
    QApplication application(argc, argv);
    QApplication::setPalette(desk::dayPalette());
    // The toolkit takes number formats from the environment; formulas and files must not.
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName(QStringLiteral("puteal"));
    QCoreApplication::setApplicationName(QStringLiteral("puteal"));
    if (!command.verb.empty())
        return command.verb == "picture" ? writePicture(command) : writeFile(command);
    desk::MainWindow window;
    if (command.file.empty() || !window.openFile(QString::fromStdString(command.file)))
        window.newWorkbook();
    window.show();
    return QApplication::exec();
}
