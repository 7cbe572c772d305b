#include "explain/wall_clock.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

// Days from POSIX time: 2026-08-14 00:00 UTC is 1786665600, 2000-02-29 is 951782400 (GNU date -u -d … +%s).
TEST(wall_clock, counts_days_as_posix_does) {
  EXPECT_EQ(wall_clock({2026, 8, 14}, 0).since_1970_s, 1786665600);
  EXPECT_EQ(wall_clock({2000, 2, 29}, 0).since_1970_s, 951782400);
  EXPECT_EQ(wall_clock({1970, 1, 1}, 0).since_1970_s, 0);
}

TEST(wall_clock, gives_the_date_back) {
  for (int day = -20000; day < 40000; day += 37) {
    WallClock const clock{day * day_long_s + 100};
    Date const date = date_of(clock);
    ASSERT_TRUE(exists(date));
    EXPECT_EQ(wall_clock(date, 100), clock);
  }
}

TEST(wall_clock, knows_the_weekday) {
  EXPECT_EQ(wall_clock({2026, 8, 14}, 0).weekday(), 4);   // a Friday (GNU date)
  EXPECT_EQ(wall_clock({1970, 1, 1}, 5).weekday(), 3);    // a Thursday
  EXPECT_EQ(wall_clock({1969, 12, 31}, 5).weekday(), 2);  // the day before it
}

TEST(wall_clock, knows_which_days_there_are) {
  EXPECT_TRUE(exists({2024, 2, 29}));
  EXPECT_FALSE(exists({2026, 2, 29}));
  EXPECT_FALSE(exists({2026, 13, 1}));
  EXPECT_FALSE(exists({2026, 4, 31}));
}

TEST(wall_clock, writes_itself_and_spans) {
  EXPECT_EQ(text(wall_clock({2026, 8, 14}, 66600)), "2026-08-14 18:30");
  EXPECT_EQ(span_text(2 * 86400 + 3 * 3600 + 15 * 60), "2 d 3 h 15 min");
  EXPECT_EQ(span_text(20), "20 s");
}

}  // namespace
}  // namespace wellproof
