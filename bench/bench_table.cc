// What the program costs, as one table in one run: a run against CVODE and SciPy on the same plant, a full proof of two
// examples on one thread and on two, two days against ten minutes, memory.
//
//   bench_table                 the table
//   bench_table hazards N FILE  what each hazard costs over N draws of an example, and against every sample computed
#include <sys/resource.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "against.h"
#include "example.h"
#include "proof/prove.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

constexpr char const* examples[] = {"shallow_strong.toml", "deep_weak.toml"};
constexpr double hour_s = 3600;
constexpr std::uint32_t full_draws = 256;
constexpr double asked_runs = 26 * 256;

double most_memory_mb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

double processor_s() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  auto const seconds = [](timeval const& t) {
    return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
  };
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

void proof_rows(char const* name) {
  auto const made = example(name, full_draws);
  auto const runs = static_cast<double>(hazards().size()) * full_draws;
  double alone_s = 0;
  for (unsigned const threads : {1U, 2U}) {
    ProveOptions options;
    options.draws = full_draws;
    options.threads = threads;
    double const began_s = wall_s();
    double const began_processor_s = processor_s();
    auto const proof = prove(made.site, made.plants, made.settings, options);
    double const took_s = wall_s() - began_s;
    double const busy_s = processor_s() - began_processor_s;
    alone_s = threads == 1 ? took_s : alone_s;
    std::printf(
        "%-20s %u thread%s  %5.0f runs  %6.1f s by the clock  %6.1f s of processor  26 x 256: %5.1f s  x%.2f  %s\n",
        name, threads, threads == 1 ? " " : "s", runs, took_s, busy_s, took_s * asked_runs / runs, alone_s / took_s,
        proof.proven ? "proven" : "not proven");
  }
}

double run_s(Plant const& plant, Settings const& settings, Scenario const& scenario) {
  RunOptions options;
  options.noise_seed = 1;
  double least_s = 1e9;
  for (int i = 0; i < 5; ++i) {
    double const began_s = thread_s();
    run(plant, settings, scenario, options);
    least_s = std::min(least_s, thread_s() - began_s);
  }
  return least_s;
}

void two_days_row(char const* name) {
  auto const made = example(name, 16);
  double const short_s = run_s(made.plants.front(), made.settings, ten_minutes_of(600, made.settings));
  double const long_s = run_s(made.plants.front(), made.settings, ten_minutes_of(48 * hour_s, made.settings));
  auto const* const fortnight = hazard("household_fortnight");
  double const lived_s =
      run_s(made.plants.front(), made.settings, fortnight->make(made.plants.front(), made.settings).scenario);
  std::printf(
      "%-20s ten minutes %.2f ms, two days that begin with them %.2f ms: x%.1f; a third of a lived day %.1f ms\n", name,
      1e3 * short_s, 1e3 * long_s, long_s / short_s, 1e3 * lived_s);
}

int table() {
  std::printf("One run of 240 s with two taps, against the same plant by other integrators\n");
  against_rows();
  std::printf("\nA proof: %zu hazards, %u draws, with what is worth measuring\n", hazards().size(), full_draws);
  for (auto const* const name : examples) {
    proof_rows(name);
  }
  std::printf("\nTwo days against ten minutes\n");
  for (auto const* const name : examples) {
    two_days_row(name);
  }
  std::printf("\nMost memory: %.0f MB\n", most_memory_mb());
  return 0;
}

struct Cost {
  double run_s = 0;
  double samples = 0;
  double steps = 0;
  Outcome outcome;
};

Cost cost(Plant const& plant, Settings const& settings, Hazard const& one, std::uint32_t draw, Sampling sampling) {
  auto const trial = one.make(plant, settings);
  RunOptions options;
  options.windows = trial.windows;
  options.noise_seed = noise_seed(1, draw);
  options.sampling = sampling;
  double const began_s = thread_s();
  auto const trace = run(plant, settings, trial.scenario, options);
  return {.run_s = thread_s() - began_s,
          .samples = static_cast<double>(trace.statistics.samples),
          .steps = static_cast<double>(trace.statistics.steps),
          .outcome = judge_all(trace, trial.criteria)};
}

int hazard_table(std::uint32_t draws, std::string const& name) {
  auto const made = example(name, draws);
  if (made.plants.empty()) {
    std::fprintf(stderr, "examples/%s cannot be read\n", name.c_str());
    return 1;
  }
  std::printf("%-28s %8s %8s %8s %10s %7s %7s\n", "hazard", "ms", "samples", "steps", "every ms", "verdict", "margin");
  double all_s = 0;
  double every_s = 0;
  int other = 0;
  int moved = 0;
  for (auto const& one : hazards()) {
    Cost sum;
    Cost sum_every;
    int other_here = 0;
    double most = 0;
    for (std::uint32_t draw = 0; draw < draws; ++draw) {
      auto const ours = cost(made.plants[draw], made.settings, one, draw, Sampling::calm);
      auto const every = cost(made.plants[draw], made.settings, one, draw, Sampling::each);
      sum.run_s += ours.run_s;
      sum.samples += ours.samples;
      sum.steps += ours.steps;
      sum_every.run_s += every.run_s;
      other_here += ours.outcome.passed != every.outcome.passed ? 1 : 0;
      double const apart = std::abs(ours.outcome.margin - every.outcome.margin);
      moved += apart > 0.02 ? 1 : 0;
      most = std::max(most, apart);
    }
    std::printf("%-28s %8.2f %8.0f %8.0f %10.1f %7d %7.3f\n", std::string(one.name).c_str(), 1e3 * sum.run_s / draws,
                sum.samples / draws, sum.steps / draws, 1e3 * sum_every.run_s / draws, other_here, most);
    all_s += sum.run_s;
    every_s += sum_every.run_s;
    other += other_here;
  }
  auto const runs = static_cast<double>(draws) * static_cast<double>(hazards().size());
  std::printf("%.0f runs: mean %.2f ms, with every sample %.1f ms; other verdicts %d, margins moved by over 0.02 %d\n",
              runs, 1e3 * all_s / runs, 1e3 * every_s / runs, other, moved);
  return 0;
}

}  // namespace
}  // namespace wellproof

int main(int argc, char** argv) {
  if (argc == 4 && std::string_view(argv[1]) == "hazards") {
    auto const draws = static_cast<std::uint32_t>(std::clamp(std::atoi(argv[2]), 8, 4096));
    return wellproof::hazard_table(draws, argv[3]);
  }
  if (argc != 1) {
    std::fprintf(stderr, "bench_table\nbench_table hazards N FILE\n");
    return 2;
  }
  return wellproof::table();
}
