#pragma once
// The settings of a plan as one drive shows them: to stand in front of it with.
#include <string>

#include "sheet/layout.h"
#include "sheet/plan.h"

namespace wellproof {

/// Where rounding takes a margin below zero, and what the drive lacks, one sentence each. Empty without a card.
std::vector<std::string> rounding_says(Plan const& plan);
std::vector<std::string> lacking_says(Plan const& plan);

/// For the terminal: what to enter, in the card's order; what was moved and why; what is lacking.
std::string card_sheet(Plan const& plan, Paint const& paint);
/// The same for the report.
std::string card_report(Plan const& plan);

}  // namespace wellproof
