#include "regulator/moment.h"

namespace wellproof {

Moment moment(Settings const& settings, Logic const& logic, Measured const& measured,
              std::optional<double> last_time_s) {
  double const time_s = measured.time_s;
  double signal_pa = measured.pressure_pa;
  if (!logic.two_contact_switch) {
    // An input card cannot say more than its ends; what lies beyond is a fault and no pressure to regulate by.
    signal_pa = std::clamp(signal_pa, logic.sensor_low_share * settings.sensor_full_scale_pa,
                           std::max(logic.sensor_low_share, logic.sensor_high_share) * settings.sensor_full_scale_pa);
  }
  double const reading_pa = signal_pa + settings.sensor_trim_pa;
  return {.settings = settings,
          .logic = logic,
          .measured = measured,
          .time_s = time_s,
          .step_time_s = last_time_s ? std::max(0.0, time_s - *last_time_s) : 0.0,
          .reading_pa = reading_pa,
          .error_pa = settings.pressure_target_pa - reading_pa};
}

}  // namespace wellproof
