#pragma once
// The drive's power part: volts by frequency, its loss, its heat sink. What its controller decides is src/regulator.

namespace wellproof {

/// Output voltage: in proportion to frequency up to the base, constant above, never more than is available.
/// @param frequency_hz      [Hz] ≥ 0
/// @param base_frequency_hz [Hz] the motor's, > 0
/// @param base_voltage_v    [V]  line to line at base frequency
/// @param available_v       [V]  the most the drive can put out
/// @return [V] line to line
/// Source:  chapman_2012, section 6.9 (field weakening above base)
/// Checked: tests/unit/plant/drive_test.cc
/// Example: drive_voltage_v(45, 60, 230, 220) == 172.5 within 1e-9
double drive_voltage_v(double frequency_hz, double base_frequency_hz, double base_voltage_v, double available_v);

/// The most a drive can put out from its supply, 3/π = 0.955 of it: the mean of a six-pulse rectifier is 3√2/π of the
/// line voltage, and a bridge that adds the third harmonic makes line to line 1/√2 of it. A drive on a single-phase
/// supply is taken alike: its capacitors charge to the crest and sag between.
/// @param supply_v [V] line to line, ≥ 0
/// @return [V] line to line
/// Source:  mohan_2003, chapters 5 and 8
/// Checked: tests/reference/supply_reference_test.cc
/// Example: drive_available_v(240) == 229.18 within 0.01
double drive_available_v(double supply_v);

/// Loss of the drive, after its rated efficiency: a fixed part (control, fan, switching of the idle bridge), a part
/// with output current (the output bridge), a part with output power (the rectifier); 0.4, 0.3 and 0.3 of the rated
/// loss. The shares are fitted to published part-load efficiencies of small drives, see the check.
/// @param output_power_w  [W] ≥ 0
/// @param current_a       [A] output, ≥ 0
/// @return [W]
/// Checked: tests/reference/supply_reference_test.cc
/// Example: drive_loss_w(2238, 10, 10, 2238, 0.94) == 142.85 within 0.01
double drive_loss_w(double output_power_w, double current_a, double rated_current_a, double rated_power_w,
                    double rated_efficiency);

/// The heat sink: so far above the air at rated loss, and so slow (common practice, no source).
inline constexpr double sink_rise_k = 40;
inline constexpr double sink_time_s = 600;

}  // namespace wellproof
