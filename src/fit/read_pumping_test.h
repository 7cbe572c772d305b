#pragma once
// From the tables of a pumping test and what was said beside them to a test that can be fitted. Everything that is
// wrong is found at once.
#include <string>
#include <vector>

#include "contract/finding.h"
#include "fit/pumping_test.h"

namespace wellproof {

/// A table with the distance of its place from the pumped well; no distance: the pumped well itself.
struct LevelText {
  std::string file;
  std::string text;
  std::string distance;
};

/// A pumping test as a person gives it; every quantity as text with its unit, empty where it is not known.
/// rates        "788 m3/d", or several with their beginnings: "20 gpm", "35 gpm @ 60 min"; "20, 35, 50 gpm" with step
/// step         how long each rate held
/// stop         when pumping stopped
/// casing, bore inside diameter where the level moves, and of the hole where water enters
/// static_level depth to water at rest, for tables of depths
struct PumpingTestText {
  std::vector<LevelText> records;
  std::vector<std::string> rates;
  std::string step;
  std::string stop;
  std::string casing;
  std::string bore;
  std::string static_level;
  std::string storativity;
  std::string time_unit;
  std::string level_unit;
};

Result<PumpingTest> read_pumping_test(PumpingTestText const& text);

}  // namespace wellproof
