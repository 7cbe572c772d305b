#include "explain/rank.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace wellproof {
namespace {

// What the parts of the likelihood are worth together: they are not as independent as their product takes them to be.
// Chosen on synthetic cases (docs/explain.md) so that what is called likely by 80 % is right in 80 %.
constexpr double tempering = 0.75;
constexpr std::size_t least_calls = 2;

std::vector<double> prior_shares(std::vector<PriorShare> const& priors) {
  std::size_t const none = faults().size();
  std::vector<double> shares;
  for (auto const& fault : faults()) {
    shares.push_back(fault.share);
  }
  shares.push_back(none_share);
  std::vector<bool> said(shares.size(), false);
  double taken = 0;
  for (auto const& prior : priors) {
    std::size_t const place = prior.key == none_key ? none : fault_place(prior.key);
    if (place <= none) {
      shares[place] = prior.share;
      said[place] = true;
      taken += prior.share;
    }
  }
  double others = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    others += said[i] ? 0 : shares[i];
  }
  double const scale = others > 0 ? std::max(0.0, 1 - taken) / others : 0;
  double sum = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    shares[i] *= said[i] ? 1 : scale;
    sum += shares[i];
  }
  for (auto& share : shares) {
    share /= sum;
  }
  return shares;
}

/// Mean of likelihoods given as logarithms, with the relative error of the mean and how many of them carry it.
struct LogMean {
  double log = -std::numeric_limits<double>::infinity();
  double relative_error = 0;
  double carriers = 0;
};

LogMean log_mean(std::vector<double> const& logs) {
  LogMean mean;
  if (logs.empty()) {
    return mean;
  }
  double const most = *std::max_element(logs.begin(), logs.end());
  double sum = 0;
  double squares = 0;
  for (double const log : logs) {
    double const part = std::exp(log - most);
    sum += part;
    squares += part * part;
  }
  auto const count = static_cast<double>(logs.size());
  mean.log = most + std::log(sum / count);
  mean.carriers = sum * sum / squares;
  mean.relative_error = std::sqrt(std::max(0.0, squares / (sum * sum) - 1 / count));
  return mean;
}

void add_weighted(Likelihood& into, Likelihood const& part, double weight) {
  into.kinds += weight * part.kinds;
  into.hours += weight * part.hours;
  into.gaps += weight * part.gaps;
  into.symptoms += weight * part.symptoms;
  into.shows += weight * part.shows;
  into.answers += weight * part.answers;
}

double answers_log(std::vector<ToldAnswer> const& answers, Holding const& holding, World const* world) {
  double log = 0;
  for (auto const& answer : answers) {
    log += std::log(answer_shares(checks()[answer.check], holding, world)[answer.answer]);
  }
  return log;
}

}  // namespace

Ranking rank(std::vector<World> const& worlds, Holding const& holding, Evidence const& evidence,
             std::vector<PriorShare> const& priors, std::vector<ToldAnswer> const& answers) {
  std::size_t const none = faults().size();
  auto const shares = prior_shares(priors);
  std::vector<std::vector<double>> logs(none);
  std::vector<std::vector<std::size_t>> places(none);
  std::vector<Likelihood> parts(worlds.size());
  for (std::size_t i = 0; i < worlds.size(); ++i) {
    auto const& world = worlds[i];
    if (world.fault < none && world.calls) {
      parts[i] = holding.of(evidence, world);
      parts[i].answers = answers_log(answers, holding, &world);
      logs[world.fault].push_back(tempering * parts[i].sum());
      places[world.fault].push_back(i);
    }
  }
  Ranking ranking;
  std::vector<double> errors;
  double most = -std::numeric_limits<double>::infinity();
  for (std::size_t fault = 0; fault <= none; ++fault) {
    RankedCause cause;
    cause.fault = fault;
    cause.prior = shares[fault];
    LogMean mean;
    if (fault == none) {
      cause.parts = holding.of_none(evidence);
      cause.parts.answers = answers_log(answers, holding, nullptr);
      mean.log = tempering * cause.parts.sum();
    } else if (logs[fault].size() >= least_calls) {
      mean = log_mean(logs[fault]);
    }
    cause.possible = std::isfinite(mean.log);
    cause.log_evidence = cause.possible ? mean.log : 0;
    cause.worlds_that_count = mean.carriers;
    errors.push_back(mean.relative_error);
    if (cause.possible && cause.prior > 0) {
      most = std::max(most, mean.log + std::log(cause.prior));
    }
    ranking.causes.push_back(cause);
  }
  double sum = 0;
  for (auto& cause : ranking.causes) {
    cause.posterior =
        cause.possible && cause.prior > 0 ? std::exp(cause.log_evidence + std::log(cause.prior) - most) : 0;
    sum += cause.posterior;
  }
  double variance = 0;
  for (auto& cause : ranking.causes) {
    cause.posterior /= sum;
    variance += std::pow(cause.posterior * errors[cause.fault], 2);
  }
  ranking.weights.assign(worlds.size(), 0);
  for (auto& cause : ranking.causes) {
    double const own = cause.posterior * errors[cause.fault];
    double const others = std::max(0.0, variance - own * own);
    cause.posterior_error =
        std::sqrt(std::pow((1 - cause.posterior) * own, 2) + cause.posterior * cause.posterior * others);
    if (cause.fault == none || !cause.possible) {
      continue;
    }
    double best = -std::numeric_limits<double>::infinity();
    for (std::size_t k = 0; k < places[cause.fault].size(); ++k) {
      double const log = logs[cause.fault][k];
      double const share = std::exp(log - cause.log_evidence) / static_cast<double>(places[cause.fault].size());
      std::size_t const place = places[cause.fault][k];
      ranking.weights[place] = cause.posterior * share;
      add_weighted(cause.parts, parts[place], share);
      if (log > best) {
        best = log;
        cause.best_world = place;
      }
    }
  }
  std::stable_sort(ranking.causes.begin(), ranking.causes.end(),
                   [](RankedCause const& a, RankedCause const& b) { return a.posterior > b.posterior; });
  return ranking;
}

std::string_view key_of(RankedCause const& cause) {
  return cause.fault < faults().size() ? faults()[cause.fault].key : none_key;
}

std::string_view title_of(RankedCause const& cause) {
  return cause.fault < faults().size() ? faults()[cause.fault].title : std::string_view("None of these");
}

}  // namespace wellproof
