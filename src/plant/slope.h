#pragma once
// How steeply a law climbs, carried together with its value.

namespace wellproof {

/// The value of a law and its derivative with respect to the first argument: what an implicit step needs.
struct Sloped {
  double value = 0;
  double slope = 0;
};

}  // namespace wellproof
