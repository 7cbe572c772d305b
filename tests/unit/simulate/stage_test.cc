#include "simulate/stage.h"

#include <cmath>

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

// Samples are passed over by their noise alone, so it must be what the reading is off by, to half a step of the signal.
TEST(Stage, NoiseOfASampleIsWhatItsReadingIsOffBy) {
  auto plant = plain_plant();
  auto settings = plain_settings(plant);
  auto& sensor = plant.site.sensor;
  sensor.gain_error = 0.02;
  sensor.zero_error_pa = 500;
  sensor.noise_pa = 1000;
  sensor.resolution_pa = 200;
  settings.sensor_full_scale_pa = 1.5 * sensor.full_scale_pa;
  auto const scenario = draw_scenario(settings, outlet::house, 0.5, 5, 10, 20);
  RunOptions options;
  options.noise_seed = 7;
  Stage const stage(plant, settings, scenario, options);
  for (std::uint64_t sample = 0; sample < 200; ++sample) {
    double const even_pa = stage.scaled_signal_pa(Stage::Noise::without, 3e5, sample);
    double const noisy_pa = stage.scaled_signal_pa(Stage::Noise::with, 3e5, sample);
    EXPECT_NEAR(noisy_pa - even_pa, stage.sample_noise_pa(sample), 0.5 * 1.5 * 200 + 1e-6) << sample;
  }
}

}  // namespace
}  // namespace wellproof
