#include <gtest/gtest.h>

#include <array>
#include <boost/random/sobol.hpp>
#include <cmath>
#include <cstdint>
#include <set>
#include <vector>

#include "site/draw.h"

namespace wellproof {
namespace {

using Points = std::vector<std::vector<double>>;

Points points(std::uint64_t seed, std::uint32_t count, std::size_t dimensions) {
  Points all;
  for (std::uint32_t k = 1; k <= count; ++k) {
    all.push_back(sequence_point(seed, k, dimensions));
  }
  return all;
}

TEST(sequence, begins_in_the_middle_of_everything) {
  for (double const x : sequence_point(3, 0, 90)) {
    EXPECT_EQ(x, 0.5);
  }
}

TEST(sequence, is_one_number_to_each_slot_in_every_coordinate) {
  // Sobol 1967: of 2^m points one falls into each 2^-m part of each coordinate; scrambling keeps that (Owen 1995).
  for (std::uint32_t const count : {16U, 64U, 256U}) {
    auto const all = points(11, count, 100);
    for (std::size_t d = 0; d < 100; ++d) {
      std::set<int> slots;
      for (auto const& point : all) {
        slots.insert(static_cast<int>(point[d] * count));
      }
      EXPECT_EQ(slots.size(), count) << "coordinate " << d;
    }
  }
}

TEST(sequence, is_a_net_in_its_first_two_coordinates) {
  // The first two coordinates are a (0, 2)-sequence in base 2: of 2^m points one lies in each box of area 2^-m.
  constexpr int m = 8;
  auto const all = points(5, 1U << m, 2);
  for (int a = 0; a <= m; ++a) {
    std::set<std::pair<int, int>> boxes;
    for (auto const& point : all) {
      boxes.emplace(static_cast<int>(std::ldexp(point[0], a)), static_cast<int>(std::ldexp(point[1], m - a)));
    }
    EXPECT_EQ(boxes.size(), 1U << m) << "2^" << a << " columns";
  }
}

/// Whether two points agree in their first bits whenever, and only when, two others do: what scrambling keeps.
void expect_the_same_nesting(std::vector<double> const& plain, std::vector<double> const& scrambled, int most_bits) {
  ASSERT_EQ(plain.size(), scrambled.size());
  auto const first = [](double x, int bits) { return static_cast<int>(std::ldexp(x, bits)); };
  for (std::size_t i = 0; i < plain.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      for (int bits = 1; bits <= most_bits; ++bits) {
        EXPECT_EQ(first(plain[i], bits) == first(plain[j], bits),
                  first(scrambled[i], bits) == first(scrambled[j], bits))
            << i << ' ' << j << " to " << bits << " bits";
      }
    }
  }
}

TEST(sequence, nests_as_the_published_one) {
  // The first points of the plain sequence in the third coordinate, by binary index, with the direction numbers of Joe
  // and Kuo (new-joe-kuo-6.21201, d = 3: s 2, a 1, m 1 3, hence directions 1/2, 3/4, 3/8).
  std::vector<double> scrambled;
  for (auto const& point : points(77, 8, 3)) {
    scrambled.push_back(point[2]);
  }
  expect_the_same_nesting({0, 0.5, 0.75, 0.25, 0.375, 0.875, 0.625, 0.125}, scrambled, 3);
}

TEST(sequence, nests_as_another_engine_with_these_direction_numbers) {
  // Boost.Random's engine walks the same points in Gray-code order and leaves out the first, which is all zero.
  constexpr std::size_t dimensions = 120;
  constexpr std::uint32_t count = 64;
  boost::random::sobol engine(dimensions);
  Points plain(count, std::vector<double>(dimensions, 0));
  for (std::uint32_t k = 1; k < count; ++k) {
    for (double& x : plain[k ^ (k >> 1U)]) {
      x = std::ldexp(static_cast<double>(engine()), -64);
    }
  }
  auto const scrambled = points(5, count, dimensions);
  for (std::size_t d = 0; d < dimensions; d += 7) {
    std::vector<double> ours;
    std::vector<double> theirs;
    for (std::uint32_t k = 0; k < count; ++k) {
      ours.push_back(scrambled[k][d]);
      theirs.push_back(plain[k][d]);
    }
    expect_the_same_nesting(theirs, ours, 6);
  }
}

TEST(sequence, differs_from_seed_to_seed_and_repeats_for_the_same) {
  auto const one = points(1, 32, 40);
  auto const two = points(2, 32, 40);
  EXPECT_EQ(one, points(1, 32, 40));
  std::size_t equal = 0;
  for (std::size_t i = 0; i < one.size(); ++i) {
    for (std::size_t d = 0; d < 40; ++d) {
      equal += one[i][d] == two[i][d] ? 1U : 0U;
    }
  }
  EXPECT_EQ(equal, 0U);
}

TEST(sequence, keeps_a_coordinate_whatever_is_drawn_beside_it) {
  auto const few = sequence_point(9, 12, 3);
  auto const many = sequence_point(9, 12, 60);
  for (std::size_t d = 0; d < 3; ++d) {
    EXPECT_EQ(few[d], many[d]);
  }
}

TEST(sequence, stays_strictly_inside_the_cube) {
  for (auto const& point : points(4, 4096, 20)) {
    for (double const x : point) {
      EXPECT_GT(x, 0);
      EXPECT_LT(x, 1);
    }
  }
}

/// Root mean square error, over seeds, of the mean of a smooth function whose mean is 1.
double error_of_mean(std::uint32_t count) {
  constexpr std::size_t dimensions = 5;
  double sum = 0;
  for (std::uint64_t seed = 0; seed < 16; ++seed) {
    double mean = 0;
    for (auto const& point : points(seed, count, dimensions)) {
      double product = 1;
      for (double const x : point) {
        product *= 1 + 0.5 * (x - 0.5);
      }
      mean += product / count;
    }
    sum += (mean - 1) * (mean - 1);
  }
  return std::sqrt(sum / 16);
}

TEST(sequence, integrates_better_than_chance_and_ever_faster) {
  double const few = error_of_mean(64);
  double const many = error_of_mean(1024);
  // Chance: variance of the product is (1 + 1/48)^5 - 1 = 0.109, so its error with 64 points is 0.041, and 16 times the
  // points make it a quarter. Scrambled nets do better than 1/n for such a function (Owen 1997).
  EXPECT_LT(few, 0.041 / 4);
  EXPECT_LT(many, few / 16);
}

}  // namespace
}  // namespace wellproof
