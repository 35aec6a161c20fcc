/// An example well whose inputs a test types, and random waters to type into it.
#pragma once

#include <cmath>
#include <cstdio>
#include <memory>
#include <random>
#include <string>

#include "session/session.h"

namespace puteal::test
{

inline std::unique_ptr<Session> opened(const char *name)
{
    auto session = Session::open(std::string(PUTEAL_SOURCE_DIR "/sheets/") + name + ".puteal");
    if (!session)
        qFatal("%s", session.error().words.c_str());
    return std::move(*session);
}

/// A well whose inputs are set by text; verdicts are read as indices (0 works ... 3 will not work).
struct Well {
    std::unique_ptr<Session> session = opened("iron_options");

    CellAt at(const char *name) const
    {
        const auto cell = session->find(name);
        if (!cell)
            qFatal("%s", cell.error().words.c_str());
        return *cell;
    }
    void set(const char *name, const std::string &text)
    {
        const auto applied = session->apply(SetText{at(name), text});
        if (!applied)
            qFatal("%s: %s", name, applied.error().words.c_str());
    }
    std::string shown(const std::string &name) const { return session->view(at(name.c_str())).shown; }
    double number(const std::string &name) const { return session->view(at(name.c_str())).numberShown; }
    /// -1 when the cell has an error.
    int verdict(const char *name) const
    {
        const CellView view = session->view(at(name));
        return view.error || view.type.kind != ValueKind::choice ? -1 : static_cast<int>(view.number);
    }
};

inline std::string amount(double x, const char *unit)
{
    char text[64];
    std::snprintf(text, sizeof text, "%.4f %s", x, unit);
    return text;
}

/// One random water and household; every number typed as a person would.
struct Water {
    double iron, manganese, sulfide, tannin, ph, hardness, alkalinity, pump, people;
    bool drain, freezes, soft, softener, bacteria;
    int form;
};

inline Water randomWater(std::mt19937_64 &random)
{
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    const auto chance = [&](double p) { return between(0, 1) < p; };
    Water w{};
    w.iron = std::exp(between(std::log(0.1), std::log(20.0)));
    w.manganese = chance(0.3) ? 0.0 : std::exp(between(std::log(0.01), std::log(2.0)));
    w.sulfide = chance(0.5) ? 0.0 : between(0, 4);
    w.tannin = chance(0.6) ? 0.0 : between(0, 2);
    w.ph = between(5.6, 8.6);
    w.hardness = between(1, 40);
    w.alkalinity = between(20, 350);
    w.pump = between(0.5, 16);
    w.people = std::floor(between(1, 8));
    w.drain = chance(0.8);
    w.freezes = chance(0.2);
    w.soft = chance(0.5);
    w.softener = chance(0.2);
    w.bacteria = chance(0.15);
    w.form = static_cast<int>(between(0, 7));
    return w;
}

inline const char *const forms[] = {"dissolved", "oxidized",  "mixed",  "bacterial",
                                    "organic",   "colloidal", "unknown"};

inline void put(Well &well, const Water &w)
{
    well.set("raw_iron", amount(w.iron, "mg/L as Fe"));
    well.set("raw_manganese", amount(w.manganese, "mg/L as Mn"));
    well.set("hydrogen_sulfide", amount(w.sulfide, "mg/L as H2S"));
    well.set("tannin", amount(w.tannin, "mg/L as tannin"));
    well.set("ph", amount(w.ph, ""));
    well.set("hardness", amount(w.hardness, "gpg"));
    well.set("alkalinity", amount(w.alkalinity, "mg/L as CaCO3"));
    well.set("pump_flow", amount(w.pump, "gpm"));
    well.set("people", amount(w.people, "people"));
    well.set("drain_available", w.drain ? "yes" : "no");
    well.set("freezes", w.freezes ? "yes" : "no");
    well.set("soft_water_wanted", w.soft ? "yes" : "no");
    well.set("has_softener", w.softener ? "yes" : "no");
    well.set("iron_bacteria", w.bacteria ? "yes" : "no");
    well.set("iron_form", std::string("\"") + forms[w.form] + "\"");
}

} // namespace puteal::test
