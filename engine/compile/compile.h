/// Checked trees compiled to a plain expression in base units with slots for operands. Knows no cell and no
/// value.
#pragma once

#include <atomic>
#include <memory>
#include <string>
#include <vector>

#include "check/checker.h"
#include "compile/shape.h"
#include "functions/registry.h"

namespace puteal
{

/// How a reference is read into a slot.
enum class OperandUse : std::uint8_t {
    plain,  ///< the number as it is (a bounded reading: its bound)
    byRule, ///< a bounded reading by the workbook's rule
    state   ///< the state of the cell against its limit
};
struct Operand {
    std::uint32_t reference = 0; ///< index into Tree::references
    OperandUse use = OperandUse::plain;
    friend bool operator==(const Operand &, const Operand &) = default;
};

/// One argument of a call site.
struct SiteArgument {
    ArgumentPlan::From from = ArgumentPlan::From::node;
    std::uint32_t parameter = 0;
    NodeIndex node = 0;
    int place = -1;        ///< node: position among the numbers the expression passes
    int slot = -1;         ///< node that is a bare reference: its slot (label, missing, bound)
    int range = -1;        ///< range: position among CompiledFormula::ranges
    bool bounded = false;  ///< passed as its bound, with the flag
    double constant = 0.0; ///< constant: in the parameter's unit for plugins, else in base units
};

/// A call that the trampoline serves.
struct Site {
    NodeIndex node = 0;
    const FunctionInfo *function = nullptr;
    std::vector<SiteArgument> arguments;
};

/// Plugin entry points of a formula's sites, found at the first call.
struct SiteEntry {
    std::atomic<puteal_call> call{nullptr};
};

/// A formula ready to run for any cell whose references have the same types.
struct CompiledFormula {
    std::shared_ptr<const Tree> tree;
    std::shared_ptr<const Checked> checked;
    const Registry *registry = nullptr;
    NodeIndex root = 0;
    ShapeId shape = 0;
    std::vector<Operand> operands;     ///< slots; those from `loaded` on are read by words only
    std::uint32_t loaded = 0;          ///< slots the expression reads
    std::vector<std::uint32_t> ranges; ///< reference index of each range
    std::vector<Site> sites;
    std::unique_ptr<SiteEntry[]> entries;
    std::vector<NodeIndex> words;      ///< words nodes by number in the expression
    std::vector<NodeIndex> failures;   ///< pieces known to fail where it may not matter
    std::vector<std::int32_t> placeOf; ///< tree node -> site or kept place, -1 = none
    bool plain = true; ///< no site, rule, words or reason: a finite value needs no second look
    bool hasReason = false;
    bool usesRule = false; ///< some slot is a bounded reading in arithmetic

    /// Slot that reads a reference in a way; -1 when none does.
    int slotOf(std::uint32_t reference, OperandUse use) const;
    /// The first reference of the tree that is written the same: equal ones share a slot.
    std::uint32_t firstAlike(std::uint32_t reference) const;
};

/// Compiles the piece of a tree under `root`. Error: limit, when the expression would be too long.
Result<std::shared_ptr<const CompiledFormula>> compileFormula(std::shared_ptr<const Tree> tree,
                                                              std::shared_ptr<const Checked> checked,
                                                              const Registry &registry, NodeIndex root);

} // namespace puteal
