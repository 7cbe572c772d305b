#pragma once
// The list of stops that a drive keeps, as it is copied off a display or told on the phone, with what else was said:
// what the display shows now, what people notice, what changed lately, what is set.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "explain/stop_words.h"
#include "explain/symptom.h"
#include "explain/wall_clock.h"

namespace wellproof {

/// The drive stopped by itself.
struct Stop {
  StopCause kind = StopCause::dry_run;
  double age_s = 0;                     // before now, ≥ 0
  std::optional<double> time_of_day_s;  // where a clock can be told
  Place place;
  std::string said;  // the line as it stood
};

/// What the drive's display showed, and whether water was drawn meanwhile.
struct DisplayReading {
  std::optional<bool> drawing;  // not said: told by the speed
  std::optional<double> pressure_pa;
  std::optional<double> speed_hz;
  std::optional<double> current_a;
  std::optional<double> supply_v;
  std::optional<double> sink_c;
  Place place;
};

struct History {
  std::string file;
  std::optional<WallClock> now;  // when it was told
  std::vector<Stop> stops;       // the oldest first
  std::size_t keeps = 0;         // how many the drive keeps; 0: not said
  std::vector<DisplayReading> display;
  std::vector<ToldSymptom> symptoms;
  std::vector<std::string> changed;   // lately, in the teller's words
  std::vector<std::string> settings;  // "KEY=VALUE", as found in the drive
  std::vector<std::string> notes;     // what the reader made of it: sorted, doubled, a day without a time
};

/// Reads a list of stops: free lines ("dry run, 3h ago", "51:15 underload", "yesterday 7pm: low volts") or CSV with
/// heads of its own (kind; ago, or days, hours, minutes; date, time), and lines with a key before a colon:
///   now: 2026-08-14 18:30      keeps: 20           changed: a new lawn
///   symptom: cycles every 40 s  setting: dry_run.rest = 10 min
///   display: 47 psi, 52.3 Hz, 4.4 A, 231 V, 71 °C, tap open
/// All that is not understood is found at once.
/// @param now what the clock says where it is read; what the text says of it wins
/// @param own words of the drive at hand for our kinds
Result<History> read_history(std::string_view text, std::string const& file, std::optional<WallClock> now,
                             std::vector<StopLabel> const& own = {});

}  // namespace wellproof
