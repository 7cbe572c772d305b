#pragma once
// The site and what follows from it: what plan, map, run and compare begin with.
#include <optional>
#include <vector>

#include "contract/finding.h"
#include "door/request.h"
#include "plant/plant.h"
#include "regulator/regulator.h"
#include "settings/derive.h"
#include "settings/on_card.h"
#include "site/read.h"

namespace wellproof {

struct Prepared {
  SiteRead site;
  std::vector<Plant> plants;
  Derived derived;  // with what the user has given put in place; with a card, as its drive will have it
  Logic logic;
  struct OnDrive {
    Card card;
    OnCard entered;
    Settings derived;  // before they were rounded
  };
  std::optional<OnDrive> drive{};
};

Result<Prepared> prepared(Request const& request);

}  // namespace wellproof
