#include "settings/outlook.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "contract/require.h"
#include "quantity/customary.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double dry_spell_s = 100 * day_s;
constexpr double busy_share = 1.0 / 3;  // of the house's water, in the morning and again in the evening
constexpr double programme_from_s = 4 * hour_s;
constexpr double morning_s = 7 * hour_s;
constexpr double evening_s = 18 * hour_s;
constexpr double night_s = 22 * hour_s;
constexpr int days_before = 2;
constexpr double shown_every_s = 600;
constexpr double tight_s = 20;       // a level near the intake is looked at this often
constexpr double at_intake_m = 0.1;  // so near the pump passes what comes in

/// Draws a flow as long as the pump has its water, and what comes in where it has not. @return what was missing [m³]
double draw_from(Plant const& plant, Bore& bore, double flow_m3_s, double duration_s) {
  auto const& well = plant.well;
  double const wet_m = deepest_wet_level_m(plant);
  double left_s = duration_s;
  double missing_m3 = 0;
  while (left_s > 1e-6) {
    double const over_m = wet_m - bore.level_depth_m;
    double pumped_m3_s = flow_m3_s;
    double part_s = left_s;
    if (flow_m3_s > 0 && over_m > at_intake_m) {
      part_s = std::min(left_s, std::max(tight_s, well.bore_area_m2 * over_m / flow_m3_s));
    } else if (flow_m3_s > 0) {
      pumped_m3_s = std::clamp(bore.course.line().flow_m3_s(bore.level_depth_m), 0.0, flow_m3_s);
      part_s = std::min(left_s, 3 * tight_s);
    }
    pump_evenly(well, bore, pumped_m3_s, part_s);
    missing_m3 += (flow_m3_s - pumped_m3_s) * part_s;
    left_s -= part_s;
  }
  return missing_m3;
}

struct DayLevels {
  std::vector<double> depth_m;  // every shown_every_s
  double deepest_m = 0;
  bool runs_dry = false;
};

DayLevels day_levels(Plant const& plant, std::vector<DayDraw> const& draws) {
  auto bore = bore_at_rest(plant.well);
  DayLevels out;
  for (int day = 0; day <= days_before; ++day) {
    bool const shown = day == days_before;
    double now_s = 0;
    double missing_m3 = 0;
    auto const go_on = [&](double flow_m3_s, double until_s) {
      while (now_s < until_s - 1e-6) {
        double const next_shown_s = (std::floor(now_s / shown_every_s + 1e-9) + 1) * shown_every_s;
        double const to_s = std::min(until_s, next_shown_s);
        missing_m3 += draw_from(plant, bore, flow_m3_s, to_s - now_s);
        now_s = to_s;
        out.deepest_m = shown ? std::max(out.deepest_m, bore.level_depth_m) : 0;
        if (shown && now_s >= next_shown_s - 1e-6) {
          out.depth_m.push_back(bore.level_depth_m);
        }
      }
    };
    if (shown) {
      out.depth_m.push_back(bore.level_depth_m);
      out.deepest_m = bore.level_depth_m;
    }
    for (auto const& draw : draws) {
      go_on(0, draw.from_s);
      go_on(draw.flow_m3_s, draw.to_s);
    }
    go_on(0, day_s);
    out.runs_dry = shown && missing_m3 > 0;
  }
  return out;
}

double use_m3(std::vector<DayDraw> const& draws) {
  return std::accumulate(draws.begin(), draws.end(), 0.0, [](double sum, DayDraw const& draw) {
    return sum + draw.flow_m3_s * (draw.to_s - draw.from_s);
  });
}

/// The most that a day's draws run ahead of an even feed, the day going round. @param feed_m3_s at least the day's mean
double storage_m3(std::vector<DayDraw> const& draws, double feed_m3_s) {
  double ahead_m3 = 0;
  double most_m3 = 0;
  double now_s = 0;
  for (int day = 0; day < 2; ++day) {
    for (auto const& draw : draws) {
      ahead_m3 = std::max(0.0, ahead_m3 - feed_m3_s * (day * day_s + draw.from_s - now_s));
      now_s = day * day_s + draw.to_s;
      ahead_m3 = std::max(0.0, ahead_m3 + (draw.flow_m3_s - feed_m3_s) * (draw.to_s - draw.from_s));
      most_m3 = std::max(most_m3, ahead_m3);
    }
  }
  return most_m3;
}

double long_run_flow_m3_s(Plant const& plant) {
  double flow_m3_s = 0;
  for (auto const& zone : plant.site.demand.zones) {
    flow_m3_s = std::max(flow_m3_s, zone.flow_m3_s);
  }
  return flow_m3_s > 0 ? flow_m3_s : 0.5 * plant.site.demand.peak_draw_m3_s;
}

}  // namespace

std::vector<DayDraw> own_day(DrawnSite const& site) {
  auto const& demand = site.demand;
  std::vector<DayDraw> draws;
  double now_s = programme_from_s;
  for (auto const& zone : demand.zones) {
    // A programme that would last past the night is cut: the day has no more hours.
    double const to_s = std::min(now_s + zone.time_s, programme_from_s + day_s);
    draws.push_back({now_s, to_s, zone.flow_m3_s});
    now_s = to_s;
  }
  double const busy_m3 = busy_share * demand.daily_use_m3;
  double const spread_m3_s = (demand.daily_use_m3 - 2 * busy_m3) / (night_s - morning_s);
  double const hour_m3_s = 0.5 * busy_m3 / hour_s;
  double const burst_s = std::min(0.5 * busy_m3 / demand.peak_draw_m3_s, hour_s);
  for (double const from_s : {morning_s, evening_s}) {
    draws.push_back({from_s, from_s + burst_s, 0.5 * busy_m3 / std::max(burst_s, 1e-9)});
    draws.push_back({from_s, from_s + hour_s, hour_m3_s});
  }
  draws.push_back({morning_s, night_s, spread_m3_s});

  // Cut at every beginning and end, and wrapped at midnight, so that parts no longer overlap.
  std::vector<double> edges{0, day_s};
  for (auto const& draw : draws) {
    for (double const edge_s : {draw.from_s, draw.to_s}) {
      edges.push_back(edge_s >= day_s ? edge_s - day_s : edge_s);
    }
  }
  std::sort(edges.begin(), edges.end());
  std::vector<DayDraw> day;
  for (std::size_t i = 1; i < edges.size(); ++i) {
    double const middle_s = 0.5 * (edges[i - 1] + edges[i]);
    double flow_m3_s = 0;
    for (auto const& draw : draws) {
      bool const today = draw.from_s <= middle_s && middle_s < draw.to_s;
      bool const from_yesterday = draw.from_s <= middle_s + day_s && middle_s + day_s < draw.to_s;
      flow_m3_s += today || from_yesterday ? draw.flow_m3_s : 0;
    }
    if (flow_m3_s > 0 && edges[i] > edges[i - 1]) {
      day.push_back({edges[i - 1], edges[i], flow_m3_s});
    }
  }
  return day;
}

WellOutlook outlook(std::vector<Plant> const& plants) {
  require(!plants.empty(), "an outlook is over some draws");
  WellOutlook out;
  out.draws = plants.size();
  out.intake_depth_m = plants.front().site.pump.setting_depth_m;
  out.long_run_flow_m3_s = long_run_flow_m3_s(plants.front());
  out.long_run_wanted_s = plants.front().site.demand.longest_run_s;
  std::vector<double> yields_m3_s;
  std::vector<double> uses_m3;
  std::vector<double> runs_s;
  std::vector<double> deepest_m;
  std::vector<double> storages_m3;
  std::vector<std::vector<double>> levels_m;
  for (auto const& plant : plants) {
    double const wet_m = deepest_wet_level_m(plant);
    double const wanted_s = plant.site.demand.longest_run_s;
    auto const draws = own_day(plant.site);
    yields_m3_s.push_back(std::max(plant.well.flow_for_level_m3_s(wet_m, dry_spell_s), 0.0));
    uses_m3.push_back(use_m3(draws));
    runs_s.push_back(
        time_to_level_s(plant.well, bore_at_rest(plant.well), long_run_flow_m3_s(plant), wet_m, 3 * wanted_s));
    out.long_run_too_long += runs_s.back() < wanted_s ? 1U : 0U;
    auto const day = day_levels(plant, draws);
    levels_m.push_back(day.depth_m);
    deepest_m.push_back(day.deepest_m);
    out.day_runs_dry += day.runs_dry ? 1U : 0U;
    bool const too_much = uses_m3.back() > day_s * yields_m3_s.back();
    out.overdrawn += too_much ? 1U : 0U;
    if (day.runs_dry && !too_much) {
      storages_m3.push_back(storage_m3(draws, yields_m3_s.back()));
    }
  }
  out.safe_yield_m3_s = quantiles(std::move(yields_m3_s));
  out.day_use_m3 = quantiles(std::move(uses_m3));
  out.long_run_s = quantiles(std::move(runs_s));
  out.deepest_m = quantiles(std::move(deepest_m));
  if (!storages_m3.empty()) {
    out.storage_m3 = quantiles(std::move(storages_m3));
  }
  for (std::size_t i = 0; i < levels_m.front().size(); ++i) {
    std::vector<double> at_m;
    at_m.reserve(levels_m.size());
    for (auto const& levels : levels_m) {
      at_m.push_back(levels[i]);
    }
    out.day.push_back({shown_every_s * static_cast<double>(i), quantiles(std::move(at_m))});
  }
  return out;
}

}  // namespace wellproof
