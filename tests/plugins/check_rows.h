/// One row of a table of check values, and the comparison that all plugin tests use.
#pragma once

#include <QTest>

#include "plugins/called_plugin.h"

namespace called
{

/// rule | function | arguments | shows (in the result's unit) | relative tolerance
struct Row {
    const char *rule;
    const char *function;
    std::vector<Given> given;
    double shows;
    double tolerance;
};

inline void holds(const Plugin &plugin, const std::vector<Row> &rows)
{
    for (const Row &row : rows) {
        const Answer answer = plugin.call(row.function, row.given);
        QVERIFY2(!answer.refused, qPrintable(QString("%1: refused: %2").arg(row.rule, answer.words.c_str())));
        const double scale = row.shows == 0.0 ? 1.0 : std::fabs(row.shows);
        const bool close = std::fabs(answer.number - row.shows) <= row.tolerance * scale;
        QVERIFY2(close, qPrintable(QString("%1: %2 gives %3, not %4")
                                       .arg(row.rule, row.function)
                                       .arg(answer.number, 0, 'g', 12)
                                       .arg(row.shows, 0, 'g', 12)));
    }
}

} // namespace called
