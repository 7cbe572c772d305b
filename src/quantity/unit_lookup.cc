#include "quantity/unit_lookup.h"

#include <vector>

#include "contract/nearest.h"
#include "quantity/clean_text.h"

namespace wellproof {
namespace {

struct Spelling {
  std::string plain;
  std::string folded;
  std::string_view as_listed;
  Unit const* unit;
};

std::string folded(std::string_view plain) {
  std::string lower(plain);
  for (char& letter : lower) {
    if (letter >= 'A' && letter <= 'Z') {
      letter = static_cast<char>(letter - 'A' + 'a');
    }
  }
  return lower;
}

std::vector<Spelling> const& spellings() {
  static std::vector<Spelling> const all = [] {
    std::vector<Spelling> made;
    for (Unit const& unit : units()) {
      for (std::string_view listed : unit.spellings) {
        std::string plain = plain_spelling(listed);
        made.push_back({plain, folded(plain), listed, &unit});
      }
    }
    return made;
  }();
  return all;
}

// Where milli and mega are both in use, "mW" and "MW" must not be taken for each other.
bool has_prefixes(Dimension dimension) {
  switch (dimension) {
    case Dimension::frequency:
    case Dimension::pressure:
    case Dimension::power:
    case Dimension::voltage:
    case Dimension::current:
    case Dimension::resistance:
      return true;
    default:
      return false;
  }
}

Unit const* exact_unit(std::string_view plain, Dimension dimension) {
  for (Spelling const& spelling : spellings()) {
    if (spelling.unit->dimension == dimension && spelling.plain == plain) {
      return spelling.unit;
    }
  }
  return nullptr;
}

}  // namespace

Unit const* find_unit(std::string_view plain, Dimension dimension) {
  if (plain.empty()) {
    return nullptr;
  }
  if (Unit const* unit = exact_unit(plain, dimension)) {
    return unit;
  }
  std::string const lower = folded(plain);
  Unit const* only = nullptr;
  for (Spelling const& spelling : spellings()) {
    if (spelling.unit->dimension != dimension || spelling.folded != lower) {
      continue;
    }
    bool const prefix_turned =
        has_prefixes(dimension) && lower.front() == 'm' && plain.front() != spelling.plain.front();
    if (prefix_turned || (only != nullptr && only != spelling.unit)) {
      return nullptr;
    }
    only = spelling.unit;
  }
  return only;
}

std::string_view dimension_of_unit(std::string_view plain) {
  if (folded(plain) == "awg") {
    return "a wire size";
  }
  for (Dimension dimension : all_dimensions) {
    if (exact_unit(plain, dimension) != nullptr) {
      return name(dimension);
    }
  }
  for (Dimension dimension : all_dimensions) {
    if (find_unit(plain, dimension) != nullptr) {
      return name(dimension);
    }
  }
  return {};
}

std::string nearest_unit(std::string_view plain, Dimension dimension) {
  std::vector<std::string_view> known;
  std::vector<std::string_view> as_listed;
  for (Spelling const& spelling : spellings()) {
    if (spelling.unit->dimension == dimension) {
      known.push_back(spelling.plain);
      as_listed.push_back(spelling.as_listed);
    }
  }
  std::string const nearest = nearest_word(plain, known);
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (!nearest.empty() && known[i] == nearest) {
      return std::string(as_listed[i]);
    }
  }
  return {};
}

}  // namespace wellproof
