#include "settings/card.h"

#include <algorithm>

namespace wellproof {

CardEntry const* Card::entry(std::string_view key) const {
  auto const at = std::find_if(entries.begin(), entries.end(), [&](CardEntry const& one) { return one.key == key; });
  return at == entries.end() ? nullptr : &*at;
}

bool Card::lacking(std::string_view key) const {
  return std::find(lacks.begin(), lacks.end(), key) != lacks.end();
}

}  // namespace wellproof
