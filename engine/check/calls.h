/// What the files about calls share: arguments and the parameters they belong to.
#pragma once

#include <optional>
#include <vector>

#include "check/agreement.h"
#include "check/draft.h"

namespace puteal::checking
{

/// One argument of a call and the parameter it belongs to.
struct Slot {
    std::uint32_t parameter = 0;
    NodeIndex node = 0;
};

struct Call {
    NodeIndex node = 0;
    const FunctionInfo *function = nullptr;
    std::vector<Slot> slots; ///< in the order they were typed
    std::uint32_t list = 0;  ///< choice list quoted words would become
    const ParameterInfo &parameter(const Slot &slot) const { return function->parameters[slot.parameter]; }
    /// The first argument of a parameter; none when it was left out.
    std::optional<NodeIndex> argument(std::uint32_t parameter) const;
};

/// Which argument belongs to which parameter. Error: too few or too many.
Done assignArguments(const Draft &draft, Call &call);
/// The call with the commas between two bare whole numbers as decimal points, if that many arguments fit.
std::optional<Error> decimalComma(const Draft &draft, const Call &call);
/// An unknown function: closest names, or the plugin that has it.
tl::unexpected<Error> unknownFunction(const Draft &draft, NodeIndex i);

/// "tank takes x as one value, not the range cost[:]".
tl::unexpected<Error> rangeWhereValue(const Draft &draft, const Call &call, const Slot &slot);
/// Checks one argument: range or value, kind, choice, blank.
Done checkArgument(Draft &draft, const Call &call, const Slot &slot);

/// Makes the units of all arguments fit the signature; solves its unit variables into draft.variables.
Done unifyUnits(Draft &draft, const Call &call);
/// The type a pattern stands for once its variables are known; none when an exponent has no place.
std::optional<QuantityType> patternType(const Draft &draft, const Call &call, const UnitPattern &pattern);
/// The substance a choice argument stands for. Error: the argument is no literal.
Result<std::uint16_t> chosenSubstance(const Draft &draft, const Call &call, int parameter);

/// Functions whose arguments or result follow no signature: true when it was one of them.
Result<bool> checkSpecial(Draft &draft, const Call &call);
/// Ranges that belong together have as many lines; `only` is of the same lines.
Done checkLines(const Draft &draft, const Call &call);
/// Type and shown unit of the call.
Done setResult(Draft &draft, const Call &call);
/// ArgumentPlan for the compiler.
void planArguments(Draft &draft, const Call &call);

} // namespace puteal::checking
