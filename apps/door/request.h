#pragma once
// What is asked of the program, and how it goes as bytes: JSON with the command, the site's text and the options. The
// door opens no file, so whatever it has to read comes along, and whatever it has to write goes back.
//
//   {"command": "plan",
//    "site": {"file": "mine.toml", "text": "…", "beside": [{"name": "curve.csv", "text": "…"}]},
//    "options": {"set": ["pressure.target=50 psi"], "settings": {"file": "…", "text": "…"},
//                "card": {"file": "…", "text": "…"}, "settings_to": "set.toml", "draws": 128, "seed": 1,
//                "threads": 2, "json": true, "report": "out.html", "units": "metric"}}
//
// A proof that several hands make is asked with "command": "share" for some of its draws each, with the options "first"
// and "count"; what they answer, joined, goes into plan's option "made" (share.h). "derived" is the file that "derive"
// answers with: who gets it need not derive again (workshop.h).
//
// A pumping test is asked with "command": "welltest" and
//   {"test": {"records": [{"file": "a.csv", "text": "…", "distance": "30 m"}], "rates": ["788 m3/d"], "step": "",
//             "stop": "", "casing": "", "bore": "", "static_level": "", "storativity": "", "time_unit": "",
//             "level_unit": ""}}
// With a site its result is written into the site's text, which goes back as a file.
//
// Readings are fitted with "command": "fit", a site and
//   {"readings": {"file": "first_visit.toml", "text": "…"}, "options": {"into": "narrower.toml", …}}
//
// A history of stops is explained with "command": "explain", a site and
//   {"history": {"file": "stops.txt", "text": "…"}, "readings": {…},
//    "options": {"now": "2026-08-14 18:30", "symptoms": ["cycles every 40 s"], "prior": ["tank_charge_lost=0.2"],
//                "answers": ["watch_gauge=low"], …}}
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "contract/finding.h"
#include "fit/read_pumping_test.h"
#include "quantity/dimension.h"
#include "site/read.h"

namespace wellproof {

/// A text and the name under which findings speak of it.
struct NamedText {
  std::string file;
  std::string text;
};

struct Request {
  std::string command;  // one of those that the door knows (door.cc)
  NamedText site;
  std::vector<Beside> beside;
  std::string scenario;          // of run
  std::vector<std::string> set;  // "KEY=VALUE"
  std::optional<NamedText> settings;
  std::optional<NamedText> card;  // of the drive (docs/card.md)
  std::vector<NamedText> sets;    // of compare: two; "derived" and "common_practice" as a file's name need no text
  std::uint32_t draws = 128;
  std::uint32_t draw = 0;  // of run
  std::uint64_t seed = 1;
  unsigned threads = 1;
  UnitSystem units = UnitSystem::us;
  bool search = false;      // of plan: move the derived settings to raise the smallest margin
  bool stop_early = false;  // of plan: no more runs of a scenario that has failed
  bool json = false;
  bool colour = false;
  std::string report;  // names of files to answer with; empty: none
  std::string csv;
  std::string settings_to;  // of plan: name of a file of settings to answer with
  std::string starter;      // of new
  PumpingTestText test;     // of welltest
  NamedText readings;       // of fit and explain
  std::string into;         // of fit: name of the file to answer with
  std::string made;         // of plan: its runs, made elsewhere (share.h)
  std::string derived;      // what another hand has derived from this site and card (derived_text.h); empty: nothing
  std::uint32_t first = 0;  // of share: which draws
  std::uint32_t count = 1;
  std::string html;                   // of sheet: the same for its pages …
  std::string text;                   // … and its plain text
  std::string swing;                  // of tune: "8 psi", what was seen on site; empty: nothing
  std::string period;                 // of tune: "6 s"
  NamedText history;                  // of explain
  std::string now;                    // of explain: what the clock says, where the history does not
  std::vector<std::string> symptoms;  // of explain
  std::vector<std::string> prior;     // of explain: "CAUSE=SHARE"
  std::vector<std::string> answers;   // of explain: "CHECK=ANSWER"
};

/// Limits of the numbers above. Derivation needs a few draws to see a range at all.
inline constexpr std::uint32_t least_draws = 8;
inline constexpr std::uint32_t most_draws = 100'000;
inline constexpr unsigned most_threads = 256;

struct Answer {
  int exit_code = 0;
  std::string out;
  std::string err;
  std::vector<std::pair<std::string, std::string>> files;  // name and text
  Findings findings{};                                     // what `err` says, each by itself, for who shows them
};

/// What an exit code means.
namespace exit_code {
inline constexpr int fine = 0;
inline constexpr int not_proven = 1;
inline constexpr int bad_input = 2;
inline constexpr int machine = 3;
}  // namespace exit_code

Result<Request> read_request(std::string_view bytes);
std::string request_bytes(Request const& request);
std::string answer_bytes(Answer const& answer);

}  // namespace wellproof
