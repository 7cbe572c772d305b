#include <gtest/gtest.h>

#include "book/address.h"
#include "book/chain.h"
#include "book/entry.h"
#include "book/line_diff.h"

namespace wellproof {
namespace {

// BLAKE2b-256 of a fixed text would test the library; what is ours is that no two records hash alike.
TEST(ChainHash, TellsRecordsApartThatJoinToTheSameText) {
  Record a{"ab", EntryKind::site, "c", "2031-05-14T09:30:00Z", "d", "", "", {}};
  Record b = a;
  b.site = "a";
  b.who = "bc";
  EXPECT_NE(record_hash(a), record_hash(b));
  b = a;
  b.beside = {{"", ""}};
  EXPECT_NE(record_hash(a), record_hash(b));
  EXPECT_EQ(record_hash(a).size(), 64U);
}

TEST(Hex, GoesBackAndForth) {
  EXPECT_EQ(hex(std::string("\0\xFFz", 3)), "00ff7a");
  EXPECT_EQ(from_hex("00ff7a"), std::string("\0\xFFz", 3));
  EXPECT_EQ(from_hex("00f"), "");
  EXPECT_EQ(from_hex("0g"), "");
}

TEST(FindSite, TakesANameOrEnoughOfIt) {
  std::vector<std::string> const names{"Alder Hollow 4", "Alder Hollow 41", "Birch"};
  EXPECT_EQ(find_site(names, "Alder Hollow 4").value(), "Alder Hollow 4");
  EXPECT_EQ(find_site(names, "alder-hollow-4").value(), "Alder Hollow 4");
  EXPECT_EQ(find_site(names, "ALDER HOLLOW 41").value(), "Alder Hollow 41");
  EXPECT_EQ(find_site(names, "bi").value(), "Birch");
  EXPECT_NE(text(find_site(names, "alder").error().front()).find("\"Alder Hollow 4\", \"Alder Hollow 41\""),
            std::string::npos);
  EXPECT_EQ(find_site(names, "Brich").error().front().nearest, "Birch");
  EXPECT_FALSE(find_site(names, ""));
  EXPECT_FALSE(find_site({}, "x"));
}

std::string shown(std::vector<DiffLine> const& lines) {
  std::string out;
  for (auto const& line : lines) {
    out += (line.change == DiffLine::Change::none  ? " "
            : line.change == DiffLine::Change::out ? "-"
                                                   : "+") +
           std::to_string(line.number) + line.text + "|";
  }
  return out;
}

TEST(LineDiff, ShowsWhatChangedWithALineAround) {
  EXPECT_EQ(shown(line_diff("a\nb\nc\nd\ne\n", "a\nb\nx\nd\ne\n")), " 2b|-3c|+3x| 4d|");
  EXPECT_EQ(shown(line_diff("a\nb\n", "a\nb\n")), "");
  EXPECT_EQ(shown(line_diff("", "a\n")), "+1a|");
  EXPECT_EQ(shown(line_diff("a\nb\nc\n", "b\nc\nd\n", 0)), "-1a|+3d|");
  EXPECT_EQ(shown(line_diff("a\n", "a")), "-1a|+1a  (no line end)|");
}

TEST(Record, IsAskedForATimeAndForNames) {
  Record good{"Alder", EntryKind::site, "R.", "2031-12-31T23:59:60Z", "why", "", "", {}};
  EXPECT_TRUE(wrong_with(good).empty());
  for (auto const* const at :
       {"", "2031-12-31", "2031-13-01T00:00:00Z", "2031-12-31T24:00:00Z", "2031-12-31T00:00:00+"}) {
    Record bad = good;
    bad.at = at;
    EXPECT_EQ(wrong_with(bad).size(), 1U) << at;
  }
  Record bad = good;
  bad.site = "";
  bad.who = "\xFF";
  bad.why = " ";
  bad.name = "a\tb";
  EXPECT_EQ(wrong_with(bad).size(), 4U);
}

// The unpaired halves, over-long forms and ends of RFC 3629, section 3.
TEST(Utf8, IsHeldToItsRules) {
  for (auto const* const good : {"", "a", "\xC2\x80", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xF4\x8F\xBF\xBF"}) {
    EXPECT_TRUE(is_utf8(good));
  }
  for (auto const* const bad :
       {"\x80", "\xC0\x80", "\xC2", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xF5"}) {
    EXPECT_FALSE(is_utf8(bad));
  }
}

}  // namespace
}  // namespace wellproof
