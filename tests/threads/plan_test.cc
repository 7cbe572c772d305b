// Who computes a plan does not show in it: text, report and exit code are the same bytes.
#include <gtest/gtest.h>

#include "door/door.h"
#include "folders.h"

namespace wellproof {
namespace {

TEST(Threads, DoNotShowInAPlan) {
  Request made;
  made.command = "plan";
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.draws = least_draws;
  made.json = true;
  made.report = "report.html";
  auto const alone = Door().ask(request_bytes(made));
  ASSERT_EQ(alone.files.size(), 1U);
  EXPECT_EQ(alone.files[0].first, "report.html");
  for (unsigned const threads : {2U, 3U}) {
    SCOPED_TRACE(threads);
    made.threads = threads;
    std::size_t told_of = 0;
    std::size_t all_runs = 0;
    Door const door([&](std::size_t done, std::size_t all) {
      EXPECT_EQ(done, ++told_of);
      all_runs = all;
    });
    auto const together = door.ask(request_bytes(made));
    EXPECT_EQ(told_of, all_runs);
    EXPECT_GT(told_of, 0U);
    EXPECT_EQ(alone.out, together.out);
    EXPECT_EQ(alone.files, together.files);
    EXPECT_EQ(alone.exit_code, together.exit_code);
  }
}

}  // namespace
}  // namespace wellproof
