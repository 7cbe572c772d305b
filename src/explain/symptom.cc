#include "explain/symptom.h"

#include <array>
#include <iterator>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "explain/stop_words.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

using S = Symptom;

constexpr std::pair<std::string_view, Symptom> phrases[] = {
    {"cannot hold pressure", S::no_pressure},
    {"can not hold pressure", S::no_pressure},
    {"can t hold pressure", S::no_pressure},
    {"weak", S::no_pressure},
    {"low pressure", S::no_pressure},
    {"no pressure", S::no_pressure},
    {"pressure low", S::no_pressure},
    {"pressure drops", S::no_pressure},
    {"no water", S::no_water},
    {"nothing comes", S::no_water},
    {"never sleeps", S::never_sleeps},
    {"never stops", S::never_sleeps},
    {"does not sleep", S::never_sleeps},
    {"runs all the time", S::never_sleeps},
    {"always running", S::never_sleeps},
    {"cycles", S::cycles},
    {"cycling", S::cycles},
    {"short cycles", S::cycles},
    {"hunts", S::hunts},
    {"hunting", S::hunts},
    {"swings", S::hunts},
    {"surges", S::hunts},
    {"pressure too high", S::high_pressure},
    {"high pressure", S::high_pressure},
    {"hot", S::hot},
    {"noisy", S::noisy},
    {"noise", S::noisy},
    {"loud", S::noisy},
    {"air at taps", S::air},
    {"air", S::air},
    {"spits", S::air},
    {"spitting", S::air},
    {"sand", S::sand},
    {"grit", S::sand},
    {"dirty", S::sand},
    {"wet ground", S::wet_ground},
    {"wet", S::wet_ground},
    {"puddle", S::wet_ground},
};

constexpr std::array<std::pair<std::string_view, std::string_view>, symptom_count> names{{
    {"no_pressure", "cannot hold the pressure"},
    {"no_water", "no water comes"},
    {"never_sleeps", "never sleeps"},
    {"cycles", "starts again and again with all taps shut"},
    {"hunts", "the pressure swings while water is drawn"},
    {"high_pressure", "the pressure is too high"},
    {"hot", "something gets hot"},
    {"noisy", "it is noisy"},
    {"air", "air comes out of the taps"},
    {"sand", "there is sand in the water"},
    {"wet_ground", "the ground is wet where it should not be"},
}};

/// The quantity that ends the text, as "every 40 s" or "by 6 psi".
std::optional<double> value_at_end(std::string_view text, Dimension dimension) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] >= '0' && text[i] <= '9' && (i == 0 || text[i - 1] == ' ')) {
      if (auto const read = read_quantity(text.substr(i), dimension)) {
        return *read;
      }
    }
  }
  return std::nullopt;
}

}  // namespace

std::string_view word(Symptom symptom) {
  return names[static_cast<std::size_t>(symptom)].first;
}

std::string_view says(Symptom symptom) {
  return names[static_cast<std::size_t>(symptom)].second;
}

Result<ToldSymptom> read_symptom(std::string_view text, Place const& place) {
  std::string const plain = " " + plain_words(text) + " ";
  ToldSymptom told;
  std::size_t longest = 0;
  std::size_t at = 0;
  auto const look = [&](std::string const& words, Symptom symptom) {
    auto const found = plain.find(" " + words + " ");
    if (found != std::string::npos && words.size() > longest) {
      longest = words.size();
      at = found;
      told.symptom = symptom;
    }
  };
  for (auto const& [words, symptom] : phrases) {
    look(std::string(words), symptom);
  }
  for (auto const symptom : all_symptoms) {
    look(plain_words(word(symptom)), symptom);
  }
  if (longest == 0) {
    std::vector<std::string_view> known;
    known.reserve(names.size() + std::size(phrases));
    for (auto const& [name, saying] : names) {
      known.push_back(name);
    }
    for (auto const& [words, symptom] : phrases) {
      known.push_back(words);
    }
    return tl::unexpected(Findings{{place, "symptom", fmt::format("\"{}\"", text),
                                    "one of no_pressure, no_water, never_sleeps, cycles, hunts, high_pressure, hot, "
                                    "noisy, air, sand, wet_ground",
                                    nearest_word(plain_words(text), known)}});
  }
  std::string const before = plain.substr(0, at + 1);
  for (auto const* const denial : {" no ", " not ", " without "}) {
    told.present = told.present && before.find(denial) == std::string::npos;
  }
  if (told.present && told.symptom == S::cycles) {
    told.value = value_at_end(text, Dimension::time);
  }
  if (told.present && told.symptom == S::hunts) {
    told.value = value_at_end(text, Dimension::pressure);
  }
  return told;
}

}  // namespace wellproof
