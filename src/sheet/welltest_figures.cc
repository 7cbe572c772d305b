#include "sheet/welltest_figures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "fit/derivative.h"
#include "quantity/quantity.h"
#include "sheet/chart.h"
#include "sheet/log_axis.h"

namespace wellproof {
namespace {

constexpr double width = 760;

struct Look {
  Stroke stroke;
  Shape shape;
};

Look look(std::size_t i) {
  static constexpr std::array<Look, 4> looks{{{stroke::blue, Shape::ring},
                                              {stroke::rust, Shape::square},
                                              {stroke::green, Shape::triangle},
                                              {stroke::plum, Shape::diamond}}};
  return looks[i % looks.size()];
}

struct Extent {
  double low = 1e300;
  double high = -1e300;
  void take(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
  bool any() const { return low <= high; }
};

/// Times evenly apart in their logarithm.
std::vector<double> spread(double first_s, double last_s) {
  constexpr int points = 160;
  std::vector<double> times_s;
  for (int i = 0; i <= points; ++i) {
    times_s.push_back(first_s * std::pow(last_s / first_s, static_cast<double>(i) / points));
  }
  return times_s;
}

/// The straight line's early end: u = 0.05 at the place; for the pumped well 25·r_c²/T.
double line_from_s(PumpedWell const& well, RecordFit const& record) {
  constexpr double line_u = 0.05;
  double const radius_m = record.distance_m > 0 ? record.distance_m : well.well_radius_m;
  double const by_formation_s = radius_m * radius_m * well.storativity / (4 * well.transmissivity_m2_s * line_u);
  double const by_casing_s =
      record.distance_m > 0 ? 0 : 25 * well.casing_radius_m * well.casing_radius_m / well.transmissivity_m2_s;
  return std::max(by_formation_s, by_casing_s);
}

double straight_line_m(PumpingTestFit const& fit, RecordFit const& record, double time_s) {
  double const flow_m3_s = fit.rates.front().flow_m3_s;
  double const radius_m = record.distance_m > 0 ? record.distance_m : fit.well.well_radius_m;
  double const formation_m =
      cooper_jacob_drawdown_m(flow_m3_s, fit.well.transmissivity_m2_s, fit.well.storativity, radius_m, time_s);
  double const loss_s_m2 = fit.well.linear_loss_s_m2 + fit.well.quadratic_loss_s2_m5 * flow_m3_s;
  return record.distance_m > 0 ? formation_m : formation_m + loss_s_m2 * flow_m3_s;
}

/// Water falls downwards, and what has recovered rises.
Axis level_axis(bool recovered, Extent const& of, UnitSystem units) {
  Axis axis =
      round_axis(recovered ? "recovered" : "drawdown", std::min(of.low, 0.0), of.high, Dimension::length, units, 6);
  if (!recovered) {
    std::swap(axis.low, axis.high);
  }
  return axis;
}

std::string rate_words(RateStep const& step, UnitSystem units) {
  return step.flow_m3_s > 0 ? write_quantity(step.flow_m3_s, Dimension::flow, units) : "stopped";
}

}  // namespace

std::string course_figure(WellTest const& test) {
  auto const& fit = test.fit;
  Extent times;
  Extent levels;
  bool recovered = false;
  for (auto const& record : fit.records) {
    recovered = recovered || record.recovered;
    for (auto const& reading : record.readings) {
      times.take(reading.time_s);
      levels.take(reading.measured_m);
      levels.take(reading.fitted_m);
    }
  }
  if (!times.any()) {
    return "";
  }
  Chart chart("course", tight_axis("time since pumping began", 0, times.high, Dimension::time, test.units, 10),
              level_axis(recovered, levels, test.units), width, 380);
  for (std::size_t i = 0; i < fit.records.size(); ++i) {
    auto const& record = fit.records[i];
    LevelRecord const place{record.file, record.distance_m, record.recovered, {}};
    std::vector<ChartPoint> fitted;
    constexpr int points = 400;
    double const first_s = record.recovered ? stop_s(fit.rates).value_or(0) : 0;
    for (int k = 0; k <= points; ++k) {
      double const time_s = first_s + (times.high - first_s) * k / points;
      fitted.push_back({time_s, modelled_m(fit.rates, fit.well, place, time_s)});
    }
    std::vector<ChartPoint> read;
    for (auto const& reading : record.readings) {
      read.push_back({reading.time_s, reading.measured_m});
    }
    chart.line(std::move(fitted), look(i).stroke, place_words(record, test.units));
    chart.marks(std::move(read), look(i).shape, look(i).stroke);
  }
  for (auto const& step : fit.rates) {
    chart.upright(step.from_s, stroke::mark, rate_words(step, test.units));
  }
  return chart.svg("The whole test", "Drawdown over time with the rates of pumping.");
}

std::string semilog_figure(WellTest const& test) {
  auto const& fit = test.fit;
  Extent times;
  Extent levels;
  bool recovered = false;
  struct Stage {
    std::size_t record;
    RateStep rate;
    std::vector<ChartPoint> read;
  };
  std::vector<Stage> stages;
  for (std::size_t i = 0; i < fit.records.size(); ++i) {
    recovered = recovered || fit.records[i].recovered;
    for (std::size_t k = 0; k < fit.rates.size(); ++k) {
      double const until_s = k + 1 < fit.rates.size() ? fit.rates[k + 1].from_s : 1e300;
      Stage stage{i, fit.rates[k], {}};
      for (auto const& reading : fit.records[i].readings) {
        double const since_s = reading.time_s - stage.rate.from_s;
        if (since_s > 0 && reading.time_s <= until_s) {
          stage.read.push_back({since_s, reading.measured_m});
          times.take(since_s);
          levels.take(reading.measured_m);
          levels.take(reading.fitted_m);
        }
      }
      if (!stage.read.empty()) {
        stages.push_back(std::move(stage));
      }
    }
  }
  if (!times.any()) {
    return "";
  }
  bool const several = fit.rates.size() > 1;
  Chart chart("semilog",
              log_axis(several ? "time since the rate changed" : "time since pumping began", times.low, times.high,
                       Dimension::time, test.units),
              level_axis(recovered, levels, test.units), width, 400);
  bool straight_named = false;
  for (auto& stage : stages) {
    auto const& record = fit.records[stage.record];
    LevelRecord const place{record.file, record.distance_m, record.recovered, {}};
    double const last_s = several ? stage.read.back().x : times.high;
    std::vector<ChartPoint> fitted;
    std::vector<ChartPoint> straight;
    double const line_s = line_from_s(fit.well, record);
    for (double const since_s : spread(times.low, last_s)) {
      fitted.push_back({since_s, modelled_m(fit.rates, fit.well, place, since_s + stage.rate.from_s)});
      if (!several && since_s >= 0.2 * line_s) {
        straight.push_back({since_s, straight_line_m(fit, record, since_s)});
      }
    }
    Look const of = look(stage.record);
    if (straight.size() > 1 && line_s < 0.5 * times.high) {
      chart.line(std::move(straight), stroke::ink_dashed, straight_named ? "" : "straight line");
      straight_named = true;
    }
    std::string const name = place_words(record, test.units);
    chart.line(std::move(fitted), of.stroke,
               !several                  ? name
               : fit.records.size() == 1 ? rate_words(stage.rate, test.units)
                                         : name + ", " + rate_words(stage.rate, test.units));
    chart.marks(std::move(stage.read), of.shape, of.stroke);
  }
  return chart.svg("Level over the logarithm of time", "Readings of each place with the fitted curve.");
}

std::string diagnostic_figure(WellTest const& test) {
  auto const& fit = test.fit;
  constexpr double window = 0.25;
  Extent times;
  Extent values;
  struct Drawn {
    std::size_t record;
    std::vector<ChartPoint> read;
    std::vector<ChartPoint> fitted;
    std::vector<ChartPoint> read_slope;
    std::vector<ChartPoint> fitted_slope;
  };
  std::vector<Drawn> all;
  for (std::size_t i = 0; i < fit.records.size(); ++i) {
    for (auto const& stage : responses(fit, fit.records[i])) {
      Drawn drawn{i, {}, {}, {}, {}};
      std::vector<double> at_s;
      std::vector<double> read_m;
      std::vector<double> fitted_m;
      for (auto const& point : stage.points) {
        at_s.push_back(point.time_s);
        read_m.push_back(point.response_m);
        fitted_m.push_back(point.fitted_m);
        drawn.read.push_back({point.time_s, point.response_m});
        drawn.fitted.push_back({point.time_s, point.fitted_m});
        times.take(point.time_s);
        values.take(point.response_m > 0 ? point.response_m : values.high);
      }
      for (auto const& slope : log_derivative(at_s, read_m, window)) {
        drawn.read_slope.push_back({slope.time_s, slope.slope_m});
      }
      for (auto const& slope : log_derivative(at_s, fitted_m, window)) {
        drawn.fitted_slope.push_back({slope.time_s, slope.slope_m});
      }
      all.push_back(std::move(drawn));
    }
  }
  if (!times.any() || !(values.high > 0)) {
    return "";
  }
  double least = values.high;
  for (auto const& drawn : all) {
    for (auto const& point : drawn.fitted_slope) {
      least = point.y > 0 ? std::min(least, point.y) : least;
    }
    for (auto const& point : drawn.read) {
      least = point.y > 0 ? std::min(least, point.y) : least;
    }
  }
  constexpr double most_span = 1e4;
  Chart chart("diagnostic", log_axis("time since the rate changed", times.low, times.high, Dimension::time, test.units),
              log_axis("response and derivative", std::max(least / 1.7, values.high / most_span), values.high,
                       Dimension::length, test.units),
              width, 420);
  std::vector<bool> named(fit.records.size(), false);
  for (auto& drawn : all) {
    Look const of = look(drawn.record);
    Stroke thin = of.stroke;
    thin.width = 1.4;
    thin.dash = "4 3";
    bool const first = !named[drawn.record];
    named[drawn.record] = true;
    std::string const place = place_words(fit.records[drawn.record], test.units);
    Stroke whole = of.stroke;
    whole.dash = "";
    chart.line(std::move(drawn.fitted), whole, first ? place : "");
    chart.line(std::move(drawn.fitted_slope), thin, first ? "derivative, " + place : "");
    chart.marks(std::move(drawn.read), of.shape, of.stroke);
    chart.marks(std::move(drawn.read_slope), of.shape, stroke::grey);
  }
  return chart.svg("Diagnostic plot", "Response to each change of rate and its derivative, both axes logarithmic.");
}

std::string residual_figure(WellTest const& test) {
  auto const& fit = test.fit;
  Extent times;
  double most_m = 1e-6;
  for (auto const& record : fit.records) {
    for (auto const& reading : record.readings) {
      times.take(reading.time_s);
      most_m = std::max(most_m, std::abs(reading.measured_m - reading.fitted_m));
    }
  }
  if (!times.any()) {
    return "";
  }
  bool const several = fit.rates.size() > 1;
  std::string const title = "time since pumping began";
  Chart chart("residuals",
              several ? tight_axis(title, 0, times.high, Dimension::time, test.units, 10)
                      : log_axis(title, times.low, times.high, Dimension::time, test.units),
              round_axis("read less fitted", -most_m, most_m, Dimension::length, test.units, 5), width, 230);
  chart.level(0, times.low / 100, times.high * 10, stroke::grey, "");
  for (std::size_t i = 0; i < fit.records.size(); ++i) {
    std::vector<ChartPoint> left;
    for (auto const& reading : fit.records[i].readings) {
      left.push_back({reading.time_s, reading.measured_m - reading.fitted_m});
    }
    Stroke thin = look(i).stroke;
    thin.width = 0.7;
    chart.line(left, thin, place_words(fit.records[i], test.units));
    chart.marks(std::move(left), look(i).shape, look(i).stroke);
  }
  return chart.svg("Residuals", "What the fit leaves of each reading, over the logarithm of time.");
}

}  // namespace wellproof
