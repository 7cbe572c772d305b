#include "fit/misfit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "site/entered.h"
#include "site/fields.h"

namespace wellproof {
namespace {

/// What it means on site that a quantity lies beyond its range; empty: that way it is no explanation.
struct Meaning {
  std::string_view key;  // a pipe run's without its number
  std::string_view more;
  std::string_view less;
};

constexpr std::array<Meaning, 17> meanings{{
    {"pump.wear", "the pump is worn: water slips back inside it", ""},
    {"pump.power_factor", "the pump takes more power than its curve: sand, a dragging bearing, another pump",
     "the pump takes less power than its curve: another pump, or some of its stages turn idle"},
    {"pump.head_factor", "the pump gives more head than its curve: another pump",
     "the pump gives less head than its curve: another pump, or a clogged stage"},
    {"well.static_level", "the water stands deeper than the site file says",
     "the water stands higher than the site file says"},
    {"well.test_level", "the well gives less than its test says", "the well gives more than its test says"},
    {"well.yield", "the well gives more than the site file says", "the well gives less than the site file says"},
    {"well.specific_capacity", "the well gives more than the site file says",
     "the well gives less than the site file says"},
    {"well.transmissivity", "the formation gives more than the site file says",
     "the formation gives less than the site file says"},
    {"pipe.minor_loss", "something throttles the pipe: a valve half shut, a clogged filter, scale", ""},
    {"pipe.rise", "the tank stands higher than the site file says", "the tank stands lower than the site file says"},
    {"supply.voltage", "the supply gives more volts than said", "the supply gives fewer volts than said"},
    {"sensor.zero_error", "the sensor reads too much at no pressure", "the sensor reads too little at no pressure"},
    {"demand.leak", "more leaks with all taps shut than said", ""},
    {"tank.precharge", "the tank is charged higher than said", "the tank has lost charge"},
    {"motor.no_load_current",
     "the motor takes more current idle than its plate lets expect: a winding or another motor",
     "the motor takes less current idle than its plate lets expect: another motor"},
    {"motor.service_factor_current", "the motor takes more current than its plate says: a winding or another motor",
     "the motor takes less current than its plate says: another motor"},
    {"cable.length", "the cable is longer or has a bad joint", ""},
}};

struct Candidate {
  std::string key;
  Dimension dimension = Dimension::none;
  double value = 0;
  Meaning const* meaning = nullptr;
  bool more = true;
};

/// Values beyond a range, each step further off than the one before.
std::vector<Candidate> candidates_of(Site const& site) {
  std::vector<Candidate> out;
  constexpr int steps = 6;
  constexpr double grows = 2.5;
  each_field(site, [&](Field const& field, Range const& range) {
    auto const generic = without_number(field.key);
    auto const* const meaning =
        std::find_if(meanings.begin(), meanings.end(), [&](Meaning const& each) { return each.key == generic; });
    // A quantity of 0 with a most that is not used (the well told another way) stays out of it.
    bool const unused = is_fixed(range) && middle(range) == 0 && generic.compare(0, 5, "well.") == 0;
    if (meaning == meanings.end() || unused) {
      return;
    }
    if (generic.compare(0, 5, "pipe.") == 0) {
      auto const run = static_cast<std::size_t>(std::stoul(field.key.substr(5))) - 1;
      if (run >= site.pipes.size() || site.pipes[run].place == PipePlace::house) {
        return;
      }
    }
    double const low = lowest(range);
    double const high = highest(range);
    double const first =
        std::max({0.5 * (high - low), 0.02 * std::abs(middle(range)), 1e-5 * (field.most - field.least)});
    bool last_up = meaning->more.empty();
    bool last_down = meaning->less.empty();
    for (int i = 0; i < steps; ++i) {
      double const off = first * std::pow(grows, i);
      if (!last_up) {
        last_up = high + off >= field.most;
        out.push_back({field.key, field.dimension, std::min(high + off, field.most), &*meaning, true});
      }
      if (!last_down) {
        last_down = low - off <= field.least;
        out.push_back({field.key, field.dimension, std::max(low - off, field.least), &*meaning, false});
      }
    }
  });
  return out;
}

/// What the candidate leaves unexplained.
double cost_of(SiteSearch const& search, Candidate const& candidate, std::vector<bool> const& counted) {
  return search.cost_with(candidate.key, candidate.value, counted);
}

/// The candidate with the least cost, its value then sought between its neighbours.
struct Best {
  Candidate candidate;
  double cost = 0;
};

Best best_of(SiteSearch const& search, std::vector<Candidate> const& candidates, std::vector<bool> const& counted) {
  Best best;
  bool first = true;
  for (auto const& each : candidates) {
    double const cost = cost_of(search, each, counted);
    if (first || cost < best.cost) {
      best = {each, cost};
      first = false;
    }
  }
  // Its neighbours in the list of the same key and side.
  double low = best.candidate.value;
  double high = best.candidate.value;
  for (auto const& each : candidates) {
    if (each.key == best.candidate.key && each.more == best.candidate.more) {
      bool const below = each.value < best.candidate.value;
      bool const above = each.value > best.candidate.value;
      low = below && (low == best.candidate.value || each.value > low) ? each.value : low;
      high = above && (high == best.candidate.value || each.value < high) ? each.value : high;
    }
  }
  constexpr int rounds = 12;
  constexpr double golden = 0.618;
  for (int i = 0; i < rounds && high > low; ++i) {
    auto left = best.candidate;
    auto right = best.candidate;
    left.value = high - golden * (high - low);
    right.value = low + golden * (high - low);
    double const left_cost = cost_of(search, left, counted);
    double const right_cost = cost_of(search, right, counted);
    if (left_cost < right_cost) {
      high = right.value;
    } else {
      low = left.value;
    }
    auto const& nearer = left_cost < right_cost ? left : right;
    if (std::min(left_cost, right_cost) < best.cost) {
      best = {nearer, std::min(left_cost, right_cost)};
    }
  }
  return best;
}

std::size_t place_of(SiteSearch const& search, Misfit const& misfit) {
  auto const& of = search.reading_of();
  auto const first = std::find(of.begin(), of.end(), misfit.reading);
  return static_cast<std::size_t>(first - of.begin()) + misfit.value;
}

constexpr std::string_view nothing_explains =
    "No quantity of the site explains it without contradicting other readings: read it again.";

}  // namespace

void explain_misfits(Site const& sought, SiteSearch const& search, std::vector<bool> const& counted,
                     std::vector<Misfit>& misfits) {
  if (misfits.empty()) {
    return;
  }
  auto const candidates = candidates_of(sought);
  constexpr double may_spoil = 9;
  constexpr double near_enough = 3;
  auto const explain = [&](std::vector<Misfit*> const& which) {
    auto with_them = counted;
    for (auto const* misfit : which) {
      with_them[place_of(search, *misfit)] = true;
    }
    auto const best = best_of(search, candidates, with_them);
    auto const there = search.searched_with(best.candidate.key, best.candidate.value, with_them);
    bool near = true;
    for (std::size_t i = 0; i < counted.size(); ++i) {
      near = near && (!with_them[i] || counted[i] || std::abs(there.residuals[i]) < near_enough);
    }
    if (!near || there.cost - search.found().cost > may_spoil * static_cast<double>(which.size())) {
      return false;
    }
    for (auto* misfit : which) {
      misfit->key = best.candidate.key;
      misfit->dimension = best.candidate.dimension;
      misfit->explained_by = best.candidate.value;
      misfit->says = best.candidate.more ? best.candidate.meaning->more : best.candidate.meaning->less;
    }
    return true;
  };
  std::vector<Misfit*> all;
  all.reserve(misfits.size());
  for (auto& misfit : misfits) {
    all.push_back(&misfit);
  }
  if (explain(all)) {
    return;
  }
  for (auto* misfit : all) {
    if (all.size() == 1 || !explain({misfit})) {
      misfit->says = nothing_explains;
    }
  }
}

}  // namespace wellproof
