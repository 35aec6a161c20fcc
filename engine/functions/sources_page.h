/// The page of sources that docs/sources.md holds: which functions rest on which source, and what rests on
/// memory.
#pragma once

#include <string>

#include "functions/registry.h"

namespace puteal
{

std::string sourcesPage(const Registry &registry);

} // namespace puteal
