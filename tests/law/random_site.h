#pragma once
// Random site files that are valid: any well, pump, motor and house that a person might describe, each optional entry
// there or not, as a number or a range. For properties that must hold on every site.
#include <cstdint>
#include <string>

#include <fmt/format.h>

namespace wellproof {

/// SplitMix64 (Steele, Lea & Flood 2014): the same numbers on every machine.
class RandomNumbers {
 public:
  explicit RandomNumbers(std::uint64_t seed) : state_(seed) {}

  std::uint64_t bits() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t x = state_;
    x = (x ^ (x >> 30U)) * 0xBF58476D1CE4E5B9U;
    x = (x ^ (x >> 27U)) * 0x94D049BB133111EBU;
    return x ^ (x >> 31U);
  }
  double between(double low, double high) { return low + (high - low) * static_cast<double>(bits() >> 11U) * 0x1p-53; }
  bool chance(double part) { return between(0, 1) < part; }
  int whole(int low, int high) { return low + static_cast<int>(bits() % static_cast<std::uint64_t>(high - low + 1)); }

 private:
  std::uint64_t state_;
};

class RandomSite {
 public:
  explicit RandomSite(std::uint64_t seed) : random_(seed) {}

  std::string text() {
    out_ = "[site]\nname = \"drawn by lot\"\n";
    if (random_.chance(0.2)) {
      out_ += "control = \"pressure_switch\"\n";
    }
    well_and_pump();
    motor();
    electrics();
    runs();
    house();
    return out_;
  }

 private:
  void head(char const* table) { out_ += fmt::format("\n[{}]\n", table); }

  /// A number or a range about it that stays within the fraction.
  void entry(char const* key, double value, char const* unit, double fraction = 0.05) {
    double const off = value * random_.between(0.1, 0.6) * fraction;
    switch (random_.whole(0, 3)) {
      case 0:
        out_ += fmt::format("{} = \"{:.4f} {}\"\n", key, value, unit);
        break;
      case 1:
        out_ += fmt::format("{} = \"{:.4f} .. {:.4f} {}\"\n", key, value - off, value + off, unit);
        break;
      case 2:
        out_ += fmt::format("{} = \"{:.4f} .. {:.4f} .. {:.4f} {}\"\n", key, value - off, value, value + off, unit);
        break;
      default:
        out_ += fmt::format("{} = \"{:.4f} ± {:.4f} {}\"\n", key, value, off, unit);
        break;
    }
  }
  void maybe(char const* key, double value, char const* unit, double fraction = 0.05) {
    if (random_.chance(0.5)) {
      entry(key, value, unit, fraction);
    }
  }

  void well_and_pump() {
    double const static_ft = random_.between(5, 400);
    double const setting_ft = static_ft * 1.2 + random_.between(20, 250);
    double const test_ft = random_.between(static_ft * 1.1 + 2, setting_ft);
    flow_gpm_ = random_.between(3, 60);
    head("well");
    entry("static_level", static_ft, "ft", 0.04);
    switch (random_.whole(0, 2)) {
      case 0:
        entry("test_flow", random_.between(0.5, 40), "gpm");
        entry("test_level", test_ft, "ft", 0.02);
        maybe("test_time", random_.between(0.5, 24), "h");
        break;
      case 1:
        entry("yield", random_.between(0.5, 60), "gpm");
        break;
      default:
        entry("specific_capacity", random_.between(0.02, 10), "gpm/ft");
        break;
    }
    maybe("season_drop", random_.between(0.5, 30), "ft");
    maybe("depth", setting_ft * 1.2 + random_.between(5, 100), "ft");
    maybe("casing", random_.between(4.3, 8), "in", 0.02);
    maybe("water_temperature", random_.between(4, 25), "°C", 0.02);
    head("pump");
    entry("setting", setting_ft, "ft", 0.02);
    double const lift_ft = static_ft + random_.between(80, 300);
    power_hp_ = flow_gpm_ * lift_ft / 3960 / 0.5;
    if (random_.chance(0.5)) {
      out_ += "curve = [\n";
      constexpr int points = 7;
      for (int i = 0; i < points; ++i) {
        double const part = 1.5 * i / (points - 1);
        out_ += fmt::format("  [\"{:.4f} gpm\", \"{:.4f} ft\", \"{:.5f} hp\"],\n", part * flow_gpm_,
                            lift_ft * (1.32 - 0.32 * part * part), power_hp_ * (0.6 + 0.4 * part));
      }
      out_ += "]\n";
    } else {
      entry("rated_flow", flow_gpm_, "gpm");
      entry("rated_power", power_hp_, "hp");
      maybe("rated_head", lift_ft, "ft");
    }
    maybe("wear", random_.between(0.01, 0.4), "");
  }

  void motor() {
    head("motor");
    if (!random_.chance(0.6)) {
      return;
    }
    double const motor_hp = power_hp_ * random_.between(0.9, 1.3);
    double const motor_v = random_.chance(0.7) ? 230 : 460;
    double const efficiency = random_.between(0.6, 0.85);
    double const power_factor = random_.between(0.72, 0.88);
    double const full_a = motor_hp * 745.7 / (1.7320508 * motor_v * efficiency * power_factor);
    if (motor_hp < 0.2 || motor_hp > 60 || full_a < 0.5) {
      return;
    }
    out_ += fmt::format("power = \"{:.4f} hp\"\nvoltage = \"{} V\"\n", motor_hp, motor_v);
    maybe("full_load_current", full_a, "A", 0.02);
    maybe("service_factor_current", full_a * random_.between(1.1, 1.3), "A", 0.02);
    maybe("efficiency", efficiency, "", 0.02);
    maybe("power_factor", power_factor, "", 0.02);
    maybe("no_load_current", full_a * random_.between(0.3, 0.6), "A");
  }

  void electrics() {
    head("cable");
    if (random_.chance(0.5)) {
      out_ += fmt::format("size = \"{} AWG\"\n", 2 * random_.whole(2, 7));
    }
    maybe("length", random_.between(20, 900), "ft");
  }

  void runs() {
    static constexpr char const* kinds[] = {"sch40_pvc", "sch80_pvc", "sidr_pe",  "dr9_pe",
                                            "dr11_pe",   "pex",       "copper_l", "galvanized_sch40"};
    static constexpr char const* sizes[] = {"3/4 in", "1 in", "1-1/4 in", "1-1/2 in", "2 in"};
    static constexpr char const* places[] = {"drop", "yard", "house", "yard", "house"};
    for (auto const* place : places) {
      if (!random_.chance(0.4)) {
        continue;
      }
      out_ += fmt::format("\n[[pipe]]\nplace = \"{}\"\nkind = \"{}\"\n", place, kinds[random_.whole(0, 7)]);
      if (random_.chance(0.8)) {
        out_ += fmt::format("size = \"{}\"\n", sizes[random_.whole(0, 4)]);
      }
      if (std::string(place) != "drop") {
        maybe("length", random_.between(60, 500), "ft");
        maybe("rise", random_.between(1, 40), "ft");
      }
    }
  }

  void house() {
    double const outlet_psi = random_.between(20, 60);
    head("tank");
    maybe("volume", random_.between(1, 120), "gal");
    maybe("precharge", outlet_psi * random_.between(0.4, 0.9), "psi", 0.02);
    head("sensor");
    maybe("full_scale", random_.between(120, 300), "psi");
    head("demand");
    entry("outlet_pressure", outlet_psi, "psi", 0.04);
    switch (random_.whole(0, 2)) {
      case 0:
        out_ += fmt::format("fixture_units = {}\n", random_.whole(1, 60));
        break;
      case 1:
        out_ += fmt::format("fixtures = {{ bathroom_group = {}, kitchen_sink = 1 }}\n", random_.whole(1, 5));
        break;
      default:
        maybe("peak_draw", random_.between(4, 40), "gpm");
        break;
    }
    maybe("least_draw", random_.between(0.2, 1.5), "gpm");
    maybe("leak", random_.between(0.01, 1), "gpm");
    int const zones = random_.chance(0.4) ? random_.whole(1, 3) : 0;
    for (int i = 0; i < zones; ++i) {
      out_ += "\n[[zone]]\n";
      entry("flow", random_.between(1, 20), "gpm");
      maybe("pressure", random_.between(20, 50), "psi");
      maybe("time", random_.between(5, 120), "min");
    }
  }

  RandomNumbers random_;
  std::string out_;
  double flow_gpm_ = 0;
  double power_hp_ = 0;
};

/// The text of a valid site file; the same for the same seed.
inline std::string random_site_text(std::uint64_t seed) {
  return RandomSite(seed).text();
}

}  // namespace wellproof
