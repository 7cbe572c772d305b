#pragma once
// What a card says of the drive takes the place of what was assumed of it.
#include "settings/card.h"
#include "site/read.h"

namespace wellproof {

/// How often the controller acts, the steps in which it takes its rest, and no assumption where the card says it.
void put_card_into(SiteRead& read, Card const& card);

}  // namespace wellproof
