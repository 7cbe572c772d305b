#pragma once
// One [[entry]] of a card: a setting of ours as the drive shows it.
#include <optional>
#include <string>

#include "settings/card.h"
#include "settings/card_findings.h"

namespace wellproof {

/// The entry of this key; nothing, and findings, where something is wrong with it.
std::optional<CardEntry> read_card_entry(Node const& table, std::string const& key, CardFindings& told);

}  // namespace wellproof
