#include "sheet/settings_file.h"

#include <fmt/format.h>

#include "sheet/layout.h"
#include "sheet/words.h"

namespace wellproof {

std::string settings_file(Plan const& plan) {
  std::string out = fmt::format("# Settings for {}.\n", visible(site_name(plan.site)));
  out += fmt::format("# {} over {} draws, seed {}.\n", verdict_word(plan.proof), plan.proof.draws, plan.proof.seed);
  if (plan.drive) {
    out += fmt::format("# As the drive takes them: {}. What it does not have is left out.\n",
                       visible(plan.drive->card.name));
  }
  auto const lines = setting_lines(plan.derived, plan.units);
  for (auto const& line : lines) {
    auto const field = setting_field(line.key);
    std::string value;
    if (field) {
      value = write_quantity_exactly(line.value, field->dimension, plan.units);
    } else {
      auto const& settings = plan.derived.settings;
      value = line.key == permissive_key ? word(settings.permissive_sense) : word(settings.fault_contact_sense);
    }
    out += fmt::format("{} = \"{}\"\n", line.key, value);
  }
  return out;
}

}  // namespace wellproof
