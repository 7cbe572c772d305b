#include "explain/next_question.h"

#include <cmath>

#include <gtest/gtest.h>

#include "unit/explain/worlds.h"

namespace wellproof {
namespace {

Question const* question_of(std::vector<Question> const& questions, std::string_view key) {
  for (auto const& question : questions) {
    if (checks()[question.check].key == key) {
      return &question;
    }
  }
  return nullptr;
}

/// Two causes, equally likely and nothing else, that a current tells apart.
Ranking even_ranking(std::vector<World> const& worlds, Holding const& holding) {
  return rank(worlds, holding, Evidence{}, {{"yield_fallen", 0.5}, {"level_fallen", 0.5}});
}

TEST(next_questions, of_two_causes_alike_one_that_separates_them_tells_nearly_a_bit) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto const questions = next_questions(worlds, holding, even_ranking(worlds, holding), {});
  auto const* const amps = question_of(questions, "read_amps");
  ASSERT_NE(amps, nullptr);
  // One bit, less what one reading in twenty that misleads takes away (lindley_1956: mutual information).
  EXPECT_GT(amps->information_bits, 0.7);
  EXPECT_LE(amps->information_bits, 1);
  EXPECT_EQ(questions.front().check, amps->check);
}

TEST(next_questions, says_who_would_lead_after_each_answer) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto const questions = next_questions(worlds, holding, even_ranking(worlds, holding), {});
  auto const* const amps = question_of(questions, "read_amps");
  ASSERT_NE(amps, nullptr);
  EXPECT_EQ(faults()[amps->answers[0].leader].key, "yield_fallen");
  EXPECT_EQ(faults()[amps->answers[2].leader].key, "level_fallen");
  EXPECT_GT(amps->answers[2].leader_posterior, 0.8);
}

TEST(next_questions, leave_out_what_was_answered_and_what_tells_nothing) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto const ranking = even_ranking(worlds, holding);
  auto const questions = next_questions(worlds, holding, ranking, {{check_place("read_amps"), 0}});
  EXPECT_EQ(question_of(questions, "read_amps"), nullptr);
  EXPECT_EQ(question_of(questions, "contact"), nullptr);
}

TEST(checks, speak_of_causes_and_answers_that_there_are) {
  for (auto const& check : checks()) {
    EXPECT_GE(check.answers.size(), 2U) << check.key;
    EXPECT_GT(check.minutes, 0) << check.key;
    for (auto const& sign : check.signs) {
      EXPECT_LT(fault_place(sign.fault), faults().size()) << sign.fault;
      EXPECT_LT(sign.answer, check.answers.size()) << check.key;
    }
  }
}

TEST(checks, have_answers_whose_shares_are_one) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  for (auto const& check : checks()) {
    for (auto const& world : worlds) {
      double sum = 0;
      for (double const share : answer_shares(check, holding, &world)) {
        EXPECT_GT(share, 0);
        sum += share;
      }
      EXPECT_NEAR(sum, 1, 1e-9) << check.key;
    }
  }
}

}  // namespace
}  // namespace wellproof
