/// The unit behind the number of a typed cell; internal to this folder.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "units/unit.h"

namespace puteal
{

struct TypedUnit {
    Unit unit;
    std::vector<Caution> notes;
    std::size_t end = 0; ///< first byte after it and its `as X`
};

/// The unit at `pos` with `as X`; none when the text goes on differently. Errors: as scanUnit and tagged.
Result<std::optional<TypedUnit>> readTypedUnit(std::string_view text, std::size_t pos,
                                               const UnitTable &table);

/// The unit of an amount of money whose figures stand at begin..end: `$` and what follows, `/kWh`.
Result<std::optional<TypedUnit>> readMoneyUnit(std::string_view text, std::size_t begin, std::size_t end,
                                               const UnitTable &table);

} // namespace puteal
