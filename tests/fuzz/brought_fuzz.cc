// Any bytes as each of the files that a person may bring besides a site: a card, settings, readings, a history of
// stops, a step test; and as what one hand of a page gives another. Must answer, never crash. Start from examples as
// the corpus.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "door/derived_text.h"
#include "door/imposed.h"
#include "door/request.h"
#include "door/share.h"
#include "explain/history.h"
#include "fit/read_pumping_test.h"
#include "fit/readings.h"
#include "settings/card.h"
#include "site/read.h"

namespace {

constexpr char const* plain_site = R"(
[well]
static_level = "60 ft"
test_flow = "8 gpm"
test_level = "110 ft"
[pump]
setting = "140 ft"
rated_flow = "10 gpm"
[motor]
power = "1 hp"
[demand]
outlet_pressure = "40 psi"
)";

/// A finding that says nothing helps nobody.
template <class R>
void says_what_is_wrong(R const& read) {
  if (!read) {
    for (auto const& finding : read.error()) {
      if (text(finding).empty()) {
        std::abort();
      }
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace wellproof;
  static auto const site = read_site(plain_site, "plain.toml");
  if (!site) {
    std::abort();
  }
  std::string const all(reinterpret_cast<char const*>(data), size);
  constexpr std::uint32_t draws = 16;
  says_what_is_wrong(read_card(all, "fuzz.toml"));
  says_what_is_wrong(read_readings(all, "fuzz.toml", site->site));
  says_what_is_wrong(read_history(all, "fuzz.txt", wall_clock({2026, 8, 14}, 3600)));
  says_what_is_wrong(read_shares(all, draws));
  says_what_is_wrong(read_request(all));
  read_derived(all, "");
  Request with_settings;
  with_settings.settings = NamedText{"fuzz.toml", all};
  says_what_is_wrong(read_imposed(with_settings));
  PumpingTestText pumping;
  pumping.records = {{"fuzz.csv", all, ""}};
  pumping.rates = {"20 gpm"};
  pumping.casing = "6 in";
  says_what_is_wrong(read_pumping_test(pumping));
  return 0;
}
