#include "explain/explain.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "proof/shared_out.h"

namespace wellproof {
namespace {

constexpr double second_look_from = 0.002;  // posterior after the first look that earns another
constexpr double third_look_from = 0.02;
constexpr std::uint32_t second_look_draws = 24;

std::vector<std::size_t> all_causes() {
  std::vector<std::size_t> causes(faults().size() + 1);
  std::iota(causes.begin(), causes.end(), std::size_t{0});
  return causes;
}

std::vector<std::size_t> causes_above(Ranking const& ranking, double least) {
  std::vector<std::size_t> causes;
  for (auto const& cause : ranking.causes) {
    if (cause.posterior >= least && cause.fault < faults().size()) {
      causes.push_back(cause.fault);
    }
  }
  std::sort(causes.begin(), causes.end());
  return causes;
}

/// A setting's value, by key, of settings that may be changed.
double* setting_of(Settings& settings, std::string_view key, Dimension& dimension) {
  double* found = nullptr;
  each_setting(settings, [&](SettingField const& field, double& value) {
    if (field.key == key) {
      found = &value;
      dimension = field.dimension;
    }
  });
  return found;
}

}  // namespace

Explained::Explained(std::vector<Plant> const& plants, Settings const& settings, Evidence evidence,
                     std::vector<ToldAnswer> answers, ExplainOptions const& options)
    : evidence_(std::move(evidence)), answers_(std::move(answers)), priors_(options.priors), holding_({}) {
  WorldOptions with;
  with.seed = options.seed;
  with.threads = options.threads;
  with.logic = options.logic;
  std::size_t told = 0;
  // How many looks there will be is not known before: half of the way is the first, the rest shared by the others.
  auto const look = [&](std::vector<std::size_t> const& causes, std::uint32_t from, std::uint32_t to, double share_from,
                        double share_to) {
    with.draws = std::min(to, options.draws);
    if (from >= with.draws || causes.empty()) {
      return;
    }
    if (options.progress) {
      with.progress = [&, share_from, share_to](std::size_t done, std::size_t all) {
        constexpr double steps = 1000;
        auto const now = static_cast<std::size_t>(
            steps * (share_from + (share_to - share_from) * static_cast<double>(done) / static_cast<double>(all)));
        if (now > told) {
          told = now;
          options.progress(now, static_cast<std::size_t>(steps));
        }
      };
    }
    add_worlds(worlds_, plants, settings, with, causes, from);
    holding_ = Holding(worlds_);
    ranking_ = rank(worlds_, holding_, evidence_, priors_, answers_);
  };
  look(all_causes(), 0, first_look_draws, 0, 0.5);
  auto second = causes_above(ranking_, second_look_from);
  second.push_back(faults().size());
  look(second, first_look_draws, second_look_draws, 0.5, 0.75);
  auto third = causes_above(ranking_, third_look_from);
  third.erase(
      std::remove_if(third.begin(), third.end(),
                     [&](std::size_t fault) { return std::find(second.begin(), second.end(), fault) == second.end(); }),
      third.end());
  look(third, second_look_draws, options.draws, 0.75, 1);
  rank_anew();
}

void Explained::take(ToldAnswer const& answer) {
  answers_.push_back(answer);
  rank_anew();
}

void Explained::take(std::size_t check, ToldShow const& show) {
  evidence_.shows.push_back(show);
  read_.push_back(check);
  rank_anew();
}

void Explained::rank_anew() {
  ranking_ = rank(worlds_, holding_, evidence_, priors_, answers_);
  auto done = answers_;
  for (auto const check : read_) {
    done.push_back({check, 0});
  }
  for (std::size_t check = 0; check < checks().size(); ++check) {
    for (auto const& told : evidence_.shows) {
      if (checks()[check].show == told.show) {
        done.push_back({check, 0});
      }
    }
  }
  questions_ = next_questions(worlds_, holding_, ranking_, done);
}

std::vector<Remedy> remedies(Explained const& explained, std::vector<Plant> const& plants, Settings const& found,
                             Settings const& plan, ExplainOptions const& options) {
  constexpr std::size_t most_days = 8;
  constexpr double worth_trying = 0.02;
  constexpr double longer = 2;
  auto const& leader = explained.ranking().causes.front();
  if (leader.fault >= faults().size()) {
    return {};
  }
  std::vector<std::size_t> likeliest;
  for (std::size_t i = 0; i < explained.worlds().size(); ++i) {
    auto const& world = explained.worlds()[i];
    if (world.fault == leader.fault && world.calls && !world.stops.empty()) {
      likeliest.push_back(i);
    }
  }
  auto const& weights = explained.ranking().weights;
  std::stable_sort(likeliest.begin(), likeliest.end(),
                   [&](std::size_t a, std::size_t b) { return weights[a] > weights[b]; });
  likeliest.resize(std::min(likeliest.size(), most_days));
  if (likeliest.empty()) {
    return {};
  }
  std::vector<Faulty> faulty;
  double before = 0;
  for (auto const place : likeliest) {
    faulty.push_back(faulty_of(explained.worlds()[place], plants, found, options.seed));
    before += static_cast<double>(explained.worlds()[place].stops.size());
  }
  std::vector<Remedy> tried;
  auto settings = faulty.front().settings;
  auto wanted = plan;
  Dimension dimension = Dimension::none;
  for (std::string_view const key :
       {"motor.current_limit", "speed.ceiling", "sleep.speed_below", "dry_run.amps_below", "dry_run.power_below",
        "dry_run.delay", "dry_run.rest", "closed.amps_below", "closed.power_below", "closed.delay", "long_run.limit",
        "regulator.gain", "regulator.reset_time", "pressure.stop_above"}) {
    double const* const is = setting_of(settings, key, dimension);
    double const* const planned = setting_of(wanted, key, dimension);
    Remedy remedy{.key = std::string(key), .dimension = dimension, .from = *is, .to = *planned, .to_plan = true};
    if (std::abs(*is - *planned) > worth_trying * std::abs(*planned)) {
      tried.push_back(remedy);
    }
    if (key == "dry_run.rest" || key == "long_run.limit") {
      remedy.to = longer * std::max(*is, *planned);
      remedy.to_plan = false;
      tried.push_back(remedy);
    }
  }
  std::vector<std::vector<double>> after(tried.size(), std::vector<double>(faulty.size(), 0));
  shared_out(tried.size() * faulty.size(), options.threads, [&](std::size_t i) {
    std::size_t const r = i / faulty.size();
    std::size_t const d = i % faulty.size();
    auto changed = faulty[d];
    Dimension of_setting = Dimension::none;
    *setting_of(changed.settings, tried[r].key, of_setting) = tried[r].to;
    auto const& world = explained.worlds()[likeliest[d]];
    auto const seed = seed_of(options.seed, world.fault, world.draw);
    after[r][d] = static_cast<double>(stops_of_day(changed, options.logic, seed).size());
  });
  for (std::size_t r = 0; r < tried.size(); ++r) {
    auto const days = static_cast<double>(faulty.size());
    tried[r].stops_before = before / days;
    tried[r].stops_after = std::accumulate(after[r].begin(), after[r].end(), 0.0) / days;
    tried[r].days = faulty.size();
  }
  std::stable_sort(tried.begin(), tried.end(),
                   [](Remedy const& a, Remedy const& b) { return a.stops_after < b.stops_after; });
  return tried;
}

}  // namespace wellproof
