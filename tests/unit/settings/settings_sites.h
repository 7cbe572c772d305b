#pragma once
// Sites for the tests of settings: a shallow one as a person would enter it, with one line that a test may change.
#include <string>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include "settings/derive.h"
#include "site/read.h"

namespace wellproof {

struct SiteText {
  std::string static_level = "40 .. 46 ft";
  std::string motor_power = "1.5 hp";
  std::string motor_amps = "5.9 A";
  std::string tank = "20 gal";
  std::string outlet_pressure = "38 psi";
  std::string leak = "0 .. 0.05 gpm";
  std::string relief = "100 psi";
  std::string longest_run;  // none: assumed
  std::string more;

  std::string text() const {
    return "[site]\nname = \"Test Hollow\"\n[well]\nstatic_level = \"" + static_level +
           "\"\nseason_drop = \"0 ft\"\nspecific_capacity = \"2 gpm/ft\"\ncasing = \"6 in\"\ndepth = \"140 ft\"\n"
           "[pump]\nsetting = \"110 ft\"\nrated_flow = \"10 gpm\"\n[motor]\npower = \"" +
           motor_power + "\"\nvoltage = \"230 V\"\nservice_factor_current = \"" + motor_amps +
           "\"\n[drive]\nrated_current = \"12 A\"\n[tank]\nvolume = \"" + tank +
           "\"\nprecharge = \"30 psi\"\n[sensor]\nfull_scale = \"150 psi\"\n[demand]\noutlet_pressure = \"" +
           outlet_pressure + "\"\noutlet_rise = \"10 ft\"\nleast_draw = \"0.5 gpm\"\npeak_draw = \"9 gpm\"\nleak = \"" +
           leak + "\"\n" + (longest_run.empty() ? "" : "longest_run = \"" + longest_run + "\"\n") +
           "[limits]\nfittings_rating = \"125 psi\"\nrelief = \"" + relief + "\"\n" + more;
  }
};

inline Site site_of(SiteText const& entered) {
  auto read = read_site(entered.text(), "test.toml");
  if (!read) {
    for (auto const& finding : read.error()) {
      ADD_FAILURE() << text(finding);
    }
    return {};
  }
  return read->site;
}

struct Answer {
  Site site;
  std::vector<Plant> plants;
  Derived derived;

  SettingReason const& reason(std::string_view key) const {
    for (auto const& one : derived.reasons) {
      if (one.key == key) {
        return one;
      }
    }
    ADD_FAILURE() << "no reason for " << key;
    return derived.reasons.front();
  }
};

inline Answer answer(SiteText const& entered, UnitSystem units = UnitSystem::us, std::uint32_t draws = 12) {
  Answer a;
  a.site = site_of(entered);
  a.plants = draw_plants(a.site, 1, draws);
  a.derived = derive(a.site, a.plants, units);
  return a;
}

}  // namespace wellproof
