#include "fit/readings.h"

#include <gtest/gtest.h>

#include "site/read.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757;

Site site() {
  auto const read = read_site(
      "[well]\nstatic_level = \"40 ft\"\nyield = \"10 gpm\"\n[pump]\nsetting = \"100 ft\"\nrated_flow = \"10 gpm\"\n"
      "rated_power = \"1 hp\"\n[tank]\nrating = \"100 psi\"\n[sensor]\nfull_scale = \"100 psi\"\n[demand]\n"
      "outlet_pressure = \"40 psi\"\n",
      "a.toml");
  EXPECT_TRUE(read);
  return read->site;
}

std::string findings_of(std::string const& text, std::string const& file = "r.toml") {
  auto const read = read_readings(text, file, site());
  std::string out;
  if (!read) {
    for (auto const& finding : read.error()) {
      out += wellproof::text(finding) + "\n";
    }
  }
  return out;
}

TEST(read_readings, takes_values_with_their_own_error_or_the_usual_one) {
  auto const read = read_readings(
      "# first visit\n[[reading]]\ncondition = \"shut\"\ngauge = \"47 ± 1 psi\"\ncurrent = \"3 A\"\nafter = \"2 min\"\n"
      "note = \"loud\"\n[[reading]]\ncondition = \"rest\"\nlevel = \"41 ft\"\n",
      "r.toml", site());
  ASSERT_TRUE(read);
  ASSERT_EQ(read->readings.size(), 2U);
  auto const& shut = read->readings[0];
  EXPECT_EQ(shut.condition, Condition::shut);
  EXPECT_DOUBLE_EQ(shut.after_s, 120);
  auto const* const gauge = shut.read(Instrument::gauge);
  ASSERT_NE(gauge, nullptr);
  EXPECT_NEAR(gauge->value, 47 * psi_pa, 1);
  // ± is the 95 % half width, 1.96 sigma; a normal cut at three of them is narrower by a hair.
  EXPECT_NEAR(gauge->sigma, psi_pa / 1.96, 0.01 * psi_pa);
  EXPECT_TRUE(gauge->sigma_stated);
  auto const* const current = shut.read(Instrument::current);
  ASSERT_NE(current, nullptr);
  EXPECT_NEAR(current->sigma, (0.02 * 3 + 0.1) / 1.96, 1e-9);
  EXPECT_EQ(current->place, (Place{"r.toml", 5, 11}));
  EXPECT_EQ(read->readings[1].read(Instrument::gauge), nullptr);
}

TEST(read_readings, reads_a_table_of_the_same_columns) {
  auto const read = read_readings(
      "condition, gauge, drive_pressure, speed, note\n# remark\nasleep, 50 psi, 48 psi, , first\n"
      "shut, 50 psi, , 41.5 Hz, \"loud, hot\"\n",
      "r.csv", site());
  ASSERT_TRUE(read);
  ASSERT_EQ(read->readings.size(), 2U);
  EXPECT_EQ(read->readings[0].values.size(), 2U);
  EXPECT_DOUBLE_EQ(read->readings[1].read(Instrument::speed)->value, 41.5);
  EXPECT_EQ(read->readings[1].note, "loud, hot");
  EXPECT_EQ(read->readings[1].read(Instrument::speed)->place, (Place{"r.csv", 4, 17}));
}

TEST(read_readings, finds_all_that_is_wrong_with_its_place) {
  EXPECT_EQ(findings_of("[[reading]]\ncondition = \"shot\"\ngage = \"3 psi\"\ngauge = 47\nspeed = \"45 ft\"\n"),
            "r.toml:2:13: condition: found \"shot\"; expected one of rest, asleep, shut, least, open, flow; did you "
            "mean \"shut\"?\n"
            "r.toml:3:1: gage: found unknown key \"gage\"; expected one of condition, gauge, drive_pressure, "
            "speed, current, volts, flow, level, gauge_later, after, note; did you mean \"gauge\"?\n"
            "r.toml:4:9: gauge: found the bare number 47; expected a pressure with its unit, in quotes, such as \"50 "
            "psi\"\n"
            "r.toml:5:13: speed: found \"ft\", a length; expected a frequency such as \"60 Hz\"\n");
}

TEST(read_readings, finds_what_no_such_site_can_show) {
  EXPECT_NE(findings_of("[[reading]]\ncondition = \"shut\"\nspeed = \"0 Hz\"\ncurrent = \"3 A\"\n")
                .find("r.toml:3:9: speed: found 0 Hz with a current"),
            std::string::npos);
  EXPECT_NE(findings_of("[[reading]]\ncondition = \"shut\"\ngauge = \"140 psi\"\n").find("tank's rating"),
            std::string::npos);
  EXPECT_NE(findings_of("[[reading]]\ncondition = \"rest\"\nlevel = \"140 ft\"\n").find("above the pump's intake"),
            std::string::npos);
  EXPECT_NE(findings_of("[[reading]]\ncondition = \"shut\"\nflow = \"3 gpm\"\n").find("nothing is drawn"),
            std::string::npos);
  EXPECT_NE(findings_of("[[reading]]\ncondition = \"asleep\"\ngauge_later = \"30 psi\"\n").find("gauge_later alone"),
            std::string::npos);
  EXPECT_NE(findings_of("[[reading]]\ncondition = \"rest\"\n").find("nothing read"), std::string::npos);
  EXPECT_NE(findings_of("").find("no reading"), std::string::npos);
  EXPECT_NE(findings_of("[reading]\ncondition = \"rest\"\n").find("[[reading]], one for each"), std::string::npos);
  EXPECT_NE(findings_of("conditon,level\nrest,3 ft\n", "r.csv").find("did you mean \"condition\"?"), std::string::npos);
  EXPECT_NE(findings_of("condition,level\nrest,3 ft,9\n", "r.csv").find("3 cells"), std::string::npos);
}

}  // namespace
}  // namespace wellproof
