// Any bytes as a site file with a curve beside it: read, and if there is a site, draw from it and write every quantity.
// Must answer, never crash. Start from examples/*.toml as the corpus.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/quantity.h"
#include "site/draw.h"
#include "site/fields.h"
#include "site/read.h"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace wellproof;
  std::string_view const all(reinterpret_cast<char const*>(data), size);
  // What stands behind a NUL is the file beside.
  auto const cut = std::min(all.find('\0'), size);
  auto const text = all.substr(0, cut);
  std::vector<Beside> beside;
  for (auto const& name : files_named(text)) {
    beside.push_back({name, std::string(all.substr(std::min(cut + 1, size)))});
  }
  auto const read = read_site(text, "fuzz.toml", beside);
  if (!read) {
    for (auto const& finding : read.error()) {
      if (wellproof::text(finding).empty()) {
        std::abort();
      }
    }
    return 0;
  }
  for (std::uint32_t index = 0; index < 3; ++index) {
    auto const drawn = draw(read->site, 1, index);
    each_field(drawn, [](Field const& field, double value) {
      if (!std::isfinite(value) || write_quantity(value, field.dimension, UnitSystem::us).empty()) {
        std::abort();
      }
    });
  }
  return 0;
}
