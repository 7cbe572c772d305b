#pragma once
// How an unknown of the site is found out: with what, in how many minutes, and how well it is known afterwards. All of
// it is common practice without a source.
#include <optional>
#include <string_view>

namespace wellproof {

struct Measuring {
  std::string_view key;   // of the site's field; a number in it stands as '*': "pipe.*.length"
  std::string_view how;   // what to do, one sentence without the full stop
  double minutes = 0;     // that a person on site needs
  double accuracy = 0;    // half width that remains: SI, or a share of the value
  bool of_value = false;  // the accuracy is a share
};

/// By a field's key ("pipe.2.length"); empty where nothing on site tells it.
std::optional<Measuring> measuring(std::string_view key);

}  // namespace wellproof
