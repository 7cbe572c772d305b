#include "door/commands.h"
#include "door/prepared.h"
#include "sheet/visit_sheet.h"

namespace wellproof {

Answer sheet_command(Request const& request, Door::Progress const& progress) {
  auto ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  VisitSheet sheet;
  sheet.site = ready->site;
  sheet.derived = ready->derived;
  if (ready->drive) {
    sheet.card = ready->drive->card;
    sheet.on_card = ready->drive->entered;
  }
  sheet.given = request.settings ? request.settings->file : "";
  sheet.logic = ready->logic;
  sheet.units = request.units;
  auto const& site = sheet.site.site;
  auto const& settings = sheet.derived.settings;
  sheet.before = before_power(site, ready->plants, settings, sheet.logic.two_contact_switch, request.units);
  VisitOptions visit;
  visit.seed = request.seed;
  visit.draws = request.draws;
  visit.threads = request.threads;
  visit.units = request.units;
  visit.logic = sheet.logic;
  sheet.visit = acceptance_tests(site, settings, visit);
  auto options = prove_options(request, sheet.logic);
  options.progress = progress;
  options.stop_when_certain = true;
  options.insight = false;
  sheet.proof = prove(site, ready->plants, settings, options);

  Answer answer;
  answer.exit_code = sheet.proof.proven ? exit_code::fine : exit_code::not_proven;
  if (!request.html.empty()) {
    answer.files.emplace_back(request.html, visit_html(sheet));
  }
  if (!request.text.empty()) {
    answer.files.emplace_back(request.text, visit_text(sheet));
  }
  if (request.json) {
    answer.out = visit_json(sheet);
  } else if (request.text.empty()) {
    answer.out = visit_text(sheet);
  }
  return answer;
}

}  // namespace wellproof
