/// The household plugin: use per day and year, peak flow, share of the septic system.
///
/// Requirements
///  R1 Use per person is an argument; published figures stand in the sources.
///  R2 A share of the septic system is no permission.
///  R3 Peak flow is never less than the largest single outlet.
///  R4 Plumbing codes differ: the code is an argument, and rows that are recalled say so.
#include "household.h"

using namespace puteal::sdk;

namespace household
{
namespace
{

constexpr puteal_source sources[] = {
    source("usgs_circular_1441", "H",
           "USGS, Domestic Water Use (Circular 1441, Dieter et al. 2018): 3,260 Mgal/d for 42.5 "
           "million self-supplied people in 2015"),
    source("penn_state", "H",
           "Penn State Extension, Water System Planning: Estimating Water Needs, 2017 and 2022: 50 to 100 "
           "gal a person and day; the day's use in two hours"),
    source("missouri_g1801", "H",
           "Univ. of Missouri Extension G1801, How to Size a Farm and Home Water System"),
    source("lbnl_well_pump", "H",
           "LBNL, Well-pump energy calculation method, hes-documentation.lbl.gov, quoting Mayer et "
           "al. 1999"),
    source("national_driller", "H",
           "Booster systems for low-yield wells, part 1, National Driller, "
           "thedriller.com/articles/86502"),
    source("ny_fact_sheet", "S",
           "New York State Department of Health, Individual Water Supply Wells, Fact Sheet 2: 110 "
           "gal/day a bedroom"),
    source("massdep_title5", "S", "MassDEP, Water softeners and Title 5"),
    source("nspc_b54", "S",
           "National Standard Plumbing Code, table B.5.4, "
           "up.codes/s/demand-gpm-corresponding-to-fixture-load-wsfu"),
    source("ipc_2018", "S", "2018 International Plumbing Code, appendix E, table E103.3(2), private use"),
    source(
        "peak_demand_study", "H",
        "Buchberger et al., Peak Water Demand Study, 2017; the normal form after Wistort 1994 is recalled"),
    source("seven_minutes", "R",
           "seven-minute table of flow and water by bathrooms: recalled, not confirmed"),
    source("drilling_resource", "H",
           "Low-yielding water well counselors, WorldWide Drilling Resource, December 2021, p. 69: 50 to 100 "
           "gal a person and day, "
           "200 to 400 for four"),
    source("recalled", "R", "recalled, not confirmed"),
    source("definition", "W", "worked out from the definition"),
    source("practice", "T", "common practice, no source"),
};

const puteal_function functions[] = {dailyUseRow,    indoorUseRow,     yearlyUseRow,   useByPeriodRow,
                                     septicShareRow, peakByOutletsRow, peakInHoursRow, peakByBathroomsRow,
                                     peakVolumeRow,  fixtureUnitsRow,  peakByUnitsRow, peakByProbabilityRow};
constinit const puteal_plugin self = plugin("household", "Household", 1, 1, sources, functions);

} // namespace
} // namespace household

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &household::self;
}
