#include "proof/rare.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "contract/require.h"
#include "quantity/inverse_normal.h"

namespace wellproof {
namespace {

constexpr double last_share = 0.4999;  // as far as the inverse reaches
constexpr double march_spreads = 0.5;
constexpr int halvings = 7;
constexpr std::size_t most_leads = 8;
constexpr double least_t = 3;      // a slope less sure than this is chance among some dozens of unknowns
constexpr double told_part = 0.2;  // of the direction: what is less is not named

using Margin = std::function<double(std::span<double const>)>;

double deviate(double coordinate) {
  return inverse_normal(std::clamp(coordinate - 0.5, -last_share, last_share));
}

std::vector<double> point_at(std::vector<double> const& direction, double spreads) {
  std::vector<double> point;
  point.reserve(direction.size());
  for (double const part : direction) {
    point.push_back(normal_share(part * spreads));
  }
  return point;
}

bool to_unit_length(std::vector<double>& direction) {
  double const length = std::sqrt(std::inner_product(direction.begin(), direction.end(), direction.begin(), 0.0));
  if (length <= 0) {
    return false;
  }
  for (double& part : direction) {
    part /= length;
  }
  return true;
}

/// Slope of the margin over one unknown's deviate, and how sure it is.
struct Slope {
  double slope = 0;
  double t = 0;
};

Slope slope_of(std::vector<double> const& x, std::vector<double> const& y) {
  auto const n = static_cast<double>(x.size());
  double const x_mean = std::accumulate(x.begin(), x.end(), 0.0) / n;
  double const y_mean = std::accumulate(y.begin(), y.end(), 0.0) / n;
  double xx = 0;
  double xy = 0;
  double yy = 0;
  for (std::size_t k = 0; k < x.size(); ++k) {
    xx += (x[k] - x_mean) * (x[k] - x_mean);
    xy += (x[k] - x_mean) * (y[k] - y_mean);
    yy += (y[k] - y_mean) * (y[k] - y_mean);
  }
  if (xx <= 0 || yy <= 0) {
    return {};
  }
  double const r = xy / std::sqrt(xx * yy);
  return {xy / xx, r * std::sqrt((n - 2) / std::max(1 - r * r, 1e-12))};
}

/// Where the margin first passes nought along a direction; infinite if it does not, or not sooner than asked.
double first_failure(Margin const& margin, std::vector<double> const& direction, double sooner_than) {
  for (int march = 1; march * march_spreads <= farthest_spreads + 1e-9; ++march) {
    double far = march * march_spreads;
    if (far - march_spreads >= sooner_than) {
      break;
    }
    if (margin(point_at(direction, far)) < 0) {
      double near = far - march_spreads;
      for (int i = 0; i < halvings; ++i) {
        double const middle = 0.5 * (near + far);
        (margin(point_at(direction, middle)) < 0 ? far : near) = middle;
      }
      return far;
    }
  }
  return std::numeric_limits<double>::infinity();
}

/// Downhill by the slopes that are sure; and the way of the worst run, as far as these unknowns go.
std::vector<std::vector<double>> directions(std::vector<std::vector<double>> const& deviates,
                                            std::vector<double> const& margins) {
  std::size_t const unknowns = deviates.size();
  std::vector<Slope> slopes;
  slopes.reserve(unknowns);
  for (auto const& each : deviates) {
    slopes.push_back(slope_of(each, margins));
  }
  std::vector<std::size_t> order(unknowns);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return std::abs(slopes[a].t) > std::abs(slopes[b].t); });
  auto const worst = static_cast<std::size_t>(std::min_element(margins.begin(), margins.end()) - margins.begin());
  std::vector<double> downhill(unknowns, 0.0);
  std::vector<double> to_worst(unknowns, 0.0);
  for (std::size_t k = 0; k < std::min(most_leads, unknowns); ++k) {
    std::size_t const i = order[k];
    if (k == 0 || std::abs(slopes[i].t) >= least_t) {
      downhill[i] = -slopes[i].slope;
      to_worst[i] = deviates[i][worst];
    }
  }
  std::vector<std::vector<double>> found;
  for (auto* const each : {&downhill, &to_worst}) {
    if (to_unit_length(*each)) {
      found.push_back(*each);
    }
  }
  return found;
}

}  // namespace

double normal_share(double deviate) {
  return 0.5 * std::erfc(-deviate / std::sqrt(2.0));
}

std::optional<RareFailure> rare_failure(Margin const& margin, std::vector<std::vector<double>> const& points,
                                        std::vector<double> const& margins) {
  require(points.size() == margins.size() && points.size() > 2, "a direction is guessed from some runs");
  std::size_t const unknowns = points.front().size();
  if (unknowns == 0 || margin(std::vector<double>(unknowns, 0.5)) < 0) {
    return std::nullopt;
  }
  std::vector<std::vector<double>> deviates(unknowns);
  for (auto const& point : points) {
    for (std::size_t i = 0; i < unknowns; ++i) {
      deviates[i].push_back(deviate(point[i]));
    }
  }
  double nearest = std::numeric_limits<double>::infinity();
  std::vector<double> way;
  for (auto const& direction : directions(deviates, margins)) {
    double const spreads = first_failure(margin, direction, nearest);
    if (spreads < nearest) {
      nearest = spreads;
      way = direction;
    }
  }
  if (way.empty()) {
    return std::nullopt;
  }
  RareFailure found{nearest, normal_share(-nearest), point_at(way, nearest), {}};
  for (std::size_t i = 0; i < unknowns; ++i) {
    if (std::abs(way[i]) >= told_part) {
      found.leads.push_back(i);
    }
  }
  std::stable_sort(found.leads.begin(), found.leads.end(),
                   [&](std::size_t a, std::size_t b) { return std::abs(way[a]) > std::abs(way[b]); });
  return found;
}

}  // namespace wellproof
