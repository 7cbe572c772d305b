// The margins of the regulator's loops against another program's: the linear models of both example sites are written
// out as state spaces and GNU Octave's control package finds gain margin, phase margin and frequency response, whose
// greatest sensitivity is taken on a dense grid. Its delay is a Padé approximant of the sixth order, which at these
// frequencies differs by less than the tolerance.
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "folders.h"
#include "settings/derive.h"
#include "settings/loops.h"
#include "site/read.h"

namespace wellproof {
namespace {

constexpr char const* octave = "octave-cli --quiet --no-init-file --no-history";

bool octave_is_there() {
  std::string const asks = std::string(octave) + " --eval 'pkg load control' >/dev/null 2>&1";
  return std::system(asks.c_str()) == 0;
}

std::string script_line(RegulatorLoop const& loop, PiRule const& rule) {
  auto const& a = loop.plant.by_state;
  auto const& b = loop.plant.by_speed;
  return fmt::format(
      "plant = ss([{:.17g} {:.17g} {:.17g}; {:.17g} {:.17g} {:.17g}; {:.17g} {:.17g} {:.17g}], "
      "[{:.17g}; {:.17g}; {:.17g}], [0 0 1], 0); [n, d] = padecoef({:.17g}, 6); "
      "rule = tf({:.17g} * [{:.17g} 1], [{:.17g} 0]); loop = rule * tf(n, d) * tf(plant); "
      "[gain, phase] = margin(loop); printf(\"%.9g %.9g %.9g\\n\", gain, phase, "
      "max(1 ./ abs(1 + squeeze(freqresp(loop, logspace(-3, 1.8, 20000))))));\n",
      a[0][0], a[0][1], a[0][2], a[1][0], a[1][1], a[1][2], a[2][0], a[2][1], a[2][2], b[0], b[1], b[2], loop.delay_s(),
      rule.gain, rule.reset_time_s, rule.reset_time_s);
}

TEST(OctaveMargins, AreThoseOfTheControlPackageOnBothExamples) {
  if (!octave_is_there()) {
    GTEST_SKIP() << "octave-cli with its package control is not on this machine";
  }
  struct Asked {
    std::string name;
    LoopMargins ours;
  };
  std::vector<Asked> asked;
  std::string script = "pkg load control\nwarning('off', 'all');\n";
  for (std::string const name : {"shallow_strong", "deep_weak"}) {
    auto const read = read_site(example_text(name + ".toml"), name + ".toml",
                                {{"deep_weak_curve.csv", example_text("deep_weak_curve.csv")}});
    ASSERT_TRUE(read) << name;
    auto const plants = draw_plants(read->site, 1, 16);
    auto const derived = derive(read->site, plants, UnitSystem::us);
    // As derived, and four times as strong with a quarter of the reset time: nearer to swinging.
    for (double const sharper : {1.0, 4.0}) {
      auto settings = derived.settings;
      settings.regulator_gain_hz_pa *= sharper;
      settings.regulator_reset_time_s /= sharper;
      auto const loops = loops_of(plants, settings);
      for (std::size_t i = 0; i < loops.size(); i += 11) {
        script += script_line(loops[i], {settings.regulator_gain_hz_pa, settings.regulator_reset_time_s});
        asked.push_back({fmt::format("{} loop {} times {}", name, i, sharper), margins_with(loops[i], settings)});
      }
    }
  }
  ASSERT_GT(asked.size(), 10U);
  auto const path = std::filesystem::temp_directory_path() / fmt::format("wellproof_margins_{}.m", std::rand());
  std::ofstream(path) << script << "exit(0);\n";
  std::unique_ptr<FILE, int (*)(FILE*)> const answers(popen((std::string(octave) + " " + path.string()).c_str(), "r"),
                                                      pclose);
  ASSERT_TRUE(answers);
  for (auto const& one : asked) {
    SCOPED_TRACE(one.name);
    double gain = 0;
    double phase_deg = 0;
    double largest = 0;
    ASSERT_EQ(std::fscanf(answers.get(), "%lf %lf %lf", &gain, &phase_deg, &largest), 3);
    EXPECT_NEAR(one.ours.gain_margin / gain, 1, 5e-3);
    EXPECT_NEAR(one.ours.phase_margin_deg, phase_deg, 0.05);
    EXPECT_NEAR(one.ours.largest_sensitivity / largest, 1, 2e-3);
  }
  std::filesystem::remove(path);
}

}  // namespace
}  // namespace wellproof
