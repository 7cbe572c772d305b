#pragma once
// A run that somebody stands in (simulate/live.h), asked for and told in JSON:
//   {"do": "open", "draw": 0, "scenario": ""}        how the plant stands, what it is; asleep, or as the scenario
//   begins
//   {"do": "go", "seconds": 0.1, "every": 0.25, "acts": [{"act": "house_valve", "value": 0}]}
//   {"do": "set"}, {"do": "again", "every": 1}       under the settings that come along; again answers
//   {"columns": {"t": [], "tee_pa": [], "speed_hz": [], "current_a": [], "pumped_m3_s": [], "level_m": []}}
//   {"do": "reset"}                                  a person's reset
// Numbers are SI. An act that is "water" drags the level: m deeper than the site says.
#include <memory>
#include <string>
#include <string_view>

#include "door/prepared.h"
#include "door/request.h"
#include "simulate/live.h"

namespace wellproof {

class LiveDesk {
 public:
  /// @param what  the object above, as text
  /// @param ready for open, set and again: site and settings; may be null otherwise
  Answer ask(std::string_view what, Prepared const* ready, std::uint64_t seed);

  /// Whether it can be carried out without a site at hand.
  static bool wants_site(std::string_view what);

 private:
  std::unique_ptr<LiveRun> run_;
};

}  // namespace wellproof
