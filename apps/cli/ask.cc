#include "cli/ask.h"

#include <unistd.h>

#include <cstdio>
#include <ctime>
#include <iostream>
#include <utility>

#include <fmt/format.h>

#include "cli/hand_over.h"
#include "door/commands.h"
#include "door/explaining.h"
#include "sheet/layout.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr std::size_t shown_causes = 4;

std::string leading(Explanation const& explanation, Paint const& paint) {
  std::string out = "\n" + paint.strong(leader_says(explanation)) + "\n";
  auto const& causes = explanation.explained.ranking().causes;
  for (std::size_t i = 0; i < shown_causes && i < causes.size(); ++i) {
    out += "  " + right(share_text(causes[i].posterior, causes[i].posterior_error), 10) + "  " +
           std::string(title_of(causes[i])) + "\n";
  }
  return out;
}

std::string question_text(Explanation const& explanation, Question const& question) {
  auto const& check = checks()[question.check];
  std::string out = "\n" + block(fmt::format("{}. {}", check.title, check.how), "", "");
  out += block(fmt::format("About {:.0f} minutes, {:.2f} bit.", check.minutes, question.information_bits), "  ", "  ");
  auto const meanings = answers_say(explanation, question);
  for (std::size_t a = 0; a < meanings.size(); ++a) {
    out += block(meanings[a], fmt::format("  {}: ", check.answers[a].word), "      ");
  }
  return out;
}

std::string trimmed(std::string text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '\r' || text.back() == '\t')) {
    text.pop_back();
  }
  auto const first = text.find_first_not_of(" \t");
  return first == std::string::npos ? "" : text.substr(first);
}

/// Takes an answer into the explanation; what is wrong with it otherwise.
std::string taken(Explanation& explanation, Question const& question, std::string const& line) {
  auto const typed = read_answer(std::string(checks()[question.check].key), line, {});
  if (!typed) {
    return text(typed.error().front());
  }
  if (typed->answer) {
    explanation.explained.take({typed->check, *typed->answer});
  } else {
    explanation.explained.take(typed->check, *typed->show);
  }
  return "";
}

}  // namespace

std::string clock_text() {
  std::time_t const now = std::time(nullptr);
  std::tm local{};
  ::localtime_r(&now, &local);
  return fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", local.tm_year + 1900, local.tm_mon + 1, local.tm_mday,
                     local.tm_hour, local.tm_min);
}

int asked_on(Request const& request, Door::Progress const& progress, std::function<void()> const& done) {
  auto explaining = explaining_of(request, progress);
  done();
  if (!explaining) {
    return given(refused(explaining.error()), true);
  }
  auto explanation = explaining->explanation;
  Paint const paint(request.colour);
  bool const talks = !request.json;
  auto const say = [&](std::string const& words) {
    if (talks) {
      put(stdout, words);
    }
  };
  std::size_t skipped = 0;
  say(block(history_says(explanation), "", ""));
  while (skipped < explanation.explained.questions().size()) {
    auto const question = explanation.explained.questions()[skipped];
    say(leading(explanation, paint) + question_text(explanation, question) +
        "Answer with a word, or a value with its unit; s skips, q ends: ");
    std::fflush(stdout);
    std::string line;
    if (!std::getline(std::cin, line)) {
      say("\n");
      break;
    }
    line = trimmed(line);
    if (line == "q" || line == "quit") {
      break;
    }
    if (line.empty() || line == "s" || line == "skip") {
      ++skipped;
      continue;
    }
    auto const wrong = taken(explanation, question, line);
    if (!wrong.empty()) {
      put(stderr, wrong + "\n");
      continue;
    }
    skipped = 0;
  }
  // Only now is it known whose stops a setting should have avoided.
  explaining->try_settings(explanation);
  say("\n");
  return given(explain_answer(explanation, request), true);
}

}  // namespace wellproof
