#include "cli/arguments.h"

#include <algorithm>
#include <array>
#include <sstream>
#include <string_view>
#include <vector>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "cli/units_option.h"
#include "contract/nearest.h"

namespace wellproof {
namespace {

constexpr auto command_names =
    std::to_array<std::string_view>({"plan", "map", "run", "tune", "compare", "sheet", "scenarios", "check", "new",
                                     "book", "welltest", "fit", "page", "explain"});

/// Enough where nothing new is to be proven.
constexpr std::uint32_t fewer_draws = 32;

/// Draws of a cause that is not soon out of the question.
constexpr std::uint32_t explain_draws = 64;

/// The parser would let -1 and what is too large wrap around.
std::string whole_number(std::string const& word) {
  constexpr std::size_t most_digits = 19;
  bool const digits = !word.empty() && word.find_first_not_of("0123456789") == std::string::npos;
  return digits && word.size() <= most_digits ? ""
                                              : "found \"" + word + "\"; expected a whole number of at most 19 digits";
}

/// The first option that the command does not know, with the one that may have been meant.
std::string unknown_option(CLI::App const& command, int count, char const* const* words) {
  std::vector<std::string> known;
  for (auto const* const option : command.get_options()) {
    for (auto const& name : option->get_lnames()) {
      known.push_back("--" + name);
    }
  }
  for (int i = 1; i < count; ++i) {
    std::string const word(words[i]);
    std::string const name = word.substr(0, word.find('='));
    if (name.rfind("--", 0) == 0 && std::find(known.begin(), known.end(), name) == known.end()) {
      std::vector<std::string_view> const names(known.begin(), known.end());
      std::string const nearest = nearest_word(name, names);
      return fmt::format("found {}; expected one of {}{}", name, fmt::join(known, ", "),
                         nearest.empty() ? "" : "; did you mean " + nearest + "?");
    }
  }
  return "";
}

/// Adds what several commands share.
class Words {
 public:
  explicit Words(Arguments& into) : into_(into) {}

  void everywhere(CLI::App& app) {
    app.set_help_flag("-h,--help", "Say what the command takes");
    app.set_version_flag("--version", std::string("wellproof ") + WP_VERSION, "Say which version this is");
    add_units(app, into_.request.units);
  }

  void site(CLI::App& app) {
    app.add_option("SITE", into_.site_path, "Site file (TOML)")->required()->option_text(" ");
  }

  void settings(CLI::App& app) {
    app.add_option("--set", into_.request.set, "Give a setting instead of deriving it; may be repeated")
        ->option_text("KEY=VALUE")
        ->allow_extra_args(false);
    app.add_option("--settings", into_.settings_path, "File of settings to give (TOML)")->option_text("FILE");
  }

  void card(CLI::App& app) {
    app.add_option("--card", into_.card_path, "Card of the drive (TOML): its labels, steps and logic")
        ->option_text("CARD");
  }

  void chance(CLI::App& app, std::uint32_t usual = Request{}.draws) {
    app.add_option("--draws", into_.request.draws, "Draws of what is not known")
        ->check(CLI::Range(least_draws, most_draws))
        ->option_text(fmt::format("N  [{}]", usual));
    app.add_option("--seed", into_.request.seed, "Seed of the draws")->check(whole_number)->option_text("N  [1]");
  }

  void welltest(CLI::App& app) {
    auto& test = into_.request.test;
    auto const text = [&](char const* name, std::string& to, char const* says, char const* form) {
      app.add_option(name, to, says)->option_text(form);
    };
    app.add_option("FILE", into_.level_path, "Table of time and level (CSV); its head names the units, as t_min,s_m")
        ->required()
        ->option_text(" ");
    app.add_option("--rate", test.rates,
                   "What was pumped; several as \"20 gpm, 35 gpm @ 60 min\", or \"20, 35, 50 gpm\" with --step")
        ->option_text("FLOW")
        ->allow_extra_args(false);
    text("--step", test.step, "How long each rate held", "TIME");
    text("--stop", test.stop, "When pumping stopped, counted from its beginning", "TIME");
    text("--distance", into_.distance, "Of FILE's place from the pumped well; without it FILE is the pumped well",
         "LENGTH");
    app.add_option("--observed", into_.observed, "A further table and its place, fitted together; may be repeated")
        ->option_text("FILE@DISTANCE")
        ->allow_extra_args(false);
    text("--casing", test.casing, "Inside diameter of the pumped well's casing; without it what it stores is fitted",
         "DIAMETER");
    text("--bore", test.bore, "Diameter of the hole where water enters", "DIAMETER  [casing]");
    text("--storativity", test.storativity, "Where it is known; then the linear loss is fitted", "S");
    text("--static-level", test.static_level, "Depth to water at rest, for a table of depths", "LENGTH");
    text("--time-unit", test.time_unit, "Where the head names none", "UNIT");
    text("--level-unit", test.level_unit, "Where the head names none", "UNIT");
    text("--into", into_.site_path, "Write the result into the [well] of this site file", "SITE");
    json(app);
    app.add_option("--report", into_.request.report, "Write the report with its charts to this file (HTML)")
        ->option_text("FILE");
  }

  void explain(CLI::App& app) {
    auto& request = into_.request;
    site(app);
    app.add_option("--history", into_.history_path, "List of stops as the drive keeps it (free lines or CSV)")
        ->required()
        ->option_text("FILE");
    app.add_option("--readings", into_.readings_path, "What was read on site, as for fit (TOML or CSV)")
        ->option_text("FILE");
    app.add_option("--symptom", request.symptoms, "What is noticed, as \"cycles every 40 s\"; may be repeated")
        ->option_text("TEXT")
        ->allow_extra_args(false);
    app.add_option("--settings", into_.settings_path, "What is set in the drive (TOML); derived where it says nothing")
        ->option_text("FILE");
    card(app);
    app.add_option("--prior", request.prior, "A cause's share of calls beforehand; may be repeated")
        ->option_text("CAUSE=SHARE")
        ->allow_extra_args(false);
    app.add_option("--answer", request.answers, "What a check brought; may be repeated")
        ->option_text("CHECK=ANSWER")
        ->allow_extra_args(false);
    app.add_option("--now", request.now, "The time now, where the history does not say it")
        ->option_text("TIME  [the clock]");
    app.add_flag("--ask", into_.ask, "Ask for one check after the other and rank anew");
    chance(app, explain_draws);
    threads(app);
    json(app);
    app.add_option("--report", request.report, "Write the report with its chart to this file (HTML)")
        ->option_text("FILE");
  }

  void threads(CLI::App& app) {
    app.add_option("--threads", into_.request.threads,
                   "Threads to compute with; the answer is the same with any number")
        ->check(CLI::Range(1U, most_threads))
        ->option_text("N  [all]");
  }

  void json(CLI::App& app) { app.add_flag("--json", into_.request.json, "Answer as JSON, numbers in SI"); }

 private:
  Arguments& into_;
};

Answer mistake(std::string const& command, std::string says) {
  std::replace(says.begin(), says.end(), '\n', ' ');
  return {exit_code::bad_input,
          "",
          fmt::format("wellproof: {}\nSee: wellproof {}--help\n", says, command.empty() ? "" : command + " "),
          {}};
}

/// The first word that is no option, where it names no command.
std::string unknown_command(int count, char const* const* words) {
  for (int i = 1; i < count; ++i) {
    std::string const word = words[i];
    if (word.empty() || word.front() != '-') {
      bool const known = std::find(command_names.begin(), command_names.end(), word) != command_names.end();
      return known ? "" : word;
    }
    i += word == "--units" ? 1 : 0;
  }
  return "";
}

}  // namespace

Arguments read_arguments(int count, char const* const* words, unsigned processors) {
  Arguments arguments;
  Request& request = arguments.request;
  request.threads = std::clamp(processors, 1U, most_threads);
  CLI::App app{"Settings for a variable-speed drive on a private well: computed from the site, proved by simulation.",
               "wellproof"};
  app.get_formatter()->column_width(30);
  app.require_subcommand(0, 1);
  app.footer("Exit code: 0 proven or fine, 1 not proven, 2 something in the input is wrong, 3 the machine refused.");
  Words with(arguments);
  with.everywhere(app);

  auto* const plan = app.add_subcommand("plan", "Derive the settings of a site and prove them");
  with.site(*plan);
  with.settings(*plan);
  with.card(*plan);
  plan->add_option("--settings-to", request.settings_to, "Write the settings to this file, for --settings and the book")
      ->option_text("FILE");
  with.chance(*plan);
  with.threads(*plan);
  plan->add_flag("--search", request.search, "Move the settings to raise the smallest margin; takes minutes");
  plan->add_flag("--stop-early", request.stop_early,
                 "No more runs of a scenario that has failed; the verdict is the same");
  with.json(*plan);
  plan->add_option("--report", request.report, "Write the report with its charts to this file (HTML)")
      ->option_text("FILE");

  auto* const map = app.add_subcommand("map", "Steady operation over speed: currents, flow, head");
  with.site(*map);
  with.settings(*map);
  with.chance(*map);
  with.json(*map);

  auto* const run = app.add_subcommand("run", "Run one scenario on one draw and say what happens");
  with.site(*run);
  run->add_option("SCENARIO", request.scenario, "Its name, as in: wellproof scenarios")->required()->option_text(" ");
  run->add_option("--draw", request.draw, "Which draw; 0 is the middle of everything")
      ->check(CLI::Range(0U, most_draws))
      ->option_text("N  [0]");
  with.settings(*run);
  with.card(*run);
  with.chance(*run);
  run->add_option("--csv", request.csv, "Write the samples to this file, in SI")->option_text("FILE");
  with.json(*run);

  auto* const tune = app.add_subcommand("tune", "How near the regulator comes to swinging; advice where it does");
  with.site(*tune);
  tune->add_option("--swing", request.swing, "What the gauge was seen to swing by, top to bottom, water drawn evenly")
      ->option_text("PRESSURE");
  tune->add_option("--period", request.period, "Time from one swing to the next")->option_text("TIME");
  with.settings(*tune);
  with.chance(*tune, fewer_draws);
  with.json(*tune);

  auto* const compare = app.add_subcommand("compare", "Prove two sets of settings on the same draws, side by side");
  with.site(*compare);
  compare
      ->add_option("--settings", arguments.set_paths,
                   "A file of settings (TOML), derived or common_practice; given twice  [derived, common_practice]")
      ->option_text("SET")
      ->allow_extra_args(false);
  with.card(*compare);
  with.chance(*compare);
  with.threads(*compare);
  with.json(*compare);

  auto* const sheet = app.add_subcommand("sheet", "Write the sheet for the visit: safety, values, acceptance tests");
  with.site(*sheet);
  with.card(*sheet);
  sheet->add_option("--set", request.set, "Give a setting instead of deriving it; may be repeated")
      ->option_text("KEY=VALUE")
      ->allow_extra_args(false);
  sheet->add_option("--settings", arguments.settings_path, "File of the settings in force (TOML), or derived")
      ->option_text("SET  [derived]");
  sheet->add_option("--html", request.html, "Write it to this file as two pages to print (HTML)")->option_text("FILE");
  sheet->add_option("--text", request.text, "Write it to this file as plain text, instead of showing it")
      ->option_text("FILE");
  with.chance(*sheet);
  with.threads(*sheet);
  with.json(*sheet);

  app.add_subcommand("scenarios", "List what a plan is tried on");

  auto* const check = app.add_subcommand("check", "Say what is wrong with a site file, and what it leaves out");
  with.site(*check);

  auto* const fresh = app.add_subcommand("new", "Write a commented site file to start from");
  fresh->add_option("FILE", request.starter, "File to write; never replaces one")->required()->option_text(" ");

  // Its words are read by cli/book_arguments.cc; it stands here to be listed.
  app.add_subcommand("book", "Keep sites and their settings, with who, when and why");

  auto* const fit = app.add_subcommand("fit", "Narrow a site by what was read on it; do its settings still stand?");
  with.site(*fit);
  fit->add_option("READINGS", arguments.readings_path, "What was read (TOML, or CSV with the same keys as its head)")
      ->required()
      ->option_text(" ");
  with.settings(*fit);
  with.card(*fit);
  with.chance(*fit, fewer_draws);
  fit->add_option("--threads", request.threads, "Threads to compute with; the answer is the same with any number")
      ->check(CLI::Range(1U, most_threads))
      ->option_text("N  [all]");
  fit->add_option("--into", request.into, "Write the narrower site to this file; may be SITE itself")
      ->option_text("FILE");
  fit->add_option("--report", request.report, "Write the report with its charts to this file (HTML)")
      ->option_text("FILE");
  with.json(*fit);

  with.explain(
      *app.add_subcommand("explain", "Rank the causes behind a history of stops, and say what to look at next"));

  with.welltest(*app.add_subcommand("welltest", "Fit a pumping test: transmissivity, storativity, well loss"));

  // Its words are read by cli/page.cc.
  app.add_subcommand("page", "The whole job in a browser of this machine, with no network");

  for (auto* const each : app.get_subcommands({})) {
    with.everywhere(*each);
    each->get_formatter()->column_width(30);
  }

  std::string command;
  try {
    app.parse(count, words);
    for (auto* const each : app.get_subcommands()) {
      command = each->get_name();
    }
  } catch (CLI::ParseError const& error) {
    for (auto* const each : app.get_subcommands()) {
      command = each->get_name();
    }
    arguments.done = true;
    std::string const unknown = unknown_command(count, words);
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
      std::ostringstream said;
      app.exit(error, said, said);
      arguments.answer.out = said.str();
    } else if (!unknown.empty()) {
      std::string const nearest = nearest_word(unknown, command_names);
      arguments.answer =
          mistake("", fmt::format("found \"{}\"; expected a command: {}{}", unknown, fmt::join(command_names, ", "),
                                  nearest.empty() ? "" : "; did you mean \"" + nearest + "\"?"));
    } else {
      std::string const option = command.empty() ? "" : unknown_option(*app.get_subcommand(command), count, words);
      arguments.answer = mistake(command, option.empty() ? error.what() : option);
    }
    return arguments;
  }
  if (command.empty()) {
    arguments.done = true;
    arguments.answer = {exit_code::bad_input, "", app.help(), {}};
    return arguments;
  }
  request.command = command;
  if ((command == "fit" || command == "tune") && app.get_subcommand(command)->count("--draws") == 0) {
    request.draws = fewer_draws;
  }
  if (command == "explain" && app.get_subcommand("explain")->count("--draws") == 0) {
    request.draws = explain_draws;
  }
  arguments.has_site = command != "scenarios" && command != "new";
  if (command == "welltest") {
    arguments.has_site = !arguments.site_path.empty();
  }
  if (command == "new" && request.starter.empty()) {
    arguments.done = true;
    arguments.answer = mistake(command, "FILE: found an empty name; expected a name");
  }
  return arguments;
}

}  // namespace wellproof
