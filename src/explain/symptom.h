#pragma once
// What people notice without an instrument.
#include <optional>
#include <string>
#include <string_view>

#include "contract/finding.h"

namespace wellproof {

enum class Symptom {
  no_pressure,    // "cannot hold pressure": weak at the taps while the pump runs
  no_water,       // nothing comes while the drive tries
  never_sleeps,   // runs on with all taps shut
  cycles,         // starts again and again with all taps shut; every so many seconds
  hunts,          // the pressure swings while water is drawn evenly; by so much
  high_pressure,  // more than usual at the taps
  hot,            // drive or motor
  noisy,
  air,  // spits at the taps
  sand,
  wet_ground,  // water where none should be
};
inline constexpr std::size_t symptom_count = 11;
inline constexpr Symptom all_symptoms[] = {Symptom::no_pressure, Symptom::no_water,  Symptom::never_sleeps,
                                           Symptom::cycles,      Symptom::hunts,     Symptom::high_pressure,
                                           Symptom::hot,         Symptom::noisy,     Symptom::air,
                                           Symptom::sand,        Symptom::wet_ground};

/// As on the command line: "cycles".
std::string_view word(Symptom symptom);
/// As one says it: "starts again and again with all taps shut".
std::string_view says(Symptom symptom);

/// A symptom that was named: seen, or looked for and not seen.
/// value  of cycles the interval [s], of hunts the swing [Pa]
struct ToldSymptom {
  Symptom symptom = Symptom::no_pressure;
  bool present = true;
  std::optional<double> value;
};

/// "cycles every 40 s", "never sleeps", "hunts by 6 psi", "no sand".
Result<ToldSymptom> read_symptom(std::string_view text, Place const& place);

}  // namespace wellproof
