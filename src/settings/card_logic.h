#pragma once
// The table [logic] of a card: words and figures for how the drive's controller works.
#include "settings/card.h"
#include "settings/card_findings.h"

namespace wellproof {

/// Puts what the table says into the card's logic and sample rate; what is wrong with it becomes findings.
void read_card_logic(Node const& table, Card& card, CardFindings& told);

}  // namespace wellproof
