/// Plain dialogs for what stands beside a cell and for columns and sheets. Each returns the edit to make, if
/// any.
#pragma once

#include <optional>

#include <QWidget>

#include "session/session.h"

namespace puteal::desk
{

std::optional<Edit> askName(QWidget *parent, const Session &session, const CellAt &at);
std::optional<Edit> askUnit(QWidget *parent, const Session &session, const CellAt &at);
std::optional<Edit> askChoices(QWidget *parent, const Session &session, const CellAt &at);
std::optional<Edit> askLimit(QWidget *parent, const Session &session, const CellAt &at);
/// May declare a new source as well: then two edits, the declaration first.
std::vector<Edit> askSources(QWidget *parent, const Session &session, const CellAt &at);
std::optional<Edit> askFigures(QWidget *parent, const Session &session, const CellAt &at);
std::optional<Edit> askNote(QWidget *parent, const Session &session, const CellAt &at);
std::optional<Edit> askNewColumn(QWidget *parent, const Session &session, std::uint32_t sheet,
                                 std::uint32_t at);
std::optional<Edit> askColumn(QWidget *parent, const Session &session, std::uint32_t sheet,
                              std::uint32_t column);
std::optional<Edit> askNewSheet(QWidget *parent, const Session &session, std::uint32_t at);
std::optional<Edit> askSheet(QWidget *parent, const Session &session, std::uint32_t sheet);

} // namespace puteal::desk
