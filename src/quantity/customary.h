#pragma once
// Units that the trade counts in, in SI; exact where the unit is defined so. Text with units goes through quantity.h:
// these are for figures of the trade that stand in the code.
namespace wellproof {

inline constexpr double minute_s = 60;
inline constexpr double hour_s = 3600;
inline constexpr double day_s = 86400;
inline constexpr double inch_m = 0.0254;
inline constexpr double foot_m = 0.3048;
inline constexpr double gallon_m3 = 3.785411784e-3;
inline constexpr double gpm_m3_s = gallon_m3 / minute_s;
inline constexpr double psi_pa = 6894.757293168;
inline constexpr double hp_w = 745.699871582;

/// Half the width of what holds 95 % of a normal spread, in its standard deviations.
inline constexpr double sigmas_of_95 = 1.96;

}  // namespace wellproof
