#include "plant/drive.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(Drive, volts_follow_hertz_up_to_the_base_and_stay_above) {
  EXPECT_DOUBLE_EQ(drive_voltage_v(30, 60, 230, 240), 115);
  EXPECT_DOUBLE_EQ(drive_voltage_v(60, 60, 230, 240), 230);
  EXPECT_DOUBLE_EQ(drive_voltage_v(80, 60, 230, 240), 230);
  EXPECT_EQ(drive_voltage_v(0, 60, 230, 240), 0);
}

TEST(Drive, volts_are_never_more_than_there_are) {
  EXPECT_DOUBLE_EQ(drive_voltage_v(50, 60, 230, 200), 230.0 * 50 / 60);
  EXPECT_DOUBLE_EQ(drive_voltage_v(55, 60, 230, 200), 200);
  EXPECT_DOUBLE_EQ(drive_voltage_v(75, 60, 230, 200), 200);
}

TEST(Drive, puts_out_a_little_less_than_it_is_fed) {
  EXPECT_GT(drive_available_v(240), 0.95 * 240);
  EXPECT_LT(drive_available_v(240), 240);
}

TEST(Drive, loses_at_rated_output_what_its_efficiency_says_and_something_when_idle) {
  EXPECT_NEAR(2000 / (2000 + drive_loss_w(2000, 9, 9, 2000, 0.95)), 0.95, 1e-12);
  EXPECT_GT(drive_loss_w(0, 0, 9, 2000, 0.95), 0);
  EXPECT_GT(drive_loss_w(0, 5, 9, 2000, 0.95), drive_loss_w(0, 0, 9, 2000, 0.95));
  EXPECT_GT(drive_loss_w(500, 5, 9, 2000, 0.95), drive_loss_w(0, 5, 9, 2000, 0.95));
}

}  // namespace
}  // namespace wellproof
