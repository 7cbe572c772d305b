#include "contract/nearest.h"

#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

std::vector<std::string_view> const keys = {"well.static_level", "well.depth", "pump.depth", "gpm", "ft", "MW"};

TEST(nearest_word, finds_the_word_behind_a_slip) {
  EXPECT_EQ(nearest_word("well.static_levle", keys), "well.static_level");
  EXPECT_EQ(nearest_word("well.staticlevel", keys), "well.static_level");
  EXPECT_EQ(nearest_word("wel.depth", keys), "well.depth");
  EXPECT_EQ(nearest_word("gmp", keys), "gpm");
  EXPECT_EQ(nearest_word("gpn", keys), "gpm");
}

TEST(nearest_word, takes_a_letter_in_the_wrong_case_for_less_than_a_wrong_letter) {
  std::vector<std::string_view> const units = {"kW", "MW"};
  EXPECT_EQ(nearest_word("mW", units), "MW");
  EXPECT_EQ(nearest_word("KW", units), "kW");
}

TEST(nearest_word, counts_a_swap_of_neighbours_as_one_slip) {
  // Three letters may have one slip; as two substitutions "gmp" would be too far.
  std::vector<std::string_view> const units = {"gpm"};
  EXPECT_EQ(nearest_word("gmp", units), "gpm");
  EXPECT_EQ(nearest_word("mpg", units), "");
}

TEST(nearest_word, is_empty_when_nothing_is_near) {
  EXPECT_EQ(nearest_word("weather", keys), "");
  EXPECT_EQ(nearest_word("x", keys), "");
  EXPECT_EQ(nearest_word("", keys), "");
  EXPECT_EQ(nearest_word("gpm", {}), "");
  EXPECT_EQ(nearest_word(std::string(100000, 'w'), keys), "");
}

TEST(nearest_word, prefers_the_first_of_two_equally_near_words) {
  std::vector<std::string_view> const words = {"sleep.hold", "sleep.bold"};
  EXPECT_EQ(nearest_word("sleep.mold", words), "sleep.hold");
}

}  // namespace
}  // namespace wellproof
