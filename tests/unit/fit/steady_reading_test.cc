#include "fit/steady_reading.h"

#include <cmath>

#include <gtest/gtest.h>

#include "folders.h"
#include "plant/operating.h"
#include "site/draw.h"
#include "site/read.h"

namespace wellproof {
namespace {

DrawnSite middle_site() {
  auto const read = read_site(example_text("shallow_strong.toml"), "shallow_strong.toml");
  EXPECT_TRUE(read);
  return draw(read->site, 1, 0);
}

SiteReading reading(Condition condition, std::vector<Instrument> const& with, double after_s = 600) {
  SiteReading made;
  made.condition = condition;
  made.after_s = after_s;
  for (auto const instrument : with) {
    made.values.push_back({instrument, 0, 1, false, {}});
  }
  return made;
}

TEST(shown, drive_shows_what_its_sensor_and_trim_make_of_the_pressure) {
  auto site = middle_site();
  site.sensor.gain_error = 0.02;
  site.sensor.zero_error_pa = 3000;
  auto const plant = build(site);
  auto const said =
      shown(plant, reading(Condition::asleep, {Instrument::gauge, Instrument::drive_pressure}), {400e3, 0}, -1000);
  EXPECT_DOUBLE_EQ(said[0], 400e3);
  EXPECT_DOUBLE_EQ(said[1], 400e3 * 1.02 + 3000 - 1000);
}

TEST(shown, shut_line_turns_at_the_speed_of_no_flow) {
  auto const plant = build(middle_site());
  auto const said = shown(plant, reading(Condition::shut, {Instrument::speed, Instrument::current}), {400e3, 7}, 0);
  double const speed_hz = zero_flow_speed_hz(plant, 400e3, plant.well.static_level_depth_m);
  EXPECT_NEAR(said[0], speed_hz, 1e-6 * speed_hz);
  EXPECT_NEAR(said[1], shut_point(plant, speed_hz).motor.current_a, 1e-4);
}

TEST(shown, level_falls_with_pumping_and_with_time) {
  auto const plant = build(middle_site());
  auto const level = [&](Condition condition, double flow_m3_s, double after_s) {
    return shown(plant, reading(condition, {Instrument::level}, after_s), {400e3, flow_m3_s}, 0)[0];
  };
  double const rest_m = level(Condition::rest, 0, 0);
  EXPECT_DOUBLE_EQ(rest_m, plant.well.static_level_depth_m);
  EXPECT_GT(level(Condition::flow, 3e-4, 60), rest_m);
  EXPECT_GT(level(Condition::flow, 3e-4, 3600), level(Condition::flow, 3e-4, 60));
  EXPECT_GT(level(Condition::flow, 6e-4, 600), level(Condition::flow, 3e-4, 600));
}

// Boyle's law by hand for a short wait: what leaked is taken from the tank's store along its slope.
TEST(fallen_pressure_pa, falls_by_what_leaks_along_the_slope_of_the_store) {
  auto site = middle_site();
  site.demand.leak_m3_s = 2e-6;
  auto const plant = build(site);
  double const from_pa = 400e3;
  double const rise_pa = plant.weight_n_m3 * plant.site.demand.outlet_rise_m;
  double const leak_m3_s = 2e-6 * std::sqrt((from_pa - rise_pa) / plant.site.demand.outlet_pressure_pa);
  double const slope_m3_pa = (stored_m3(plant, from_pa + 10) - stored_m3(plant, from_pa - 10)) / 20;
  double const fallen_pa = from_pa - fallen_pressure_pa(plant, from_pa, 60);
  EXPECT_NEAR(fallen_pa, leak_m3_s * 60 / slope_m3_pa, 0.02 * fallen_pa);
  // Without a leak nothing falls.
  site.demand.leak_m3_s = 0;
  EXPECT_NEAR(fallen_pressure_pa(build(site), from_pa, 3600), from_pa, 1e-3);
}

}  // namespace
}  // namespace wellproof
