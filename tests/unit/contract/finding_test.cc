#include "contract/finding.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(finding, says_where_what_stands_there_and_what_would_be_right) {
  Finding const finding{{"cabin.toml", 7, 16}, "well.static_level", "\"80 gmp\"", "a length such as \"240 ft\"", "gpm"};
  EXPECT_EQ(text(finding),
            "cabin.toml:7:16: well.static_level: found \"80 gmp\"; expected a length such as \"240 ft\"; "
            "did you mean \"gpm\"?");
}

TEST(finding, leaves_out_what_is_empty) {
  EXPECT_EQ(text({{"", 0, 0}, "", "nothing", "a site", ""}), "found nothing; expected a site");
  EXPECT_EQ(text({{"a.toml", 0, 0}, "pump", "", "a table", ""}), "a.toml: pump: expected a table");
  EXPECT_EQ(text({{"", 3, 0}, "pump", "", "", ""}), "line 3: pump");
  EXPECT_EQ(text({{"a.toml", 3, 0}, "", "x", "", ""}), "a.toml:3: found x");
  EXPECT_EQ(text({}), "");
}

TEST(finding, stays_on_one_line_whatever_was_found) {
  EXPECT_EQ(text({{"a.toml", 1, 1}, "name", "\"two\nlines\"", "", ""}), "a.toml:1:1: name: found \"two lines\"");
}

}  // namespace
}  // namespace wellproof
