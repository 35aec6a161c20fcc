/// docs/units.md from the unit table.
#include <fmt/format.h>

#include "base/number.h"
#include "show/pages.h"

namespace puteal
{

namespace
{

constexpr const char *introduction = "# Units\n"
                                     "\n"
                                     "Written by the program from its own table; a test compares the two. "
                                     "Units stand directly after a number:\n"
                                     "`3 mg/L as Fe`, `12 gal/(day*person)`, `0.5 1/day`, `5 ft^2`. No blank "
                                     "stands inside a unit, `*` only inside\n"
                                     "parentheses, and there is one `/`. `mg{Fe}/L` says the same as `mg/L "
                                     "as Fe`; braces are needed where two\n"
                                     "amounts stand in one unit (`mg{Cl2}/mg{Fe}`). Case counts, except that "
                                     "`l` is `L`. The micro sign, `°C`, `²`,\n"
                                     "`³` and the middle dot are read as their plain twins.\n";

/// Words of one dimension stand together, in the order of the table.
struct Group {
    const char *title;
    const char *like; ///< a unit of that dimension, "" for the rest
};

constexpr Group groups[] = {
    {"Length", "m"},
    {"Area", "m^2"},
    {"Volume", "L"},
    {"Flow", "gpm"},
    {"Mass", "kg"},
    {"Concentration", "mg/L"},
    {"Amount of substance", "mol"},
    {"Time", "s"},
    {"Money", "$"},
    {"Pressure", "Pa"},
    {"Temperature", "delta_K"},
    {"Energy", "J"},
    {"Power", "W"},
    {"Force", "N"},
    {"Viscosity", "cP"},
    {"Kinematic viscosity", "cSt"},
    {"Electricity", "A"},
    {"Voltage", "V"},
    {"Charge", "Ah"},
    {"Conductance", "S"},
    {"Counted things, labels and shares", ""},
};

std::string cell(std::string text)
{
    for (std::size_t i = 0; (i = text.find('|', i)) != std::string::npos; i += 2)
        text.insert(i, "\\");
    return text;
}

std::string spellingsOf(const UnitWord &word)
{
    std::string text;
    for (const std::string &spelling : word.spellings())
        text += (text.empty() ? "`" : ", `") + spelling + "`";
    return text;
}

std::string rowOf(const UnitWord &word)
{
    std::string definition(word.definition);
    if (!word.type.substances.empty() && definition.find(" as ") == std::string::npos)
        definition += ", as " + UnitTable::substanceWord(word.type.substances.items()[0].first);
    return fmt::format("| `{}` | {} | {} | {} | {} | {} |\n", word.word, word.name, cell(definition),
                       spellingsOf(word), word.source, cell(std::string(word.note)));
}

std::string substancesTable()
{
    std::string page =
        "\n## Substances (after `as`)\n\n"
        "Molar masses from the IUPAC abridged atomic weights of 2021.\n\n"
        "| word | substance | g/mol | charge used for equivalents |\n| --- | --- | --- | --- |\n";
    for (std::uint16_t id = 0; !UnitTable::substanceWord(id).empty(); ++id) {
        const double mass = UnitTable::substanceMolarMass(id);
        const int charge = UnitTable::substanceCharge(id);
        page += fmt::format("| `{}` | {} | {} | {} |\n", UnitTable::substanceWord(id),
                            UnitTable::substanceName(id), mass > 0 ? trimZeros(toFigures(mass, 7)) : "",
                            charge != 0 ? std::to_string(charge) : "");
    }
    return page;
}

} // namespace

std::string unitsPage(const UnitTable &table)
{
    std::string page = introduction;
    std::vector<bool> written(table.words().size(), false);
    for (const Group &group : groups) {
        const auto like = readUnit(group.like, table);
        page += fmt::format("\n## {}\n\n| word | name | definition | also read | source | note |\n"
                            "| --- | --- | --- | --- | --- | --- |\n",
                            group.title);
        for (std::size_t i = 0; i < table.words().size(); ++i) {
            const UnitWord &word = table.words()[i];
            const bool fits = group.like[0] == '\0' || (like && word.type.dimension == like->type.dimension);
            if (written[i] || !fits)
                continue;
            written[i] = true;
            page += rowOf(word);
        }
    }
    page += "\n## Sources\n\n";
    for (const UnitSource &source : UnitTable::sources())
        page += fmt::format("- **{}**: {}\n", source.key, source.words);
    return page + substancesTable();
}

} // namespace puteal
