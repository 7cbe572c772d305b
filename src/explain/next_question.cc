#include "explain/next_question.h"

#include <algorithm>
#include <cmath>

namespace wellproof {
namespace {

constexpr double asking_minutes = 3;  // to say what to do, to go there
constexpr double least_bits = 0.02;

/// Probability of each answer by cause, weighted by what the ranking thinks of the cause's worlds.
std::vector<std::vector<double>> shares_by_cause(Check const& check, std::vector<World> const& worlds,
                                                 Holding const& holding, Ranking const& ranking) {
  std::size_t const none = faults().size();
  std::vector<std::vector<double>> shares(none + 1, std::vector<double>(check.answers.size(), 0));
  for (std::size_t i = 0; i < worlds.size(); ++i) {
    constexpr double negligible = 1e-7;
    if (ranking.weights[i] > negligible) {
      auto const of_world = answer_shares(check, holding, &worlds[i]);
      for (std::size_t a = 0; a < of_world.size(); ++a) {
        shares[worlds[i].fault][a] += ranking.weights[i] * of_world[a];
      }
    }
  }
  for (auto const& cause : ranking.causes) {
    if (cause.fault == none) {
      auto const unknown = answer_shares(check, holding, nullptr);
      for (std::size_t a = 0; a < unknown.size(); ++a) {
        shares[none][a] = cause.posterior * unknown[a];
      }
    }
  }
  return shares;
}

Question asked(std::size_t place, std::vector<std::vector<double>> const& joint) {
  Question question;
  question.check = place;
  std::size_t const answers = checks()[place].answers.size();
  std::vector<double> of_answer(answers, 0);
  for (auto const& cause : joint) {
    for (std::size_t a = 0; a < answers; ++a) {
      of_answer[a] += cause[a];
    }
  }
  for (std::size_t a = 0; a < answers; ++a) {
    AnswerMeaning meaning;
    meaning.share = of_answer[a];
    meaning.leader = faults().size();
    for (std::size_t fault = 0; fault < joint.size(); ++fault) {
      double const posterior = of_answer[a] > 0 ? joint[fault][a] / of_answer[a] : 0;
      if (posterior > meaning.leader_posterior) {
        meaning.leader_posterior = posterior;
        meaning.leader = fault;
      }
    }
    question.answers.push_back(meaning);
  }
  for (auto const& cause : joint) {
    double own = 0;
    for (double const share : cause) {
      own += share;
    }
    for (std::size_t a = 0; a < answers; ++a) {
      if (cause[a] > 0 && own > 0) {
        question.information_bits += cause[a] * std::log2(cause[a] / (own * of_answer[a]));
      }
    }
  }
  question.information_bits = std::max(0.0, question.information_bits);
  question.bits_a_minute = question.information_bits / (checks()[place].minutes + asking_minutes);
  return question;
}

}  // namespace

std::vector<Question> next_questions(std::vector<World> const& worlds, Holding const& holding, Ranking const& ranking,
                                     std::vector<ToldAnswer> const& answered) {
  std::vector<Question> questions;
  for (std::size_t place = 0; place < checks().size(); ++place) {
    bool const done =
        std::any_of(answered.begin(), answered.end(), [&](ToldAnswer const& answer) { return answer.check == place; });
    if (!done) {
      questions.push_back(asked(place, shares_by_cause(checks()[place], worlds, holding, ranking)));
    }
  }
  questions.erase(std::remove_if(questions.begin(), questions.end(),
                                 [](Question const& question) { return question.information_bits < least_bits; }),
                  questions.end());
  std::stable_sort(questions.begin(), questions.end(),
                   [](Question const& a, Question const& b) { return a.bits_a_minute > b.bits_a_minute; });
  return questions;
}

}  // namespace wellproof
