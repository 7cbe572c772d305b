// The claim: whatever moment the program is killed at, the book opens, is sound, and lacks at most the entry in hand.
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <chrono>
#include <csignal>
#include <thread>

#include "book/book.h"
#include "unit/book/book_files.h"

namespace wellproof {
namespace {

using book_files::Folder;
using book_files::opened;
using book_files::record;

constexpr int kills = 200;
constexpr int kills_of_a_book = 20;

/// Numbers that look like chance and are the same on every run.
class Chance {
 public:
  std::uint32_t below(std::uint32_t end) {
    state_ = state_ * 6364136223846793005U + 1442695040888963407U;
    return static_cast<std::uint32_t>(state_ >> 33U) % end;
  }

 private:
  std::uint64_t state_ = 20260101;
};

/// Adds without end and says so after each entry.
[[noreturn]] void write_without_end(std::string const& path, int said, Chance chance) {
  try {
    auto book = opened(path);
    for (;;) {
      std::string const content(chance.below(60'000), static_cast<char>('a' + chance.below(26)));
      if (!book.add({record("Alder", EntryKind::sheet, content)}, nullptr, Book::Same::added) ||
          ::write(said, "+", 1) != 1) {
        ::_exit(1);
      }
    }
  } catch (std::exception const&) {
    ::_exit(2);
  }
}

std::size_t count_until_closed(int heard) {
  std::size_t count = 0;
  char sign = 0;
  while (::read(heard, &sign, 1) == 1) {
    ++count;
  }
  return count;
}

TEST(BookKilled, LosesAtMostTheEntryInHand) {
  Chance chance;
  int in_mid_write = 0;
  for (int i = 0; i < kills;) {
    Folder const folder;
    std::string const path = folder / "b";
    std::size_t there = 0;
    for (int k = 0; k < kills_of_a_book; ++k, ++i) {
      int ends[2] = {-1, -1};
      ASSERT_EQ(::pipe(ends), 0);
      auto const writer = ::fork();
      ASSERT_GE(writer, 0);
      if (writer == 0) {
        ::close(ends[0]);
        Chance other = chance;
        write_without_end(path, ends[1], other);
      }
      ::close(ends[1]);
      std::this_thread::sleep_for(std::chrono::microseconds(chance.below(25'000)));
      ASSERT_EQ(::kill(writer, SIGKILL), 0);
      int status = 0;
      ::waitpid(writer, &status, 0);
      EXPECT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself with " << WEXITSTATUS(status);
      there += count_until_closed(ends[0]);
      ::close(ends[0]);
      in_mid_write += std::filesystem::exists(path + "-journal") ? 1 : 0;

      auto const book = opened(path);  // what a person does next
      auto const entries = book.entries(Book::Part::head).value();
      ASSERT_GE(entries.size(), there) << "after kill " << i;
      ASSERT_LE(entries.size(), there + 1) << "after kill " << i;
      there = entries.size();
      if (there > 0) {
        auto const check = book.check().value();
        ASSERT_TRUE(check.faults.empty()) << text(check.faults.front());
      }
    }
    EXPECT_GT(there, 0U);
  }
  // If no kill ever met a write, the test has shown nothing.
  EXPECT_GT(in_mid_write, kills / 10);
  RecordProperty("in_mid_write", in_mid_write);
}

}  // namespace
}  // namespace wellproof
