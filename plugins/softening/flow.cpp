/// Flow through a bed of resin: for a cubic foot, for a square foot, and the certification's bounds. (R2, R5)
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

constexpr double designRate = 5, leastRate = 1; // gpm/ft^3, household design and channeling [Slovak]
constexpr double homeDepth = 24;                // in, least bed of a household softener [Slovak]
constexpr double publicLoading = 7;             // gpm/ft^2, most at public works [va590, ten_states]

void cautionRate(double rate, Reply &reply)
{
    if (lessThan(designRate, rate))
        reply.caution("fast",
                      "above 5 gpm/ft^3, the household design rate: hardness and iron leak through; a "
                      "short peak may be faster");
    else if (lessThan(rate, leastRate))
        reply.caution("channeling", "below 1 gpm/ft^3 water finds channels through the resin");
}

double resinFlowRate(double flow, double resin, Reply &reply)
{
    const double rate = flow / resin;
    cautionRate(rate, reply);
    return rate;
}

constexpr Parameter resinVolume =
    Parameter("resin", "ft^3", "volume of resin").hard(0.01, 100).usual(0.5, 10);
constexpr puteal_parameter rateTakes[] = {
    Parameter("flow", "gpm", "service flow through the bed").hard(0, 1000).usual(0.5, 30),
    resinVolume,
};
constexpr const char *rateSources[] = {"slovak", "practice", nullptr};
constexpr puteal_example rateExamples[] = {
    example("resin_flow_rate(7.5 gpm, 1.5 ft^3)", "5 gpm/ft^3", 1e-9, "computed", "slovak"),
    example("resin_flow_rate(8 gpm, 2 ft^3)", "4 gpm/ft^3", 1e-9, "computed", "slovak"),
};
constexpr puteal_example rateRefusals[] = {
    refusal("resin_flow_rate(7.5 gpm, 0 ft^3)", "`resin` must be at least 0.01 ft^3; it is 0 ft^3"),
};
constexpr puteal_caution rateCautions[] = {
    caution("fast", "more than 5 gpm/ft^3"),
    caution("channeling", "less than 1 gpm/ft^3"),
};

double resinServiceFlow(double resin, double rate)
{
    return resin * rate;
}

constexpr puteal_parameter serviceTakes[] = {
    resinVolume,
    Parameter("rate", "gpm/ft^3", "flow for a cubic foot: 5 household design, 1 the least before it channels")
        .hard(0.1, 20)
        .usual(leastRate, 10)
        .otherwise(designRate, "H"),
};
constexpr puteal_example serviceExamples[] = {
    example("resin_service_flow(1 ft^3)", "5 gpm", 1e-9, "published", "slovak"),
    example("resin_service_flow(1 ft^3, 1 gpm/ft^3)", "1 gpm", 1e-9, "published", "slovak"),
    example("resin_service_flow(1.5 ft^3)", "7.5 gpm", 1e-9, "computed", "slovak"),
};
constexpr puteal_example serviceRefusals[] = {
    refusal("resin_service_flow(0 ft^3)", "`resin` must be at least 0.01 ft^3; it is 0 ft^3"),
};

double rateByLoading(double loading, double depth, Reply &reply)
{
    if (lessThan(publicLoading, loading))
        reply.caution("public_limit", "above 7 gpm/ft^2, the most that codes allow at public works");
    if (lessThan(depth, homeDepth / measure::inchPerFoot))
        reply.caution("shallow", "a household bed is 24 in deep at least, a public one 3 ft");
    return loading / depth;
}

constexpr puteal_parameter depthTakes[] = {
    Parameter("loading", "gpm/ft^2", "service flow over the area of the bed, see service_loading")
        .hard(0, 100)
        .usual(1, 10),
    Parameter("depth", "ft", "depth of the resin bed").hard(0.1, 20).usual(2, 5),
};
constexpr const char *depthSources[] = {"va590", "ten_states", "slovak", "definition", nullptr};
constexpr puteal_example depthExamples[] = {
    example("resin_flow_rate_by_loading(7 gpm/ft^2, 3 ft)", "2.333333 gpm/ft^3", 1e-6, "computed", "va590"),
    example("resin_flow_rate_by_loading(10 gpm/ft^2, 24 in)", "5 gpm/ft^3", 1e-9, "computed", "definition"),
};
constexpr puteal_example depthRefusals[] = {
    refusal("resin_flow_rate_by_loading(7 gpm/ft^2, 0 ft)", "`depth` must be at least 0.1 ft; it is 0 ft"),
};
constexpr puteal_caution depthCautions[] = {
    caution("public_limit", "more than 7 gpm/ft^2"),
    caution("shallow", "less than 24 in of resin"),
};

constexpr double mostLoss = 15, leastRated = 4; // psi and gpm of the softener certification [Andrew]

bool withinRating(double flow, double loss, Reply &reply)
{
    if (lessThan(flow, leastRated)) {
        reply.reason("rated flow " + figures(flow) + " gpm is below the least of 4 gpm");
        return false;
    }
    if (lessThan(mostLoss, loss)) {
        reply.reason("pressure loss " + figures(loss) + " psi is above the most of 15 psi");
        return false;
    }
    reply.reason("rated flow " + figures(flow) + " gpm (least 4), pressure loss " + figures(loss) +
                 " psi (most 15)");
    return true;
}

constexpr puteal_parameter ratingTakes[] = {
    Parameter("flow", "gpm", "rated service flow of the softener").hard(0, 1000).usual(4, 30),
    Parameter("pressure_loss", "psi", "pressure loss at the rated flow").hard(0, 150).usual(1, 15),
};
constexpr const char *ratingSources[] = {"andrew", nullptr};
constexpr puteal_example ratingExamples[] = {
    example("softener_rating_met(4 gpm, 15 psi)", "yes", 0, "published", "andrew"),
    example("softener_rating_met(3.5 gpm, 10 psi)", "no", 0, "published", "andrew"),
    example("softener_rating_met(10 gpm, 18 psi)", "no", 0, "published", "andrew"),
};
constexpr puteal_example ratingRefusals[] = {
    refusal("softener_rating_met(-1 gpm, 10 psi)", "`flow` must be at least 0 gpm; it is -1 gpm"),
};

} // namespace

constinit const puteal_function resinFlowRateRow =
    Function("resin_flow_rate", "Flow for a cubic foot of resin",
             "Service flow for each cubic foot of resin: how long the water has to be softened.",
             call<resinFlowRate>)
        .takes(rateTakes)
        .gives("gpm/ft^3", "flow for a cubic foot")
        .by("flow / resin")
        .from(rateSources)
        .shownBy(rateExamples)
        .refusing(rateRefusals)
        .warning(rateCautions);

constinit const puteal_function resinServiceFlowRow =
    Function("resin_service_flow", "Service flow of a bed of resin",
             "Flow a bed of resin serves at a design rate; a peak of minutes may be twice as fast.",
             call<resinServiceFlow>)
        .takes(serviceTakes)
        .gives("gpm", "service flow")
        .by("resin * rate")
        .from(rateSources)
        .shownBy(serviceExamples)
        .refusing(serviceRefusals);

constinit const puteal_function rateByLoadingRow =
    Function(
        "resin_flow_rate_by_loading", "Flow for a cubic foot from loading",
        "Turns a loading over the cross-section into one over the volume, so that public rules (7 gpm/ft^2 "
        "on 3 ft) and household ones (5 gpm/ft^3) can be compared.",
        call<rateByLoading>)
        .takes(depthTakes)
        .gives("gpm/ft^3", "flow for a cubic foot")
        .by("loading / depth")
        .from(depthSources)
        .shownBy(depthExamples)
        .refusing(depthRefusals)
        .warning(depthCautions);

constinit const puteal_function ratingRow =
    Function("softener_rating_met", "Within the certification's flow and pressure",
             "Whether a rated flow and its pressure loss lie within the certification's bounds: 4 gpm at "
             "least, 15 psi at most.",
             call<withinRating>)
        .takes(ratingTakes)
        .givesYesNo("within the bounds, with the reason")
        .by("flow >= 4 gpm and pressure_loss <= 15 psi")
        .from(ratingSources)
        .shownBy(ratingExamples)
        .refusing(ratingRefusals);

} // namespace softening
