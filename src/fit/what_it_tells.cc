#include "fit/what_it_tells.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>

#include <fmt/format.h>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

// Common practice, no source, but where named.
constexpr double casing_rules = 0.1;     // share of the rate that the casing gives at the end
constexpr double told_within = 4;        // high over low of an interval that still tells something
constexpr double told_storativity = 30;  // the same for storativity, which enters by its logarithm
constexpr double line_from_u = 0.05;     // from here on drawdown follows the straight line within 2 %
constexpr double poor_share = 0.1;       // of the drawdown, that a fit may miss by
constexpr std::size_t few_readings = 8;

std::string time_text(double time_s) {
  return write_quantity(time_s, Dimension::time, UnitSystem::us);
}

std::string percent_text(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

class Teller {
 public:
  Teller(PumpingTest const& test, PumpingTestFit& fit) : test_(test), fit_(fit) {
    for (auto const& record : test.records) {
      in_well_ = in_well_ || record.distance_m == 0;
      beside_ = beside_ || record.distance_m > 0;
      for (auto const& reading : record.readings) {
        last_s_ = std::max(last_s_, reading.time_s);
        most_m_ = std::max(most_m_, std::abs(reading.drawdown_m));
      }
      readings_ += record.readings.size();
    }
  }

  void tell() {
    count();
    casing();
    length();
    width();
    pumped_well_alone();
    quality();
    disagreement();
    late_course();
  }

 private:
  void note(std::string key, std::string says) { fit_.notes.push_back({std::move(key), std::move(says)}); }

  void count() {
    std::size_t unknowns = 0;
    for (auto const* const each : {&fit_.transmissivity_m2_s, &fit_.storativity, &fit_.linear_loss_s_m2,
                                   &fit_.quadratic_loss_s2_m5, &fit_.storage_radius_m}) {
      unknowns += each->standing == Estimate::Standing::fitted ? 1 : 0;
    }
    if (readings_ <= unknowns + 1) {
      fit_.tells_transmissivity = false;
      fit_.tells_storativity = false;
      note("too_few_readings", fmt::format("{} readings for {} unknowns: the data cannot tell. Any curve could be laid "
                                           "through so few.",
                                           readings_, unknowns));
    } else if (std::any_of(fit_.records.begin(), fit_.records.end(),
                           [](RecordFit const& record) { return record.gathered_from > record.readings.size(); })) {
      note("gathered",
           "There are many readings: they were gathered into means over short stretches of time, forty to a "
           "decade, and these were fitted.");
    } else if (readings_ < few_readings) {
      note("few_readings", fmt::format("Only {} readings: one misread level moves the result.", readings_));
    }
  }

  /// The longest stretch of one rate, and the rate's change at its beginning.
  double longest_stage_s() const {
    double longest_s = 0;
    for (std::size_t i = 0; i < fit_.rates.size(); ++i) {
      double const until_s = i + 1 < fit_.rates.size() ? std::min(fit_.rates[i + 1].from_s, last_s_) : last_s_;
      longest_s = std::max(longest_s, until_s - fit_.rates[i].from_s);
    }
    return longest_s;
  }

  void casing() {
    double const radius_m = fit_.well.casing_radius_m;
    if (!in_well_ || !(radius_m > 0)) {
      return;
    }
    double const held_s = longest_stage_s();
    RateStep const unit{0, 1e-3};
    std::span<RateStep const> const steady(&unit, 1);
    double const apart_s = 0.01 * held_s;
    double const rise_m =
        pumped_well_drawdown_m(steady, fit_.well, held_s) - pumped_well_drawdown_m(steady, fit_.well, held_s - apart_s);
    double const area_m2 = std::numbers::pi * radius_m * radius_m;
    fit_.casing_share = std::clamp(rise_m / apart_s * area_m2 / unit.flow_m3_s, 0.0, 1.0);
    // After this time the casing no longer bends the curve: papadopulos_cooper_1967.
    double const needed_s = 25 * radius_m * radius_m / fit_.transmissivity_m2_s.value;
    double const radial_s = 250 * radius_m * radius_m / fit_.transmissivity_m2_s.value;
    if (fit_.casing_share > casing_rules) {
      fit_.tells_transmissivity =
          fit_.tells_transmissivity && fit_.casing_share < 0.5 && told(fit_.transmissivity_m2_s);
      note("storage_dominates",
           fmt::format(
               "Storage still dominates: at the end the casing itself gave {} of what was pumped. {} Pump at one "
               "rate for {} or more.",
               percent_text(fit_.casing_share),
               fit_.tells_transmissivity ? "The result leans on a part of the curve that the casing shapes."
                                         : "The data cannot tell the transmissivity.",
               time_text(std::max(needed_s, 2 * held_s))));
    } else if (held_s < radial_s && fit_.casing_share > 0.01) {
      note("storage_felt",
           fmt::format(
               "The casing's water is felt through much of the test (25·r²/T is {}, 250·r²/T is {}); the fit takes "
               "it into account.",
               time_text(needed_s), time_text(radial_s)));
    }
  }

  void length() {
    double least_u = 1e300;
    for (auto const& record : test_.records) {
      double const radius_m = record.distance_m > 0 ? record.distance_m : fit_.well.well_radius_m;
      double const square_m2 = radius_m * radius_m;
      if (record.readings.empty()) {
        continue;
      }
      double const last_s = std::min(record.readings.back().time_s, stop_s(fit_.rates).value_or(1e300));
      least_u = std::min(least_u, square_m2 * fit_.storativity.value / (4 * fit_.transmissivity_m2_s.value * last_s));
    }
    if (beside_ && least_u > 1) {
      fit_.tells_transmissivity = fit_.tells_transmissivity && told(fit_.transmissivity_m2_s);
      note("too_short",
           fmt::format("Too short: drawdown had only begun to arrive at the observed distance (u = {:.2g} at "
                       "the last reading; below {:g} is wanted).{}",
                       least_u, line_from_u,
                       fit_.tells_transmissivity ? "" : " The data cannot tell the transmissivity."));
    } else if (beside_ && least_u > line_from_u) {
      note(
          "no_straight_line",
          fmt::format("The straight line of late time was not reached (u = {:.2g} at the last reading; it begins below "
                      "{:g}). The result rests on the bend of the curve; a longer test would hold it better.",
                      least_u, line_from_u));
    }
    double range_m = 0;
    for (auto const& record : test_.records) {
      if (record.readings.empty()) {
        continue;
      }
      auto const [low, high] =
          std::minmax_element(record.readings.begin(), record.readings.end(),
                              [](LevelReading const& a, LevelReading const& b) { return a.drawdown_m < b.drawdown_m; });
      range_m = std::max(range_m, high->drawdown_m - low->drawdown_m);
    }
    if (range_m < 4 * fit_.rmse_m.value) {
      fit_.tells_transmissivity = false;
      fit_.tells_storativity = false;
      note("no_course", fmt::format("The data cannot tell: over the whole test the level moved {}, and readings "
                                    "scatter by {} around the fit.",
                                    length_text(range_m), length_text(fit_.rmse_m.value)));
    }
  }

  std::string length_text(double length_m) const { return write_quantity(length_m, Dimension::length, test_.units); }
  /// A bore is measured as pipes are.
  std::string bore_text(double radius_m) const { return write_quantity(radius_m, Dimension::diameter, test_.units); }

  static bool told(Estimate const& estimate, double within = told_within) {
    return estimate.high <= within * estimate.low;
  }

  void width() {
    if (fit_.transmissivity_m2_s.standing == Estimate::Standing::fitted && !told(fit_.transmissivity_m2_s) &&
        fit_.tells_transmissivity) {
      fit_.tells_transmissivity = false;
      note("transmissivity_open",
           "The data cannot tell the transmissivity: values far apart fit them alike (see its interval). A longer "
           "test, or "
           "one with less scatter, would.");
    }
    if (fit_.storativity.standing == Estimate::Standing::fitted && !told(fit_.storativity, told_storativity) &&
        fit_.tells_storativity) {
      fit_.tells_storativity = false;
      note("storativity_open", "The data cannot tell the storativity: values far apart fit them alike.");
    }
  }

  void pumped_well_alone() {
    if (in_well_ && test_.well_radius_assumed) {
      note(
          "bore_assumed",
          fmt::format("The radius of the bore was not given (--casing, --bore) and taken as {}. Transmissivity and the "
                      "quadratic loss do not depend on it.",
                      bore_text(test_.well_radius_m.value_or(0))));
    }
    if (beside_) {
      return;
    }
    fit_.tells_storativity = false;
    using enum Estimate::Standing;
    if (fit_.storativity.standing == assumed) {
      bool const wide = test_.well_radius_m && fit_.well.well_radius_m > *test_.well_radius_m;
      note("storativity_assumed",
           fmt::format(
               "From the pumped well alone storativity cannot be told: skin and effective radius are unknown. It was "
               "taken as {:g}, and {}",
               fit_.storativity.value,
               wide ? fmt::format("the well then draws as if its bore had a radius of {}: it has no linear loss "
                                  "of its own.",
                                  bore_text(fit_.well.well_radius_m))
                    : "the linear loss B holds for that value."));
    } else if (fit_.storativity.standing == given) {
      if (test_.well_radius_m && fit_.well.well_radius_m != *test_.well_radius_m) {
        note("effective_radius",
             fmt::format("With the storativity given, the well draws as if its bore had a radius of {}: it has no "
                         "linear loss of its own.",
                         bore_text(fit_.well.well_radius_m)));
      }
    } else {
      note("storativity_with_skin",
           "From the pumped well alone storativity cannot be told: skin and effective radius are unknown. The S given "
           "here "
           "holds for a bore of the stated radius without linear loss; together with T it describes this well, but not "
           "the formation.");
    }
  }

  void quality() {
    if (fit_.rmse_m.value > poor_share * most_m_) {
      note("poor_fit",
           fmt::format("The fit is poor: it misses by {} of the largest drawdown. Look whether rates, times and "
                       "distances are right, and whether one formation of wide extent is what was pumped.",
                       percent_text(fit_.rmse_m.value / most_m_)));
    }
    if (fit_.widened > 1) {
      note("residuals_hang_together",
           fmt::format(
               "Neighbouring readings miss the curve on the same side (correlation {:.2f}): the law leaves something "
               "out. The intervals are {:.1f} times as wide for it.",
               fit_.autocorrelation, fit_.widened));
    }
  }

  void disagreement() {
    double low = 1e300;
    double high = 0;
    for (auto const& record : fit_.records) {
      if (record.alone_transmissivity_m2_s && record.alone_storativity) {
        low = std::min(low, record.alone_storativity->value);
        high = std::max(high, record.alone_storativity->value);
      }
    }
    if (high > 1.3 * low && low > 0 && fit_.widened > 1) {
      note("places_disagree",
           "The places disagree: each alone gives a storativity of its own (see the table). The formation "
           "is not the same everywhere, or a distance is wrong.");
    }
  }

  /// Whether the last readings climb faster or slower over the logarithm of time than the fit: a boundary shows late.
  void late_course() {
    std::string faster;
    std::string slower;
    for (auto const& record : fit_.records) {
      constexpr std::size_t least = 12;
      if (record.readings.size() < least || record.recovered || fit_.rates.size() > 1 || fit_.widened == 1) {
        continue;
      }
      double const last_s = record.readings.back().time_s;
      double const from_s = last_s * std::pow(record.readings.front().time_s / last_s, 1.0 / 3);
      double const excess =
          late_slope(record, from_s, [](FittedReading const& r) { return r.measured_m - r.fitted_m; });
      double const fitted = late_slope(record, from_s, [](FittedReading const& r) { return r.fitted_m; });
      constexpr double plainly = 0.12;
      if (fitted > 0 && std::abs(excess) > plainly * fitted) {
        std::string& places = excess > 0 ? faster : slower;
        places += (places.empty() ? "" : ", ") +
                  (record.distance_m > 0 ? "at " + length_text(record.distance_m) : std::string("in the pumped well"));
      }
    }
    if (!faster.empty()) {
      note("late_climb", "Late drawdown climbs faster than the fit (" + faster +
                             "): the formation may end (a boundary without flow), and a long run would draw down more "
                             "than the fit says.");
    }
    if (!slower.empty()) {
      note("late_slackening", "Late drawdown climbs slower than the fit (" + slower +
                                  "): water may come from above or from a river. Do not count on it in a dry season.");
    }
  }

  /// By a straight line over the logarithm of time through the readings from here on.
  template <class Value>
  static double late_slope(RecordFit const& record, double from_s, Value const& value) {
    double count = 0;
    double x = 0;
    double y = 0;
    double xx = 0;
    double xy = 0;
    for (auto const& reading : record.readings) {
      if (reading.time_s >= from_s) {
        double const at = std::log(reading.time_s / from_s);
        count += 1;
        x += at;
        y += value(reading);
        xx += at * at;
        xy += at * value(reading);
      }
    }
    double const spread = count * xx - x * x;
    return count > 3 && spread > 0 ? (count * xy - x * y) / spread : 0;
  }

  PumpingTest const& test_;
  PumpingTestFit& fit_;
  bool in_well_ = false;
  bool beside_ = false;
  double last_s_ = 0;
  double most_m_ = 1e-12;
  std::size_t readings_ = 0;
};

}  // namespace

void say_what_it_tells(PumpingTest const& test, PumpingTestFit& fit) {
  Teller(test, fit).tell();
}

}  // namespace wellproof
