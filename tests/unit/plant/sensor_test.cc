// The sensor: gain, zero, noise, resolution, ends, faults.
#include "plant/sensor.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wellproof {
namespace {

SensorOf<double> perfect() {
  SensorOf<double> sensor;
  sensor.full_scale_pa = 1e6;
  return sensor;
}

TEST(Sensor, without_errors_tells_the_pressure) {
  EXPECT_DOUBLE_EQ(sensor_reading_pa(perfect(), 345678, SensorFault::none, 0, 7), 345678);
}

TEST(Sensor, adds_its_gain_and_zero_errors) {
  auto sensor = perfect();
  sensor.gain_error = 0.01;
  sensor.zero_error_pa = -2000;
  EXPECT_NEAR(sensor_reading_pa(sensor, 3e5, SensorFault::none, 0, 0), 3.01e5, 1e-6);
}

TEST(Sensor, rounds_to_its_resolution) {
  auto sensor = perfect();
  sensor.resolution_pa = 500;
  EXPECT_NEAR(sensor_reading_pa(sensor, 300240, SensorFault::none, 0, 0), 300000, 1e-6);
  EXPECT_NEAR(sensor_reading_pa(sensor, 300260, SensorFault::none, 0, 0), 300500, 1e-6);
}

TEST(Sensor, says_nothing_beyond_its_span) {
  EXPECT_EQ(sensor_reading_pa(perfect(), 2e6, SensorFault::none, 0, 0), 1e6);
  EXPECT_EQ(sensor_reading_pa(perfect(), -3e4, SensorFault::none, 0, 0), 0);
}

TEST(Sensor, has_noise_of_the_stated_size_about_the_pressure) {
  auto sensor = perfect();
  sensor.noise_pa = 1000;
  double sum = 0;
  double squares = 0;
  double neighbours = 0;
  double before = 0;
  int const samples = 40000;
  for (int i = 0; i < samples; ++i) {
    double const error_pa = sensor_reading_pa(sensor, 5e5, SensorFault::none, 0, static_cast<std::uint64_t>(i)) - 5e5;
    EXPECT_LT(std::abs(error_pa), most_noise_sigmas * 1000);
    sum += error_pa;
    squares += error_pa * error_pa;
    neighbours += error_pa * before;
    before = error_pa;
  }
  // Four standard errors of mean, deviation and correlation.
  EXPECT_NEAR(sum / samples, 0, 4 * 1000 / std::sqrt(samples));
  EXPECT_NEAR(std::sqrt(squares / samples), 1000, 4 * 1000 / std::sqrt(2.0 * samples));
  EXPECT_NEAR(neighbours / squares, 0, 4 / std::sqrt(samples));
}

// Against the normal distribution as the standard library's erfc has it. Beyond three deviations
// heads of 36 coins are a tenth rarer, by the binomial distribution; beyond four, two fifths.
TEST(Sensor, has_noise_with_the_tails_of_a_normal_one) {
  constexpr std::uint64_t samples = 1'000'000;
  for (double const sigmas : {0.5, 1.0, 2.0, 3.0}) {
    int beyond = 0;
    for (std::uint64_t i = 0; i < samples; ++i) {
      beyond += std::abs(sensor_noise(i)) > sigmas ? 1 : 0;
    }
    double const wanted = std::erfc(sigmas / std::sqrt(2.0));
    EXPECT_NEAR(beyond / static_cast<double>(samples) / wanted, 1, sigmas > 2 ? 0.15 : 0.03) << sigmas;
  }
}

TEST(Sensor, has_the_same_noise_at_the_same_sample) {
  auto sensor = perfect();
  sensor.noise_pa = 1000;
  EXPECT_EQ(sensor_reading_pa(sensor, 5e5, SensorFault::none, 0, 12),
            sensor_reading_pa(sensor, 5e5, SensorFault::none, 0, 12));
  EXPECT_NE(sensor_reading_pa(sensor, 5e5, SensorFault::none, 0, 12),
            sensor_reading_pa(sensor, 5e5, SensorFault::none, 0, 13));
}

TEST(Sensor, open_or_shorted_reads_what_no_working_one_can) {
  EXPECT_EQ(sensor_reading_pa(perfect(), 3e5, SensorFault::open, 0, 0), -2.5e5);
  EXPECT_EQ(sensor_reading_pa(perfect(), 3e5, SensorFault::shorted, 0, 0), 1.25e6);
}

TEST(Sensor, stuck_stays) {
  EXPECT_EQ(sensor_reading_pa(perfect(), 3e5, SensorFault::stuck, 2.2e5, 0), 2.2e5);
  EXPECT_EQ(sensor_reading_pa(perfect(), 1e5, SensorFault::stuck, 2.2e5, 99), 2.2e5);
}

}  // namespace
}  // namespace wellproof
