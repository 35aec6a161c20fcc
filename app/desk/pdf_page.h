/// The page of a workbook as PDF.
#pragma once

#include <QString>

#include "session/session.h"

namespace puteal::desk
{

/// Result page with the first chart, US Letter, page numbers. False with `why` when it cannot be written.
bool writePdfPage(const Session &session, const QString &path, QString &why);

} // namespace puteal::desk
