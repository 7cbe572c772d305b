#include "book/line_diff.h"

#include <algorithm>
#include <cstdint>

namespace wellproof {
namespace {

using Change = DiffLine::Change;
constexpr std::size_t most_cells = 4'000'000;

/// A line keeps its end, so that a missing one at the end of the text is a difference.
std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    std::size_t const end = std::min(text.find('\n'), text.size() - 1) + 1;
    lines.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return lines;
}

std::string shown(std::string_view line) {
  bool const ended = !line.empty() && line.back() == '\n';
  return ended ? std::string(line.substr(0, line.size() - 1)) : std::string(line) + "  (no line end)";
}

/// Length of the longest common run of lines of each pair of rests, by rows from the ends.
class Common {
 public:
  Common(std::vector<std::string_view> const& a, std::vector<std::string_view> const& b)
      : width_(b.size() + 1), length_((a.size() + 1) * width_) {
    for (std::size_t i = a.size(); i-- > 0;) {
      for (std::size_t j = b.size(); j-- > 0;) {
        length_[i * width_ + j] = a[i] == b[j] ? at(i + 1, j + 1) + 1 : std::max(at(i + 1, j), at(i, j + 1));
      }
    }
  }
  std::uint32_t at(std::size_t i, std::size_t j) const { return length_[i * width_ + j]; }

 private:
  std::size_t width_;
  std::vector<std::uint32_t> length_;
};

/// Unchanged lines far from any change are left out.
std::vector<DiffLine> near_changes(std::vector<DiffLine> const& all, std::size_t around) {
  std::vector<DiffLine> near;
  for (std::size_t i = 0; i < all.size(); ++i) {
    auto const begin = all.begin() + static_cast<std::ptrdiff_t>(i - std::min(i, around));
    auto const end = all.begin() + static_cast<std::ptrdiff_t>(std::min(all.size(), i + around + 1));
    if (std::any_of(begin, end, [](DiffLine const& line) { return line.change != Change::none; })) {
      near.push_back(all[i]);
    }
  }
  return near;
}

}  // namespace

std::vector<DiffLine> line_diff(std::string_view before, std::string_view after, std::size_t around) {
  auto a = lines_of(before);
  auto b = lines_of(after);
  std::vector<DiffLine> all;
  std::size_t same = 0;
  while (same < a.size() && same < b.size() && a[same] == b[same]) {
    all.push_back({Change::none, same + 1, shown(a[same])});
    ++same;
  }
  std::size_t tail = 0;
  while (same + tail < a.size() && same + tail < b.size() && a[a.size() - 1 - tail] == b[b.size() - 1 - tail]) {
    ++tail;
  }
  std::vector<std::string_view> const old_middle(a.begin() + static_cast<std::ptrdiff_t>(same),
                                                 a.end() - static_cast<std::ptrdiff_t>(tail));
  std::vector<std::string_view> const new_middle(b.begin() + static_cast<std::ptrdiff_t>(same),
                                                 b.end() - static_cast<std::ptrdiff_t>(tail));
  std::size_t i = 0;
  std::size_t j = 0;
  auto const out = [&] { all.push_back({Change::out, same + i + 1, shown(old_middle[i])}), ++i; };
  auto const in = [&] { all.push_back({Change::in, same + j + 1, shown(new_middle[j])}), ++j; };
  if ((old_middle.size() + 1) * (new_middle.size() + 1) <= most_cells) {
    Common const common(old_middle, new_middle);
    while (i < old_middle.size() && j < new_middle.size()) {
      if (old_middle[i] == new_middle[j]) {
        all.push_back({Change::none, same + j + 1, shown(new_middle[j])});
        ++i;
        ++j;
      } else if (common.at(i + 1, j) >= common.at(i, j + 1)) {
        out();
      } else {
        in();
      }
    }
  }
  while (i < old_middle.size()) {
    out();
  }
  while (j < new_middle.size()) {
    in();
  }
  for (std::size_t k = 0; k < tail; ++k) {
    std::size_t const at = b.size() - tail + k;
    all.push_back({Change::none, at + 1, shown(b[at])});
  }
  return near_changes(all, around);
}

}  // namespace wellproof
