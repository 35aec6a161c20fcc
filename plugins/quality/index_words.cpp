/// The aggressive index, and words for the Langelier and Ryznar indices. (R2, R3)
#include "carbonate.h"
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

// ----------------------------------------------------------------------------------------- aggressive_index

double aggressiveIndex(double ph, double calcium, double alkalinity, Reply &reply)
{
    if (refusedEmpty(2, calcium, alkalinity, reply))
        return std::nan("");
    const double index = ph + std::log10(calcium * alkalinity); // [AWWA C400 as a glossary prints it]
    if (lessThan(index, 10))                                    // bands [recalled, not confirmed]
        reply.caution("aggressive", "below 10 water attacks cement and metal strongly");
    else if (lessThan(index, 12))
        reply.caution("moderate", "between 10 and 12 water attacks cement and metal moderately");
    return index;
}

constexpr puteal_parameter aggressiveTakes[] = {phParameter, calciumParameter, alkalinityParameter};
constexpr const char *aggressiveSources[] = {"c400", "recalled", nullptr};
constexpr puteal_example aggressiveExamples[] = {
    example("aggressive_index(6.8, 90 mg/L as CaCO3, 80 mg/L as CaCO3)", "10.657", 1e-4, "computed", "c400"),
    example("aggressive_index(8, 100 mg/L as CaCO3, 100 mg/L as CaCO3)", "12", 1e-9, "computed", "c400"),
};
constexpr puteal_example aggressiveRefusals[] = {
    refusal("aggressive_index(6.8, 0 mg/L as CaCO3, 80 mg/L as CaCO3)", noCalcium),
};
constexpr puteal_caution aggressiveCautions[] = {
    caution("aggressive", "index below 10"),
    caution("moderate", "index of 10 to 12"),
};

// ------------------------------------------------------------------------------------------ langelier_class

constexpr const char *classWords[] = {
    "near balance", "scaling", "mildly corrosive", "moderately corrosive", "strongly corrosive", nullptr};
enum Class : int { nearBalance, scaling, mildly, moderately, strongly };

int langelierClass(double index)
{
    return lessThan(0.5, index)  ? scaling // bands of the public Langelier pages
           : atMost(-0.5, index) ? nearBalance
           : lessThan(-1, index) ? mildly
           : lessThan(-2, index) ? moderately
                                 : strongly;
}

constexpr puteal_parameter langelierClassTakes[] = {
    Parameter("index", "", "see langelier_index").hard(-15, 10).usual(-5, 3),
};
constexpr const char *classSources[] = {"langelier_pages", nullptr};
constexpr puteal_example classExamples[] = {
    example("langelier_class(-0.10)", "near balance", 0, "published", "langelier_pages"),
    example("langelier_class(0.97)", "scaling", 0, "published", "langelier_pages"),
    example("langelier_class(-1)", "moderately corrosive", 0, "published", "langelier_pages"),
    example("langelier_class(-2)", "strongly corrosive", 0, "published", "langelier_pages"),
};
constexpr puteal_example classRefusals[] = {
    refusal("langelier_class(-20)", "`index` must be at least -15; it is -20"),
};

// -------------------------------------------------------------------------------------------- ryznar_class

constexpr const char *ryznarWords[] = {"little of either", "scaling", "corrosive", "strongly corrosive",
                                       nullptr};
enum RyznarClass : int { littleOfEither, ryznarScaling, ryznarCorrosive, ryznarStrong };

int ryznarClass(double index)
{
    return lessThan(index, 6) ? ryznarScaling // bands of the corrosion engineers' pages
           : atMost(index, 7) ? littleOfEither
           : atMost(index, 8) ? ryznarCorrosive
                              : ryznarStrong;
}

constexpr puteal_parameter ryznarClassTakes[] = {
    Parameter("index", "", "see ryznar_index").hard(-5, 30).usual(3, 15),
};
constexpr const char *ryznarClassSources[] = {"ryznar_pages", "recalled", nullptr};
constexpr puteal_example ryznarClassExamples[] = {
    example("ryznar_class(5.9)", "scaling", 0, "published", "ryznar_pages"),
    example("ryznar_class(7.1)", "corrosive", 0, "published", "ryznar_pages"),
    example("ryznar_class(8.1)", "strongly corrosive", 0, "published", "ryznar_pages"),
    example("ryznar_class(6.5)", "little of either", 0, "memory", "recalled"),
};
constexpr puteal_example ryznarClassRefusals[] = {
    refusal("ryznar_class(40)", "`index` must be at most 30; it is 40"),
};

} // namespace

constinit const puteal_function aggressiveIndexRow =
    Function(
        "aggressive_index", "Aggressive index",
        "A rough index for cement-lined pipe: 12 and more does not attack, below 10 attacks strongly. The "
        "bands are recalled.",
        call<aggressiveIndex>)
        .takes(aggressiveTakes)
        .gives("", "aggressive index")
        .by("ph + log10(calcium_hardness * alkalinity)")
        .from(aggressiveSources)
        .shownBy(aggressiveExamples)
        .refusing(aggressiveRefusals)
        .warning(aggressiveCautions)
        .safely(corrosiveSafety);

constinit const puteal_function ryznarClassRow =
    Function(
        "ryznar_class", "Word for a Ryznar index",
        "What a Ryznar index says in a word: below 6 scale grows, above 7 no protecting film forms, above 8 "
        "mild steel corrodes.",
        call<ryznarClass>)
        .takes(ryznarClassTakes)
        .givesOneOf(ryznarWords, "what the water tends to do")
        .by("below 6 scaling; to 7 little of either; to 8 corrosive; above strongly corrosive")
        .from(ryznarClassSources)
        .shownBy(ryznarClassExamples)
        .refusing(ryznarClassRefusals)
        .safely(corrosiveSafety);

constinit const puteal_function langelierClassRow =
    Function("langelier_class", "Word for a Langelier index",
             "What a Langelier index says in a word, by the bands printed beside the form.",
             call<langelierClass>)
        .takes(langelierClassTakes)
        .givesOneOf(classWords, "what the water tends to do")
        .by("above 0.5 scaling; -0.5 to 0.5 near balance; to -1 mildly, to -2 moderately, from -2 strongly "
            "corrosive")
        .from(classSources)
        .shownBy(classExamples)
        .refusing(classRefusals)
        .safely(corrosiveSafety);

} // namespace quality
