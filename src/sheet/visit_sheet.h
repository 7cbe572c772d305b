#pragma once
// The sheet for the visit: safety first, what is looked at before power, the values to enter, the acceptance tests with
// their bands and room for what is read, name, date and signature. On paper two pages that read well in black and white
// on a clipboard; the same as plain text and as JSON.
#include <optional>
#include <string>
#include <vector>

#include "proof/prove.h"
#include "settings/card.h"
#include "settings/derive.h"
#include "settings/on_card.h"
#include "site/read.h"
#include "visit/before_power.h"
#include "visit/visit.h"

namespace wellproof {

/// derived  the settings in force with their reasons; on a card, as the drive will have them
/// given    the file that the settings came from; empty: derived
struct VisitSheet {
  SiteRead site;
  Derived derived;
  std::string given;
  std::optional<Card> card;
  std::optional<OnCard> on_card;
  BeforePower before;
  Visit visit;
  Proof proof;
  Logic logic;
  UnitSystem units = UnitSystem::us;
};

/// At most 80 columns, without colour: it is printed or mailed.
std::string visit_text(VisitSheet const& sheet);
/// One file that needs nothing else; two pages on A4 and Letter.
std::string visit_html(VisitSheet const& sheet);
std::string visit_json(VisitSheet const& sheet);

/// Its look on paper and screen (visit_style.cc).
std::string_view visit_style();

}  // namespace wellproof
