#pragma once
// Sites for the study of synthetic calls: wells, pumps and houses that a person might describe, each pump fit for its
// well. Invented.
#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "quantity/chance.h"

namespace wellproof {

/// The text of a site file; the same for the same seed.
inline std::string study_site_text(std::uint64_t seed) {
  Chance chance(seed_of(seed, 77, 0));
  double const static_ft = std::round(chance.by_size(20, 260));
  double const over_ft = chance.by_size(40, 160);
  double const setting_ft = std::round(static_ft + over_ft + 20);
  constexpr double classes_gpm[] = {5, 7, 10, 10, 15};
  double const class_gpm = classes_gpm[chance.one_of(5)];
  double const outlet_psi = std::round(chance.between(35, 45));
  double const rise_ft = std::round(chance.between(5, 22));
  double const head_ft = (static_ft + 0.5 * over_ft + outlet_psi * 2.31 + rise_ft + 35) * chance.between(1.1, 1.35);
  double const needed_hp = class_gpm * head_ft / 3960 / 0.5;
  constexpr double motors_hp[] = {0.5, 0.75, 1, 1.5, 2, 3, 5};
  double motor_hp = motors_hp[6];
  for (double const size_hp : motors_hp) {
    if (size_hp >= needed_hp / 1.1) {
      motor_hp = size_hp;
      break;
    }
  }
  double const test_gpm = chance.by_size(1.2, 20);
  double const test_ft = std::round(static_ft + chance.between(0.15, 0.75) * over_ft);
  std::string out = fmt::format(
      "[site]\nname = \"study {}\"\n\n[well]\nstatic_level = \"{} ± {} ft\"\ntest_flow = \"{:.1f} gpm\"\n"
      "test_time = \"{} h\"\ntest_level = \"{} ft\"\ncasing = \"6 in\"\n\n[pump]\nsetting = \"{} ft\"\n"
      "rated_flow = \"{} gpm\"\nrated_head = \"{:.0f} ft\"\n\n[motor]\npower = \"{} hp\"\nvoltage = \"230 V\"\n\n",
      seed, static_ft, std::round(2 + 0.03 * static_ft), test_gpm, 1 + chance.one_of(6), test_ft, setting_ft, class_gpm,
      head_ft, motor_hp);
  out += fmt::format("[tank]\nvolume = \"{:.0f} gal\"\n\n[supply]\nvoltage = \"{:.0f} ± 6 V\"\n\n",
                     chance.by_size(4, 40), chance.between(228, 246));
  out += fmt::format(
      "[demand]\noutlet_pressure = \"{} psi\"\noutlet_rise = \"{} ft\"\npeak_draw = \"{:.1f} gpm\"\n"
      "leak = \"0 .. 0.03 gpm\"\n",
      outlet_psi, rise_ft, class_gpm * chance.between(0.6, 0.9));
  if (chance.says(0.4)) {
    out += fmt::format(
        "\n[[zone]]\nname = \"lawn\"\nflow = \"{:.1f} gpm\"\npressure = \"30 psi\"\ntime = \"{:.0f} min\"\n",
        class_gpm * chance.between(0.3, 0.6), chance.between(10, 40));
  }
  return out;
}

}  // namespace wellproof
