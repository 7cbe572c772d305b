#pragma once
// A card that has all of our settings, to be changed a piece at a time.
#include <string>
#include <string_view>

#include "regulator/settings.h"

namespace wellproof {

/// With every setting that amps guards use, plain and without ends; `change` may replace the lines of a key.
inline std::string card_text(std::string const& card = "name = \"Test drive\"", std::string const& logic = "",
                             std::string_view without = "", std::string const& more = "") {
  std::string text = "[card]\n" + card + "\n\n[logic]\n" + logic + "\n";
  Settings const none;
  each_setting(none, [&](SettingField const& field, double) {
    std::string const key(field.key);
    if (key.find("power_below") != std::string::npos || std::string(without).find(key + ";") != std::string::npos) {
      return;
    }
    std::string_view const unit = field.dimension == Dimension::pressure         ? "psi"
                                  : field.dimension == Dimension::current        ? "A"
                                  : field.dimension == Dimension::frequency      ? "Hz"
                                  : field.dimension == Dimension::ramp           ? "Hz/s"
                                  : field.dimension == Dimension::regulator_gain ? "Hz/psi"
                                                                                 : "s";
    text += "\n[[entry]]\nkey = \"" + key + "\"\nlabel = \"the " + key + "\"\nunit = \"" + std::string(unit) + "\"\n";
  });
  text +=
      "\n[[entry]]\nkey = \"permissive.sense\"\nlabel = \"P\"\nchoices = { unused = \"off\", closed_runs = \"no\", "
      "open_runs = \"nc\" }\n";
  text +=
      "\n[[entry]]\nkey = \"fault_contact.sense\"\nlabel = \"F\"\nchoices = { closes_on_stop = \"a\", "
      "opens_on_stop = \"b\" }\n";
  return text + more;
}

inline std::string entry_text(std::string const& key, std::string const& lines) {
  return "\n[[entry]]\nkey = \"" + key + "\"\nlabel = \"the " + key + "\"\n" + lines + "\n";
}

}  // namespace wellproof
