#pragma once
// The site and what follows from it: what plan, map, run and compare begin with.
#include <optional>
#include <vector>

#include "contract/finding.h"
#include "door/imposed.h"
#include "door/request.h"
#include "plant/plant.h"
#include "proof/prove.h"
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

/// Settings for the card's controller, before they are rounded to its steps; without a card for a plain one.
Derived derived_for(Site const& site, std::vector<Plant> const& plants, UnitSystem units,
                    std::optional<Card> const& card);

/// The same in two steps, for who tries other settings on one site: what follows from site and card, and the user's
/// settings put into that, on the drive's steps. The second takes the first's `derived` each time anew.
/// @param known what was derived from the same site and card before
Result<Prepared> groundwork(Request const& request, std::optional<Derived> known = std::nullopt);
Findings settle(Prepared& ready, std::vector<Imposed> const& imposed, UnitSystem units);

/// What a request says of its proof, under a controller; the rest as it is for a plan.
ProveOptions prove_options(Request const& request, Logic const& logic);

}  // namespace wellproof
