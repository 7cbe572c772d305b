// The second plant's equations for whoever loads a shared library: scipy_orientation.py.
#include <algorithm>

#include "open_loop.h"

namespace {

wellproof::OpenLoop& made() {
  static wellproof::OpenLoop one = [] {
    auto open = wellproof::open_loop();
    open.second.check_open = open.second.opening_head_m(open.start) > 0;
    return open;
  }();
  return one;
}

wellproof::second::Values values_of(double const* y) {
  wellproof::second::Values values;
  std::copy(y, y + values.size(), values.begin());
  return values;
}

}  // namespace

extern "C" {

int plant_states() {
  return static_cast<int>(wellproof::second::count);
}

double plant_duration_s() {
  return wellproof::open_loop_s;
}

void plant_start(double* y) {
  std::copy(made().start.begin(), made().start.end(), y);
}

void plant_rates(double const* y, double* rates) {
  auto const found = made().second.rates(values_of(y));
  std::copy(found.begin(), found.end(), rates);
}

/// What falls through nothing where the check valve shuts.
double plant_valve(double const* y) {
  return y[wellproof::second::flow];
}

double plant_tee_pressure_pa(double const* y) {
  return made().second.pressure_pa(y[wellproof::second::stored]);
}

double plant_level_m(double const* y) {
  return y[wellproof::second::level_depth];
}
}
