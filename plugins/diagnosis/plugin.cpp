/// The diagnosis plugin: which form the iron is in, and what each limit of a method says about a water.
///
/// Requirements
///  R1 A blank observation is no zero and no error; a blank needed test is never "works".
///  R2 A bounded reading decides only if everything it allows agrees.
///  R3 More of what a limit bounds never makes a verdict better; less flow never makes a wash work.
///  R4 Every verdict names the limit, its value and the water's value.
///  R5 Iron bacteria are named before any other form, since they decide the treatment.
#include "diagnosis.h"

using namespace puteal::sdk;

namespace diagnosis
{
namespace
{

constexpr puteal_source sources[] = {
    source("practice", "T", "common practice, no source"),
    source("standing_glass", "H",
           "standing-glass and overnight-glass test as described on general how-to pages: iron settles, "
           "tannin stays even"),
    source("iron_pamphlet", "H",
           "About iron and manganese in drinking water, consumer pamphlet, docslib.org 8991879: clear water "
           "that turns "
           "rusty on standing; slime of iron bacteria"),
    source("wsc_hotline", "H", "Water Systems Council, hotline note on iron bacteria, 15 Aug 2024"),
    source("vce356", "H",
           "Virginia Cooperative Extension 356-488, nasdonline.org/document/1433: black water with sulfide, "
           "smells"),
    source("va590", "S", "12 Virginia Administrative Code 5-590-900: iron and manganese on softening resin"),
};

const puteal_function functions[] = {
    ironFormRow, ironFormConfidenceRow, ironFormNextTestRow, screenAtMostRow, screenAtLeastRow, screenNoneRow,
    screenNoRow, screenYesRow,          screenFormRow,       screenFlowRow,   screenBackwashRow};
constinit const puteal_plugin self = plugin("diagnosis", "Diagnosis and screening", 1, 0, sources, functions);

} // namespace
} // namespace diagnosis

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &diagnosis::self;
}
