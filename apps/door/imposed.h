#pragma once
// Settings that the user gives instead of what would be derived: from the command line (KEY=VALUE) and from a file.
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "contract/finding.h"
#include "door/request.h"
#include "regulator/settings.h"

namespace wellproof {

struct Derived;

/// A key with its value: a number in SI, or the word of a choice.
struct Imposed {
  std::string key;
  std::variant<double, std::string> value;
};

/// Settings of the request; the command line comes after the file and wins. A settings file is TOML, either
/// `pressure.target = "50 psi"` or under `[pressure]`. All findings at once.
Result<std::vector<Imposed>> read_imposed(Request const& request);

/// Puts them in place of what was derived and says so in the reasons. A finding if they contradict each other.
Findings impose(std::vector<Imposed> const& imposed, Derived& derived, UnitSystem units);

}  // namespace wellproof
