// Who computes a plan does not show in it: text, report and exit code are the same bytes.
#include <fstream>
#include <iterator>
#include <string>

#include <gtest/gtest.h>

#include "door/door.h"
#include "folders.h"

namespace wellproof {
namespace {

TEST(Threads, DoNotShowInAPlan) {
  std::ifstream file(source_folder() + "/examples/shallow_strong.toml");
  Request made;
  made.command = "plan";
  made.site = {"shallow_strong.toml", {std::istreambuf_iterator<char>(file), {}}};
  made.draws = least_draws;
  made.json = true;
  made.report = "report.html";
  auto const alone = Door().ask(request_bytes(made));
  made.threads = 3;
  auto const together = Door().ask(request_bytes(made));
  EXPECT_EQ(alone.out, together.out);
  EXPECT_EQ(alone.files, together.files);
  EXPECT_EQ(alone.exit_code, together.exit_code);
  ASSERT_EQ(alone.files.size(), 1U);
  EXPECT_EQ(alone.files[0].first, "report.html");
}

}  // namespace
}  // namespace wellproof
