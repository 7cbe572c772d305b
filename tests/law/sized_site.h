#pragma once
// Random sites as a careful installer would have built them: the pump is chosen for the house and the lift, the motor,
// cable and pipes for the pump, the tank for a minute or two of its flow. What such a person finds out is entered, some
// of it as a range. For what must hold of settings where settings can hold at all (sizing: common practice, no source).
#include <algorithm>
#include <array>
#include <string>

#include <fmt/format.h>

#include "law/random_site.h"

namespace wellproof {

class SizedSite {
 public:
  explicit SizedSite(std::uint64_t seed) : random_(seed) {}

  std::string text() {
    double const peak_gpm = random_.between(5, 16);
    double const static_ft = random_.between(15, 280);
    double const drawdown_ft = random_.between(8, 50);
    double const season_ft = random_.between(2, 12);
    double const outlet_psi = random_.between(30, 48);
    double const rise_ft = random_.between(4, 20);
    double const yard_ft = random_.between(20, 250);
    double const flow_gpm = peak_gpm * random_.between(1.0, 1.25);
    double const lift_ft = static_ft + drawdown_ft + season_ft + outlet_psi * 2.31 + rise_ft;
    double const head_ft = lift_ft * random_.between(1.12, 1.3) + 15;
    double const pump_hp = flow_gpm * head_ft / 3960 / random_.between(0.48, 0.6);
    // As large a motor as the pump asks for anywhere on its curve, of the sizes that are made.
    constexpr std::array sizes_hp = {0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 5.0, 7.5, 10.0};
    double const motor_hp =
        *std::find_if(sizes_hp.begin(), sizes_hp.end() - 1, [&](double hp) { return hp * 1.15 > 1.1 * pump_hp; });

    out_ = "[site]\nname = \"sized by lot\"\n\n[well]\n";
    entry("static_level", static_ft, "ft", random_.between(2, 5));
    line("test_flow", flow_gpm * random_.between(1.1, 1.8), "gpm");
    line("test_level", static_ft + drawdown_ft * random_.between(1.1, 1.6), "ft");
    line("test_time", random_.between(2, 24), "h");
    line("season_drop", season_ft, "ft");
    line("casing", random_.chance(0.7) ? 6 : 4.5, "in");
    double const setting_ft = static_ft + season_ft + drawdown_ft * 1.8 + random_.between(30, 90);
    line("depth", setting_ft + random_.between(20, 80), "ft");
    out_ += "\n[pump]\n";
    line("setting", setting_ft, "ft");
    line("rated_flow", flow_gpm, "gpm");
    out_ += "curve = [\n";
    constexpr int points = 8;
    double const droop = random_.between(0.25, 0.4);
    for (int i = 0; i < points; ++i) {
      double const part = 1.55 * i / (points - 1);
      out_ +=
          fmt::format("  [\"{:.3f} gpm\", \"{:.2f} ft\", \"{:.4f} hp\"],\n", part * flow_gpm,
                      head_ft * (1 + droop - droop * part * part), pump_hp * (0.62 + 0.52 * part - 0.14 * part * part));
    }
    out_ += "]\n";
    if (random_.chance(0.5)) {
      out_ += "wear = \"0 .. 0.08\"\n";
    }
    out_ += fmt::format("\n[motor]\npower = \"{} hp\"\nvoltage = \"230 V\"\n", motor_hp);
    if (random_.chance(0.8)) {
      out_ += "service_factor = 1.15\nspeed = \"3450 rpm\"\n";
      out_ += fmt::format("service_factor_current = \"{:.2f} A\"\n",
                          1.15 * motor_hp * 745.7 / (1.7320508 * 230 * 0.75 * 0.8));
    }
    out_ +=
        fmt::format("\n[cable]\nsize = \"{} AWG\"\nlength = \"{:.0f} ft\"\n", motor_hp > 3 ? 6 : 10, setting_ft + 60);
    char const* size = flow_gpm > 12 ? "1-1/2 in" : "1-1/4 in";
    out_ += fmt::format("\n[[pipe]]\nplace = \"drop\"\nkind = \"sch80_pvc\"\nsize = \"{}\"\n", size);
    out_ += fmt::format("\n[[pipe]]\nplace = \"yard\"\nkind = \"sidr9_pe\"\nsize = \"{}\"\n", size);
    line("length", yard_ft, "ft");
    line("rise", random_.between(0, 0.1) * yard_ft, "ft");
    out_ += "\n[tank]\n";
    line("volume", peak_gpm * random_.between(1.5, 5), "gal");
    line("rating", 150, "psi");
    out_ += "\n[sensor]\n";
    line("full_scale", random_.chance(0.5) ? 100 : 150, "psi");
    out_ += "\n[demand]\n";
    line("outlet_pressure", outlet_psi, "psi");
    line("outlet_rise", rise_ft, "ft");
    line("peak_draw", peak_gpm, "gpm");
    line("least_draw", random_.between(0.5, 0.9), "gpm");
    out_ += "leak = \"0 .. 0.03 gpm\"\n";
    double const longest_min = random_.between(20, 50);
    line("longest_run", longest_min, "min");
    out_ += "\n[limits]\nfittings_rating = \"125 psi\"\n";
    line("relief", random_.between(100, 110), "psi");
    line("water_loss", 3 * flow_gpm * longest_min, "gal");
    return out_;
  }

 private:
  void line(char const* key, double value, char const* unit) {
    out_ += fmt::format("{} = \"{:.3f} {}\"\n", key, value, unit);
  }
  void entry(char const* key, double value, char const* unit, double off) {
    out_ += random_.chance(0.6) ? fmt::format("{} = \"{:.3f} ± {:.3f} {}\"\n", key, value, off, unit)
                                : fmt::format("{} = \"{:.3f} {}\"\n", key, value, unit);
  }

  RandomNumbers random_;
  std::string out_;
};

/// The text of a valid site file; the same for the same seed.
inline std::string sized_site_text(std::uint64_t seed) {
  return SizedSite(seed).text();
}

}  // namespace wellproof
