#include "explain/history.h"

#include <string>

#include <gtest/gtest.h>

#include "explain/changed.h"
#include "explain/told_time.h"

namespace wellproof {
namespace {

constexpr double minute_s = 60;
constexpr double hour_s = 3600;
constexpr double day_s = 86400;
WallClock const friday = wall_clock({2026, 8, 14}, 18.5 * hour_s);  // half past six in the evening

double age_s(std::string const& line) {
  auto const told = read_told_time(line, friday);
  EXPECT_TRUE(told) << line;
  return told ? told->age_s : -1;
}

TEST(told_time, reads_spans_as_people_type) {
  double const expected_s = 2 * day_s + 3 * hour_s + 15 * minute_s;
  for (auto const* const line : {"2d 3h 15m", "2 days, 3 hours and 15 minutes ago", "2d03h15m", "51:15", "2:03:15",
                                 "dry run - 51:15", "2 D 3 HRS 15 MIN", "3075 min"}) {
    EXPECT_EQ(age_s(line), expected_s) << line;
  }
  EXPECT_EQ(age_s("half an hour ago"), 30 * minute_s);
  EXPECT_EQ(age_s("an hour ago"), hour_s);
  EXPECT_EQ(age_s("just now"), 0);
}

TEST(told_time, reads_the_clock_against_now) {
  EXPECT_EQ(age_s("yesterday 7pm"), 23.5 * hour_s);
  EXPECT_EQ(age_s("yesterday at 19:00"), 23.5 * hour_s);
  EXPECT_EQ(age_s("today 6:30 am"), 12 * hour_s);
  EXPECT_EQ(age_s("this morning 6:30"), 12 * hour_s);
  EXPECT_EQ(age_s("last night 11pm"), 19.5 * hour_s);
  EXPECT_EQ(age_s("last night at 2"), 16.5 * hour_s);
  EXPECT_EQ(age_s("2026-08-12 06:30"), 2.5 * day_s);
  EXPECT_EQ(age_s("2026-08-12T06:30:00"), 2.5 * day_s);
  EXPECT_EQ(age_s("8/12 6:30 am"), 2.5 * day_s);
  EXPECT_EQ(age_s("Aug 12, 6:30 am"), 2.5 * day_s);
  EXPECT_EQ(age_s("Wed 6:30 am"), 2.5 * day_s);
  EXPECT_EQ(age_s("friday 7pm"), 7 * day_s - 0.5 * hour_s);
  EXPECT_EQ(age_s("7pm"), 23.5 * hour_s);  // not yet today
  EXPECT_EQ(age_s("noon"), 6.5 * hour_s);
}

TEST(told_time, leaves_the_time_of_day_open_where_only_the_day_was_said) {
  auto const told = read_told_time("yesterday", friday);
  ASSERT_TRUE(told);
  EXPECT_FALSE(told->time_of_day_s);
  EXPECT_NEAR(told->age_s, day_s, 0.5 * day_s);
}

TEST(told_time, refuses_what_cannot_be) {
  for (auto const* const line :
       {"sometime", "2h ago at 7pm", "yesterday 25:00", "13 pm", "2026-02-30 10:00", "yesterday 7:80"}) {
    EXPECT_FALSE(read_told_time(line, friday)) << line;
  }
  EXPECT_FALSE(read_told_time("yesterday 7pm", std::nullopt));
  EXPECT_TRUE(read_told_time("3h ago", std::nullopt));
}

TEST(stop_words, take_the_trades_synonyms) {
  EXPECT_EQ(stop_kind("Underload"), StopCause::dry_run);
  EXPECT_EQ(stop_kind("it says DRY-RUN"), StopCause::dry_run);
  EXPECT_EQ(stop_kind("dead-head"), StopCause::closed_discharge);
  EXPECT_EQ(stop_kind("over current (motor)"), StopCause::over_current);
  EXPECT_EQ(stop_kind("undervoltage"), StopCause::low_volts);
  EXPECT_EQ(stop_kind("high pressure"), StopCause::high_pressure);
  EXPECT_EQ(stop_kind("pressure sensor"), StopCause::sensor_lost);
  EXPECT_EQ(stop_kind("banana"), std::nullopt);
  std::string line = "e7, 3h ago";
  EXPECT_EQ(take_label(line, {{"E7", StopCause::drive_hot}}), StopCause::drive_hot);
  EXPECT_EQ(line, "  , 3h ago");
  EXPECT_EQ(nearest_stop_word("underlaod"), "underload");
}

TEST(history, reads_free_lines) {
  auto const history = read_history(
      "# copied off the display\n"
      "now: 2026-08-14 18:30\n"
      "keeps: 20\n"
      "1. dry run, 3h ago\n"
      "2. underload  51:15\n"
      "yesterday 7pm: low volts\n"
      "symptoms: cycles every 40 s, air at taps, no sand\n"
      "changed: a new lawn\n"
      "setting: dry_run.rest = \"10 min\"\n"
      "display: 47 psi, 52.3 Hz, 4.4 A, 231 V, 71 °C, tap open\n",
      "calls.txt", std::nullopt);
  ASSERT_TRUE(history) << text(history.error().front());
  ASSERT_EQ(history->stops.size(), 3U);
  EXPECT_EQ(history->keeps, 20U);
  EXPECT_EQ(history->stops[0].age_s, 51.25 * hour_s);
  EXPECT_EQ(history->stops[0].time_of_day_s, 15.25 * hour_s);
  EXPECT_EQ(history->stops[1].kind, StopCause::low_volts);
  EXPECT_EQ(history->stops[2].age_s, 3 * hour_s);
  EXPECT_EQ(history->stops[2].place.line, 4);
  ASSERT_EQ(history->symptoms.size(), 3U);
  EXPECT_EQ(history->symptoms[0].value, 40);
  EXPECT_FALSE(history->symptoms[2].present);
  ASSERT_EQ(history->display.size(), 1U);
  EXPECT_NEAR(*history->display[0].pressure_pa, 47 * 6894.757, 1);
  EXPECT_EQ(history->display[0].sink_c, 71);
  EXPECT_EQ(history->display[0].drawing, true);
  EXPECT_EQ(history->settings, std::vector<std::string>{"dry_run.rest=10 min"});
  EXPECT_EQ(history->notes.size(), 1U);  // not in the order of time
}

TEST(history, a_dry_summer_lowers_the_well_and_freezes_no_line) {
  auto const speaking = changes_speak({"no rain since June, a dry summer"});
  double library = 0;
  double sum = none_share;
  for (auto const& fault : faults()) {
    sum += fault.share;
    library = fault.key == "line_frozen" ? fault.share : library;
  }
  std::size_t told = 0;
  for (auto const& share : shares_after(speaking, {})) {
    if (share.key == "line_frozen") {
      EXPECT_LT(share.share, 0.03 * library / sum);
      ++told;
    } else {
      EXPECT_TRUE(share.key == "level_fallen" || share.key == "yield_fallen") << share.key;
      ++told;
    }
  }
  EXPECT_EQ(told, 3U);
}

TEST(history, reads_tables) {
  auto const history = read_history(
      "no,kind,days,hours,minutes,speed\n"
      "1,dry run,0,3,10,60\n"
      "2,\"closed discharge\",2,,5,60\n",
      "h.csv", friday);
  ASSERT_TRUE(history) << text(history.error().front());
  ASSERT_EQ(history->stops.size(), 2U);
  EXPECT_EQ(history->stops[0].age_s, 2 * day_s + 5 * minute_s);
  EXPECT_EQ(history->stops[1].kind, StopCause::dry_run);
  auto const dates = read_history("date;time;stop\n2026-08-12;06:30;overload\n", "h.csv", friday);
  ASSERT_TRUE(dates) << text(dates.error().front());
  EXPECT_EQ(dates->stops.front().age_s, 2.5 * day_s);
}

TEST(history, finds_all_that_it_does_not_understand_with_its_line) {
  auto const history = read_history(
      "dry run 3h ago\n"
      "banana 4h ago\n"
      "underlaod 5h ago\n"
      "dry run, a while back\n"
      "dry run today 11 pm\n"
      "symptom: purple\n"
      "display: 40 bananas\n",
      "h.txt", friday);
  ASSERT_FALSE(history);
  ASSERT_EQ(history.error().size(), 6U);
  EXPECT_EQ(history.error()[0].place.line, 2);
  EXPECT_EQ(history.error()[1].nearest, "underload");
  EXPECT_EQ(history.error()[3].expected, "a time before now, which is 2026-08-14 18:30");
  EXPECT_EQ(history.error()[5].place.line, 7);
}

TEST(history, takes_the_labels_of_a_card_before_the_words_of_the_trade) {
  std::vector<StopLabel> const labels{{"S02", StopCause::closed_discharge},
                                      {"Sender gone dry", StopCause::sensor_lost}};
  auto const read =
      read_history("S02  3h 10m ago\n2d 4h: sender gone DRY\n5h ago underload\n", "h.txt", std::nullopt, labels);
  ASSERT_TRUE(read);
  ASSERT_EQ(read->stops.size(), 3U);
  EXPECT_EQ(read->stops[0].kind, StopCause::sensor_lost);
  EXPECT_EQ(read->stops[1].kind, StopCause::dry_run);
  EXPECT_EQ(read->stops[2].kind, StopCause::closed_discharge);
  EXPECT_FALSE(read_history("S02  3h 10m ago\n", "h.txt", std::nullopt));
}

TEST(history, is_empty_where_nothing_stopped) {
  auto const history = read_history("\n# nothing yet\n", "h.txt", friday);
  ASSERT_TRUE(history);
  EXPECT_TRUE(history->stops.empty());
}

TEST(history, takes_two_hundred_stops_and_drops_doubles) {
  std::string text;
  for (int i = 0; i < 200; ++i) {
    text += "dry run " + std::to_string(i) + "h ago\n";
  }
  text += "dry run 7h ago\n";
  auto const history = read_history(text, "h.txt", friday);
  ASSERT_TRUE(history);
  EXPECT_EQ(history->stops.size(), 200U);
  EXPECT_EQ(history->notes.size(), 2U);
}

TEST(history, takes_any_bytes) {
  std::string noise = "now:\n:::\n===\n#\n \"\n";
  for (int i = 1; i < 256; ++i) {
    noise += static_cast<char>(i);
  }
  EXPECT_FALSE(read_history(noise, "h.txt", friday));
  EXPECT_FALSE(read_history("dry 99999999999999999999999:99999999999999999999 x", "h.txt", friday));
}

}  // namespace
}  // namespace wellproof
