#include "against.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <string>
#include <vector>

#include "cross/cross_site.h"
#include "cross/second_run.h"
#include "example.h"
#include "open_loop.h"
#include "simulate/carry.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

constexpr double bar_pa = 1e5;

/// Largest difference of tee pressure at the samples that both have; the moments of a change are left out.
double apart_bar(std::vector<TracePoint> const& points, second::SecondRun const& reference, Scenario const& scenario,
                 double period_s) {
  double most_pa = 0;
  for (auto const& point : points) {
    auto const index = static_cast<std::size_t>(std::llround(point.time_s / period_s));
    bool const on_sample = std::abs(point.time_s - static_cast<double>(index) * period_s) < 1e-6;
    bool const at_change = std::any_of(scenario.script.begin(), scenario.script.end(), [&](Change const& change) {
      return std::abs(change.time_s - point.time_s) < period_s;
    });
    if (on_sample && !at_change && index < reference.points.size()) {
      most_pa = std::max(most_pa, std::abs(point.tee_pressure_pa - reference.points[index].tee_pressure_pa));
    }
  }
  return most_pa / bar_pa;
}

/// Least processor time of some tries.
template <class Work>
double least_s(int tries, Work const& work) {
  double least = std::numeric_limits<double>::max();
  for (int i = 0; i < tries; ++i) {
    double const began_s = thread_s();
    work();
    least = std::min(least, thread_s() - began_s);
  }
  return least;
}

void closed_loop_rows() {
  auto const plant = cross::made_plant();
  auto const settings = cross::made_settings(plant);
  auto const scenario = cross::taps();
  double const period_s = 1 / plant.site.drive.sample_rate_hz;
  auto const reference = cross::second_of(plant, scenario);

  struct Ours {
    char const* name;
    Sampling sampling;
    double error_bar = 0;
    double run_s = 0;
  };
  std::vector<Ours> ours{{"ours, every sample computed", Sampling::each}, {"ours, as it is", Sampling::calm}};
  for (auto& one : ours) {
    RunOptions options;
    options.sampling = one.sampling;
    one.run_s = least_s(9, [&] { run(plant, settings, scenario, options); });
    options.record = true;
    options.record_every_s = 0;
    one.error_bar = apart_bar(run(plant, settings, scenario, options).points, reference, scenario, period_s);
    std::printf("%-32s %9.2f ms  error %8.1e bar\n", one.name, 1e3 * one.run_s, one.error_bar);
  }
  // The loosest tolerance at which CVODE errs no more than the one or the other of ours: what it takes to do as well.
  std::vector<bool> met(ours.size(), false);
  for (double tolerance = 1e-3; tolerance > 1e-9 && std::find(met.begin(), met.end(), false) != met.end();
       tolerance /= 10) {
    second::SecondRun theirs;
    double const their_s = least_s(2, [&] { theirs = cross::second_of(plant, scenario, tolerance); });
    double const error_bar = apart_bar(theirs.points, reference, scenario, period_s);
    std::printf("CVODE at %-23.0e %9.2f ms  error %8.1e bar ", tolerance, 1e3 * their_s, error_bar);
    for (std::size_t i = 0; i < ours.size(); ++i) {
      bool const first = !met[i] && error_bar <= 1.2 * ours[i].error_bar;
      met[i] = met[i] || first;
      if (first) {
        std::printf("  as well as %s: x%.0f", ours[i].name, their_s / ours[i].run_s);
      }
    }
    std::printf("\n");
  }
}

/// The controller left out: speed and taps held for some minutes, so that a general integrator need not start afresh.
void open_loop_rows() {
  OpenLoop const made = open_loop();
  auto const end_of = [&](double tolerance) {
    auto second = made.second;
    second::Integrator integrator(second, made.start, tolerance);
    integrator.start_afresh(0);
    integrator.carry_to(open_loop_s, 0);
    return integrator.now();
  };
  auto const reference = end_of(1e-10);
  double const pressure_pa = made.second.pressure_pa(reference[second::stored]);
  double const level_m = reference[second::level_depth];

  double ours_pa = 0;
  double ours_m = 0;
  double const our_s = least_s(9, [&] {
    State y{};
    y[at::level_depth] = made.start[second::level_depth];
    y[at::stored] = made.start[second::stored];
    y[at::lagged_pressure] = made.start[second::lagged_pressure];
    y[at::winding] = y[at::shell] = y[at::pump_water] = made.start[second::winding];
    y[at::sink] = made.start[second::sink];
    Carrier carrier(*made.plant, made.second.inputs, y, {}, {}, RunOptions{}.tolerance);
    while (carrier.time_s() < open_loop_s - 1e-9 && carrier.step_towards(open_loop_s) == Carrier::Outcome::stepped) {
      carrier.count_flips_afresh();
    }
    ours_pa = carrier.read().tee_pressure_pa;
    ours_m = carrier.state()[at::level_depth];
  });
  std::printf("\nFor orientation: speed and taps held for %.0f s, error at the end\n", open_loop_s);
  auto const row = [&](std::string const& name, double took_s, double at_pa, double at_m) {
    std::printf("%-32s %9.3f ms  error %8.1e bar %8.1e m\n", name.c_str(), 1e3 * took_s,
                std::abs(at_pa - pressure_pa) / bar_pa, std::abs(at_m - level_m));
  };
  row("ours", our_s, ours_pa, ours_m);
  for (double const tolerance : {1e-4, 1e-6}) {
    second::Values end{};
    double const took_s = least_s(3, [&] { end = end_of(tolerance); });
    char name[40];
    std::snprintf(name, sizeof name, "CVODE at %.0e", tolerance);
    row(name, took_s, made.second.pressure_pa(end[second::stored]), end[second::level_depth]);
  }
  std::fflush(stdout);
  char more[120];
  std::snprintf(more, sizeof more, "\" %.17g %.17g", pressure_pa, level_m);
  std::string const script = std::string("\"") + WP_BENCH_SCRIPT + "\" \"" + WP_BENCH_PLANT + more;
  // Where SciPy stands in the system's Python and not in the one found first.
  std::string const command = "python3 " + script + " || /usr/bin/python3 " + script;
  if (std::system(command.c_str()) != 0) {
    std::printf("SciPy is absent: left out\n");
  }
}

}  // namespace

void against_rows() {
  closed_loop_rows();
  open_loop_rows();
}

}  // namespace wellproof
