#include "settings/card_site.h"

#include <algorithm>
#include <string_view>

namespace wellproof {
namespace {

void known_by_card(SiteRead& read, std::string_view key) {
  auto& list = read.assumptions;
  list.erase(std::remove_if(list.begin(), list.end(), [&](Assumption const& one) { return one.key == key; }),
             list.end());
}

}  // namespace

void put_card_into(SiteRead& read, Card const& card) {
  if (card.sample_rate_hz) {
    read.site.drive.sample_rate_hz = Fixed{*card.sample_rate_hz};
    known_by_card(read, "drive.sample_rate");
  }
  auto const* const rest = card.entry("dry_run.rest");
  if (rest != nullptr && rest->step && *rest->step >= 1) {
    read.site.drive.rest_step_s = Fixed{*rest->step};
    known_by_card(read, "drive.rest_step");
  }
}

}  // namespace wellproof
