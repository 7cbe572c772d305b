// What is done and read in each acceptance test.
#include <cmath>

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/visit_words.h"

namespace wellproof {
namespace {

/// The words of one sheet's tests.
class TestWriter {
 public:
  explicit TestWriter(VisitSheet const& sheet) : sheet_(sheet), plan_(sheet.visit.plan) {}

  TestWords words(VisitTest const& test) const {
    TestWords made;
    made.title = title(test.kind);
    if (test.not_done == NotDone::nothing) {
      made.steps = steps(test);
      for (auto const& reading : test.readings) {
        made.readings.push_back({std::string(reading.what) + shown_in(reading), std::string(says(reading.meter)),
                                 band_text(reading, sheet_.units)});
      }
      made.put_back = put_back(test.kind);
      made.after = after(test.kind);
    } else {
      made.steps = {why_not(test)};
    }
    return made;
  }

 private:
  std::string pressure(double value_pa) const { return meter_text(value_pa, Dimension::pressure, sheet_.units); }
  std::string speed(double value_hz) const { return write_quantity(value_hz, Dimension::frequency, sheet_.units); }
  std::string label(std::string_view key) const { return label_of(sheet_, key); }
  static std::string minutes(double time_s) {
    return time_s < 120 ? fmt::format("{:.0f} s", time_s) : fmt::format("{:.0f} min", time_s / 60);
  }
  std::string bucket() const { return sheet_.units == UnitSystem::us ? "5 gal bucket" : "20 L bucket"; }
  std::string jug() const { return sheet_.units == UnitSystem::us ? "1 qt jug" : "1 L jug"; }

  std::string title(VisitTestKind kind) const {
    switch (kind) {
      case VisitTestKind::at_rest:
        return "Before the first start";
      case VisitTestKind::rotation:
        return "Rotation, and the shut line by hand";
      case VisitTestKind::switch_round:
        return "From cut-out to cut-in and back";
      case VisitTestKind::leak:
        return "Leak check, all shut";
      case VisitTestKind::shut_line:
        return "Line shut between pump and sensor";
      case VisitTestKind::small_draw:
        return "Small draw";
      case VisitTestKind::full_draw:
        return "Full draw";
      case VisitTestKind::sleep_wake:
        return "Sleep and wake";
      case VisitTestKind::low_water:
        return "Low-water stop, without drawing the well down";
    }
    return "";
  }

  /// Where some sites do not show the figure that says how many do.
  std::string shown_in(VisitReading const& reading) const {
    return reading.shown < sheet_.visit.draws ? fmt::format(" (in {} of {} draws)", reading.shown, sheet_.visit.draws)
                                              : "";
  }

  std::vector<std::string> steps(VisitTest const& test) const {
    switch (test.kind) {
      case VisitTestKind::at_rest:
        return at_rest();
      case VisitTestKind::rotation:
        return rotation(test);
      case VisitTestKind::switch_round:
        return {
            "Let the pump fill the tank until it stops. Open one tap into marked buckets until it starts, shut "
            "the tap at once, and take the time until it stops."};
      case VisitTestKind::leak:
        return {
            fmt::format("Tank at its pressure, every tap shut, disconnect open. Read the gauge, wait {}, read "
                        "again.",
                        minutes(plan_.leak_wait_s))};
      case VisitTestKind::shut_line:
        return {
            fmt::format("Only with a valve between the well head and the tank. Taps open as marked: shut that "
                        "valve in about 2 s and take the time from then until the drive stops by itself. If it has not "
                        "stopped after {}, stop it by hand. Open the valve, reset.",
                        minutes(std::ceil(1.5 * test.readings.front().most / 10) * 10))};
      case VisitTestKind::small_draw:
        return small_draw(test);
      case VisitTestKind::full_draw:
        return full_draw();
      case VisitTestKind::sleep_wake:
        return {
            "Shut all taps and take the time until the pump is off. Five minutes later open a tap into a marked "
            "bucket, and shut it when the pump starts."};
      case VisitTestKind::low_water:
        return low_water(test);
    }
    return {};
  }

  std::vector<std::string> at_rest() const {
    if (plan_.two_contacts) {
      return {"Pump off since an hour. Sound the well; read the volts between lines."};
    }
    return {
        "Pump off since an hour, line open to the air, drive powered and not running. If the supply has three "
        "lines, the three readings differ from their mean by no more than 1 % (NEMA MG 1)."};
  }

  std::vector<std::string> rotation(VisitTest const& test) const {
    std::string text =
        fmt::format("No more than {} in the tank, every tap shut: run by hand at {} for {}, read at its end, stop.",
                    pressure(plan_.hand_start_pa), speed(plan_.hand_speed_hz), minutes(plan_.hand_time_s));
    double least_pa = 0;
    for (auto const& reading : test.readings) {
      least_pa = reading.key == "rotation.gauge" ? reading.least : least_pa;
    }
    text += plan_.backwards_most_pa < least_pa
                ? fmt::format(" Not above {}: it turns backwards. Lock out, swap two motor leads.",
                              pressure(plan_.backwards_most_pa))
                : std::string(" Lock out, swap two motor leads, repeat: the way with more pressure is right.");
    return {text};
  }

  std::vector<std::string> small_draw(VisitTest const& test) const {
    std::string text =
        fmt::format("Open a tap until a {} fills in {:.0f} s ({}). ", jug(), plan_.jug_m3 / plan_.small_draw_m3_s,
                    write_quantity(plan_.small_draw_m3_s, Dimension::flow, sheet_.units));
    bool steady = false;
    bool spells = false;
    for (auto const& reading : test.readings) {
      spells = spells || reading.key == "small_draw.spell";
      steady = steady || reading.key != "small_draw.spell";
    }
    text += steady && spells ? "Either the pump still turns after 5 min, and steadily, or the tank feeds this draw in "
                               "spells: read what applies."
            : steady         ? "After 5 min the pump still turns, and steadily."
                             : "The pump sleeps and wakes: the tank feeds this draw in spells.";
    return {text};
  }

  std::vector<std::string> full_draw() const {
    std::string const opens =
        plan_.two_contacts
            ? fmt::format("Open taps near the tank until the gauge holds {} and the pump runs on",
                          pressure(plan_.full_pressure_pa))
            : fmt::format("Open taps near the tank until the drive shows {}", speed(plan_.full_speed_hz));
    return {
        fmt::format("{}; mark how far they stand open. After {} read. Time a {} under all of it (two buckets at "
                    "two taps: half the time counts).",
                    opens, minutes(plan_.full_time_s), bucket())};
  }

  /// Some drives watch the motor's power in place of its current: then the card has that threshold.
  bool guards_by_power() const { return sheet_.card && sheet_.card->entry("dry_run.power_below") != nullptr; }
  std::string_view threshold_key() const { return guards_by_power() ? "dry_run.power_below" : "dry_run.amps_below"; }

  double at_full_draw(std::string_view key) const {
    for (auto const& test : sheet_.visit.tests) {
      for (auto const& reading : test.readings) {
        if (reading.key == key) {
          return reading.middle;
        }
      }
    }
    return 0;
  }

  std::vector<std::string> low_water(VisitTest const& test) const {
    double const near =
        plan_.threshold_above * at_full_draw(guards_by_power() ? "full_draw.power" : "full_draw.current");
    std::string const threshold =
        fmt::format("{} to {:.2f} times the {} of the full draw (about {})", label(threshold_key()),
                    plan_.threshold_above, guards_by_power() ? "input power" : "amperes",
                    meter_text(near, guards_by_power() ? Dimension::power : Dimension::current, sheet_.units));
    std::string const limit = minutes(std::ceil(2 * test.readings.front().most / 10) * 10);
    if (plan_.two_contacts) {
      return {
          fmt::format("Only with a guard that watches the amperes. Pump off: set {}. Open the taps as marked; take "
                      "the time from start to stop. Not within {}: it does not work.",
                      threshold, limit)};
    }
    return {
        fmt::format("Pump asleep, taps shut: set {} to {}, and {}. Open the taps as marked; take the time from "
                    "start to stop for dry run. Not within {}: it does not work.",
                    label("speed.ceiling"), speed(plan_.lower_ceiling_hz), threshold, limit)};
  }

  std::vector<std::string> put_back(VisitTestKind kind) const {
    if (kind != VisitTestKind::low_water) {
      return {};
    }
    std::vector<std::string> back;
    if (!plan_.two_contacts) {
      back.push_back(fmt::format("{} back to {}", label("speed.ceiling"), entry_text(sheet_, "speed.ceiling")));
    }
    back.push_back(fmt::format("{} back to {}", label(threshold_key()), entry_text(sheet_, threshold_key())));
    back.emplace_back("both read again on the display, the stop reset");
    if (plan_.two_contacts) {
      back.back() = "read again, the stop reset";
    }
    return back;
  }

  static std::string after(VisitTestKind kind) {
    return kind == VisitTestKind::leak
               ? "More: a leak in the house; or, if it falls with the house valve shut too, past the check valve."
               : "";
  }

  std::string why_not(VisitTest const& test) const {
    switch (test.not_done) {
      case NotDone::rating:
        return test.kind == VisitTestKind::shut_line
                   ? "Not to be done here: against a shut valve the pump could bring more than its class to a pipe."
                   : "Not to be done here: at no speed that tells anything is the shut line safe in every draw. Watch "
                     "the full draw instead: turned backwards the pump does not come near it.";
      case NotDone::never_stops:
        return "Not to be done here: in most draws the guard would not act in this test. See the plan for what stops "
               "the pump instead.";
      case NotDone::does_not_hold:
        return "Not to be done here: in most draws there is nothing steady to read.";
      case NotDone::nothing:
        break;
    }
    return "";
  }

  VisitSheet const& sheet_;
  VisitPlan const& plan_;
};

}  // namespace

std::vector<TestWords> visit_test_words(VisitSheet const& sheet) {
  TestWriter const writer(sheet);
  std::vector<TestWords> tests;
  for (auto const& test : sheet.visit.tests) {
    tests.push_back(writer.words(test));
  }
  return tests;
}

}  // namespace wellproof
