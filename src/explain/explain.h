#pragma once
// From what was told to ranked causes, the next question, and what would have avoided the stops.
#include <cstdint>
#include <functional>
#include <vector>

#include "explain/next_question.h"
#include "explain/rank.h"
#include "explain/world.h"

namespace wellproof {

struct ExplainOptions {
  std::uint64_t seed = 1;
  std::uint32_t draws = 64;  // at most, of a cause that is not soon out of the question
  unsigned threads = 1;
  Logic logic;
  std::vector<PriorShare> priors;
  std::function<void(std::size_t done, std::size_t all)> progress;
};

/// The draws of a cause that the first look takes.
inline constexpr std::uint32_t first_look_draws = 8;

class Explained {
 public:
  /// Worlds of all causes for a first look, then more of those that are left: few where the answer is plain.
  /// @param plants   at least options.draws draws of the site
  /// @param settings as they are in the drive
  Explained(std::vector<Plant> const& plants, Settings const& settings, Evidence evidence,
            std::vector<ToldAnswer> answers, ExplainOptions const& options);

  /// Takes the answer of a check and ranks anew, over the same worlds.
  void take(ToldAnswer const& answer);
  /// Takes an instrument's value and ranks anew.
  void take(std::size_t check, ToldShow const& show);

  Evidence const& evidence() const { return evidence_; }
  std::vector<World> const& worlds() const { return worlds_; }
  Holding const& holding() const { return holding_; }
  Ranking const& ranking() const { return ranking_; }
  std::vector<Question> const& questions() const { return questions_; }
  std::vector<ToldAnswer> const& answers() const { return answers_; }

 private:
  void rank_anew();

  Evidence evidence_;
  std::vector<ToldAnswer> answers_;
  std::vector<std::size_t> read_;  // checks whose value is among the evidence
  std::vector<PriorShare> priors_;
  std::vector<World> worlds_;
  Holding holding_;
  Ranking ranking_;
  std::vector<Question> questions_;
};

/// A change of a setting, and the likeliest days of a cause lived again with it.
struct Remedy {
  std::string key;
  Dimension dimension = Dimension::none;
  double from = 0;
  double to = 0;
  bool to_plan = false;     // the plan's value; otherwise a try beyond it
  double stops_before = 0;  // a day, mean of the days lived
  double stops_after = 0;
  std::size_t days = 0;
  bool helps() const { return stops_before > 0 && stops_after < 0.5 * stops_before; }
};

/// Which single settings would have avoided the stops of the leading cause: each that differs from the plan's is set
/// to it, and the rest and the limit on long runs are lengthened; then the cause's likeliest worlds live their day
/// again.
/// @param plan settings derived for the site
std::vector<Remedy> remedies(Explained const& explained, std::vector<Plant> const& plants, Settings const& found,
                             Settings const& plan, ExplainOptions const& options);

}  // namespace wellproof
