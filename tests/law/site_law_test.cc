// What holds for every site file: any text is answered, any valid site draws to truths that hang together.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "folders.h"
#include "law/random_site.h"
#include "site/draw.h"
#include "site/fields.h"
#include "site/read.h"

namespace wellproof {
namespace {

/// Findings can be shown: a place in the text and words.
void expect_sound(Result<SiteRead> const& read, std::string const& text) {
  if (read) {
    return;
  }
  RC_ASSERT(!read.error().empty());
  auto const lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
  for (auto const& finding : read.error()) {
    RC_ASSERT(finding.place.line >= 0);
    RC_ASSERT(finding.place.file != "a.toml" || finding.place.line <= lines);
    RC_ASSERT(!finding.found.empty());
    RC_ASSERT(!finding.expected.empty());
  }
}

RC_GTEST_PROP(SiteText, is_answered_whatever_its_bytes, (std::string const& bytes)) {
  expect_sound(read_site(bytes, "a.toml"), bytes);
  files_named(bytes);
}

RC_GTEST_PROP(SiteText, is_answered_when_an_example_is_damaged, (std::uint64_t seed)) {
  RandomNumbers random(seed);
  static std::string const examples[] = {example_text("shallow_strong.toml"), example_text("deep_weak.toml"),
                                         example_text("not_provable.toml"), example_text("broken.toml")};
  auto text = examples[random.whole(0, 3)];
  RC_ASSERT(!text.empty());
  for (int i = random.whole(1, 8); i > 0 && !text.empty(); --i) {
    auto const at = static_cast<std::size_t>(random.bits() % text.size());
    auto const length = std::min<std::size_t>(static_cast<std::size_t>(random.whole(1, 30)), text.size() - at);
    switch (random.whole(0, 3)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.insert(at, text.substr(static_cast<std::size_t>(random.bits() % text.size()), length));
        break;
      case 2:
        text[at] = static_cast<char>(random.whole(0, 255));
        break;
      default:
        text[at] = "[]{}\"'=.,#\n-0"[random.whole(0, 12)];
        break;
    }
  }
  Beside const curve{"deep_weak_curve.csv", random.chance(0.5) ? example_text("deep_weak_curve.csv") : text};
  expect_sound(read_site(text, "a.toml", {curve}), text);
}

TEST(Site, drawn_by_lot_is_valid_and_draws_to_finite_values_within_limits) {
  for (std::uint64_t seed = 0; seed < 2000; ++seed) {
    auto const text = random_site_text(seed);
    auto const read = read_site(text, "a.toml");
    ASSERT_TRUE(read) << "seed " << seed << ": " << wellproof::text(read.error().front()) << '\n' << text;
    for (std::uint32_t const index : {0U, 1U, 1U + static_cast<std::uint32_t>(seed)}) {
      auto const drawn = draw(read->site, seed, index);
      each_field(drawn, [&](Field const& field, double value) {
        ASSERT_TRUE(std::isfinite(value)) << field.key << " of seed " << seed;
        double const hair = 1e-9 * (std::abs(field.least) + std::abs(field.most));
        ASSERT_GE(value, field.least - hair) << field.key << " of seed " << seed << '\n' << text;
        ASSERT_LE(value, field.most + hair) << field.key << " of seed " << seed << '\n' << text;
      });
    }
  }
}

TEST(Site, draws_stay_within_limits_at_the_corners_of_what_is_unknown) {
  for (std::uint64_t seed = 0; seed < 300; ++seed) {
    auto const read = read_site(random_site_text(seed), "a.toml");
    ASSERT_TRUE(read);
    RandomNumbers random(seed);
    std::vector<double> corner(unknowns(read->site));
    for (double& x : corner) {
      x = random.chance(0.5) ? 0 : 1;
    }
    auto const drawn = draw(read->site, corner);
    each_field(drawn, [&](Field const& field, double value) {
      double const hair = 1e-9 * (std::abs(field.least) + std::abs(field.most));
      ASSERT_GE(value, field.least - hair) << field.key << " of seed " << seed;
      ASSERT_LE(value, field.most + hair) << field.key << " of seed " << seed;
    });
  }
}

TEST(Site, drawn_has_a_plate_of_one_motor) {
  // √3 · volts · amps · efficiency · power factor makes the rated power, within what a plate is allowed to disagree.
  for (std::uint64_t seed = 0; seed < 500; ++seed) {
    auto const read = read_site(random_site_text(seed), "a.toml");
    ASSERT_TRUE(read);
    for (std::uint32_t index = 0; index < 4; ++index) {
      auto const m = draw(read->site, seed, index).motor;
      double const implied_w = std::sqrt(3.0) * m.voltage_v * m.full_load_current_a * m.efficiency * m.power_factor;
      EXPECT_NEAR(implied_w, m.power_w, 0.2 * m.power_w) << "seed " << seed << " draw " << index;
      EXPECT_LE(m.full_load_current_a, m.service_factor_current_a);
      EXPECT_LT(m.no_load_current_a, m.full_load_current_a);
    }
  }
}

}  // namespace
}  // namespace wellproof
