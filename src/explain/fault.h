#pragma once
// The library of causes: what can be wrong at a well, each as a change to plant, demand, supply, sensor or settings
// with a spread of severity. How often each is behind a call is common practice, no source, unless it says otherwise;
// whoever asks may say otherwise too.
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "explain/symptom.h"
#include "plant/plant.h"
#include "proof/household.h"
#include "quantity/chance.h"
#include "regulator/settings.h"
#include "simulate/scenario.h"

namespace wellproof {

/// How bad it is in one world, in a figure.
struct Severity {
  std::string_view says;  // "the water at rest stands deeper by"
  double value = 0;
  Dimension dimension = Dimension::none;
};

/// A plant of the site with something wrong, and the day that shows it. Times in seconds from midnight.
struct Faulty {
  Plant plant;
  Settings settings;
  std::vector<Change> lasting;                // in force from the beginning
  std::vector<Change> of_day;                 // at times of the day
  std::vector<WaterUse> uses;                 // what is drawn besides the household
  double household_share = 1;                 // of what a household usually draws
  double day_share = 1;                       // of days on which it happens at all
  bool there_now = true;                      // while somebody reads instruments
  bool contact_wired = false;                 // an outside contact is there
  std::array<double, symptom_count> feels{};  // how surely a person notices, besides what the run shows
  Severity severity;

  double& feel(Symptom symptom) { return feels[static_cast<std::size_t>(symptom)]; }
};

struct Fault {
  std::string_view key;    // "yield_fallen"
  std::string_view title;  // "The well gives less"
  std::string_view says;   // what it is and how it comes to a stop, a sentence
  double share = 0;        // of calls, before anything is known
  std::string_view todo;   // what to do about it
  void (*put)(Faulty& faulty, Chance& chance);
  std::string_view setting;  // key of the setting that is wrong; empty: no setting
};

/// All faults, in the order of the walk of the water.
std::vector<Fault> const& faults();
/// By key; past the end if there is none.
std::size_t fault_place(std::string_view key);

}  // namespace wellproof
