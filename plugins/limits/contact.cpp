/// Whom to call about a finding, in neutral words.
#include "referral.h"

using namespace puteal::sdk;

namespace limits
{
namespace
{

struct Call {
    Contact whom;
    const char *words;
};

/// By finding. Whom to call is common practice, no source; offices have other names from place to place.
constexpr Call calls[] = {
    {laboratory, "repeat coliform and nitrate every year, the others as the health department asks"},
    {physician,
     "infants and visitors may have loose bowels above the limit; ask before formula is made with it"},
    {physician, "for anybody on a low-sodium diet; a softener adds to the sodium"},
    {laboratory, "repeat the test before anything is decided"},
    {plumber, "look for lead in pipes and fittings; a laboratory tests first draw and flushed water"},
    {healthDepartment, "bottled water for infants until the follow-up test"},
    {wellContractor, "inspect the wellhead, disinfect, and let a laboratory test again"},
    {laboratory, "the missing tests come first; ask which bottle and which holding time"},
    {waterProgram, "a public system has its own rules, tests and permits"},
    {healthDepartment, "and the state radiation office where there is one"},
    {healthDepartment, "do not drink the water until they have answered; a licensed plumber finds the lead"},
    {healthDepartment,
     "do not drink the water until they have answered; a certified laboratory repeats the test"},
    {healthDepartment, "at once where there is an infant; bottled water until then, boiling makes it worse"},
    {healthDepartment,
     "at once where there is an infant or a pregnancy; bottled water until then, boiling makes it worse"},
    {environmentalOffice,
     "no flame near taps and tanks, do not drink the water; the fire department where it is strong"},
    {healthDepartment, "do not drink the water; then a licensed well contractor"},
    {poisonControl, "first the person, then the water; tell them what the water test found"},
};

int healthContact(int finding, Reply &reply)
{
    reply.reason(std::string(findingWords[finding]) + ": " + contactWords[calls[finding].whom] + "; " +
                 calls[finding].words);
    return calls[finding].whom;
}

constexpr puteal_parameter takes[] = {
    Parameter("finding", "", "what was found, as from health_finding").oneOf(findingWords),
};
constexpr const char *sources[] = {"practice", nullptr};
constexpr puteal_example examples[] = {
    example("health_contact(\"E. coli\")", "health department", 0, "common practice", "practice"),
    example("health_contact(\"total coliform\")", "licensed well contractor", 0, "common practice",
            "practice"),
    example("health_contact(\"some lead\")", "licensed plumber", 0, "common practice", "practice"),
    example("health_contact(\"tests missing\")", "certified laboratory", 0, "common practice", "practice"),
    example("health_contact(\"somebody fell ill\")", "poison control or emergency services", 0,
            "common practice", "practice"),
};
constexpr puteal_example refusals[] = {
    refusal("health_contact(\"radon\")", "\"radon\" is not in the list: nothing on these tests, sulfate, "
                                         "sodium, near a health limit, some lead, "
                                         "manganese, total coliform, tests missing, public system, uranium, "
                                         "lead, arsenic, nitrite, nitrate, fuel or "
                                         "solvent smell, E. coli, somebody fell ill"),
};

} // namespace

constinit const puteal_function healthContactRow =
    Function("health_contact", "Whom to call about a finding",
             "Names the office or trade that answers for a finding; why(cell) adds what to do until then.",
             call<healthContact>)
        .takes(takes)
        .givesOneOf(contactWords, "whom to call first")
        .by("one contact a finding")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .safely("Local offices decide whom to call; an emergency goes to the emergency number first.");

} // namespace limits
