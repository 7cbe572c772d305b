// Published pumping tests, read from their files and fitted as a whole.
#include <fstream>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "fit/fit_pumping_test.h"
#include "fit/read_pumping_test.h"
#include "folders.h"

namespace wellproof {
namespace {

constexpr double day_s = 86400;

LevelText published(std::string const& name, std::string const& distance) {
  std::ifstream file(reference_folder() + "/pumping_test/" + name);
  std::ostringstream text;
  text << file.rdbuf();
  return {name, text.str(), distance};
}

PumpingTestFit fitted(PumpingTestText const& text) {
  auto const test = read_pumping_test(text);
  for (auto const& finding : test ? Findings{} : test.error()) {
    ADD_FAILURE() << wellproof::text(finding);
  }
  return test ? fit_pumping_test(*test) : PumpingTestFit{};
}

// Oude Korendijk, after Wit 1963 in Kruseman and de Ridder 1994, table 3.2. What least squares by Theis makes of it was
// computed with another program (TTim's notebook): 30 m, 90 m and both together.
struct Korendijk {
  bool near;
  bool far;
  double transmissivity_m2_d;
  double storativity;
  double rmse_m;
};

class oude_korendijk : public testing::TestWithParam<Korendijk> {};

TEST_P(oude_korendijk, comes_out_as_another_program_has_it) {
  auto const& expected = GetParam();
  PumpingTestText text;
  text.rates = {"788 m3/d"};
  if (expected.near) {
    text.records.push_back(published("oude_korendijk_r30m.csv", "30 m"));
  }
  if (expected.far) {
    text.records.push_back(published("oude_korendijk_r90m.csv", "90 m"));
  }
  if (text.records.front().text.empty()) {
    GTEST_SKIP() << "no published pumping tests here";
  }
  auto const fit = fitted(text);
  EXPECT_NEAR(fit.transmissivity_m2_s.value * day_s / expected.transmissivity_m2_d, 1, 1e-3);
  EXPECT_NEAR(fit.storativity.value / expected.storativity, 1, 2e-3);
  EXPECT_NEAR(fit.rmse_m.value, expected.rmse_m, 2e-5);
  EXPECT_LT(fit.transmissivity_m2_s.low, fit.transmissivity_m2_s.value);
  EXPECT_GT(fit.transmissivity_m2_s.high, fit.transmissivity_m2_s.value);
  EXPECT_TRUE(fit.tells_transmissivity);
}

INSTANTIATE_TEST_SUITE_P(places, oude_korendijk,
                         testing::Values(Korendijk{true, false, 480.47, 1.1251e-4, 0.03166},
                                         Korendijk{false, true, 501.05, 2.0379e-4, 0.02272},
                                         Korendijk{true, true, 462.62, 1.7788e-4, 0.05006}));

TEST(step_test_of_clark, gives_transmissivity_and_loss_near_the_published) {
  // Clark 1977 = Kruseman and de Ridder 1994, table 14.1: T 3.1e-3 m²/s, C 1.4e-7 d²/m5.
  PumpingTestText text;
  text.records = {published("clark1977_step_test.csv", "")};
  if (text.records.front().text.empty()) {
    GTEST_SKIP() << "no published pumping tests here";
  }
  text.rates = {"1306, 1693, 2423, 3261, 4094, 5019 m3/d"};
  text.step = "180 min";
  auto const fit = fitted(text);
  EXPECT_NEAR(fit.transmissivity_m2_s.value / 3.1e-3, 1, 0.25);
  EXPECT_NEAR(fit.quadratic_loss_s2_m5.value / 1045, 1, 0.25);
  // By Eden and Hazel's method over all readings, computed with another program: 2.508e-3 m²/s, 980 s²/m5.
  EXPECT_NEAR(fit.transmissivity_m2_s.value / 2.508e-3, 1, 0.05);
  EXPECT_NEAR(fit.quadratic_loss_s2_m5.value / 980, 1, 0.05);
  EXPECT_FALSE(fit.tells_storativity);
}

TEST(recovery_test_of_todd, gives_the_published_transmissivity) {
  // Todd 1980, in Batu 1998, example 4-12: T 1143 m²/d, S 1.9e-4.
  PumpingTestText text;
  text.records = {published("todd_recovery_r60m.csv", "60 m")};
  if (text.records.front().text.empty()) {
    GTEST_SKIP() << "no published pumping tests here";
  }
  text.rates = {"2500 m3/d"};
  text.stop = "240 min";
  auto const fit = fitted(text);
  EXPECT_NEAR(fit.transmissivity_m2_s.value * day_s / 1143, 1, 0.01);
  EXPECT_NEAR(fit.storativity.value / 1.9e-4, 1, 0.02);
}

}  // namespace
}  // namespace wellproof
