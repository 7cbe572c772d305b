// What a run costs: the right-hand side, an hour with taps always on the move, an hour in which nothing happens, a
// whole proof. Ratios are counters of their own: they say more from machine to machine than seconds do.
#include <chrono>
#include <cstdio>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "example.h"
#include "proof/prove.h"
#include "settings/derive.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

constexpr double hour_s = 3600;

Example const& example() {
  static Example const made = wellproof::example("shallow_strong.toml", 16);
  return made;
}

/// Taps change every half minute, never shut for long.
Scenario busy_hour() {
  Scenario s;
  s.name = "busy_hour";
  s.duration_s = hour_s;
  s.start = {.tee_pressure_pa = example().settings.pressure_target_pa, .after_power_up = false};
  static constexpr double openings[] = {0.2, 0.6, 0.35, 0.8, 0.1, 0.5};
  double before = 0;
  for (int i = 0; i < 120; ++i) {
    double const opening = openings[i % 6];
    auto const turned = ramp(Act::outlet_opening, outlet::house, 30.0 * i, 30.0 * i + 0.5, before, opening);
    s.script.insert(s.script.end(), turned.begin(), turned.end());
    before = opening;
  }
  return s;
}

/// Asleep, nothing drips.
Scenario quiet_hour() {
  Scenario s;
  s.name = "quiet_hour";
  s.duration_s = hour_s;
  s.start = {.tee_pressure_pa = example().settings.pressure_target_pa, .after_power_up = false};
  s.script = {{.time_s = 0, .act = Act::outlet_opening, .outlet = outlet::leak, .value = 0}};
  return s;
}

Trace one_run(Scenario const& scenario, Sampling sampling) {
  RunOptions options;
  options.sampling = sampling;
  options.noise_seed = 1;
  return run(example().plants.front(), example().settings, scenario, options);
}

void hour(benchmark::State& state, Scenario const& scenario, Sampling sampling) {
  Trace trace;
  for (auto _ : state) {
    trace = one_run(scenario, sampling);
    benchmark::DoNotOptimize(trace);
  }
  using benchmark::Counter;
  auto const runs = static_cast<double>(state.iterations());
  state.counters["per_simulated_s"] = Counter(runs * scenario.duration_s, Counter::kIsRate | Counter::kInvert);
  state.counters["runs_per_s"] = Counter(runs, Counter::kIsRate);
  state.counters["steps"] = static_cast<double>(trace.statistics.steps);
  state.counters["samples"] = static_cast<double>(trace.statistics.samples);
  state.counters["stretched_share"] = trace.statistics.stretched_s / scenario.duration_s;
}

double seconds_of(Scenario const& scenario, Sampling sampling) {
  auto const began = std::chrono::steady_clock::now();
  benchmark::DoNotOptimize(one_run(scenario, sampling));
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
}

/// How much dearer one way is than another, each iteration one run of both, side by side.
void ratio(benchmark::State& state, Scenario const& dear, Sampling dear_sampling, Scenario const& cheap) {
  double dear_s = 0;
  double cheap_s = 0;
  for (auto _ : state) {
    dear_s += seconds_of(dear, dear_sampling);
    cheap_s += seconds_of(cheap, Sampling::calm);
  }
  state.counters["ratio"] = dear_s / cheap_s;
}

void rates(benchmark::State& state, bool jacobian) {
  auto const& plant = example().plants.front();
  Inputs inputs;
  inputs.openings.assign(plant.outlets.size(), 0);
  inputs.openings[outlet::house] = 0.5;
  inputs.speed_hz = 55;
  Rates law(plant, inputs);
  State y{};
  y[at::level_depth] = plant.well.static_level_depth_m + 1;
  y[at::flow] = 0.8 * plant.pump.best_flow_m3_s();
  y[at::stored] = stored_m3(plant, example().settings.pressure_target_pa);
  y[at::winding] = y[at::shell] = y[at::pump_water] = 20;
  Modes const modes{.check_open = true, .line_full = true};
  Jacobian slopes;
  for (auto _ : state) {
    y[at::stored] += 1e-12;  // never the very same instant
    benchmark::DoNotOptimize(law.of(y, modes, jacobian ? &slopes : nullptr));
  }
}

/// Settings and proof from the site on, as `plan` does it: draws are made, settings derived, hazards run.
void proof(benchmark::State& state) {
  ProveOptions options;
  options.draws = static_cast<std::uint32_t>(state.range(0));
  options.threads = static_cast<unsigned>(state.range(1));
  for (auto _ : state) {
    auto const plants = draw_plants(example().site, 1, options.draws);
    auto const settings = derive(example().site, plants, UnitSystem::us).settings;
    benchmark::DoNotOptimize(prove(example().site, plants, settings, options));
  }
  double const runs = static_cast<double>(state.iterations()) * options.draws * static_cast<double>(hazards().size());
  state.counters["runs_per_s"] = benchmark::Counter(runs, benchmark::Counter::kIsRate);
}

void derivation(benchmark::State& state) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(derive(example().site, example().plants, UnitSystem::us));
  }
}

}  // namespace
}  // namespace wellproof

int main(int argc, char** argv) {
  using namespace wellproof;
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) {
    return 2;
  }
  if (example().plants.empty()) {
    std::fprintf(stderr, "examples/shallow_strong.toml cannot be read\n");
    return 1;
  }
  auto const ms = benchmark::kMillisecond;
  benchmark::RegisterBenchmark("two_days_over_ten_minutes", [](auto& s) {
    ratio(s, ten_minutes_of(48 * hour_s, example().settings), Sampling::calm, ten_minutes_of(600, example().settings));
  })->Unit(ms);
  benchmark::RegisterBenchmark("rates", [](auto& s) { rates(s, false); });
  benchmark::RegisterBenchmark("rates_with_jacobian", [](auto& s) { rates(s, true); });
  benchmark::RegisterBenchmark("busy_hour", [](auto& s) { hour(s, busy_hour(), Sampling::calm); })->Unit(ms);
  benchmark::RegisterBenchmark("busy_hour_every_sample", [](auto& s) {
    hour(s, busy_hour(), Sampling::each);
  })->Unit(ms);
  benchmark::RegisterBenchmark("quiet_hour", [](auto& s) { hour(s, quiet_hour(), Sampling::calm); })->Unit(ms);
  benchmark::RegisterBenchmark("quiet_hour_every_sample", [](auto& s) {
    hour(s, quiet_hour(), Sampling::each);
  })->Unit(ms);
  benchmark::RegisterBenchmark("busy_over_quiet", [](auto& s) {
    ratio(s, busy_hour(), Sampling::calm, quiet_hour());
  })->Unit(ms);
  benchmark::RegisterBenchmark("quiet_sampled_over_stretched", [](auto& s) {
    ratio(s, quiet_hour(), Sampling::each, quiet_hour());
  })->Unit(ms);
  benchmark::RegisterBenchmark("busy_sampled_over_stretched", [](auto& s) {
    ratio(s, busy_hour(), Sampling::each, busy_hour());
  })->Unit(ms);
  benchmark::RegisterBenchmark("derive", derivation)->Unit(ms);
  benchmark::RegisterBenchmark("proof", proof)
      ->ArgNames({"draws", "threads"})
      ->Args({32, 1})
      ->Args({32, 2})
      ->Args({256, 2})
      ->MeasureProcessCPUTime()
      ->UseRealTime()
      ->Unit(ms);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
