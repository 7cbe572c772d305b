// How the right-hand side follows the state: what an implicit step has to know of it.
#include <algorithm>

#include "plant/drive.h"
#include "plant/plant.h"

namespace wellproof {

Jacobian Rates::slopes(Hydraulics const& h, State const& y, Modes modes) const {
  bool const moves = column_moves(modes);
  double const per_inertance_m2_s2 = moves ? 1 / inertance_s2_m2(h) : 0;
  double const per_area_1_m2 = 1 / plant_->well.bore_area_m2;
  double const flow_by_flow = moves ? 1 : 0;
  Jacobian j;
  j.totals[0][0] = inflow_.slope_m2_s(y[at::level_depth]);
  j.totals[1][1] = flow_by_flow;
  double back_by_stored = 0;
  if (modes.line_full && !modes.held) {
    back_by_stored = h.back.slope * h.pressure.slope;
    j.totals[1][2] = -back_by_stored;
    j.totals[2][2] = (h.house.slope + h.tee.slope) * h.pressure.slope;
    j.fast[2] = {0, flow_by_flow, -j.totals[2][2] - back_by_stored};
  }
  if (!modes.line_full) {
    j.empty = {0, -flow_by_flow, 0};
  }
  j.fast[0] = {-j.totals[0][0] * per_area_1_m2, flow_by_flow * per_area_1_m2, -back_by_stored * per_area_1_m2};
  if (moves) {
    // Air drawn in takes head in proportion to the water missing; the submergence falls as the level deepens.
    double const head_by_level = h.wet.slope > 0 && h.wet.value > 0 ? -h.wet.slope * h.head.value / h.wet.value : 0;
    j.fast[1] = {(std::min(head_by_level, 0.0) - 1) * per_inertance_m2_s2,
                 (h.head.slope - h.loss.slope) * per_inertance_m2_s2,
                 modes.line_full ? -h.pressure.slope / plant_->weight_n_m3 * per_inertance_m2_s2 : 0};
  }
  if (lags()) {
    j.lag_by_lag = -1 / lag_s_;
    j.lag_by_stored = h.pressure.slope / lag_s_;
  }
  if (modes.followed) {
    add_following(j, modes, per_inertance_m2_s2);
  }
  auto const& heat = plant_->heat;
  j.heat[0] = {-heat.winding_to_shell_w_k / heat.winding_j_k, heat.winding_to_shell_w_k / heat.winding_j_k};
  j.heat[1] = {heat.winding_to_shell_w_k / heat.shell_j_k,
               -(heat.winding_to_shell_w_k + to_water_w_k(h)) / heat.shell_j_k};
  j.pump_water = -flushing_1_s(h);
  j.sink = -1 / sink_time_s;
  return j;
}

}  // namespace wellproof
