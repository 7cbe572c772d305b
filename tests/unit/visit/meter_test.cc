#include "visit/meter.h"

#include <gtest/gtest.h>

#include "fit/readings.h"

namespace wellproof {
namespace {

Site site_with_sensor() {
  Site site;
  site.sensor.full_scale_pa = Fixed{100 * 6894.757};
  return site;
}

TEST(meter_error, is_that_of_the_readings_that_are_fitted) {
  auto const site = site_with_sensor();
  EXPECT_EQ(meter_error(Meter::clamp, 4, site), usual_error(Instrument::current, 4, site));
  EXPECT_EQ(meter_error(Meter::gauge, 4e5, site), usual_error(Instrument::gauge, 4e5, site));
  EXPECT_EQ(meter_error(Meter::voltmeter, 240, site), usual_error(Instrument::volts, 240, site));
}

TEST(meter_error, does_not_fall_with_what_is_read_nor_vanish) {
  auto const site = site_with_sensor();
  for (auto const meter : {Meter::drive_pressure, Meter::drive_speed, Meter::clamp, Meter::gauge, Meter::gauge_fall,
                           Meter::voltmeter, Meter::sounder, Meter::watch}) {
    EXPECT_GT(meter_error(meter, 1, site), 0);
    EXPECT_GE(meter_error(meter, 100, site), meter_error(meter, 1, site));
    EXPECT_EQ(meter_error(meter, -3, site), meter_error(meter, 3, site));
    EXPECT_FALSE(says(meter).empty());
  }
}

TEST(meter_error, of_two_looks_at_one_gauge_is_less_than_of_one_look) {
  // What the gauge itself errs by is in both looks.
  auto const site = site_with_sensor();
  EXPECT_LT(meter_error(Meter::gauge_fall, 3e5, site), meter_error(Meter::gauge, 3e5, site));
}

}  // namespace
}  // namespace wellproof
