#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include "door/commands.h"
#include "door/imposed.h"
#include "fit/fit_site.h"
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

double trim_of(std::vector<Imposed> const& imposed) {
  double trim_pa = 0;
  for (auto const& one : imposed) {
    trim_pa = one.key == "sensor.trim" ? std::get<double>(one.value) : trim_pa;
  }
  return trim_pa;
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

/// Settings from the narrower site. The trim found is as good as a sensor that errs by so much less.
Settings derived_anew(Site site, SiteFit const& fit, Request const& request) {
  double trim_pa = fit.sensor ? fit.sensor->trim_now_pa : 0;
  if (fit.sensor && fit.sensor->matters) {
    trim_pa = fit.sensor->trim_pa;
  }
  site.sensor.zero_error_pa = std::visit(Moved{trim_pa}, site.sensor.zero_error_pa);
  auto settings = derive(site, draw_plants(site, request.seed, request.draws), request.units).settings;
  settings.sensor_trim_pa += trim_pa;
  return settings;
}

std::vector<SettingChange> changes_between(Settings const& now, Settings const& anew) {
  constexpr double worth_telling = 0.02;
  std::vector<double> values;
  each_setting(anew, [&](SettingField const&, double value) { values.push_back(value); });
  std::vector<SettingChange> changes;
  std::size_t place = 0;
  each_setting(now, [&](SettingField const& field, double value) {
    double const other = values[place++];
    if (std::abs(other - value) > worth_telling * std::max(std::abs(value), std::abs(other))) {
      changes.push_back({std::string(field.key), field.dimension, value, other});
    }
  });
  return changes;
}

}  // namespace

Answer fit_command(Request const& request, Door::Progress const& progress) {
  auto const site = read_site(request.site.text, request.site.file, request.beside);
  auto const imposed = read_imposed(request);
  Findings findings = site ? Findings{} : site.error();
  if (!imposed) {
    findings.insert(findings.end(), imposed.error().begin(), imposed.error().end());
  }
  if (!findings.empty()) {
    return refused(findings);
  }
  auto const readings = read_readings(request.readings.text, request.readings.file, site->site);
  if (!readings) {
    return refused(readings.error());
  }
  auto before = derive(site->site, draw_plants(site->site, request.seed, request.draws), request.units);
  findings = impose(*imposed, before, request.units);
  if (!findings.empty()) {
    return refused(findings);
  }
  FittedSite fitted;
  fitted.name = site_name(*site);
  fitted.units = request.units;
  fitted.given = !imposed->empty();
  fitted.fit = fit_site(site->site, *readings, trim_of(*imposed));
  auto const narrowed = narrowed_site(request, narrowed_keys(fitted.fit, request.units), request.readings.file);
  if (!narrowed) {
    return refused(narrowed.error());
  }
  fitted.keys = narrowed->keys;
  auto const& narrower = narrowed->site.site;
  ProveOptions options;
  options.seed = request.seed;
  options.draws = request.draws;
  options.threads = request.threads;
  options.units = request.units;
  options.logic.two_contact_switch = narrower.control == ControlWay::pressure_switch;
  options.progress = progress;
  options.stop_when_certain = true;
  options.insight = false;
  fitted.proof = prove(narrower, draw_plants(narrower, request.seed, request.draws), before.settings, options);
  fitted.changes = changes_between(before.settings, derived_anew(narrower, fitted.fit, request));

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
