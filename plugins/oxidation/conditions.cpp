/// The time that an oxidation asks for, pair by pair. (R4, R6)
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

constexpr const char *pairWords[] = {"iron by air",
                                     "iron by chlorine",
                                     "iron by peroxide",
                                     "iron by permanganate",
                                     "manganese by chlorine",
                                     "manganese by chlorine on a coated bed",
                                     "manganese by permanganate",
                                     "manganese by air",
                                     "sulfide by chlorine or peroxide",
                                     nullptr};

/// One pair: minutes to allow for, what is said of it.
struct Condition {
    double minutes;
    const char *words;
};
constexpr Condition conditions[] = {
    {30, "pH 7.2 by common practice, 7.5 is easy; state codes ask 30 minutes of detention, pilots found half "
         "an hour to three; in cold water see iron_oxidation_time"}, // [wi811, okla626, va590920]
    {5, "2 to 5 minutes that count by common practice; the reaction takes seconds to minutes above pH 6.5, "
        "recalled, not confirmed"},                                                           // [practice]
    {2, "pH 6.2 to 6.5, seconds to two minutes by common practice"},                          // [practice]
    {5, "less than 5 minutes; recalled, not confirmed"},                                      // [recalled]
    {240, "pH 8.5 to 9 and hours without a bed, four assumed here; recalled, not confirmed"}, // [recalled]
    {5,
     "pH 6 to 6.5, much better above 7; free chlorine of 0.5 to 1 mg/L through the bed; the reaction is in "
     "the bed, five minutes ahead of it are assumed here"},                     // [opflow]
    {15, "pH 7 to 7.5; 5 to 20 minutes, 15 were best in a study"},              // [mn_answers]
    {240, "pH 9 to 9.5 and hours, four assumed here; recalled, not confirmed"}, // [recalled]
    {5, "pH 6 to 8, minutes, five assumed here; faster as pH rises, since hydrogen sulfide gas hardly "
        "reacts"}, // [millero]
};

double timeNeeded(int pair, Reply &reply)
{
    if (lessThan(60, conditions[pair].minutes))
        reply.caution("hours",
                      "hours: no contact tank of a house gives them, choose a bed or another oxidant");
    reply.reason(conditions[pair].words);
    return conditions[pair].minutes;
}

constexpr puteal_parameter takes[] = {
    Parameter("pair", "", "what is oxidized by what").oneOf(pairWords),
};
constexpr const char *sources[] = {"wi811",   "okla626",  "va590920", "opflow", "mn_answers",
                                   "millero", "practice", "recalled", nullptr};
constexpr puteal_example timeExamples[] = {
    example("usual_oxidation_time(\"iron by air\")", "30 min", 1e-9, "published", "wi811"),
    example("usual_oxidation_time(\"manganese by permanganate\")", "15 min", 1e-9, "published", "mn_answers"),
    example("usual_oxidation_time(\"iron by chlorine\")", "5 min", 1e-9, "common practice", "practice"),
    example("usual_oxidation_time(\"iron by peroxide\")", "2 min", 1e-9, "common practice", "practice"),
    example("usual_oxidation_time(\"iron by permanganate\")", "5 min", 1e-9, "memory", "recalled"),
};
constexpr puteal_example timeRefusals[] = {
    refusal(
        "usual_oxidation_time(\"iron\")",
        "\"iron\" is not in the list: iron by air, iron by chlorine, iron by peroxide, iron by permanganate, "
        "manganese by chlorine, manganese by chlorine on a coated bed, manganese by permanganate, manganese "
        "by air, "
        "sulfide by chlorine or peroxide"),
};
constexpr puteal_caution timeCautions[] = {caution("hours", "manganese without a bed, by chlorine or air")};

} // namespace

constinit const puteal_function timeAllowedRow =
    Function("usual_oxidation_time", "Time of an oxidation",
             "Time to allow for a pair at its least pH or above, with what is said of it as reason. It is no "
             "time for disinfection.",
             call<timeNeeded>)
        .takes(takes)
        .gives("min", "time to allow")
        .by("table of the pair")
        .from(sources)
        .shownBy(timeExamples)
        .refusing(timeRefusals)
        .warning(timeCautions)
        .safely(oxidizerSafety);

} // namespace oxidation
