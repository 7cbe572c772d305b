#include "explain/stop_words.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <utility>

#include "contract/nearest.h"

namespace wellproof {
namespace {

using K = StopCause;

// Words that people in the trade at large use; common practice, no source.
constexpr std::pair<std::string_view, StopCause> phrases[] = {
    {"dry run", K::dry_run},
    {"dry running", K::dry_run},
    {"dryrun", K::dry_run},
    {"dry well", K::dry_run},
    {"ran dry", K::dry_run},
    {"runs dry", K::dry_run},
    {"dry", K::dry_run},
    {"underload", K::dry_run},
    {"under load", K::dry_run},
    {"low load", K::dry_run},
    {"no water", K::dry_run},
    {"water lost", K::dry_run},
    {"lost water", K::dry_run},
    {"lost prime", K::dry_run},
    {"loss of prime", K::dry_run},
    {"closed discharge", K::closed_discharge},
    {"discharge closed", K::closed_discharge},
    {"closed valve", K::closed_discharge},
    {"valve closed", K::closed_discharge},
    {"valve shut", K::closed_discharge},
    {"shut line", K::closed_discharge},
    {"shut off", K::closed_discharge},
    {"dead head", K::closed_discharge},
    {"deadhead", K::closed_discharge},
    {"dead headed", K::closed_discharge},
    {"blocked", K::closed_discharge},
    {"blocked line", K::closed_discharge},
    {"no flow", K::closed_discharge},
    {"closed", K::closed_discharge},
    {"long run", K::long_run},
    {"ran too long", K::long_run},
    {"runs too long", K::long_run},
    {"run too long", K::long_run},
    {"run time", K::long_run},
    {"runtime", K::long_run},
    {"overrun", K::long_run},
    {"continuous run", K::long_run},
    {"over current", K::over_current},
    {"overcurrent", K::over_current},
    {"too much current", K::over_current},
    {"high current", K::over_current},
    {"high amps", K::over_current},
    {"over amps", K::over_current},
    {"overload", K::over_current},
    {"motor overload", K::over_current},
    {"locked rotor", K::over_current},
    {"low volts", K::low_volts},
    {"low volt", K::low_volts},
    {"low voltage", K::low_volts},
    {"volts low", K::low_volts},
    {"undervoltage", K::low_volts},
    {"under voltage", K::low_volts},
    {"brown out", K::low_volts},
    {"brownout", K::low_volts},
    {"power lost", K::low_volts},
    {"power loss", K::low_volts},
    {"power failure", K::low_volts},
    {"power out", K::low_volts},
    {"drive hot", K::drive_hot},
    {"drive too hot", K::drive_hot},
    {"too hot", K::drive_hot},
    {"over temperature", K::drive_hot},
    {"overtemperature", K::drive_hot},
    {"over temp", K::drive_hot},
    {"overtemp", K::drive_hot},
    {"high temperature", K::drive_hot},
    {"overheated", K::drive_hot},
    {"overheat", K::drive_hot},
    {"heat sink", K::drive_hot},
    {"hot", K::drive_hot},
    {"sensor lost", K::sensor_lost},
    {"lost sensor", K::sensor_lost},
    {"sensor failed", K::sensor_lost},
    {"sensor fault", K::sensor_lost},
    {"sensor error", K::sensor_lost},
    {"sensor open", K::sensor_lost},
    {"no sensor", K::sensor_lost},
    {"no signal", K::sensor_lost},
    {"signal lost", K::sensor_lost},
    {"transducer", K::sensor_lost},
    {"pressure sensor", K::sensor_lost},
    {"sensor", K::sensor_lost},
    {"outside contact", K::outside_contact},
    {"contact open", K::outside_contact},
    {"float switch", K::outside_contact},
    {"external contact", K::outside_contact},
    {"external stop", K::outside_contact},
    {"permissive", K::outside_contact},
    {"interlock", K::outside_contact},
    {"contact", K::outside_contact},
    {"float", K::outside_contact},
    {"high pressure", K::high_pressure},
    {"over pressure", K::high_pressure},
    {"overpressure", K::high_pressure},
    {"pressure too high", K::high_pressure},
    {"too much pressure", K::high_pressure},
};

/// Whether the words of one stand in the other, whole.
bool holds_words(std::string const& text, std::string const& words) {
  return !words.empty() && (" " + text + " ").find(" " + words + " ") != std::string::npos;
}

bool is_of_word(char sign) {
  auto const byte = static_cast<unsigned char>(sign);
  return std::isalnum(byte) != 0 || byte >= 0x80;
}

/// Signs of the line from `at` that are the label, whatever stands between its words; 0 if it does not stand there
/// whole.
std::size_t label_length(std::string_view line, std::size_t at, std::string_view label) {
  auto const skip = [](std::string_view text, std::size_t& i) {
    std::size_t const began = i;
    while (i < text.size() && !is_of_word(text[i])) {
      ++i;
    }
    return i > began;
  };
  std::size_t i = at;
  std::size_t k = 0;
  skip(label, k);
  while (k < label.size()) {
    if (is_of_word(label[k])) {
      if (i >= line.size() ||
          std::tolower(static_cast<unsigned char>(line[i])) != std::tolower(static_cast<unsigned char>(label[k]))) {
        return 0;
      }
      ++i;
      ++k;
    } else if (std::size_t next = k; skip(label, next) && next < label.size()) {
      if (!skip(line, i)) {
        return 0;
      }
      k = next;
    } else {
      break;
    }
  }
  return i < line.size() && is_of_word(line[i]) ? 0 : i - at;
}

}  // namespace

std::string_view says(StopCause kind) {
  static constexpr std::string_view names[] = {"dry run",          "closed discharge", "long run",
                                               "too much current", "low volts",        "drive too hot",
                                               "sensor lost",      "outside contact",  "high pressure"};
  return names[static_cast<std::size_t>(kind)];
}

std::string plain_words(std::string_view text) {
  std::string out;
  for (char const sign : text) {
    auto const byte = static_cast<unsigned char>(sign);
    if (std::isalnum(byte) != 0 || byte >= 0x80) {
      out += static_cast<char>(std::tolower(byte));
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  while (!out.empty() && out.back() == ' ') {
    out.pop_back();
  }
  return out;
}

std::optional<StopCause> stop_kind(std::string_view phrase) {
  std::string const text = plain_words(phrase);
  std::size_t longest = 0;
  std::optional<StopCause> found;
  auto const look = [&](std::string const& words, StopCause kind) {
    if (words.size() > longest && holds_words(text, words)) {
      longest = words.size();
      found = kind;
    }
  };
  for (auto const& [words, kind] : phrases) {
    look(std::string(words), kind);
  }
  for (auto const kind : all_stop_kinds) {
    look(plain_words(word(kind)), kind);
    look(std::string(says(kind)), kind);
  }
  return found;
}

std::optional<StopCause> take_label(std::string& line, std::vector<StopLabel> const& own) {
  std::size_t from = 0;
  std::size_t longest = 0;
  std::optional<StopCause> kind;
  for (auto const& each : own) {
    for (std::size_t at = 0; at < line.size(); ++at) {
      std::size_t const length = at > 0 && is_of_word(line[at - 1]) ? 0 : label_length(line, at, each.label);
      if (length > longest) {
        from = at;
        longest = length;
        kind = each.kind;
      }
    }
  }
  std::fill_n(line.begin() + static_cast<std::ptrdiff_t>(from), longest, ' ');
  return kind;
}

std::string nearest_stop_word(std::string_view phrase, std::vector<StopLabel> const& own) {
  std::vector<std::string_view> known;
  known.reserve(own.size() + std::size(phrases) + stop_kinds);
  for (auto const& word : own) {
    known.push_back(word.label);
  }
  for (auto const& [words, kind] : phrases) {
    known.push_back(words);
  }
  for (auto const kind : all_stop_kinds) {
    known.push_back(says(kind));
  }
  return nearest_word(plain_words(phrase), known);
}

}  // namespace wellproof
