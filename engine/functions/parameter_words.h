/// One parameter or result as a sentence; used by the plain help and by the page of all functions.
#pragma once

#include <string>

#include "functions/signature.h"

namespace puteal
{

/// "mg/L as Fe; dissolved iron; takes 0 to 100 mg/L as Fe, usually 0 to 10; 5 when left out (trade
/// practice)".
std::string parameterWords(const ParameterInfo &parameter);
/// "gpg: hardness setting of the valve".
std::string resultWords(const FunctionInfo &function);

} // namespace puteal
