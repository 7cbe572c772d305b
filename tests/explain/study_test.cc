// Calls made up by simulation on sites that the ranking was not tuned on, and how often the true cause comes out first
// or among the first three. WP_EXPLAIN_CASES=400 asks for the whole study (docs/explain.md has its figures; half an
// hour of processor time); the everyday suite takes few calls on one site.
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>

#include <gtest/gtest.h>

#include "explain/next_question.h"
#include "explain/rank.h"
#include "explain/study_site.h"
#include "explain/synthetic_call.h"
#include "proof/shared_out.h"
#include "settings/derive.h"
#include "site/draw.h"
#include "site/read.h"

namespace wellproof {
namespace {

struct Scale {
  int sites = 1;
  std::size_t calls = 8;  // of each site
  std::uint32_t draws = 6;
  bool whole = false;
};

Scale scale() {
  auto const* const asked = std::getenv("WP_EXPLAIN_CASES");  // NOLINT(concurrency-mt-unsafe): before any thread
  if (asked == nullptr) {
    return {};
  }
  constexpr int sites = 4;
  return {sites, static_cast<std::size_t>(std::max(sites, std::atoi(asked)) / sites), 24, true};
}

/// What has come out so far, for one amount of knowledge.
struct Tally {
  int calls = 0;
  int first = 0;
  int among_three = 0;
  struct Bin {
    double said = 0;
    int count = 0;
    int right = 0;
  };
  std::array<Bin, 10> bins{};

  void take(Ranking const& ranking, std::size_t truth) {
    ++calls;
    for (std::size_t i = 0; i < ranking.causes.size(); ++i) {
      auto const& cause = ranking.causes[i];
      bool const right = cause.fault == truth;
      first += right && i == 0 ? 1 : 0;
      among_three += right && i < 3 ? 1 : 0;
      constexpr double least = 0.02;
      if (cause.posterior > least) {
        auto& bin = bins[std::min<std::size_t>(9, static_cast<std::size_t>(cause.posterior * 10))];
        bin.said += cause.posterior;
        ++bin.count;
        bin.right += right ? 1 : 0;
      }
    }
  }
};

/// Amounts of knowledge: the list alone; with what people notice; with readings; with one check answered; with two.
constexpr std::array<char const*, 5> knowledge{"the list of stops alone", "and what is noticed",
                                               "and two or three readings", "and one check answered",
                                               "and two checks answered"};

/// Cases are even over the causes, and so is what is thought beforehand.
std::vector<PriorShare> even_priors() {
  std::vector<PriorShare> priors;
  for (auto const& fault : faults()) {
    priors.push_back({std::string(fault.key), (1 - none_share) / static_cast<double>(faults().size())});
  }
  return priors;
}

std::size_t answer_by_lot(std::vector<double> const& shares, Chance& chance) {
  double left = chance.next();
  std::size_t answer = 0;
  while (answer + 1 < shares.size() && left > shares[answer]) {
    left -= shares[answer++];
  }
  return answer;
}

void rank_call(SyntheticCall const& call, std::vector<World> const& worlds, Holding const& holding,
               Settings const& settings, std::uint64_t seed, std::array<Tally, knowledge.size()>& tallies) {
  auto const priors = even_priors();
  auto const whole = evidence_of(call.history, nullptr, settings);
  Chance chance(seed);
  for (std::size_t level = 0; level < knowledge.size(); ++level) {
    auto evidence = whole;
    if (level < 1) {
      evidence.symptoms.clear();
    }
    if (level >= 2) {
      evidence.shows = call.shows;
    }
    std::vector<ToldAnswer> answers;
    auto ranking = rank(worlds, holding, evidence, priors);
    for (std::size_t asked = 2; asked < level; ++asked) {
      auto const questions = next_questions(worlds, holding, ranking, answers);
      if (!questions.empty()) {
        auto const shares = answer_shares(checks()[questions.front().check], holding, &call.truth);
        answers.push_back({questions.front().check, answer_by_lot(shares, chance)});
        ranking = rank(worlds, holding, evidence, priors, answers);
      }
    }
    tallies[level].take(ranking, call.fault);
  }
}

std::vector<SyntheticCall> calls_of(Site const& site, Settings const& settings, std::size_t count, std::uint64_t seed) {
  constexpr int tries = 40;
  constexpr std::uint32_t beyond = 1000;  // draws that no world is made from
  std::vector<std::optional<SyntheticCall>> found(count);
  shared_out(count, 2, [&](std::size_t i) {
    Chance chance(seed_of(seed, 11, i));
    for (int one = 0; one < tries && !found[i]; ++one) {
      std::size_t const fault = chance.one_of(faults().size());
      for (std::uint32_t again = 0; again < 12 && !found[i]; ++again) {
        auto const plant = build(draw(site, 9, beyond + static_cast<std::uint32_t>(i) * 12 + again));
        found[i] = synthetic_call(plant, settings, {}, fault,
                                  seed_of(seed, 12 + static_cast<std::uint64_t>(one) * 100 + again, i));
      }
    }
  });
  std::vector<SyntheticCall> calls;
  for (auto const& call : found) {
    if (call) {
      calls.push_back(*call);
    }
  }
  return calls;
}

TEST(study, finds_the_cause_behind_calls_of_other_sites) {
  auto const size = scale();
  std::array<Tally, knowledge.size()> tallies{};
  for (int number = 1; number <= size.sites; ++number) {
    auto const seed = static_cast<std::uint64_t>(number);
    auto const read = read_site(study_site_text(seed), "study.toml");
    ASSERT_TRUE(read) << text(read.error().front());
    auto const plants = draw_plants(read->site, 1, std::max(8U, size.draws));
    auto const settings = derive(read->site, plants, UnitSystem::us).settings;
    WorldOptions options;
    options.draws = size.draws;
    options.threads = 2;
    auto const worlds = make_worlds(plants, settings, options);
    Holding const holding(worlds);
    auto const calls = calls_of(read->site, settings, size.calls, seed);
    for (std::size_t i = 0; i < calls.size(); ++i) {
      rank_call(calls[i], worlds, holding, settings, seed_of(seed, 99, i), tallies);
    }
  }
  for (std::size_t level = 0; level < knowledge.size(); ++level) {
    auto const& tally = tallies[level];
    std::printf("%-28s %d calls: first %.0f %%, among three %.0f %%\n", knowledge[level], tally.calls,
                100.0 * tally.first / tally.calls, 100.0 * tally.among_three / tally.calls);
  }
  std::printf("said   right  of, with two checks answered\n");
  for (auto const& bin : tallies.back().bins) {
    if (bin.count > 0) {
      std::printf("%3.0f %%  %3.0f %%  %d\n", 100 * bin.said / bin.count, 100.0 * bin.right / bin.count, bin.count);
    }
  }
  auto const& last = tallies.back();
  EXPECT_GT(last.calls, static_cast<int>(size.calls) * size.sites * 9 / 10);
  // Few draws of few calls say little; the whole study must come out as it is to.
  EXPECT_GE(last.first, last.calls * (size.whole ? 70 : 40) / 100);
  EXPECT_GE(last.among_three, last.calls * (size.whole ? 90 : 60) / 100);
}

}  // namespace
}  // namespace wellproof
