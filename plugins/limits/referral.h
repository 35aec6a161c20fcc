/// What the health tests of a water find, mildest first, and the grade each finding makes.
#pragma once

#include "limits.h"
#include "reading.h"

namespace limits
{

/// A finding is a word a person can be told whom to call about; the last is never found by a test.
inline constexpr const char *findingWords[] = {"nothing on these tests",
                                               "sulfate",
                                               "sodium",
                                               "near a health limit",
                                               "some lead",
                                               "manganese",
                                               "total coliform",
                                               "tests missing",
                                               "public system",
                                               "uranium",
                                               "lead",
                                               "arsenic",
                                               "nitrite",
                                               "nitrate",
                                               "fuel or solvent smell",
                                               "E. coli",
                                               "somebody fell ill",
                                               nullptr};
enum Finding : int {
    nothingFound,
    muchSulfate,
    muchSodium,
    nearLimit,
    someLead,
    muchManganese,
    coliformFound,
    testsMissing,
    publicSystem,
    overUranium,
    overLead,
    overArsenic,
    overNitrite,
    overNitrate,
    fuelSmelled,
    eColiFound,
    fellIll
};

inline constexpr const char *referralWords[] = {"nothing on these tests", "caution and go on",
                                                "tests missing", "stop and refer", nullptr};
enum Referral : int { nothingOnThese, cautionAndGoOn, someMissing, stopAndRefer };
constexpr Referral referralOf(Finding finding)
{
    return finding == nothingFound   ? nothingOnThese
           : finding < testsMissing  ? cautionAndGoOn
           : finding == testsMissing ? someMissing
                                     : stopAndRefer;
}

/// What the laboratory reports of bacteria.
inline constexpr const char *bacteriaWords[] = {"none found", "total coliform, no E. coli", "E. coli",
                                                nullptr};
enum Bacteria : int { noneFound, coliformOnly, withEColi };

inline constexpr const char *contactWords[] = {"certified laboratory",
                                               "licensed plumber",
                                               "licensed well contractor",
                                               "physician",
                                               "state drinking-water program",
                                               "health department",
                                               "state environmental office",
                                               "poison control or emergency services",
                                               nullptr};
enum Contact : int {
    laboratory,
    plumber,
    wellContractor,
    physician,
    waterProgram,
    healthDepartment,
    environmentalOffice,
    poisonControl
};

} // namespace limits
