#pragma once
// Settings as JSON, as several answers have them.
#include <nlohmann/json_fwd.hpp>

#include "regulator/settings.h"

namespace wellproof {

/// Each numeric setting by its key, SI.
nlohmann::ordered_json settings_json(Settings const& settings);

}  // namespace wellproof
