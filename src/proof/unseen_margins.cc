#include "proof/unseen_margins.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>

#include "proof/margins.h"

namespace wellproof {
namespace {

constexpr std::array<std::string_view, 3> unseen{"false_stop", "harm", "sleep"};
constexpr double kept_share = 2.0 / 3;  // our own choice, no source

std::vector<PlanMargin> unseen_of(Proof const& proof) {
  std::vector<PlanMargin> found;
  std::copy_if(proof.margins.begin(), proof.margins.end(), std::back_inserter(found), [](PlanMargin const& margin) {
    return std::find(unseen.begin(), unseen.end(), margin.key) != unseen.end();
  });
  return found;
}

bool kept(std::vector<PlanMargin> const& now, std::vector<PlanMargin> const& before) {
  return std::all_of(now.begin(), now.end(), [&](PlanMargin const& then) {
    auto const was = std::find_if(before.begin(), before.end(), [&](PlanMargin const& m) { return m.key == then.key; });
    double const had = was == before.end() ? 0 : was->value.value_or(0);
    return !then.value || *then.value >= (had > 0 ? kept_share * had : had);
  });
}

}  // namespace

UnseenMargins::UnseenMargins(std::vector<Plant> const& plants, OnDrive const& start, Proof const& proof,
                             ProveOptions const& options)
    : plants_(plants),
      options_(options),
      before_(unseen_of(proof)),
      loops_(loops_of(plants, start.settings)),
      most_sensitivity_(std::max(most_sensitivity, sensitivity(start))) {
  add_nearest(proof);
}

bool UnseenMargins::kept_by(OnDrive const& drive) {
  auto const& [settings, logic] = drive;
  return sensitivity(drive) <= most_sensitivity_ && kept({false_stop_margin(nearest_, settings, logic, options_.units),
                                                          harm_margin(nearest_, settings, logic, options_.units),
                                                          sleep_margin(nearest_, settings, logic, options_.units)},
                                                         before_);
}

bool UnseenMargins::kept_by(Proof const& proof) const {
  return kept(unseen_of(proof), before_);
}

bool UnseenMargins::add_nearest(Proof const& proof) {
  std::size_t const known = draws_.size();
  for (auto const& margin : unseen_of(proof)) {
    if (std::find(draws_.begin(), draws_.end(), margin.draw) == draws_.end()) {
      draws_.push_back(margin.draw);
      nearest_.push_back(plants_[margin.draw]);
    }
  }
  return draws_.size() > known;
}

/// The largest of all loops, by the stronger gain if the drive has two.
double UnseenMargins::sensitivity(OnDrive const& drive) {
  auto settings = drive.settings;
  if (drive.logic.second_gain != SecondGain::none) {
    settings.regulator_gain_hz_pa *= std::max(1.0, drive.logic.second_gain_share);
  }
  std::pair const set{settings.regulator_gain_hz_pa, settings.regulator_reset_time_s};
  if (auto const known = sensitivities_.find(set); known != sensitivities_.end()) {
    return known->second;
  }
  double largest = 0;
  for (auto const& loop : loops_) {
    largest = std::max(largest, margins_with(loop, settings).largest_sensitivity);
  }
  sensitivities_.emplace(set, largest);
  return largest;
}

}  // namespace wellproof
