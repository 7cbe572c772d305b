#include "contract/nearest.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace wellproof {
namespace {

// In half slips, so that a letter in the wrong case can cost one and any other slip two.
constexpr int slip_cost = 2;
constexpr int case_cost = 1;
constexpr std::size_t longest_word = 80;

char folded(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

int substitution_cost(char a, char b) {
  if (a == b) {
    return 0;
  }
  return folded(a) == folded(b) ? case_cost : slip_cost;
}

// Optimal string alignment: edit distance in which two neighbours may also change places, once.
int distance(std::string_view a, std::string_view b) {
  std::size_t const width = b.size() + 1;
  std::vector<int> before_last(width);
  std::vector<int> last(width);
  std::vector<int> row(width);
  for (std::size_t j = 0; j < width; ++j) {
    row[j] = slip_cost * static_cast<int>(j);
  }
  for (std::size_t i = 1; i <= a.size(); ++i) {
    before_last.swap(last);
    last.swap(row);
    row[0] = slip_cost * static_cast<int>(i);
    for (std::size_t j = 1; j < width; ++j) {
      row[j] =
          std::min({last[j] + slip_cost, row[j - 1] + slip_cost, last[j - 1] + substitution_cost(a[i - 1], b[j - 1])});
      bool const swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] && a[i - 1] != a[i - 2];
      if (swapped) {
        row[j] = std::min(row[j], before_last[j - 2] + slip_cost);
      }
    }
  }
  return row[b.size()];
}

int allowed(std::size_t length) {
  if (length <= 1) {
    return case_cost;
  }
  if (length <= 4) {
    return slip_cost;
  }
  return length <= 8 ? 2 * slip_cost : 3 * slip_cost;
}

}  // namespace

std::string nearest_word(std::string_view word, std::span<std::string_view const> known) {
  if (word.empty() || word.size() > longest_word) {
    return {};
  }
  int least = allowed(word.size()) + 1;
  std::string_view nearest;
  for (std::string_view candidate : known) {
    if (candidate.empty() || candidate.size() > longest_word) {
      continue;
    }
    // A word all of whose letters would have to change is not near, however short it is.
    int const far = slip_cost * static_cast<int>(std::max(word.size(), candidate.size()));
    int const now = distance(word, candidate);
    if (now < least && now < far) {
      least = now;
      nearest = candidate;
    }
  }
  return std::string(nearest);
}

}  // namespace wellproof
