#include "door/prepared.h"

#include <algorithm>
#include <utility>

#include "settings/card_site.h"
#include "site/draw.h"

namespace wellproof {
namespace {

/// What a drive does not have is no setting of the plan; its reason says what that leaves.
void leave_out_lacking(OnCard const& entered, Derived& derived) {
  for (auto const& lacking : entered.lacking) {
    auto& keys = derived.not_on_drive;
    if (std::find(keys.begin(), keys.end(), lacking.key) == keys.end()) {
      keys.push_back(lacking.key);
    }
    for (auto& reason : derived.reasons) {
      if (reason.key == lacking.key) {
        reason.feasible = true;
        reason.because = "The drive has no such setting: " + lacking.unguarded + ".";
        reason.stands_in_the_way.clear();
        reason.would_change_it.clear();
      }
    }
  }
}

}  // namespace

// Anew where the drive takes other bounds than were derived, since guards, fill and sleep are derived from those.
Derived derived_for(Site const& site, std::vector<Plant> const& plants, UnitSystem units,
                    std::optional<Card> const& card) {
  if (!card) {
    return derive(site, plants, units);
  }
  auto derived = derive(site, plants, units, card->logic);
  auto const first = derived.settings;
  auto const entered = on_card(first, *card).settings;
  Bounds const bounds{.target_pa = entered.pressure_target_pa,
                      .full_scale_pa = entered.sensor_full_scale_pa,
                      .current_limit_a = entered.motor_current_limit_a,
                      .floor_hz = entered.speed_floor_hz,
                      .ceiling_hz = entered.speed_ceiling_hz};
  if (bounds == bounds_of(first)) {
    return derived;
  }
  derived = derive(site, plants, units, card->logic, bounds);
  put_bounds(derived.settings, bounds_of(first));
  return derived;
}

Result<Prepared> groundwork(Request const& request, std::optional<Derived> known) {
  auto site = read_site(request.site.text, request.site.file, request.beside);
  Findings findings = site ? Findings{} : site.error();
  std::optional<Card> card;
  if (request.card) {
    if (auto const read = read_card(request.card->text, request.card->file)) {
      card = *read;
    } else {
      findings.insert(findings.end(), read.error().begin(), read.error().end());
    }
  }
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  Prepared ready;
  ready.site = std::move(*site);
  if (card) {
    put_card_into(ready.site, *card);
  }
  ready.plants = draw_plants(ready.site.site, request.seed, request.draws);
  ready.derived = known ? std::move(*known) : derived_for(ready.site.site, ready.plants, request.units, card);
  if (card) {
    ready.drive = Prepared::OnDrive{*card, {}, {}};
  }
  return ready;
}

Findings settle(Prepared& ready, std::vector<Imposed> const& imposed, UnitSystem units) {
  auto findings = impose(imposed, ready.derived, units);
  if (!findings.empty()) {
    return findings;
  }
  if (ready.drive) {
    auto& drive = *ready.drive;
    drive.derived = ready.derived.settings;
    drive.entered = on_card(drive.derived, drive.card);
    ready.derived.settings = drive.entered.settings;
    ready.logic = drive.entered.logic;
    leave_out_lacking(drive.entered, ready.derived);
  }
  ready.logic.two_contact_switch = ready.site.site.control == ControlWay::pressure_switch;
  return {};
}

Result<Prepared> prepared(Request const& request) {
  auto const imposed = read_imposed(request);
  auto ready = groundwork(request);
  Findings findings = ready ? Findings{} : ready.error();
  if (!imposed) {
    findings.insert(findings.end(), imposed.error().begin(), imposed.error().end());
  }
  if (findings.empty()) {
    findings = settle(*ready, *imposed, request.units);
  }
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  return ready;
}

ProveOptions prove_options(Request const& request, Logic const& logic) {
  ProveOptions options;
  options.seed = request.seed;
  options.draws = request.draws;
  options.threads = request.threads;
  options.units = request.units;
  options.logic = logic;
  return options;
}

}  // namespace wellproof
