/// Counted things and labels of methods: numbers that say what they count and convert to nothing else.
#include "units/unit_rows.h"

namespace puteal
{

namespace
{

constexpr Exponents pure{};
constexpr const char *method = "defined by its method; converts to nothing";

constexpr UnitRow rows[] = {
    {"person", "people persons", "person", "people", 1, pure, "counted thing", "usage", "", "", "person"},
    {"cartridge", "cartridges", "cartridge", "cartridges", 1, pure, "counted thing", "usage", "", "",
     "cartridge"},
    {"event", "events", "event", "events", 1, pure, "counted thing: a regeneration, a backwash, a refill",
     "usage", "", "", "event"},
    {"bed_volume", "bed_volumes", "bed volume", "bed volumes", 1, pure, "counted thing", "usage", "", "",
     "bed_volume"},
    {"each", "ea", "piece", "pieces", 1, pure, "counted thing", "usage", "", "", "each"},
    {"NTU", "ntu", "nephelometric turbidity unit", "nephelometric turbidity units", 1, pure, "label", "usage",
     method, "", "NTU"},
    {"CU", "PCU TCU", "color unit", "color units", 1, pure, "label", "usage", method, "", "CU"},
    {"TON", "", "threshold odor number", "threshold odor numbers", 1, pure, "label", "usage", method, "",
     "TON"},
    {"cfu", "CFU", "colony-forming unit", "colony-forming units", 1, pure, "label", "usage", method, "",
     "cfu"},
    {"mpn", "MPN", "most probable number", "most probable numbers", 1, pure, "label", "usage", method, "",
     "mpn"},
    {"pCi", "", "picocurie", "picocuries", 1, pure, "0.037 decays per second", "nist811",
     "radioactivity; kept apart from 1/s", "", "pCi"},
    {"Bq", "", "becquerel", "becquerels", 1 / 0.037, pure, "1/0.037 pCi", "nist811",
     "radioactivity; kept apart from 1/s", "", "pCi"},
};

} // namespace

UnitRows labelRows()
{
    return {rows, sizeof rows / sizeof rows[0]};
}

} // namespace puteal
