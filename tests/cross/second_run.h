#pragma once
// A run of the second plant: SUNDIALS' CVODE carries it from sample to sample (BDF, 1e-10 by default, roots for the
// check valve and the full line), the project's controller decides at each sample as it does in src/simulate.
#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include "cross/second_plant.h"
#include "regulator/regulator.h"
#include "simulate/scenario.h"
#include "simulate/trace.h"

namespace wellproof::second {

class Integrator {
 public:
  Integrator(Plant2& plant, Values const& start, double tolerance) : plant_(plant) {
    must(SUNContext_Create(nullptr, &context_), "context");
    y_ = N_VNew_Serial(count, context_);
    bounds_ = N_VNew_Serial(count, context_);
    // Absolute bounds, at a tolerance of 1e-10: a ten-billionth of a metre, of a litre a second and so on; what lies
    // below is rounding.
    Values bounds{1e-9, 1e-13, 1e-13, 1e-13, 1e-5, 1e-12, 1e-12, 1e-12, 1e-7, 1e-7, 1e-7, 1e-7, 1e-4};
    std::fill(bounds.begin() + ring, bounds.end(), 1e-9);
    for (std::size_t i = 0; i < count; ++i) {
      NV_DATA_S(y_)[i] = start[i];
      NV_DATA_S(bounds_)[i] = bounds[i] * (tolerance / 1e-10);
    }
    cvode_ = CVodeCreate(CV_BDF, context_);
    must(CVodeInit(cvode_, right_hand_side, 0, y_), "init");
    must(CVodeSVtolerances(cvode_, tolerance, bounds_), "tolerances");
    must(CVodeSetUserData(cvode_, this), "user data");
    must(CVodeSetMaxNumSteps(cvode_, 1000000), "steps");
    matrix_ = SUNDenseMatrix(count, count, context_);
    solver_ = SUNLinSol_Dense(y_, matrix_, context_);
    must(CVodeSetLinearSolver(cvode_, solver_, matrix_), "solver");
    must(CVodeRootInit(cvode_, 2, roots), "roots");
  }
  Integrator(Integrator const&) = delete;
  Integrator& operator=(Integrator const&) = delete;
  ~Integrator() {
    CVodeFree(&cvode_);
    SUNLinSolFree(solver_);
    SUNMatDestroy(matrix_);
    N_VDestroy(bounds_);
    N_VDestroy(y_);
    SUNContext_Free(&context_);
  }

  Values now() const {
    Values y;
    std::copy(NV_DATA_S(y_), NV_DATA_S(y_) + count, y.begin());
    return y;
  }

  /// After new inputs: modes follow, and the past steps tell nothing about the next.
  void start_afresh(double time_s) {
    auto const y = now();
    if (!plant_.line_full && y[empty] <= 1e-12) {
      plant_.line_full = true;
    }
    bool const opens = plant_.opening_head_m(y) > 0;
    if (!plant_.check_open && opens) {
      plant_.check_open = true;
    } else if (plant_.check_open && !opens && y[flow] <= 1e-12) {
      plant_.check_open = false;
    }
    if (!plant_.check_open) {
      NV_DATA_S(y_)[flow] = 0;
    }
    must(CVodeReInit(cvode_, time_s, y_), "reinit");
    int directions[2] = {-1, -1};
    must(CVodeSetRootDirection(cvode_, directions), "directions");
    CVodeSetNoInactiveRootWarn(cvode_);
  }

  void carry_to(double end_s, double from_s) {
    double time_s = from_s;
    while (time_s < end_s) {
      must(CVodeSetStopTime(cvode_, end_s), "stop time");
      int const code = CVode(cvode_, end_s, y_, &time_s, CV_NORMAL);
      must(code < 0 ? code : 0, "step");
      if (code == CV_ROOT_RETURN) {
        ++flips;
        start_afresh(time_s);
      }
    }
  }

  int flips = 0;

 private:
  static void must(int code, char const* what) {
    if (code != 0) {
      throw std::runtime_error(std::string("CVODE: ") + what + " " + std::to_string(code));
    }
  }
  static int right_hand_side(realtype, N_Vector y, N_Vector d, void* self) {
    Values values;
    std::copy(NV_DATA_S(y), NV_DATA_S(y) + count, values.begin());
    auto const rates = static_cast<Integrator*>(self)->plant_.rates(values);
    std::copy(rates.begin(), rates.end(), NV_DATA_S(d));
    return 0;
  }
  // Both fall through nothing where a mode ends: the flow or what keeps the valve shut; what is still to be filled.
  static int roots(realtype, N_Vector y, realtype* figures, void* self) {
    auto const& plant = static_cast<Integrator*>(self)->plant_;
    Values values;
    std::copy(NV_DATA_S(y), NV_DATA_S(y) + count, values.begin());
    figures[0] = plant.check_open ? values[flow] : -plant.opening_head_m(values);
    figures[1] = plant.line_full ? 1 : values[empty];
    return 0;
  }

  Plant2& plant_;
  SUNContext context_ = nullptr;
  N_Vector y_ = nullptr;
  N_Vector bounds_ = nullptr;
  SUNMatrix matrix_ = nullptr;
  SUNLinearSolver solver_ = nullptr;
  void* cvode_ = nullptr;
};

struct SecondRun {
  std::vector<TracePoint> points;  // one for each sample: the instant as it is measured, before the decision
  std::vector<TraceEvent> events;
  Values end{};
  int flips = 0;
};

inline SecondRun second_run(Plant const& plant, Plant2 second, Settings const& settings, Scenario const& scenario,
                            Logic const& logic, double tolerance = 1e-10) {
  auto const& site = plant.site;
  SecondRun out;
  Values y{};
  y[level_depth] = site.well.static_level_depth_m + site.well.season_drop_m + scenario.start.level_drop_m;
  second.line_full = !scenario.start.line_empty;
  y[stored] = scenario.start.line_empty ? 0 : second.stored_m3(scenario.start.tee_pressure_pa);
  y[empty] = scenario.start.line_empty ? plant.line_volume_m3 : 0;
  y[lagged_pressure] = scenario.start.line_empty ? 0 : scenario.start.tee_pressure_pa;
  y[winding] = y[shell] = y[pump_water] = site.well.water_temperature_c;
  y[sink] = site.drive.ambient_c;
  if (scenario.start.level_drop_m > 0) {
    // The start is common to both: a day of even inflow.
    Formation::Drawn drawn{};
    plant.well.formation.advance(drawn, plant.well.flow_for_level_m3_s(y[level_depth]), settled_time_s);
    for (std::size_t i = 0; i < rings; ++i) {
      y[ring + i] = plant.well.formation.drawdown_m(drawn, second.ring_radius_m(static_cast<double>(i)));
    }
    second.border_drawdown_m = plant.well.formation.drawdown_m(drawn, Plant2::ring_border_m);
  }
  second.inputs.openings.assign(plant.outlets.size(), 0);
  second.inputs.openings[outlet::leak] = 1;
  Integrator integrator(second, y, tolerance);

  RegulatorState controller;
  if (!scenario.start.after_power_up) {
    controller.mode = Mode::asleep;
    controller.powered_up = true;
  }
  std::uint64_t next_sample = 0;
  auto const sees = [&](double time_s) {
    auto const values = integrator.now();
    auto const seen = second.see(values);
    TracePoint p;
    p.time_s = time_s;
    p.tee_pressure_pa = seen.tee_pressure_pa;
    // The noise of a sample is common to both, like the controller.
    double const noise_pa = site.sensor.noise_pa * sensor_noise(next_sample);
    double const signal_pa =
        values[lagged_pressure] * (1 + site.sensor.gain_error) + site.sensor.zero_error_pa + noise_pa;
    p.measured_pressure_pa = std::fmin(std::fmax(signal_pa, 0), site.sensor.full_scale_pa) *
                             settings.sensor_full_scale_pa / site.sensor.full_scale_pa;
    p.speed_hz = second.inputs.speed_hz;
    p.current_a = seen.electric.current_a;
    p.input_power_w = seen.electric.input_power_w;
    p.pump_flow_m3_s = seen.flow_m3_s;
    p.drawn_flow_m3_s = seen.house_flow_m3_s;
    p.inflow_m3_s = seen.inflow_m3_s;
    p.level_depth_m = values[level_depth];
    p.wetness = seen.wetness;
    p.winding_c = values[winding];
    p.pump_water_c = values[pump_water];
    p.sink_c = values[sink];
    return p;
  };

  double const period_s = 1 / site.drive.sample_rate_hz;
  std::size_t change = 0;
  double time_s = 0;
  integrator.start_afresh(0);
  while (time_s < scenario.duration_s - 1e-9) {
    bool disturbed = false;
    for (; change < scenario.script.size() && scenario.script[change].time_s <= time_s + 1e-9; ++change) {
      auto const& one = scenario.script[change];
      switch (one.act) {
        case Act::outlet_opening:
          second.inputs.openings[one.outlet] = one.value;
          break;
        case Act::inflow_share:
          second.inputs.inflow_share = one.value;
          break;
        case Act::supply_share:
          second.inputs.supply_share = one.value;
          break;
        default:
          throw std::runtime_error("the second run does not know this change");
      }
      disturbed = true;
    }
    if (time_s >= static_cast<double>(next_sample) * period_s - 1e-9) {
      auto const p = sees(time_s);
      out.points.push_back(p);
      Measured measured;
      measured.time_s = time_s;
      measured.pressure_pa = p.measured_pressure_pa;
      measured.current_a = p.current_a;
      measured.supply_share = second.inputs.supply_share * site.supply.voltage_v / site.motor.voltage_v;
      measured.sink_c = p.sink_c;
      auto const command = sample(settings, logic, controller, measured);
      if (command.event) {
        out.events.push_back({time_s, *command.event});
      }
      disturbed = disturbed || command.speed_hz != second.inputs.speed_hz;
      second.inputs.speed_hz = command.speed_hz;
      ++next_sample;
    }
    if (disturbed) {
      integrator.start_afresh(time_s);
    }
    double end_s = std::fmin(static_cast<double>(next_sample) * period_s, scenario.duration_s);
    if (change < scenario.script.size()) {
      end_s = std::fmin(end_s, scenario.script[change].time_s);
    }
    integrator.carry_to(end_s, time_s);
    time_s = end_s;
  }
  out.points.push_back(sees(time_s));
  out.end = integrator.now();
  out.flips = integrator.flips;
  return out;
}

}  // namespace wellproof::second
