/// Plain dialogs for what stands beside a cell, for columns, sheets and the workbook. Each stays open until
/// its edit is carried out or the person leaves.
#pragma once

#include <functional>
#include <optional>

#include <QWidget>

#include "session/session.h"

namespace puteal::desk
{

/// Carries an edit out; the error when it is refused.
using CarryOut = std::function<std::optional<Error>(const Edit &)>;

void askName(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);
void askUnit(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);
void askChoices(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);
void askLimit(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);
/// May declare a new source along with its mark.
void askSources(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);
void askFigures(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);
void askNote(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut);

void askNewColumn(QWidget *parent, const Session &session, std::uint32_t sheet, std::uint32_t at,
                  const CarryOut &carryOut);
void askColumn(QWidget *parent, const Session &session, std::uint32_t sheet, std::uint32_t column,
               const CarryOut &carryOut);
void askNewSheet(QWidget *parent, std::uint32_t at, const CarryOut &carryOut);
void askSheet(QWidget *parent, const Session &session, std::uint32_t sheet, const CarryOut &carryOut);
void askTitle(QWidget *parent, const Session &session, const CarryOut &carryOut);
/// Asks for a word until `explain` knows it.
void askHelp(QWidget *parent, const std::function<bool(const QString &)> &explain);

} // namespace puteal::desk
