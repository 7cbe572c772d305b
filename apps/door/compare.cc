#include "door/commands.h"
#include "door/compared.h"
#include "door/imposed.h"
#include "door/prepared.h"
#include "settings/common_practice.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

/// The settings that a name stands for. A file that says only some leaves the others derived.
Result<Settings> settings_of(NamedText const& set, Prepared const& ready, UnitSystem units) {
  if (set.file == derived_set) {
    return ready.derived.settings;
  }
  if (set.file == common_practice_set) {
    return common_practice(ready.plants.front());
  }
  Request only;
  only.settings = set;
  auto const imposed = read_imposed(only);
  if (!imposed) {
    return tl::unexpected(imposed.error());
  }
  auto derived = ready.derived;
  auto const findings = impose(*imposed, derived, units);
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  return derived.settings;
}

}  // namespace

Answer compare_command(Request const& request, Door::Progress const& progress) {
  constexpr std::size_t two = 2;
  if (request.sets.size() != two) {
    return refused({{{"request", 0, 0},
                     "--settings",
                     std::to_string(request.sets.size()) + " sets",
                     "two, each a file of settings, derived or common_practice",
                     ""}});
  }
  auto const ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  Compared compared;
  compared.site_name = site_name(ready->site);
  compared.units = request.units;
  compared.logic = ready->logic;
  Findings findings;
  for (std::size_t i = 0; i < two; ++i) {
    auto const settings = settings_of(request.sets[i], *ready, request.units);
    if (settings) {
      compared.sets[i].name = request.sets[i].file;
      compared.sets[i].settings = ready->drive ? on_card(*settings, ready->drive->card).settings : *settings;
    } else {
      findings.insert(findings.end(), settings.error().begin(), settings.error().end());
    }
  }
  if (!findings.empty()) {
    return refused(findings);
  }
  auto options = prove_options(request, ready->logic);
  options.insight = false;
  for (std::size_t i = 0; i < two; ++i) {
    if (progress) {
      options.progress = [&progress, i](std::size_t done, std::size_t all) { progress(done + i * all, two * all); };
    }
    compared.sets[i].proof = prove(ready->site.site, ready->plants, compared.sets[i].settings, options);
  }
  bool const any = compared.sets[0].proof.proven || compared.sets[1].proof.proven;
  return {any ? exit_code::fine : exit_code::not_proven,
          request.json ? compared_json(compared) : compared_sheet(compared, request.colour),
          "",
          {}};
}

}  // namespace wellproof
