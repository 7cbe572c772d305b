// The commands of the book as a transport uses them: texts and a pass phrase in, an answer and files out.
#include "clerk/clerk.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "unit/book/book_files.h"
#include "unit/site/site_text.h"

namespace wellproof {
namespace {

using book_files::Folder;
using Json = nlohmann::json;

std::string site_of(std::string const& name) {
  return "[site]\nname = \"" + name + "\"\n" + site_text::least();
}

constexpr char const* settings_one =
    "[speed]\nfloor = \"38 Hz\"\nceiling = \"60 Hz\"\n[pressure]\ntarget = \"50 psi\"\n";
constexpr char const* settings_two =
    "[permissive]\nsense = \"closed_runs\"\n[pressure]\ntarget = \"52 psi\"\n[speed]\nfloor = \"38.001 Hz\"\n";

/// A book in a folder, and somebody who asks it.
class Asking {
 public:
  Answer ask(BookRequest request) {
    request.book = folder_ / "b";
    request.who = "R. Installer";
    request.at = "2031-05-14T09:30:00Z";
    Surroundings with;
    with.read = [this](std::string const& name) {
      auto const at = files.find(name);
      return at == files.end() ? std::nullopt : std::optional(at->second);
    };
    with.write = [this](std::string const& name, std::string const& bytes) -> std::optional<Answer> {
      files[name] = bytes;
      return std::nullopt;
    };
    with.pass_phrase = [this](bool) { return Result<std::string>(phrase); };
    return ask_book(request, with);
  }

  Answer add(std::string const& name, std::string const& settings = "") {
    BookRequest request;
    request.command = "add";
    request.site = {"a/mine.toml", site_of(name)};
    request.why = "first start";
    if (!settings.empty()) {
      request.files = {{EntryKind::settings, {"a/set.toml", settings}}};
    }
    return ask(request);
  }

  Answer about(std::string const& command, std::string const& address, std::optional<std::uint64_t> version = {},
               std::optional<std::uint64_t> other = {}, bool json = false) {
    BookRequest request;
    request.command = command;
    request.address = address;
    request.version = version;
    request.other_version = other;
    request.json = json;
    request.target = "again.toml";
    return ask(request);
  }

  std::map<std::string, std::string> files;
  std::string phrase = "four words are best";
  std::string book() const { return folder_ / "b"; }

 private:
  Folder folder_;
};

TEST(Clerk, WritesNothingDownThatItsReadersRefuse) {
  Asking asking;
  auto const wrong = asking.add("Alder", "[pressure]\ntarget = 50\n");
  EXPECT_EQ(wrong.exit_code, exit_code::bad_input);
  EXPECT_NE(wrong.err.find("a/set.toml:2:10: pressure.target"), std::string::npos) << wrong.err;
  EXPECT_EQ(asking.add("", settings_one).exit_code, exit_code::bad_input);
  EXPECT_EQ(asking.add("Alder", "# none\n").exit_code, exit_code::bad_input);
  EXPECT_FALSE(std::filesystem::exists(asking.book()));
  EXPECT_EQ(asking.about("list", "").exit_code, exit_code::bad_input);
}

TEST(Clerk, AddsWhatIsNewAndTellsWhatIsNot) {
  Asking asking;
  EXPECT_EQ(asking.add("Alder", settings_one).out,
            "Alder: site, version 1: added.\nAlder: settings, version 1: added.\n");
  auto const again = asking.add("Alder", settings_two).out;
  EXPECT_NE(again.find("site as in the newest version; nothing added"), std::string::npos) << again;
  EXPECT_NE(again.find("settings, version 2: added"), std::string::npos) << again;
  auto const spelled = asking.add("ALDER!", settings_one);
  EXPECT_EQ(spelled.exit_code, exit_code::bad_input);
  EXPECT_NE(spelled.err.find("did you mean \"Alder\"?"), std::string::npos) << spelled.err;
}

TEST(Clerk, ComparesSettingsKeyByKey) {
  Asking asking;
  asking.add("Alder", settings_one);
  asking.add("Alder", settings_two);
  auto const lines = asking.about("diff", "al", 1, 2).out;
  EXPECT_NE(lines.find("50 psi  ->  52 psi"), std::string::npos) << lines;
  EXPECT_NE(lines.find("38 Hz  ->  38.001 Hz"), std::string::npos) << "digits where four look alike\n" << lines;
  EXPECT_NE(lines.find("60 Hz  ->  not given"), std::string::npos) << lines;
  EXPECT_NE(lines.find("not given  ->  closed_runs"), std::string::npos) << lines;
  auto const changes = Json::parse(asking.about("diff", "al", 1, 2, true).out)["changes"];
  ASSERT_EQ(changes.size(), 4U);
  EXPECT_EQ(changes[0]["key"], "pressure.target");
  EXPECT_NEAR(changes[0]["to"]["value"].get<double>(), 52 * 6894.757, 0.1);  // psi in Pa: NIST SP 811, appendix B.8
  EXPECT_EQ(asking.about("diff", "al", 2, 2).out, "No difference.\n");
  EXPECT_EQ(asking.about("diff", "al", 1, 3).exit_code, exit_code::bad_input);
}

TEST(Clerk, RestoresAVersionAndNotesIt) {
  Asking asking;
  asking.add("Alder", settings_one);
  asking.add("Alder", settings_two);
  auto const restored = asking.about("restore", "alder", 1);
  EXPECT_EQ(restored.exit_code, exit_code::fine);
  EXPECT_EQ(asking.files["again.toml"], settings_one);
  EXPECT_LT(restored.out.find("pressure.target"), restored.out.find("speed.floor")) << "in the order of entry";
  auto const entries = Json::parse(asking.about("list", "alder", {}, {}, true).out)["entries"];
  EXPECT_EQ(entries.back()["version"], 3);
  EXPECT_EQ(entries.back()["why"], "restored version 1");
  EXPECT_EQ(Json::parse(asking.about("show", "alder", {}, {}, true).out)["content"], settings_one);
}

TEST(Clerk, AsksForThePhraseOfALockedBookAndReadsWithout) {
  Asking asking;
  asking.add("Alder", settings_one);
  asking.phrase = "short";
  EXPECT_EQ(asking.about("lock", "").exit_code, exit_code::bad_input);
  asking.phrase = "four words are best";
  EXPECT_EQ(asking.about("lock", "").exit_code, exit_code::fine);
  EXPECT_EQ(asking.about("lock", "").exit_code, exit_code::bad_input);
  asking.phrase = "another phrase";
  for (auto const* const command : {"restore", "unlock"}) {
    EXPECT_EQ(asking.about(command, "alder").exit_code, exit_code::bad_input) << command;
  }
  EXPECT_EQ(asking.add("Alder", settings_two).exit_code, exit_code::bad_input);
  EXPECT_TRUE(asking.files.empty()) << "nothing is written before the phrase is right";
  EXPECT_EQ(asking.about("show", "alder").exit_code, exit_code::fine);
  EXPECT_NE(asking.about("list", "").out.find("The book is locked."), std::string::npos);
  asking.phrase = "four words are best";
  EXPECT_EQ(asking.add("Alder", settings_two).exit_code, exit_code::fine);
  EXPECT_EQ(asking.about("unlock", "").exit_code, exit_code::fine);
}

TEST(Clerk, ExportsWhatAnotherBookTakes) {
  Asking asking;
  asking.add("Alder", settings_one);
  asking.add("Birch");
  EXPECT_EQ(asking.about("export", "").exit_code, exit_code::fine);
  EXPECT_EQ(asking.files.at("alder/site-1/site.toml"), site_of("Alder"));
  Asking other;
  other.files = asking.files;
  EXPECT_NE(other.about("import", "").out.find("3 entries added"), std::string::npos);
  other.files.clear();
  other.about("export", "");
  EXPECT_EQ(other.files, asking.files);
  other.files["alder/settings-1.toml"] += "#";
  auto const touched = other.about("import", "");
  EXPECT_EQ(touched.exit_code, exit_code::bad_input);
  EXPECT_NE(touched.err.find("alder/settings-1.toml"), std::string::npos) << touched.err;
}

TEST(Clerk, ShowsNothingThatMovesATerminal) {
  Asking asking;
  BookRequest request;
  request.command = "add";
  request.site = {"mine.toml", site_of("Alder")};
  request.why = "first start";
  request.files = {{EntryKind::sheet, {"visit.txt", "dry \x1B[2J run\n"}}};
  ASSERT_EQ(asking.ask(request).exit_code, exit_code::fine);
  request.command = "show";
  request.address = "alder";
  request.kind = EntryKind::sheet;
  EXPECT_EQ(asking.ask(request).out.find('\x1B'), std::string::npos);
  request.content = true;
  EXPECT_EQ(asking.ask(request).out, "dry \x1B[2J run\n");
}

TEST(Clerk, WritesDownReadingsAndAHistoryOnlyIfTheirReadersUnderstandThem) {
  Asking asking;
  BookRequest request;
  request.command = "add";
  request.site = {"mine.toml", site_of("Alder")};
  request.why = "first visit";
  request.files = {{EntryKind::readings, {"visit.toml", "[[reading]]\ncondition = \"rest\"\nlevle = \"44 ft\"\n"}},
                   {EntryKind::history, {"stops.txt", "dry run, 3h ago\nit hums somehow\n"}}};
  auto const refused = asking.ask(request);
  EXPECT_EQ(refused.exit_code, exit_code::bad_input);
  EXPECT_NE(refused.err.find("visit.toml:3"), std::string::npos) << refused.err;
  EXPECT_NE(refused.err.find("stops.txt:2"), std::string::npos) << refused.err;
  request.files = {{EntryKind::readings, {"visit.toml", "[[reading]]\ncondition = \"rest\"\nlevel = \"44 ft\"\n"}},
                   {EntryKind::history, {"stops.txt", "dry run, 3h ago\nyesterday 7pm: low volts\n"}},
                   {EntryKind::sheet, {"visit.html", "<!DOCTYPE html><p>as handed over"}}};
  auto const kept = asking.ask(request);
  EXPECT_EQ(kept.exit_code, exit_code::fine) << kept.err;
  EXPECT_NE(kept.out.find("history, version 1: added"), std::string::npos) << kept.out;
}

}  // namespace
}  // namespace wellproof
