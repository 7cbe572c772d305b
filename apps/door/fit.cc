#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>

#include "door/commands.h"
#include "door/prepared.h"
#include "fit/fit_site.h"
#include "settings/card_site.h"
#include "settings/on_card.h"
#include "sheet/site_fit.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

/// The site's text with the keys in it, and what it reads as. A key that cannot be put there, or that the rest of the
/// file contradicts, is left as it was.
struct Narrowed {
  std::vector<SiteKey> keys;
  std::string text;
  SiteRead site;
};

Result<Narrowed> narrowed_site(Request const& request, std::vector<SiteKey> keys, std::string const& readings_file) {
  for (;;) {
    auto const written = with_site_keys(request.site.text, request.site.file, keys, "from readings " + readings_file);
    Findings findings = written ? Findings{} : written.error();
    if (written) {
      auto read = read_site(*written, request.site.file, request.beside);
      if (read) {
        return Narrowed{keys, *written, *read};
      }
      findings = read.error();
    }
    auto const named = [&](SiteKey const& each) {
      return std::any_of(findings.begin(), findings.end(), [&](Finding const& finding) {
        return finding.key == each.key || each.key.rfind(finding.key + ".", 0) == 0;
      });
    };
    auto const kept = std::remove_if(keys.begin(), keys.end(), named);
    if (kept == keys.end()) {
      return tl::unexpected(findings);
    }
    keys.erase(kept, keys.end());
  }
}

bool given(Derived const& derived, std::string_view key) {
  return std::any_of(derived.reasons.begin(), derived.reasons.end(),
                     [&](SettingReason const& one) { return one.imposed && (key.empty() || one.key == key); });
}

/// The range moved along.
struct Moved {
  double by;
  Range operator()(Fixed const& range) const { return Fixed{range.value + by}; }
  Range operator()(Normal const& range) const { return Normal{range.mean + by, range.half_width_95}; }
  Range operator()(Even const& range) const { return Even{range.low + by, range.high + by}; }
  Range operator()(Triangular const& range) const {
    return Triangular{range.low + by, range.mode + by, range.high + by};
  }
};

/// Settings from the narrower site. The trim found is as good as a sensor that errs by so much less; where the drive
/// has none, what it holds has to allow for the error.
Settings derived_anew(Site site, SiteFit const& fit, Request const& request, std::optional<Card> const& card) {
  bool const can_trim = !card || !card->lacking("sensor.trim");
  double trim_pa = fit.sensor && can_trim ? fit.sensor->trim_now_pa : 0;
  if (fit.sensor && fit.sensor->matters && can_trim) {
    trim_pa = fit.sensor->trim_pa;
  }
  site.sensor.zero_error_pa = std::visit(Moved{trim_pa}, site.sensor.zero_error_pa);
  auto const plants = draw_plants(site, request.seed, request.draws);
  auto settings = derived_for(site, plants, request.units, card).settings;
  settings.sensor_trim_pa += trim_pa;
  return settings;
}

constexpr double worth_telling = 0.02;

bool differs(double now, double anew) {
  return std::abs(anew - now) > worth_telling * std::max(std::abs(now), std::abs(anew));
}

std::vector<SettingChange> changes_between(Settings const& now, Settings const& anew, UnitSystem units) {
  std::vector<double> values;
  each_setting(anew, [&](SettingField const&, double value) { values.push_back(value); });
  std::vector<SettingChange> changes;
  std::size_t place = 0;
  each_setting(now, [&](SettingField const& field, double value) {
    double const other = values[place++];
    if (differs(value, other)) {
      std::string const key(field.key);
      changes.push_back({.key = key,
                         .now = value,
                         .anew = other,
                         .label = key,
                         .now_text = setting_text(field, value, units),
                         .anew_text = setting_text(field, other, units)});
    }
  });
  return changes;
}

/// The same in the card's order, as the drive shows it: where it has steps, those tell what differs.
std::vector<SettingChange> changes_on(Card const& card, OnCard const& now, OnCard const& anew) {
  std::vector<SettingChange> changes;
  for (std::size_t i = 0; i < card.entries.size(); ++i) {
    auto const& entry = card.entries[i];
    auto const& is = now.entries[i];
    auto const& would_be = anew.entries[i];
    bool const told = entry.step || entry.is_choice() || entry.shown != ShownAs::itself;
    if (is.text != would_be.text && (told || differs(is.entered, would_be.entered))) {
      changes.push_back({.key = entry.key,
                         .now = is.entered,
                         .anew = would_be.entered,
                         .label = entry.label.empty() ? entry.key : entry.label,
                         .where = entry.where,
                         .now_text = is.text,
                         .anew_text = would_be.text});
    }
  }
  return changes;
}

}  // namespace

Answer fit_command(Request const& request, Door::Progress const& progress) {
  auto const ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  auto const readings = read_readings(request.readings.text, request.readings.file, ready->site.site);
  if (!readings) {
    return refused(readings.error());
  }
  auto const& before = ready->derived;
  FittedSite fitted;
  fitted.name = site_name(ready->site);
  fitted.units = request.units;
  fitted.given = given(before, "");
  if (ready->drive) {
    fitted.card = ready->drive->card;
  }
  fitted.fit =
      fit_site(ready->site.site, *readings, given(before, "sensor.trim") ? before.settings.sensor_trim_pa : 0.0);
  auto narrowed = narrowed_site(request, narrowed_keys(fitted.fit, request.units), request.readings.file);
  if (!narrowed) {
    return refused(narrowed.error());
  }
  fitted.keys = narrowed->keys;
  if (fitted.card) {
    put_card_into(narrowed->site, *fitted.card);
  }
  auto const& narrower = narrowed->site.site;
  auto options = prove_options(request, ready->logic);
  options.progress = progress;
  options.stop_when_certain = true;
  options.insight = false;
  fitted.proof = prove(narrower, draw_plants(narrower, request.seed, request.draws), before.settings, options);
  if (!fitted.proof.proven) {
    options.progress = {};
    fitted.proof_before = prove(ready->site.site, ready->plants, before.settings, options);
  }
  auto const anew = derived_anew(narrower, fitted.fit, request, fitted.card);
  fitted.changes = fitted.card ? changes_on(*fitted.card, ready->drive->entered, on_card(anew, *fitted.card))
                               : changes_between(before.settings, anew, request.units);

  Answer answer;
  if (!request.into.empty()) {
    fitted.into = request.into;
    answer.files.emplace_back(request.into, narrowed->text);
  }
  if (!request.report.empty()) {
    answer.files.emplace_back(request.report, fit_report(fitted));
  }
  answer.exit_code = fitted.settings_stand() ? exit_code::fine : exit_code::not_proven;
  answer.out = request.json ? fit_json(fitted) : fit_sheet(fitted, request.colour);
  return answer;
}

}  // namespace wellproof
