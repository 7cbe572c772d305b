#include "cli/units_option.h"

#include <string>

#include <CLI/CLI.hpp>

namespace wellproof {

void add_units(CLI::App& app, UnitSystem& into) {
  app.add_option_function<std::string>(
         "--units",
         [&into](std::string const& word) {
           if (word != "us" && word != "metric") {
             throw CLI::ValidationError("--units", "found \"" + word + "\"; expected us or metric");
           }
           into = word == "us" ? UnitSystem::us : UnitSystem::metric;
         },
         "Units to show: us or metric")
      ->option_text("us|metric  [us]");
}

}  // namespace wellproof
