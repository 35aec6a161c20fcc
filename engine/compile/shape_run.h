/// Running a compiled expression in the loop over cells: straight into muParser.
#pragma once

#include <muParserBase.h>

#include "compile/shape.h"

namespace puteal
{

inline double Shape::evalAtOnce() const
{
    return m_running->Eval();
}

} // namespace puteal
