#include "explain/likelihood.h"

#include <algorithm>
#include <cmath>

namespace wellproof {
namespace {

// How much a single day is trusted against all days of its cause, and these against no knowledge at all; how far
// reported stops are witnesses of their own. Chosen on synthetic cases of other sites than those of the figures in
// docs/explain.md.
constexpr double kinds_pooled = 0.5;
constexpr double kinds_unknown = 0.04;
constexpr double kinds_weight = 4;
constexpr double hours_pooled = 3;
constexpr double hours_unknown = 1;
constexpr double hours_weight = 4;
constexpr double gaps_pooled = 1;
constexpr double gaps_unknown = 0.5;
constexpr double gaps_weight = 4;

// An unknown cause, too, has a way of its own; which one is not known.
constexpr double none_kinds_weight = 3;
constexpr double none_other_weight = 6;

// A drive whose list is empty although the cause makes stops: it has just begun, or the list was cleared.
constexpr double list_cleared = 0.04;
// A list with stops that the cause does not make: from something else, long ago.
constexpr double stops_from_elsewhere = 0.01;
// After the newest stop the trouble may be over.
constexpr double trouble_over = 0.4;

// A person who has something before him speaks of it; one who has not may do so too.
constexpr double speaks_of_it = 0.8;
constexpr double imagines_it = 0.04;
constexpr double denies_it = 0.15;

constexpr double open_share = 0.4;  // of the site's spread, by which a draw stands for its neighbours
constexpr double least_share = 0.015;
constexpr double tails = 5;  // degrees of freedom of Student's t: now and then a reading is just wrong

/// Shares of one day smoothed by those of its cause and by none.
template <std::size_t N>
std::array<double, N> smoothed(std::array<double, N> const& day, std::array<double, N> const& cause, double pooled,
                               double unknown) {
  double all_day = 0;
  double all_cause = 0;
  for (std::size_t i = 0; i < N; ++i) {
    all_day += day[i];
    all_cause += cause[i];
  }
  // Many stops on one day are not so many days.
  constexpr double most = 6;
  double const day_scale = all_day > most ? most / all_day : 1;
  double const cause_scale = all_cause > 0 ? pooled / all_cause : 0;
  std::array<double, N> shares{};
  double sum = 0;
  for (std::size_t i = 0; i < N; ++i) {
    shares[i] = day[i] * day_scale + cause[i] * cause_scale + unknown / static_cast<double>(N);
    sum += shares[i];
  }
  for (auto& share : shares) {
    share /= sum;
  }
  return shares;
}

template <std::size_t N>
double counted(std::array<double, N> const& counts, std::array<double, N> const& shares, double weight) {
  return counts_log_likelihood(counts.data(), shares.data(), N, weight);
}

template <std::size_t N>
std::array<double, N> even_shares() {
  std::array<double, N> shares{};
  shares.fill(1.0 / N);
  return shares;
}

double student_log(double value, double middle, double sigma) {
  double const off = (value - middle) / sigma;
  return -0.5 * (tails + 1) * std::log1p(off * off / tails) - std::log(sigma);
}

double present_share(Symptom symptom, World const& world) {
  return std::clamp(world.feels[static_cast<std::size_t>(symptom)], 0.01, 0.99);
}

/// Of a figure that a person estimates: within a factor of about one and a half.
double estimate_log(double told, std::optional<double> in_world) {
  constexpr double spread = 0.5;
  constexpr double unknown = -1.5;
  if (!in_world || *in_world <= 0 || told <= 0) {
    return unknown;
  }
  double const off = std::log(told / *in_world) / spread;
  return std::max(-0.5 * off * off, 2 * unknown);
}

}  // namespace

double counts_log_likelihood(double const* counts, double const* shares, std::size_t bins, double weight) {
  double log = 0;
  int all = 0;
  for (std::size_t i = 0; i < bins; ++i) {
    int const count = static_cast<int>(std::lround(counts[i]));
    for (int j = 0; j < count; ++j) {
      log += std::log(weight * shares[i] + j) - std::log(weight + all);
      ++all;
    }
  }
  return log;
}

double symptom_log_likelihood(ToldSymptom const& told, World const& world) {
  double const share = present_share(told.symptom, world);
  double const yes = share * speaks_of_it + (1 - share) * imagines_it;
  double const no = share * denies_it + (1 - share) * (1 - imagines_it);
  double log = std::log(told.present ? yes : no);
  if (told.present && told.value) {
    log += estimate_log(*told.value, told.symptom == Symptom::cycles ? world.cycle_s : world.swing_pa);
  }
  return log;
}

double silence_log_likelihood(Symptom symptom, World const& world) {
  double const share = present_share(symptom, world);
  return std::log(share * (1 - speaks_of_it) + (1 - share) * (1 - imagines_it));
}

Holding::Holding(std::vector<World> const& worlds) : causes_(faults().size() + 1) {
  std::array<double, show_count> sum{};
  std::array<double, show_count> squares{};
  std::array<double, show_count> count{};
  std::array<double, show_count> all_sum{};
  std::array<double, show_count> all_squares{};
  std::array<double, show_count> all_count{};
  for (auto const& world : worlds) {
    auto& cause = causes_[world.fault];
    cause.calls += world.calls ? 1U : 0U;
    if (world.calls || world.fault == faults().size()) {
      for (std::size_t i = 0; i < stop_kinds; ++i) {
        cause.pattern.kinds[i] += world.pattern.kinds[i] / std::max(1.0, world.pattern.stops);
      }
      for (std::size_t i = 0; i < hour_bins; ++i) {
        cause.pattern.hours[i] += world.pattern.hours[i] / std::max(1.0, world.pattern.stops);
      }
      for (std::size_t i = 0; i < gap_bins; ++i) {
        cause.pattern.gaps[i] += world.pattern.gaps[i] / std::max(1.0, world.pattern.stops);
      }
    }
    for (std::size_t i = 0; i < show_count; ++i) {
      if (world.shows[i]) {
        double const value = *world.shows[i];
        all_sum[i] += value;
        all_squares[i] += value * value;
        ++all_count[i];
        if (world.fault == faults().size()) {
          sum[i] += value;
          squares[i] += value * value;
          ++count[i];
        }
      }
    }
  }
  auto const spread = [](double total, double of_squares, double number) {
    double const mean = number > 0 ? total / number : 0;
    return number > 1 ? std::sqrt(std::max(0.0, of_squares / number - mean * mean)) : 0;
  };
  for (std::size_t i = 0; i < show_count; ++i) {
    sound_middle_[i] = count[i] > 0 ? sum[i] / count[i] : 0;
    sound_spread_[i] = spread(sum[i], squares[i], count[i]);
    all_middle_[i] = all_count[i] > 0 ? all_sum[i] / all_count[i] : 0;
    all_spread_[i] = spread(all_sum[i], all_squares[i], all_count[i]);
  }
}

double Holding::of_show(ToldShow const& told, World const& world) const {
  auto const i = static_cast<std::size_t>(told.show);
  if (!world.shows[i]) {
    return 0;
  }
  double const sigma = std::hypot(told.sigma, open_share * sound_spread_[i], least_share * std::abs(sound_middle_[i]));
  return student_log(told.value, *world.shows[i], sigma);
}

double Holding::of_show_in_none(ToldShow const& told) const {
  auto const i = static_cast<std::size_t>(told.show);
  double const sigma = std::hypot(told.sigma, 1.5 * all_spread_[i], least_share * std::abs(all_middle_[i]));
  return student_log(told.value, all_middle_[i], sigma);
}

Likelihood Holding::of(Evidence const& evidence, World const& world) const {
  Likelihood log;
  auto const& cause = causes_[world.fault].pattern;
  if (evidence.has_history) {
    if (evidence.pattern.stops > 0) {
      auto const kinds = smoothed(world.pattern.kinds, cause.kinds, kinds_pooled, kinds_unknown);
      auto const hours = smoothed(world.pattern.hours, cause.hours, hours_pooled, hours_unknown);
      auto const gaps = smoothed(world.pattern.gaps, cause.gaps, gaps_pooled, gaps_unknown);
      log.kinds = counted(evidence.pattern.kinds, kinds, kinds_weight);
      log.hours = counted(evidence.pattern.hours, hours, hours_weight);
      log.gaps = counted(evidence.pattern.gaps, gaps, gaps_weight);
      if (world.pattern.stops <= 0) {
        log.kinds += std::log(stops_from_elsewhere);
      }
      if (evidence.since_newest_s) {
        double later = 0;
        for (std::size_t i = 0; i < gap_bins; ++i) {
          later += gap_bin_end_s(i) > *evidence.since_newest_s || i == 0 ? gaps[i] : 0;
        }
        log.gaps += std::log(trouble_over + (1 - trouble_over) * later);
      }
    } else if (world.pattern.stops > 0) {
      log.kinds = std::log(list_cleared + (1 - list_cleared) * std::exp(-3 * world.day_share));
    }
  }
  for (auto const& told : evidence.symptoms) {
    log.symptoms += symptom_log_likelihood(told, world);
  }
  if (!evidence.symptoms.empty()) {
    for (auto const symptom : all_symptoms) {
      bool const spoken_of = std::any_of(evidence.symptoms.begin(), evidence.symptoms.end(),
                                         [&](ToldSymptom const& told) { return told.symptom == symptom; });
      log.symptoms += spoken_of ? 0 : silence_log_likelihood(symptom, world);
    }
  }
  for (auto const& told : evidence.shows) {
    log.shows += of_show(told, world);
  }
  return log;
}

Likelihood Holding::of_none(Evidence const& evidence) const {
  Likelihood log;
  if (evidence.has_history && evidence.pattern.stops > 0) {
    log.kinds = counted(evidence.pattern.kinds, even_shares<stop_kinds>(), none_kinds_weight);
    log.hours = counted(evidence.pattern.hours, even_shares<hour_bins>(), none_other_weight);
    log.gaps = counted(evidence.pattern.gaps, even_shares<gap_bins>(), none_other_weight);
  } else if (evidence.has_history) {
    log.kinds = std::log(0.3);
  }
  World unknown;
  unknown.feels.fill(0.15);
  for (auto const& told : evidence.symptoms) {
    log.symptoms += symptom_log_likelihood(told, unknown);
  }
  if (!evidence.symptoms.empty()) {
    log.symptoms += static_cast<double>(symptom_count - std::min(symptom_count, evidence.symptoms.size())) *
                    silence_log_likelihood(Symptom::air, unknown);
  }
  for (auto const& told : evidence.shows) {
    log.shows += of_show_in_none(told);
  }
  return log;
}

}  // namespace wellproof
