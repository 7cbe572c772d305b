#pragma once
// What a pipe's name says: inside diameter, pressure class and roughness of the wall, by standard and nominal size.
// Nominal sizes are no measures: 1-1/4 in schedule 40 is 1.380 in inside, the same size in PEX 1.054 in.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wellproof {

/// A kind of pipe as a site file names it.
struct PipeKind {
  std::string_view key;       // "sch40_pvc"
  std::string_view standard;  // that its dimensions follow
  double roughness_low_m;     // of a wall in service, new …
  double roughness_high_m;    // … to old
};

/// One size of one kind.
struct PipeSize {
  std::string_view nominal;  // "1-1/4 in"
  double inside_diameter_m;
  double rating_pa;  // at 73 °F (23 °C)
};

std::vector<PipeKind> const& pipe_kinds();
PipeKind const* pipe_kind(std::string_view key);

/// The sizes of a kind, smallest first; empty if the kind is unknown.
std::vector<PipeSize> pipe_sizes(std::string_view kind);

/// The size as written ("1-1/4 in", "1 1/4\"", "1.25 in", "1-1/4"). Nothing if the kind has no such size.
/// Source: asme_2018, astm_2021
/// Checked: tests/unit/site/pipe_sizes_test.cc
/// Example: pipe_size("sch40_pvc", "1-1/4 in")->inside_diameter_m == 0.035052 within 1e-9
std::optional<PipeSize> pipe_size(std::string_view kind, std::string_view size);

/// The nominal size of this kind that is closest to what was written; empty if no number can be made out.
std::string nearest_pipe_size(std::string_view kind, std::string_view size);

}  // namespace wellproof
