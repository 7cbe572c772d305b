#pragma once
// The work behind assume_rest: each quantity that is still open takes a range that follows from what is known, in an
// order in which it can lean on those before it. Inner to the room.
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "quantity/customary.h"
#include "site/fields.h"
#include "site/read.h"

namespace wellproof {

constexpr double two_pi = 6.283185307179586;
constexpr double root3 = 1.7320508075688772;

/// Evenly between two values; a number if there is nothing between them.
Range between(double low, double high);
/// Triangular; a number if there is nothing between the ends.
Range about(double low, double mode, double high);

class Assuming {
 public:
  Assuming(SiteRead& read, std::set<std::string, std::less<>> given);

  void motor_system();
  void pump();
  void motor();
  void well();
  void electrics();
  void pipes();
  void demand();
  void tank_and_sensor();
  /// The plain assumptions, for whatever is still open.
  void take_plain();
  /// Puts the assumptions in the order of the fields.
  void sort();

 private:
  struct Slot {
    Field field;
    Range* range;
  };

  bool given(std::string_view key) const { return given_.count(key) > 0; }
  Range const& range(std::string_view key) const { return *slots_.find(key)->second.range; }
  double mid(std::string_view key) const { return middle(range(key)); }

  /// Declares an assumption, unless the quantity is known.
  void take(std::string_view key, Range const& range, std::string because);
  /// Settles a quantity without an assumption: another one says it, or it is not used.
  void unused(std::string_view key, Range const& range = Fixed{0});
  void run(std::size_t index);
  void rises(PipePlace place, std::string const& whole, Range const& usual, std::string const& because);

  SiteRead& read_;
  std::set<std::string, std::less<>> given_;
  std::map<std::string, Slot, std::less<>> slots_;
};

}  // namespace wellproof
