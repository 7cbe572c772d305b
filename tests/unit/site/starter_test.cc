#include <gtest/gtest.h>

#include <sstream>

#include "site/reference.h"
#include "unit/site/site_text.h"

namespace wellproof {
namespace {

using namespace site_text;

/// The starter with its comments opened: every line that holds an entry or a head of runs.
std::string opened(std::string const& starter) {
  std::istringstream lines(starter);
  std::string out;
  for (std::string line; std::getline(lines, line);) {
    bool const entry = line.compare(0, 2, "# ") == 0 &&
                       (line.find(" = \"") != line.npos || line.compare(2, 2, "[[") == 0) &&
                       line.compare(0, 9, "# curve =") != 0 && line.compare(0, 12, "# curve_file") != 0;
    out += (entry ? line.substr(2) : line) + '\n';
  }
  return out;
}

class Starter : public testing::TestWithParam<UnitSystem> {};

TEST_P(Starter, is_valid_as_it_stands) {
  auto const read = read_site(starter_site(GetParam()), "starter.toml");
  ASSERT_TRUE(read) << text(read.error().front());
}

TEST_P(Starter, assumes_nothing_once_every_line_is_open) {
  auto const read = read_site(opened(starter_site(GetParam())), "starter.toml");
  ASSERT_TRUE(read) << text(read.error().front());
  EXPECT_TRUE(read->assumptions.empty()) << read->assumptions.front().key;
}

TEST_P(Starter, names_every_key) {
  auto const starter = starter_site(GetParam());
  for (auto const& key : known_keys()) {
    EXPECT_NE(starter.find(key.substr(key.rfind('.') + 1)), starter.npos) << key;
  }
}

INSTANTIATE_TEST_SUITE_P(in_both_systems, Starter, testing::Values(UnitSystem::us, UnitSystem::metric));

TEST(site_reference, is_what_docs_say) {
  auto const page = source_text("docs/site.md");
  if (page.empty()) {
    GTEST_SKIP() << "no docs beside the tests";
  }
  EXPECT_EQ(page, site_reference());
}

TEST(site_reference, tells_every_key) {
  auto const page = site_reference();
  for (auto const& key : known_keys()) {
    EXPECT_NE(page.find('`' + key.substr(key.rfind('.') + 1) + '`'), page.npos) << key;
  }
}

}  // namespace
}  // namespace wellproof
