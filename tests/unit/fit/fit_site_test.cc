#include "fit/fit_site.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "folders.h"
#include "site/draw.h"
#include "site/read.h"
#include "unit/fit/planted_readings.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757;

class FitSite : public ::testing::Test {
 protected:
  FitSite()
      : site_(read_site(example_text("shallow_strong.toml"), "shallow_strong.toml")->site), truth_(draw(site_, 1, 5)) {}

  SiteReadings readings(std::uint64_t seed = 3) const { return visit(site_, build(truth_), seed); }
  static FittedUnknown const* unknown(SiteFit const& fit, std::string const& key) {
    auto const found = std::find_if(fit.unknowns.begin(), fit.unknowns.end(),
                                    [&](FittedUnknown const& each) { return each.key == key; });
    return found == fit.unknowns.end() ? nullptr : &*found;
  }

  Site site_;
  DrawnSite truth_;
};

TEST_F(FitSite, explains_a_gauge_five_psi_above_the_drive_as_sensor_zero_and_not_as_wear) {
  truth_.sensor.zero_error_pa = -5 * psi_pa;
  truth_.sensor.gain_error = 0;
  auto const fit = fit_site(site_, readings(), 0);
  ASSERT_TRUE(fit.sensor);
  EXPECT_TRUE(fit.sensor->matters);
  EXPECT_NEAR(fit.sensor->trim_pa, 5 * psi_pa, 1.5 * psi_pa);
  EXPECT_TRUE(fit.misfits.empty());
  auto const* const zero = unknown(fit, "sensor.zero_error");
  ASSERT_NE(zero, nullptr);
  EXPECT_LT(zero->shift_sigmas, -5);
  auto const* const wear = unknown(fit, "pump.wear");
  ASSERT_NE(wear, nullptr);
  EXPECT_LT(std::abs(wear->shift_sigmas), 1.5);
}

TEST_F(FitSite, one_pair_of_gauge_and_drive_is_enough_for_the_trim) {
  SiteReadings one;
  one.readings.push_back({Condition::asleep,
                          0,
                          "",
                          {},
                          {{Instrument::gauge, 50 * psi_pa, 0.5 * psi_pa, true, {}},
                           {Instrument::drive_pressure, 45 * psi_pa, 0.25 * psi_pa, true, {}}}});
  auto const fit = fit_site(site_, one, 0);
  ASSERT_TRUE(fit.sensor);
  EXPECT_NEAR(fit.sensor->trim_pa, 5 * psi_pa, 0.4 * psi_pa);
  EXPECT_FALSE(fit.sensor->span_known);
  EXPECT_EQ(unknown(fit, "pump.wear"), nullptr);  // nothing was read of it
  // The trim found, set in the drive, and read once more, leaves nothing to set.
  auto again = one;
  again.readings[0].values[1].value = 50 * psi_pa;
  auto const after = fit_site(site_, again, 5 * psi_pa);
  EXPECT_FALSE(after.sensor->matters);
  EXPECT_NEAR(after.sensor->trim_pa, 5 * psi_pa, 0.4 * psi_pa);
}

TEST_F(FitSite, two_pairs_far_apart_tell_the_span_too) {
  SiteReadings two;
  for (double const pressure_pa : {20 * psi_pa, 70 * psi_pa}) {
    two.readings.push_back({Condition::asleep,
                            0,
                            "",
                            {},
                            {{Instrument::gauge, pressure_pa, 0.1 * psi_pa, true, {}},
                             {Instrument::drive_pressure, 0.95 * pressure_pa + 2 * psi_pa, 0.1 * psi_pa, true, {}}}});
  }
  auto const fit = fit_site(site_, two, 0);
  ASSERT_TRUE(fit.sensor);
  EXPECT_TRUE(fit.sensor->span_known);
  EXPECT_NEAR(fit.sensor->gain, -0.05, 0.006);
  EXPECT_NEAR(fit.sensor->zero_pa, 2 * psi_pa, 0.4 * psi_pa);
}

TEST_F(FitSite, names_the_reading_that_was_misread) {
  auto read = readings();
  auto& least = read.readings[3].values;
  ASSERT_EQ(least[1].instrument, Instrument::speed);
  least[1].value += 4;
  auto const fit = fit_site(site_, read, 0);
  ASSERT_FALSE(fit.misfits.empty());
  EXPECT_EQ(fit.misfits[0].reading, 3U);
  EXPECT_EQ(fit.misfits[0].value, 1U);
  EXPECT_EQ(fit.misfits[0].key, "");
  EXPECT_NE(fit.misfits[0].says.find("read it again"), std::string::npos);
  // And takes nothing from it: the others fit as they did.
  auto const sound = fit_site(site_, readings(), 0);
  for (auto const& each : fit.unknowns) {
    if (auto const* const other = unknown(sound, each.key)) {
      EXPECT_NEAR(each.shift_sigmas, other->shift_sigmas, 1) << each.key;
    }
  }
}

TEST_F(FitSite, explains_by_a_cause_beyond_the_ranges_what_no_range_holds) {
  truth_.pump.wear = 0.45;
  auto const fit = fit_site(site_, readings(), 0);
  ASSERT_FALSE(fit.misfits.empty());
  EXPECT_EQ(fit.misfits[0].key, "pump.wear");
  EXPECT_NEAR(fit.misfits[0].explained_by, 0.45, 0.15);
}

TEST_F(FitSite, leaves_alone_what_no_reading_speaks_of) {
  auto const fit = fit_site(site_, readings(), 0);
  EXPECT_EQ(unknown(fit, "limits.water_loss"), nullptr);
  EXPECT_EQ(unknown(fit, "pump.dry_power"), nullptr);
  EXPECT_GT(fit.untouched, 5U);
}

TEST_F(FitSite, what_the_site_file_says_anew_reads_back_without_findings) {
  auto const fit = fit_site(site_, readings(), 0);
  auto const keys = narrowed_keys(fit, UnitSystem::us);
  ASSERT_GE(keys.size(), 3U);
  auto const written = with_site_keys(example_text("shallow_strong.toml"), "a.toml", keys, "from readings");
  ASSERT_TRUE(written) << text(written.error().front());
  auto const read = read_site(*written, "a.toml");
  ASSERT_TRUE(read) << text(read.error().front()) << *written;
  EXPECT_LT(unknowns(read->site), unknowns(site_) + 1);
}

}  // namespace
}  // namespace wellproof
