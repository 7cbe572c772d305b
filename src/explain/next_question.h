#pragma once
// The check that would separate the leading causes most for its time.
#include <vector>

#include "explain/check.h"
#include "explain/rank.h"

namespace wellproof {

/// What one answer would mean.
struct AnswerMeaning {
  double share = 0;        // how likely it is
  std::size_t leader = 0;  // place in faults() of the cause that would lead; past the end: none of these
  double leader_posterior = 0;
};

struct Question {
  std::size_t check = 0;
  double information_bits = 0;  // expected
  double bits_a_minute = 0;
  std::vector<AnswerMeaning> answers;
};

/// The checks that have not been answered, the one that tells most for its time first. Those that tell next to nothing
/// are left out.
/// Expected information is the mutual information of cause and answer under the ranking.
/// Source:  lindley_1956
/// Checked: tests/unit/explain/next_question_test.cc
std::vector<Question> next_questions(std::vector<World> const& worlds, Holding const& holding, Ranking const& ranking,
                                     std::vector<ToldAnswer> const& answered);

}  // namespace wellproof
