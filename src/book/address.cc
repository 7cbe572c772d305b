#include "book/address.h"

#include <algorithm>

#include <fmt/format.h>

#include "contract/nearest.h"

namespace wellproof {
namespace {

std::string in_small_letters(std::string_view text) {
  std::string small(text);
  for (char& sign : small) {
    sign = sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
  }
  return small;
}

bool begins_with(std::string const& text, std::string const& with) {
  return text.compare(0, with.size(), with) == 0;
}

}  // namespace

std::string slug(std::string_view site_name) {
  std::string made;
  for (char const sign : in_small_letters(site_name)) {
    bool const kept = (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9');
    if (kept) {
      made += sign;
    } else if (!made.empty() && made.back() != '-') {
      made += '-';
    }
  }
  while (!made.empty() && made.back() == '-') {
    made.pop_back();
  }
  return made.empty() ? "site" : made;
}

Result<std::string> find_site(std::vector<std::string> const& names, std::string_view wanted) {
  if (std::find(names.begin(), names.end(), wanted) != names.end()) {
    return std::string(wanted);
  }
  std::string const small = in_small_letters(wanted);
  std::vector<std::string> whole;
  std::vector<std::string> begun;
  for (auto const& name : names) {
    if (slug(name) == small || in_small_letters(name) == small) {
      whole.push_back(name);
    }
    if (begins_with(slug(name), small) || begins_with(in_small_letters(name), small)) {
      begun.push_back(name);
    }
  }
  auto const& meant = whole.empty() ? begun : whole;
  if (meant.size() == 1 && !small.empty()) {
    return meant.front();
  }
  std::string const found = "\"" + std::string(wanted) + "\"";
  if (!meant.empty() && !small.empty()) {
    return tl::unexpected(Findings{
        {{"", 0, 0}, "SITE", found, fmt::format("enough to tell one: \"{}\"", fmt::join(meant, "\", \"")), ""}});
  }
  std::vector<std::string_view> const known(names.begin(), names.end());
  std::string const expected =
      names.empty() ? "a site of the book, which has none yet" : "a site of the book, as in: wellproof book list";
  return tl::unexpected(Findings{{{"", 0, 0}, "SITE", found, expected, nearest_word(wanted, known)}});
}

}  // namespace wellproof
