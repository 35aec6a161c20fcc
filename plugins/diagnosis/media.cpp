/// The table of media and the functions that show its numbers, so that no verdict rests on a hidden one.
#include "media.h"
#include "diagnosis.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr Limit open{}; // no limit printed or in use
constexpr Ends nowhere{};
// That none is tolerated is common practice; what stands for none is where it is tasted.
constexpr double tasted = 0.05; // mg/L as H2S [Virginia Coop. Extension 356-488]
constexpr Limit noSulfide{tasted, tasted};

/// pH least, pH most, iron, with manganese, manganese, sulfide, loading household and code, wash household
/// and code, depth. Unmarked numbers: common practice, no source. [handbook] is the table of oxidizing media.
constexpr Medium media[mediumCount] = {
    // coated light medium, air-driven: pH 6.8, oxygen 15 % of iron, 15 mg/L [handbook]
    {{6.8, 6.8, From::handbook, From::handbook},
     {9, 9},
     {10, 15, From::practice, From::handbook},
     true,
     open,
     noSulfide,
     {3.5, 5},
     nowhere,
     {10, 12},
     nowhere,
     {30, 36}},
    // manganese greensand: pH 6.7, iron and manganese to 6, iron to 10 [handbook];
    // 3 gpm/ft^2, wash 8 to 10, 24 to 30 in [Okla. 252:626-9-7; Wis. NR 811]
    {{6.7, 6.7, From::handbook, From::handbook},
     open,
     {6, 10, From::handbook, From::handbook},
     true,
     open,
     {2, 5},
     {3, 5},
     {unset, 3, From::code},
     {10, 12},
     {8, 10, From::code},
     {24, 30, From::code}},
    // coated sand: as greensand, washed at 15 to 20 [Wis. NR 811]
    {{6.7, 6.7, From::handbook, From::handbook},
     open,
     {6, 10, From::handbook, From::handbook},
     true,
     open,
     {2, 5},
     {3, 5},
     {unset, 3, From::code},
     nowhere,
     {15, 20, From::code},
     {24, 30, From::code}},
    // manganese dioxide ore
    {{6.5, 6.5}, {9, 9}, {10, 15}, false, open, {5, 10}, {5, 10}, nowhere, {25, 30}, nowhere, {18, 36}},
    // manganese contactor behind a filter: 12 to 18 gpm/ft^2, 24 to 36 in [AWWA Opflow, December 2021]
    {{7, 6.5},
     open,
     {0.3, 0.3},
     false,
     open,
     open,
     nowhere,
     {12, 18, From::handbook},
     nowhere,
     nowhere,
     {24, 36, From::handbook}},
    // catalytic carbon
    {{6, 6}, {9, 9}, {1, 2}, false, open, {5, 8}, {4, 6}, nowhere, {8, 10}, nowhere, {30, 36}},
    // carbon: sulfide 0.3 mg/L [Univ. of Georgia Extension C858-15]
    {{6, 6},
     {9, 9},
     {0.3, 0.3},
     false,
     open,
     {0.3, 0.3, From::handbook, From::handbook},
     {4, 6},
     nowhere,
     {8, 10},
     nowhere,
     {30, 36}},
    // sand, and sand with anthracite: 2 and 4 gpm/ft^2, at least 24 in [15A NCAC 18C .0708]
    {open,
     open,
     open,
     false,
     open,
     open,
     nowhere,
     {2, 4, From::code},
     {13, 15},
     nowhere,
     {24, unset, From::code}},
    // calcite: pH 6, 3 gpm/ft^2, 32 to 36 in [extension text on pH adjustment]
    {{6, 6, From::handbook, From::handbook},
     open,
     {1, 2},
     false,
     open,
     open,
     {unset, 3, From::handbook},
     nowhere,
     {8, 12},
     nowhere,
     {32, 36, From::handbook}},
    // softening resin: 7 gpm/ft^2, wash 6 to 8, 36 in [12 Va. Admin. Code 5-590-900]; iron as in
    // softener_iron_verdict; a house from 24 in
    {{6.5, 6.5},
     {8, 8},
     {2, 5},
     true,
     open,
     noSulfide,
     {5, 10},
     {unset, 7, From::code},
     {4, 6},
     {6, 8, From::code},
     {24, 36, From::practice, From::code}},
    // iron cartridge
    {{7, 7}, open, {3, 3}, false, {1, 1}, noSulfide, nowhere, nowhere, nowhere, nowhere, nowhere},
};

constexpr const char *endWords[] = {"lowest", "highest", nullptr};
constexpr const char *gradeWords[] = {"works up to", "marginal up to", nullptr};
constexpr const char *basisWords[] = {"household", "public code", nullptr};

double shown(double value, const std::string &words, Reply &reply)
{
    reply.reason(words);
    return value;
}

double mediaPh(int medium, int end, Reply &reply)
{
    const Limit &limit = end == 0 ? mediumOf(medium).leastPh : mediumOf(medium).mostPh;
    if (limit.none())
        return reply.refuse(2, "no such limit of pH is known for this medium: ask for its data sheet");
    return shown(limit.works, wordsOf(limit.from), reply);
}

double gradeOf(const Limit &limit, int grade, Reply &reply)
{
    if (limit.none())
        return reply.refuse(1, "no such limit is known for this medium: ask for its data sheet");
    return grade == 0 ? shown(limit.works, wordsOf(limit.from), reply)
                      : shown(limit.outermost, wordsOf(limit.outermostFrom), reply);
}

double mediaIron(int medium, int grade, Reply &reply)
{
    return gradeOf(mediumOf(medium).iron, grade, reply);
}

double mediaSulfide(int medium, int grade, Reply &reply)
{
    return gradeOf(mediumOf(medium).sulfide, grade, reply);
}

double endOf(const Ends &ends, int end, Reply &reply)
{
    if (ends.none())
        return reply.refuse(2, "no such figure is known for this medium: take the other basis, or its data "
                               "sheet");
    const double value = end == 0 ? ends.low : ends.high;
    if (value != value)
        return reply.refuse(0, end == 0 ? "only a highest figure is printed for this medium: take that one"
                                        : "only a lowest figure is printed for this medium: take that one");
    return end == 0 ? shown(ends.low, wordsOf(ends.from), reply)
                    : shown(ends.high, wordsOf(ends.highFrom), reply);
}

double mediaLoading(int medium, int basis, int end, Reply &reply)
{
    const Medium &m = mediumOf(medium);
    return endOf(basis == 0 ? m.householdLoading : m.codeLoading, end, reply);
}

double mediaWash(int medium, int basis, int end, Reply &reply)
{
    const Medium &m = mediumOf(medium);
    return endOf(basis == 0 ? m.householdWash : m.codeWash, end, reply);
}

double mediaDepth(int medium, int end, Reply &reply)
{
    const Ends &ends = mediumOf(medium).depth;
    if (ends.none())
        return reply.refuse(1, "a cartridge has no bed: there is no depth");
    return endOf(ends, end, reply);
}

constexpr Parameter medium = Parameter("medium", "", "the medium").oneOf(mediumWords);
constexpr Parameter end = Parameter("end", "", "lowest or highest figure").oneOf(endWords);
constexpr Parameter grade =
    Parameter("grade", "", "up to where it works, or the outermost figure in use").oneOf(gradeWords);
constexpr Parameter basis =
    Parameter(
        "basis", "",
        "household figures, which decide for a house, or those printed for public works, shown beside them")
        .oneOf(basisWords);

constexpr puteal_parameter endTakes[] = {medium, end};
constexpr puteal_parameter gradeTakes[] = {medium, grade};
constexpr puteal_parameter basisTakes[] = {medium, basis, end};

constexpr const char *phSources[] = {"oxidizing_media", "ph_adjustment", "practice", nullptr};
constexpr puteal_example phExamples[] = {
    example("media_ph_limit(\"coated light medium\", \"lowest\")", "6.8", 0, "published", "oxidizing_media"),
    example("media_ph_limit(\"manganese greensand\", \"lowest\")", "6.7", 0, "published", "oxidizing_media"),
    example("media_ph_limit(\"calcite\", \"lowest\")", "6", 0, "published", "ph_adjustment"),
    example("media_ph_limit(\"iron cartridge\", \"lowest\")", "7", 0, "common practice", "practice"),
    example("media_ph_limit(\"softening resin\", \"highest\")", "8", 0, "common practice", "practice"),
};
constexpr puteal_example phRefusals[] = {
    refusal("media_ph_limit(\"sand or anthracite\", \"lowest\")",
            "no such limit of pH is known for this medium: ask for its data sheet")};

constexpr const char *ironSources[] = {"oxidizing_media", "practice", nullptr};
constexpr puteal_example ironExamples[] = {
    example("media_iron_limit(\"manganese greensand\", \"works up to\")", "6 mg/L as Fe", 0, "published",
            "oxidizing_media"),
    example("media_iron_limit(\"manganese greensand\", \"marginal up to\")", "10 mg/L as Fe", 0, "published",
            "oxidizing_media"),
    example("media_iron_limit(\"coated light medium\", \"marginal up to\")", "15 mg/L as Fe", 0, "published",
            "oxidizing_media"),
    example("media_iron_limit(\"iron cartridge\", \"works up to\")", "3 mg/L as Fe", 0, "common practice",
            "practice"),
};
constexpr puteal_example ironRefusals[] = {
    refusal("media_iron_limit(\"sand or anthracite\", \"works up to\")",
            "no such limit is known for this medium: ask for its data sheet")};

constexpr const char *sulfideSources[] = {"uga858", "vce356", "practice", nullptr};
constexpr puteal_example sulfideExamples[] = {
    example("media_sulfide_limit(\"carbon\", \"works up to\")", "0.3 mg/L as H2S", 0, "published", "uga858"),
    example("media_sulfide_limit(\"coated light medium\", \"works up to\")", "0.05 mg/L as H2S", 0,
            "common practice", "practice"),
    example("media_sulfide_limit(\"manganese greensand\", \"marginal up to\")", "5 mg/L as H2S", 0,
            "common practice", "practice"),
};
constexpr puteal_example sulfideRefusals[] = {
    refusal("media_sulfide_limit(\"calcite\", \"works up to\")",
            "no such limit is known for this medium: ask for its data sheet")};

constexpr const char *loadingSources[] = {"va590",         "ok252626", "nc18c0708", "opflow2021",
                                          "ph_adjustment", "practice", nullptr};
constexpr puteal_example loadingExamples[] = {
    example("media_service_loading(\"softening resin\", \"public code\", \"highest\")", "7 gpm/ft^2", 0,
            "published", "va590"),
    example("media_service_loading(\"manganese greensand\", \"public code\", \"highest\")", "3 gpm/ft^2", 0,
            "published", "ok252626"),
    example("media_service_loading(\"sand or anthracite\", \"public code\", \"lowest\")", "2 gpm/ft^2", 0,
            "published", "nc18c0708"),
    example("media_service_loading(\"sand or anthracite\", \"public code\", \"highest\")", "4 gpm/ft^2", 0,
            "published", "nc18c0708"),
    example("media_service_loading(\"manganese contactor\", \"public code\", \"lowest\")", "12 gpm/ft^2", 0,
            "published", "opflow2021"),
    example("media_service_loading(\"manganese contactor\", \"public code\", \"highest\")", "18 gpm/ft^2", 0,
            "published", "opflow2021"),
    example("media_service_loading(\"calcite\", \"household\", \"highest\")", "3 gpm/ft^2", 0, "published",
            "ph_adjustment"),
    example("media_service_loading(\"coated light medium\", \"household\", \"lowest\")", "3.5 gpm/ft^2", 0,
            "common practice", "practice"),
};
constexpr puteal_example loadingRefusals[] = {
    refusal("media_service_loading(\"calcite\", \"household\", \"lowest\")",
            "only a highest figure is printed for this medium: take that one"),
    refusal("media_service_loading(\"calcite\", \"public code\", \"highest\")",
            "no such figure is known for this medium: take the other basis, or its data sheet")};

constexpr const char *washSources[] = {"va590", "wi811", "ok252626", "practice", nullptr};
constexpr puteal_example washExamples[] = {
    example("media_backwash_rate(\"softening resin\", \"public code\", \"lowest\")", "6 gpm/ft^2", 0,
            "published", "va590"),
    example("media_backwash_rate(\"softening resin\", \"public code\", \"highest\")", "8 gpm/ft^2", 0,
            "published", "va590"),
    example("media_backwash_rate(\"manganese greensand\", \"public code\", \"lowest\")", "8 gpm/ft^2", 0,
            "published", "wi811"),
    example("media_backwash_rate(\"manganese greensand\", \"public code\", \"highest\")", "10 gpm/ft^2", 0,
            "published", "ok252626"),
    example("media_backwash_rate(\"coated sand\", \"public code\", \"lowest\")", "15 gpm/ft^2", 0,
            "published", "wi811"),
    example("media_backwash_rate(\"coated sand\", \"public code\", \"highest\")", "20 gpm/ft^2", 0,
            "published", "wi811"),
    example("media_backwash_rate(\"manganese dioxide ore\", \"household\", \"lowest\")", "25 gpm/ft^2", 0,
            "common practice", "practice"),
};
constexpr puteal_example washRefusals[] = {
    refusal("media_backwash_rate(\"calcite\", \"public code\", \"lowest\")",
            "no such figure is known for this medium: take the other basis, or its data sheet")};

constexpr const char *depthSources[] = {"va590",         "ok252626", "nc18c0708", "opflow2021",
                                        "ph_adjustment", "practice", nullptr};
constexpr puteal_example depthExamples[] = {
    example("media_bed_depth(\"calcite\", \"lowest\")", "32 in", 0, "published", "ph_adjustment"),
    example("media_bed_depth(\"calcite\", \"highest\")", "36 in", 0, "published", "ph_adjustment"),
    example("media_bed_depth(\"manganese contactor\", \"lowest\")", "24 in", 0, "published", "opflow2021"),
    example("media_bed_depth(\"manganese contactor\", \"highest\")", "36 in", 0, "published", "opflow2021"),
    example("media_bed_depth(\"sand or anthracite\", \"lowest\")", "24 in", 0, "published", "nc18c0708"),
    example("media_bed_depth(\"softening resin\", \"highest\")", "36 in", 0, "published", "va590"),
    example("media_bed_depth(\"coated light medium\", \"lowest\")", "30 in", 0, "common practice",
            "practice"),
};
constexpr puteal_example depthRefusals[] = {
    refusal("media_bed_depth(\"sand or anthracite\", \"highest\")",
            "only a lowest figure is printed for this medium: take that one"),
    refusal("media_bed_depth(\"iron cartridge\", \"lowest\")", "a cartridge has no bed: there is no depth")};

} // namespace

const Medium &mediumOf(int id)
{
    return media[id];
}

constinit const puteal_function mediaPhRow =
    Function("media_ph_limit", "pH a medium works at",
             "Lowest or highest pH at which a medium works. Greensand is also sold from pH 6.2 (common "
             "practice); the handbook's figure stands here.",
             call<mediaPh>)
        .takes(endTakes)
        .gives("", "limit of pH, with where it comes from")
        .by("table: one row a medium")
        .from(phSources)
        .shownBy(phExamples)
        .refusing(phRefusals);

constinit const puteal_function mediaIronRow =
    Function(
        "media_iron_limit", "Iron a medium takes",
        "Iron up to which a medium works, and the outermost figure in use. For oxidizing media and "
        "resin, iron and manganese count together; behind a peroxide feed catalytic carbon is marginal up to "
        "10 mg/L (common practice).",
        call<mediaIron>)
        .takes(gradeTakes)
        .gives("mg/L as Fe", "limit of iron, with where it comes from")
        .by("table: one row a medium")
        .from(ironSources)
        .shownBy(ironExamples)
        .refusing(ironRefusals);

constinit const puteal_function mediaSulfideRow =
    Function("media_sulfide_limit", "Sulfide a medium takes",
             "Hydrogen sulfide up to which a medium works; 0.05 mg/L, where it is tasted, stands for none.",
             call<mediaSulfide>)
        .takes(gradeTakes)
        .gives("mg/L as H2S", "limit of sulfide, with where it comes from")
        .by("table: one row a medium")
        .from(sulfideSources)
        .shownBy(sulfideExamples)
        .refusing(sulfideRefusals);

constinit const puteal_function mediaLoadingRow =
    Function("media_service_loading", "Service flow over a medium",
             "Flow over the area of a bed in service, by household practice or by the codes of public works. "
             "A start for a design: the medium's own data sheet decides.",
             call<mediaLoading>)
        .takes(basisTakes)
        .gives("gpm/ft^2", "service loading, with where it comes from")
        .by("table: one row a medium and basis")
        .from(loadingSources)
        .shownBy(loadingExamples)
        .refusing(loadingRefusals);

constinit const puteal_function mediaWashRow =
    Function("media_backwash_rate", "Backwash rate of a medium",
             "Backwash rate of a medium, by household practice or by the codes of public works. Cold water "
             "lifts a bed further: the low end is for cold water, the high end for warm.",
             call<mediaWash>)
        .takes(basisTakes)
        .gives("gpm/ft^2", "backwash rate, with where it comes from")
        .by("table: one row a medium and basis")
        .from(washSources)
        .shownBy(washExamples)
        .refusing(washRefusals);

constinit const puteal_function mediaDepthRow =
    Function("media_bed_depth", "Depth of a bed",
             "Depth of a bed of this medium; resin in a house from 24 in, in public works 36 in.",
             call<mediaDepth>)
        .takes(endTakes)
        .gives("in", "depth of the bed, with where it comes from")
        .by("table: one row a medium")
        .from(depthSources)
        .shownBy(depthExamples)
        .refusing(depthRefusals);

} // namespace diagnosis
