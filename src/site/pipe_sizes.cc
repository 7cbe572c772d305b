#include "site/pipe_sizes.h"

#include <array>
#include <cctype>
#include <cmath>

#include "quantity/customary.h"

namespace wellproof {
namespace {

constexpr std::size_t size_count = 8;

constexpr std::array<std::string_view, size_count> nominals{"1/2 in",   "3/4 in", "1 in",     "1-1/4 in",
                                                            "1-1/2 in", "2 in",   "2-1/2 in", "3 in"};
constexpr std::array<double, size_count> nominal_in{0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3};

// Outside diameters: iron pipe size (ASME B36.10) and copper tube size (ASTM B88).
constexpr std::array<double, size_count> iron_outside_in{0.840, 1.050, 1.315, 1.660, 1.900, 2.375, 2.875, 3.500};
constexpr std::array<double, size_count> tube_outside_in{0.625, 0.875, 1.125, 1.375, 1.625, 2.125, 2.625, 3.125};

// Inside diameters of the schedules (ASME B36.10, ASTM D1785: outside less twice the least wall).
constexpr std::array<double, size_count> sch40_in{0.622, 0.824, 1.049, 1.380, 1.610, 2.067, 2.469, 3.068};
constexpr std::array<double, size_count> sch80_in{0.546, 0.742, 0.957, 1.278, 1.500, 1.939, 2.323, 2.900};
constexpr std::array<double, size_count> copper_l_in{0.545, 0.785, 1.025, 1.265, 1.505, 1.985, 2.465, 2.945};
// PEX, average inside diameter of SDR 9 tube (ASTM F876); not made above 2 in.
constexpr std::array<double, size_count> pex_in{0.475, 0.671, 0.862, 1.054, 1.244, 1.629, 0, 0};

// Pressure classes at 73 °F, psi. PVC: ASTM D1785, appendix; copper: ASTM B88 annealed tube; both from memory.
constexpr std::array<double, size_count> sch40_pvc_psi{600, 480, 450, 370, 330, 280, 300, 260};
constexpr std::array<double, size_count> sch80_pvc_psi{850, 690, 630, 520, 470, 400, 420, 370};
constexpr std::array<double, size_count> copper_l_psi{722, 582, 494, 439, 408, 364, 336, 317};

// Plastic and drawn tube: smooth, 1.5 to 7 µm (Moody 1944 and later handbooks). Steel: 0.15 mm galvanised and new to
// 1 mm with rust. From memory.
constexpr double smooth_low_m = 1.5e-6;
constexpr double smooth_high_m = 7e-6;

/// Hydrostatic design stress of PE 4710, psi: pressure class = 2 stress / (DR - 1) or 2 stress / (SIDR + 1).
constexpr double pe_stress_psi = 1000;

std::array<double, size_count> every(double psi) {
  std::array<double, size_count> all{};
  all.fill(psi);
  return all;
}

std::array<double, size_count> of_ratio(std::array<double, size_count> const& outside_in, double ratio) {
  auto inside = outside_in;
  for (double& one : inside) {
    one *= 1 - 2 / ratio;
  }
  return inside;
}

struct Dimensions {
  std::array<double, size_count> inside_in;
  std::array<double, size_count> rating_psi;
};

Dimensions dimensions(std::string_view kind) {
  if (kind == "sch40_pvc") {
    return {sch40_in, sch40_pvc_psi};
  }
  if (kind == "sch80_pvc") {
    return {sch80_in, sch80_pvc_psi};
  }
  if (kind == "galvanized_sch40") {
    return {sch40_in, every(300)};  // class 150 malleable fittings, ASME B16.3, from memory
  }
  if (kind == "sidr7_pe") {
    return {sch40_in, every(2 * pe_stress_psi / 8)};
  }
  if (kind == "sidr9_pe") {
    return {sch40_in, every(2 * pe_stress_psi / 10)};
  }
  if (kind == "sidr_pe" || kind == "sidr11_5_pe") {
    return {sch40_in, every(2 * pe_stress_psi / 12.5)};  // the weakest class where none is told
  }
  if (kind == "dr9_pe") {
    return {of_ratio(iron_outside_in, 9), every(2 * pe_stress_psi / 8)};
  }
  if (kind == "dr11_pe") {
    return {of_ratio(iron_outside_in, 11), every(2 * pe_stress_psi / 10)};
  }
  if (kind == "copper_l") {
    return {copper_l_in, copper_l_psi};
  }
  if (kind == "pex") {
    return {pex_in, every(160)};  // ASTM F876, SDR 9, from memory
  }
  if (kind == "cpvc_sdr11") {
    return {of_ratio(tube_outside_in, 11), every(400)};  // ASTM D2846, from memory
  }
  return {};
}

/// A size as inches: digits, "-" or blank before a fraction, "in", "inch" or a double quote after.
std::optional<double> inches(std::string_view text) {
  double whole = 0;
  double part = 0;
  std::size_t at = 0;
  auto const blank = [&] {
    while (at < text.size() && (text[at] == ' ' || text[at] == '-')) {
      ++at;
    }
  };
  auto const digits = [&]() -> std::optional<double> {
    double value = 0;
    double place = 0;
    std::size_t const from = at;
    for (; at < text.size() && at - from < 8; ++at) {
      if (text[at] == '.' && place == 0) {
        place = 1;
      } else if (std::isdigit(static_cast<unsigned char>(text[at])) != 0) {
        value = value * 10 + (text[at] - '0');
        place *= 10;
      } else {
        break;
      }
    }
    if (at == from) {
      return std::nullopt;
    }
    return place > 1 ? value / place : value;
  };
  blank();
  auto first = digits();
  if (!first) {
    return std::nullopt;
  }
  whole = *first;
  auto const fraction_of = [&](double above) -> bool {
    if (at < text.size() && text[at] == '/') {
      ++at;
      auto const below = digits();
      if (!below || *below == 0) {
        return false;
      }
      part = above / *below;
      return true;
    }
    return false;
  };
  if (at < text.size() && text[at] == '/') {
    if (!fraction_of(whole)) {
      return std::nullopt;
    }
    whole = 0;
  } else {
    blank();
    if (auto const second = digits(); second && !fraction_of(*second)) {
      return std::nullopt;
    }
  }
  blank();
  auto const unit = text.substr(at);
  if (unit.empty() || unit == "in" || unit == "inch" || unit == "\"" || unit == "in.") {
    return whole + part;
  }
  if (unit == "mm") {
    return std::nullopt;  // these standards are in inches; a metric pipe is told by its inside diameter
  }
  return std::nullopt;
}

}  // namespace

std::vector<PipeKind> const& pipe_kinds() {
  static std::vector<PipeKind> const kinds{
      {"sch40_pvc", "PVC schedule 40, ASTM D1785", smooth_low_m, smooth_high_m},
      {"sch80_pvc", "PVC schedule 80, ASTM D1785", smooth_low_m, smooth_high_m},
      {"galvanized_sch40", "steel schedule 40, ASME B36.10", 1.5e-4, 1e-3},
      {"sidr_pe", "polyethylene by inside diameter, ASTM D2239, class unknown", smooth_low_m, smooth_high_m},
      {"sidr7_pe", "polyethylene SIDR 7, ASTM D2239", smooth_low_m, smooth_high_m},
      {"sidr9_pe", "polyethylene SIDR 9, ASTM D2239", smooth_low_m, smooth_high_m},
      {"sidr11_5_pe", "polyethylene SIDR 11.5, ASTM D2239", smooth_low_m, smooth_high_m},
      {"dr9_pe", "polyethylene DR 9 in iron pipe size, ASTM F714", smooth_low_m, smooth_high_m},
      {"dr11_pe", "polyethylene DR 11 in iron pipe size, ASTM F714", smooth_low_m, smooth_high_m},
      {"copper_l", "copper tube type L, ASTM B88", smooth_low_m, smooth_high_m},
      {"pex", "PEX tube SDR 9, ASTM F876", smooth_low_m, smooth_high_m},
      {"cpvc_sdr11", "CPVC tube SDR 11, ASTM D2846", smooth_low_m, smooth_high_m},
  };
  return kinds;
}

PipeKind const* pipe_kind(std::string_view key) {
  for (auto const& kind : pipe_kinds()) {
    if (kind.key == key) {
      return &kind;
    }
  }
  return nullptr;
}

std::vector<PipeSize> pipe_sizes(std::string_view kind) {
  std::vector<PipeSize> sizes;
  auto const all = dimensions(kind);
  for (std::size_t i = 0; i < size_count; ++i) {
    if (all.inside_in[i] > 0) {
      sizes.push_back({nominals[i], all.inside_in[i] * inch_m, all.rating_psi[i] * psi_pa});
    }
  }
  return sizes;
}

std::optional<PipeSize> pipe_size(std::string_view kind, std::string_view size) {
  auto const wanted_in = inches(size);
  if (!wanted_in) {
    return std::nullopt;
  }
  auto const all = dimensions(kind);
  for (std::size_t i = 0; i < size_count; ++i) {
    if (all.inside_in[i] > 0 && std::abs(nominal_in[i] - *wanted_in) < 1e-6) {
      return PipeSize{nominals[i], all.inside_in[i] * inch_m, all.rating_psi[i] * psi_pa};
    }
  }
  return std::nullopt;
}

std::string nearest_pipe_size(std::string_view kind, std::string_view size) {
  auto const wanted_in = inches(size);
  std::string nearest;
  if (!wanted_in) {
    return nearest;
  }
  auto const all = dimensions(kind);
  double least = 1e9;
  for (std::size_t i = 0; i < size_count; ++i) {
    auto const off = std::abs(nominal_in[i] - *wanted_in);
    if (all.inside_in[i] > 0 && off < least) {
      least = off;
      nearest = nominals[i];
    }
  }
  return nearest;
}

}  // namespace wellproof
