#include "sheet/report.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <limits>

#include "sheet/chart.h"
#include "sheet/figures.h"
#include "unit/sheet/made_plan.h"

namespace wellproof {
namespace {

std::size_t count(std::string const& text, std::string const& piece) {
  std::size_t found = 0;
  for (std::size_t at = text.find(piece); at != std::string::npos; at = text.find(piece, at + piece.size())) {
    ++found;
  }
  return found;
}

TEST(Report, NeedsNoScriptAndNothingFromElsewhere) {
  auto const html = html_report(made_plan());
  for (char const* const piece : {"<script", "http://", "https://", "<link", "<img", "@import", "url(http", "src="}) {
    // The one thing with "http" in it is the policy that forbids the rest.
    EXPECT_EQ(html.find(piece), std::string::npos) << piece;
  }
  EXPECT_NE(html.find("default-src 'none'"), std::string::npos);
}

TEST(Report, ANameWithMarkupInItIsText) {
  auto plan = made_plan();
  plan.site.site.name = "<script>alert('x')</script>\"&";
  plan.derived.reasons[0].because = "<b>bold</b>";
  plan.proof.scenarios[0].worst_says = "</p><img src=x onerror=y>";
  plan.site.assumptions[0].because = "<svg/onload=z>";
  auto const html = html_report(plan);
  for (char const* const piece : {"<script", "<b>bold", "<img", "<svg/"}) {
    EXPECT_EQ(html.find(piece), std::string::npos) << piece;
  }
  EXPECT_NE(html.find("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&quot;&amp;"), std::string::npos);
}

TEST(Report, NamesEverySettingScenarioAndCaution) {
  auto const plan = made_plan();
  auto const html = html_report(plan);
  each_setting(plan.derived.settings, [&](SettingField const& field, double) {
    auto const& lacking = plan.derived.not_on_drive;
    bool const there = std::find(lacking.begin(), lacking.end(), field.key) == lacking.end();
    EXPECT_EQ(html.find(std::string(field.key)) != std::string::npos, there) << field.key;
  });
  for (auto const& scenario : plan.proof.scenarios) {
    EXPECT_NE(html.find(scenario.title), std::string::npos);
  }
  EXPECT_NE(html.find("capacitors"), std::string::npos);
  EXPECT_NE(html.find("the tank bears 100 psi"), std::string::npos);
}

TEST(Report, EveryLineOfAChartBearsItsNameAndDiffersInDash) {
  auto const svg = load_figure(made_plan());
  for (char const* const name : {">dry<", ">shut<", ">least draw<", ">most draw<", ">dry run below<", ">closed below<",
                                 ">guards act here<", ">sleep below<", ">current limit<"}) {
    EXPECT_EQ(count(svg, name), 1U) << name;
  }
  for (Stroke const stroke : {stroke::rust, stroke::green, stroke::plum}) {
    EXPECT_EQ(count(svg, "stroke-dasharray=\"" + std::string(stroke.dash) + "\""), 1U) << stroke.dash;
  }
}

TEST(Report, ADriveThatGuardsByPowerIsDrawnInWatts) {
  auto plan = made_plan();
  plan.logic.guard_by = GuardBy::power;
  plan.derived.settings.dry_run_power_below_w = 550;
  plan.derived.settings.closed_power_below_w = 0;
  auto const svg = load_figure(plan);
  EXPECT_EQ(count(svg, ">dry run below<"), 1U);
  EXPECT_EQ(count(svg, ">closed below<"), 0U);
  EXPECT_EQ(count(svg, ">current limit<"), 0U);
  EXPECT_EQ(count(svg, "input power, kW"), 1U) << "electrical power is not in horsepower";
}

TEST(Report, IdsOnThePageAreUnique) {
  auto const html = html_report(made_plan());
  std::size_t ids = 0;
  for (std::size_t at = html.find(" id=\""); at != std::string::npos; at = html.find(" id=\"", at + 1)) {
    auto const id = html.substr(at, html.find('"', at + 5) - at + 1);
    EXPECT_EQ(count(html, id), 1U) << id;
    ++ids;
  }
  EXPECT_GT(ids, 20U);
}

TEST(Report, FiguresThatAreNoNumbersLeaveNoTrace) {
  auto plan = made_plan();
  double const nan = std::numeric_limits<double>::quiet_NaN();
  double const infinity = std::numeric_limits<double>::infinity();
  plan.map.rows[3].most_draw_a = {nan, nan, infinity};
  plan.map.rows[20].shut_a = {nan, nan, nan};
  plan.map.zero_flow_speed_hz = {nan, nan, nan};
  plan.worst_runs[0].trace.points[5].tee_pressure_pa = nan;
  plan.worst_runs[0].trace.points[6].level_depth_m = infinity;
  plan.curves.drawn_down.clear();
  auto const html = html_report(plan);
  for (char const* const piece : {"nan", "inf "}) {
    EXPECT_EQ(html.find(piece), std::string::npos) << piece;
  }
}

TEST(Report, AnEmptyPlanIsStillAPage) {
  auto const html = html_report(Plan{});
  EXPECT_NE(html.find("Nothing was run"), std::string::npos);
  EXPECT_NE(html.find("</html>"), std::string::npos);
}

TEST(Report, ThinningKeepsEveryPeakOfALongRun) {
  auto points = made_trace(7200).points;
  points[5000].tee_pressure_pa = 9e5;
  points[9001].tee_pressure_pa = 1e4;
  auto const kept = thinned(points, 100, &TracePoint::tee_pressure_pa);
  EXPECT_LE(kept.size(), 404U);
  double least_pa = 1e9;
  double most_pa = 0;
  double last_s = -1;
  for (auto const& point : kept) {
    least_pa = std::min(least_pa, point.tee_pressure_pa);
    most_pa = std::max(most_pa, point.tee_pressure_pa);
    EXPECT_GT(point.time_s, last_s);
    last_s = point.time_s;
  }
  EXPECT_EQ(least_pa, 1e4);
  EXPECT_EQ(most_pa, 9e5);
  EXPECT_EQ(kept.front().time_s, points.front().time_s);
  EXPECT_EQ(kept.back().time_s, points.back().time_s);
}

TEST(Report, TheRingStandsWherePumpAndWellMeet) {
  // 95·(62/60)²·(1 − (q/q_end)²) = 47 + 8e6·q² + 9000·q with q_end = 1.1e-3·62/60: a quadratic, solved by hand.
  double const top_m = 95 * (62.0 / 60) * (62.0 / 60);
  double const end_m3_s = 1.1e-3 * 62 / 60;
  double const a = 8e6 + top_m / (end_m3_s * end_m3_s);
  double const root = (-9000 + std::sqrt(9000 * 9000 + 4 * a * (top_m - 47))) / (2 * a);
  EXPECT_NEAR(most_flow_at_target_m3_s(made_curves()), root, 0.002 * root);  // the lines have 20 pieces
}

}  // namespace
}  // namespace wellproof
