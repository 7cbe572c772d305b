#include "example.h"

#include <chrono>
#include <ctime>
#include <fstream>
#include <sstream>

#include "settings/derive.h"
#include "site/read.h"

namespace wellproof {
namespace {

std::string text_of(std::string const& name) {
  std::ifstream in(std::string(WP_SOURCE_DIR) + "/examples/" + name, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

Example example(std::string const& name, std::uint32_t draws) {
  auto const text = text_of(name);
  std::vector<Beside> beside;
  for (auto const& file : files_named(text)) {
    beside.push_back({file, text_of(file)});
  }
  Example made;
  if (auto const read = read_site(text, name, beside)) {
    made.site = read->site;
    made.plants = draw_plants(made.site, 1, draws);
    made.settings = derive(made.site, made.plants, UnitSystem::us).settings;
  }
  return made;
}

Scenario ten_minutes_of(double duration_s, Settings const& settings) {
  Scenario s;
  s.name = "ten_minutes";
  s.duration_s = duration_s;
  s.start = {.tee_pressure_pa = settings.pressure_target_pa, .after_power_up = false};
  auto const add = [&](double from_s, double to_s, double opening) {
    for (auto const& changes : {ramp(Act::outlet_opening, outlet::house, from_s, from_s + 0.5, 0, opening),
                                ramp(Act::outlet_opening, outlet::house, to_s, to_s + 0.5, opening, 0)}) {
      s.script.insert(s.script.end(), changes.begin(), changes.end());
    }
  };
  s.script.push_back({.time_s = 0, .act = Act::outlet_opening, .outlet = outlet::leak, .value = 0});
  add(30, 270, 0.5);
  add(300, 400, 0.3);
  return s;
}

double wall_s() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

double thread_s() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

}  // namespace wellproof
