// The runs of pipe, as far as a site file leaves them open.
#include <fmt/format.h>

#include <algorithm>

#include "site/assuming.h"
#include "site/pipe_sizes.h"

namespace wellproof {
namespace {

constexpr std::string_view usual_kind = "sch40_pvc";

std::string pipe_key(std::size_t index, std::string_view last) {
  return fmt::format("pipe.{}.{}", index + 1, last);
}

/// A usual size for a flow.
std::string_view usual_size(double flow_m3_s) {
  double const flow_gpm = flow_m3_s / gpm_m3_s;
  return flow_gpm < 14 ? "1 in" : flow_gpm < 25 ? "1-1/4 in" : flow_gpm < 45 ? "1-1/2 in" : "2 in";
}

Range shifted(Range const& range, double by) {
  return about(lowest(range) + by, middle(range) + by, highest(range) + by);
}

}  // namespace

void Assuming::pipes() {
  auto const& runs = read_.site.pipes;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    run(i);
  }
  // The drop pipe reaches the pump.
  double told_m = 0;
  double open = 0;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    bool const told = given(pipe_key(i, "length"));
    told_m += runs[i].place == PipePlace::drop && told ? mid(pipe_key(i, "length")) : 0;
    open += runs[i].place == PipePlace::drop && !told ? 1 : 0;
  }
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i].place == PipePlace::drop) {
      constexpr double least_m = 0.3;
      unused(pipe_key(i, "length"), Fixed{std::max(least_m, mid("pump.setting") - told_m) / std::max(1.0, open)});
    }
  }
  rises(PipePlace::yard, "tank.elevation", between(-5 * foot_m, 10 * foot_m), "tank near the level of the well head");
  rises(PipePlace::house, "demand.outlet_rise", between(3 * foot_m, 20 * foot_m), "one floor or two above the tank");
}

/// All of a run but what it shares with its neighbours.
void Assuming::run(std::size_t index) {
  auto& one = read_.site.pipes[index];
  auto const key = [index](std::string_view last) { return pipe_key(index, last); };
  if (one.kind.empty()) {
    one.kind = usual_kind;
  }
  auto const usual = usual_size(mid("pump.rated_flow"));
  auto size = pipe_size(one.kind, one.size.empty() ? usual : std::string_view(one.size));
  if (!size) {
    size = pipe_size(usual_kind, usual);
  }
  double const usual_m = size->inside_diameter_m;
  double const smallest = one.place == PipePlace::drop ? 1.0 : 0.8;  // of the usual one
  take(key("inside_diameter"), about(smallest * usual_m, usual_m, 1.32 * usual_m),
       fmt::format("{} {}, usual for the pump's flow, give or take a size", usual, one.kind));
  auto const* kind = pipe_kind(one.kind);
  take(key("roughness"), between(kind->roughness_low_m, kind->roughness_high_m), "of the kind of pipe, new to old");
  if (one.kind == "sidr_pe") {
    take(key("rating"), between(size->rating_pa, 1.25 * size->rating_pa), "class not told: the weaker ones");
  }
  take(key("rating"), Fixed{size->rating_pa}, "class of kind and size at 73 °F");
  switch (one.place) {
    case PipePlace::drop:
      unused(key("rise"));
      take(key("minor_loss"), between(2, 10), "check valves and fittings of the drop pipe");
      break;
    case PipePlace::yard:
      take(key("length"), between(20 * foot_m, 150 * foot_m), "well head to tank");
      break;
    case PipePlace::house:
      take(key("length"), between(40 * foot_m, 120 * foot_m), "tank to the farthest outlet");
      take(key("minor_loss"), between(10, 40), "elbows, tees and valves of a house");
      break;
  }
}

/// The rises of a place's runs add up to the whole. The first run without one takes what is left of it, or what is
/// usual; the runs then carry the spread, and a draw sums them.
void Assuming::rises(PipePlace place, std::string const& whole, Range const& usual, std::string const& because) {
  auto const& runs = read_.site.pipes;
  double told_m = 0;
  bool any_told = false;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i].place == place && given(pipe_key(i, "rise"))) {
      told_m += mid(pipe_key(i, "rise"));
      any_told = true;
    }
  }
  bool left = given(whole) || !any_told;
  double sum_m = 0;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i].place != place) {
      continue;
    }
    auto const key = pipe_key(i, "rise");
    if (left && !given(key)) {
      left = false;
      if (given(whole)) {
        unused(key, shifted(range(whole), -told_m));
      }
      take(key, usual, because);
    }
    take(key, Fixed{0}, "the other runs tell the rise");
    sum_m += mid(key);
  }
  given_.erase(whole);
  unused(whole, Fixed{sum_m});
}

}  // namespace wellproof
