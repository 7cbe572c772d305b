#include "cli/book_arguments.h"

#include <algorithm>
#include <array>
#include <sstream>
#include <string_view>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "cli/units_option.h"
#include "contract/nearest.h"

namespace wellproof {
namespace {

constexpr std::array<std::string_view, 10> book_commands{"add",    "list",   "show", "diff",   "restore",
                                                         "export", "import", "lock", "unlock", "check"};

constexpr char const* lock_says =
    "A locked book is added to with its pass phrase only. That guards against a slip and a\n"
    "casual change through this program. It hides nothing: whoever has the file can read it,\n"
    "and can change it with another tool; \"wellproof book check --seals\" shows that to\n"
    "whoever knows the phrase. Nobody can tell you a forgotten one.";

Answer mistake(std::string const& command, std::string says) {
  std::replace(says.begin(), says.end(), '\n', ' ');
  return {exit_code::bad_input,
          "",
          fmt::format("wellproof: {}\nSee: wellproof book {}--help\n", says, command.empty() ? "" : command + " "),
          {}};
}

/// Adds the words of each command.
class BookWords {
 public:
  explicit BookWords(BookArguments& into) : into_(into) {}

  void everywhere(CLI::App& app) {
    app.set_help_flag("-h,--help", "Say what the command takes");
    app.add_option("--book", into_.request.book, "The book's file; else the one in your data folder")
        ->option_text("FILE");
    app.get_formatter()->column_width(30);
  }

  void units(CLI::App& app) { add_units(app, into_.request.units); }

  void add(CLI::App& app) {
    app.add_option("SITE.toml", into_.site_path, "Site file")->required()->option_text(" ");
    constexpr std::array<std::pair<EntryKind, char const*>, 4> others{
        {{EntryKind::settings, "What the drive is set to (TOML)"},
         {EntryKind::sheet, "A sheet or report, as it was handed over"},
         {EntryKind::readings, "Readings taken on site"},
         {EntryKind::history, "The drive's list of stops"}}};
    for (auto const& [each, says] : others) {
      EntryKind const kind = each;
      app.add_option_function<std::string>(
             fmt::format("--{}", word(kind)),
             [this, kind](std::string const& path) { into_.paths.emplace_back(kind, path); }, says)
          ->option_text("FILE");
    }
    who(app);
    why(app)->required();
    pass(app);
  }

  void site(CLI::App& app, bool needed) {
    auto* const option = app.add_option("SITE", into_.request.address, "Name of a site, or enough of it");
    option->option_text(" ");
    option->required(needed);
  }

  void kind(CLI::App& app) {
    app.add_option_function<std::string>(
           "--kind",
           [this](std::string const& said) {
             auto const kind = entry_kind(said);
             if (!kind || !of_a_site(*kind)) {
               throw CLI::ValidationError(
                   "--kind", "found \"" + said + "\"; expected site, settings, sheet, readings or history");
             }
             into_.request.kind = kind;
           },
           "site, settings, sheet, readings or history")
        ->option_text("KIND  [settings]");
  }

  CLI::Option* version(CLI::App& app, std::string const& name, std::optional<std::uint64_t>& into) {
    return app.add_option_function<std::string>(
        name,
        [&into, name](std::string const& said) {
          bool const digits = !said.empty() && said.size() <= 9 &&
                              said.find_first_not_of("0123456789") == std::string::npos && said != "0";
          if (!digits) {
            throw CLI::ValidationError(name, "found \"" + said + "\"; expected a whole number from 1");
          }
          into = std::stoull(said);
        },
        "Version; see: wellproof book list SITE");
  }

  void json(CLI::App& app) { app.add_flag("--json", into_.request.json, "Answer as JSON, numbers in SI"); }

  void who(CLI::App& app) {
    app.add_option("--who", into_.request.who, "Who writes it down")->option_text("NAME  [login]");
  }

  CLI::Option* why(CLI::App& app) {
    return app.add_option("--why", into_.request.why, "Why, in a line")->option_text("TEXT");
  }

  void pass(CLI::App& app) {
    app.add_option("--pass", into_.pass_path, "File with the pass phrase in its first line; - is standard input")
        ->option_text("FILE  [asks]");
  }

 private:
  BookArguments& into_;
};

/// The first word that looks like an option and is none of the command's.
std::string unknown_option(CLI::App const& command, std::vector<std::string> const& words) {
  std::vector<std::string> known;
  for (auto const* const option : command.get_options()) {
    for (auto const& name : option->get_lnames()) {
      known.push_back("--" + name);
    }
  }
  for (auto const& word : words) {
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

void say_commands(CLI::App& app, BookWords& with, BookArguments& into) {
  auto& request = into.request;
  auto* const add = app.add_subcommand("add", "Write down a site file, and settings or other files of the site");
  with.add(*add);
  auto* const list = app.add_subcommand("list", "List the sites, or what is written down about one");
  with.site(*list, false);
  with.json(*list);
  auto* const show = app.add_subcommand("show", "Show an entry");
  with.site(*show, true);
  with.kind(*show);
  with.version(*show, "--version", request.version)->option_text("N  [newest]");
  show->add_flag("--content", request.content, "Its bytes and nothing else");
  with.json(*show);
  auto* const diff = app.add_subcommand("diff", "What differs between two versions");
  with.site(*diff, true);
  with.version(*diff, "A", request.version)->required()->option_text(" ");
  with.version(*diff, "B", request.other_version)->required()->option_text(" ");
  with.kind(*diff);
  with.json(*diff);
  auto* const restore =
      app.add_subcommand("restore", "Write settings out again for a drive that lost them, and note that");
  with.site(*restore, true);
  with.version(*restore, "--version", request.version)->option_text("N  [newest]");
  restore->add_option("--to", request.target, "Settings file to write; never replaces one")
      ->required()
      ->option_text("FILE");
  with.who(*restore);
  with.why(*restore);
  with.pass(*restore);
  auto* const out = app.add_subcommand("export", "Write everything as plain files");
  out->add_option("DIR", into.folder, "Folder: a new one, or that of an earlier export")->required()->option_text(" ");
  auto* const in = app.add_subcommand("import", "Take over what an export holds and the book does not");
  in->add_option("DIR", into.folder, "Folder of an export")->required()->option_text(" ");
  with.pass(*in);
  auto* const lock = app.add_subcommand("lock", "Let nothing be added without a pass phrase");
  auto* const unlock = app.add_subcommand("unlock", "Take the pass phrase away again");
  for (auto* const each : {lock, unlock}) {
    with.who(*each);
    with.why(*each);
    with.pass(*each);
  }
  lock->footer(lock_says);
  auto* const check = app.add_subcommand("check", "Say whether every entry is as it was written");
  check->add_option("--noted", request.noted, "Newest hash of an earlier check: an entry must have it")
      ->option_text("HASH");
  check->add_flag("--seals", request.seals, "Hold the seals of a locked book against its pass phrase");
  with.pass(*check);
  check->footer(
      "Note the newest hash where the book is not, on a sheet for example: it shows later that nothing was cut off.");
  for (auto* const each : {show, diff, restore, add}) {
    with.units(*each);
  }
}

}  // namespace

BookArguments read_book_arguments(int count, char const* const* words) {
  BookArguments arguments;
  CLI::App all{"", "wellproof"};
  BookWords with(arguments);
  with.units(all);
  all.require_subcommand(1, 1);
  auto& app = *all.add_subcommand("book", "The book: sites, their settings with who, when and why, sheets, histories");
  with.everywhere(app);
  app.require_subcommand(0, 1);
  app.footer(
      "The book is one file, in your data folder unless --book names another. Nothing in it is\n"
      "ever changed or taken out. docs/book.md tells where it is and how to keep a backup.");
  say_commands(app, with, arguments);
  for (auto* const each : app.get_subcommands({})) {
    with.everywhere(*each);
  }
  std::string command;
  auto const note_command = [&] {
    for (auto* const each : app.get_subcommands()) {
      command = each->get_name();
    }
  };
  try {
    all.parse(count, words);
    note_command();
  } catch (CLI::ParseError const& error) {
    note_command();
    arguments.done = true;
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
      std::ostringstream said;
      all.exit(error, said, said);
      arguments.answer.out = said.str();
      return arguments;
    }
    std::vector<std::string> const said(words + 1, words + count);
    auto const book = std::find(said.begin(), said.end(), "book");
    auto const next = std::find_if(book == said.end() ? book : book + 1, said.end(),
                                   [](std::string const& word) { return word.rfind('-', 0) != 0; });
    if (command.empty() && next != said.end()) {
      std::string const nearest = nearest_word(*next, book_commands);
      arguments.answer =
          mistake("", fmt::format("found \"{}\"; expected one of {}{}", *next, fmt::join(book_commands, ", "),
                                  nearest.empty() ? "" : "; did you mean \"" + nearest + "\"?"));
      return arguments;
    }
    std::string const option = command.empty() ? "" : unknown_option(*app.get_subcommand(command), said);
    arguments.answer = mistake(command, option.empty() ? error.what() : option);
    return arguments;
  }
  if (command.empty()) {
    arguments.done = true;
    arguments.answer = {exit_code::bad_input, "", app.help("wellproof"), {}};
  }
  arguments.request.command = command;
  return arguments;
}

}  // namespace wellproof
