#pragma once
// Settings run through every hazard over many draws of what is not known.
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "proof/hazard.h"
#include "proof/swing.h"
#include "regulator/settings.h"
#include "site/site.h"

namespace wellproof {

/// One run judged: enough to replay it.
struct Outcome {
  std::uint32_t draw = 0;
  bool passed = false;
  double margin = 0;          // the smallest over the criteria
  std::size_t criterion = 0;  // which one
  double value = 0;
  double limit = 0;
  Ending ending = Ending::finished;
  std::optional<double> pressure_room_pa{};  // least of rating − pressure over the criteria that hold one to a rating
};

/// One of the margins of the whole plan, in a unit that a person can use (margins.h).
struct PlanMargin {
  std::string key;  // "false_stop", "harm", "rating", "sleep", "hunting"
  Dimension dimension = Dimension::none;
  std::optional<double> value{};  // SI, < 0 past the limit; empty where there is no such margin
  std::uint32_t draw = 0;         // the one that is nearest
  std::string says;
};

/// An unknown by which a margin moves, and the share of the margin's variance that it explains alone.
struct MarginDriver {
  std::string key;
  double share = 0;
};

/// An unknown worth measuring on site: what it explains of the smallest margin of all scenarios, and what the margin
/// that 95 % of such sites keep would be, on average, once it has been measured (these settings kept).
struct WorthMeasuring {
  std::string key;
  std::string meaning;
  double share = 0;
  double lower_before = 0;
  double lower_after = 0;
  double minutes = 0;
  std::string how;       // empty where nothing on site tells it
  std::string scenario;  // that has the smallest margin oftenest
};

/// Where a scenario first fails on the way that its runs point to, and to first order how often that happens.
struct FirstFailure {
  double spreads = 0;  // from the middle, in standard deviations: the reliability index, or a little more
  double share = 0;    // of sites
  std::string says;
};

struct ScenarioProof {
  std::string name;
  std::string title;
  std::uint32_t runs = 0;
  std::uint32_t failed = 0;
  std::uint32_t not_computed = 0;  // no convergence or chatter: counted as failed
  double fail_upper95 = 0;         // Clopper–Pearson, one-sided, on the failure rate
  Outcome worst;
  std::string worst_says;           // criterion, figure and limit, and how this draw differs from the middle one
  std::vector<Criterion> criteria;  // of the worst draw
  std::string distance_says;        // from the worst run to its limit, in the limit's unit (margins.h)
  std::vector<MarginDriver> drivers;
  std::vector<std::uint32_t> nearest;           // draws that come nearest to failing, the worst first, at most two
  std::optional<FirstFailure> first_failure{};  // only of the scenarios that bind
};

struct Proof {
  bool proven = false;
  std::uint64_t seed = 0;
  std::uint32_t draws = 0;
  std::vector<ScenarioProof> scenarios;
  std::vector<PlanMargin> margins;
  std::vector<WorthMeasuring> measure;  // what to measure next, the strongest first
};

/// The runs of a proof, or of a share of it.
struct ProofRuns {
  std::vector<std::vector<Outcome>> outcomes;  // of each hazard, in the order of the draws
  std::vector<SwingsOfDraw> swings;            // of those draws that are looked at for hunting
};

struct ProveOptions {
  std::uint64_t seed = 1;
  std::uint32_t draws = 128;
  unsigned threads = 1;  // results do not depend on it
  UnitSystem units = UnitSystem::us;
  Logic logic;
  // Ends a scenario after the block of draws in which one has failed: its verdict is certain then, the rate at which it
  // fails is told from fewer runs. A scenario that holds runs all its draws, so that no verdict changes.
  bool stop_when_certain = false;
  bool insight = true;  // what to measure, and where the scenarios that bind first fail
  std::function<void(std::size_t done, std::size_t all)> progress;  // called from one thread at a time; may be empty
  // The runs, where others have made them (prove_share); then none is made here but those that give insight.
  ProofRuns const* made = nullptr;
};

/// Seed of the sensor's noise in the run of a draw, so that whoever repeats the run sees what the proof saw.
std::uint64_t noise_seed(std::uint64_t seed, std::uint32_t draw);

/// One run by all its criteria: passed if each is, the margin that of the nearest.
Outcome judge_all(Trace const& trace, std::vector<Criterion> const& criteria);

/// The runs of one hazard over some of the draws, as a proof makes them.
std::vector<Outcome> outcomes_of(Hazard const& hazard, std::vector<Plant> const& plants,
                                 std::vector<std::uint32_t> const& draws, Settings const& settings,
                                 ProveOptions const& options);

/// @param plants draws of the site by options.seed, at least options.draws (settings/derive.h, draw_plants)
Proof prove(Site const& site, std::vector<Plant> const& plants, Settings const& settings, ProveOptions const& options);

/// The runs of some draws through every hazard, as prove() makes them. Shares laid end to end are the runs of a proof,
/// whoever made them.
/// @param first, count draws first … first + count − 1; plants has as many as that
ProofRuns prove_share(std::vector<Plant> const& plants, Settings const& settings, ProveOptions const& options,
                      std::uint32_t first, std::uint32_t count);

/// One-sided 95 % upper bound on a failure rate, exact (clopper_pearson_1934). @return in [0, 1]
double failure_upper95(std::uint32_t failed, std::uint32_t runs);

}  // namespace wellproof
