/// The household plugin: use per day and year, peak flow, share of the septic system.
///
/// Requirements
///  R1 Use per person is an argument; published figures stand in the sources.
///  R2 A share of the septic system is no permission.
///  R3 Peak flow is never less than the largest single outlet.
///  R4 Plumbing codes differ: the code is an argument, and rows that are recalled say so.
///  R5 Water that stands is a caution, with the days an argument.
///  R6 A single house is idle most of the time: a bell curve says so, and the exact count stands beside it.
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
           "gal a person and day; the day's use in two hours; shower, tub or 1/2 in hose 5 gpm; softener "
           "regeneration 50 to 100 gal"),
    source("missouri_g1801", "H",
           "Univ. of Missouri Extension G1801, How to Size a Farm and Home Water System: 50 to 100 gal a "
           "person and day and a softener regeneration, 100 to 200 gal a filter wash at 10 gpm"),
    source("usgs_summary", "H",
           "summary of USGS Circular 1441 and Open-File Report 2017-1131, 2018: public supply from 35 "
           "(Connecticut) to 184 (Idaho) gal a person and day"),
    source("national_academies", "H",
           "National Academies 1998, record 6287, p. 56: 0.28 m^3 a person and day indoors in five cities"),
    source("beckley_water", "H",
           "Beckley Water, quoting Vickers: 45.2 gal a person and day indoors with saving fixtures"),
    source("nebraska_acreage", "H",
           "Univ. of Nebraska, Acreage Owners Guide, Drinking water: 10 gpm least for a home"),
    source("epa_private", "H",
           "US EPA, Private Water Systems, household uses, as archived in 2008, webarchive.library.unt.edu: "
           "peak demand allowances, example of 7.25 gpm, half the sum with more than one house"),
    source("nh_372", "S",
           "N.H. Admin. Code Env-Ws 372.10, table 372-1: 150 gal/day a bedroom, holiday homes too"),
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

const puteal_function functions[] = {
    dailyUseRow,        usePerPersonRow,      useByBedroomsRow,   indoorUseRow,          yearlyUseRow,
    useByPeriodRow,     occupiedDaysRow,      idleGapRow,         washWaterRow,          septicShareRow,
    recommendedFlowRow, peakByOutletsRow,     peakInHoursRow,     demandAllowanceRow,    peakByAllowanceRow,
    peakByBathroomsRow, peakVolumeRow,        fixtureUnitsRow,    peakByUnitsRow,        peakByProbabilityRow,
    peakByTruncatedRow, peakByEnumerationRow, idleProbabilityRow, fixtureProbabilityRow, fixtureFlowRow};
constinit const puteal_plugin self = plugin("household", "Household", 1, 2, sources, functions);

} // namespace
} // namespace household

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &household::self;
}
