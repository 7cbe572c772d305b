#pragma once
// Rows of figures in standard deviations, as inline SVG: how far each lies from nothing, with what is left open.
#include <string>
#include <string_view>
#include <vector>

namespace wellproof {

/// A row. half_sigmas is half the length of the line through the mark; 0: none.
struct SigmaRow {
  std::string name;
  std::string value;  // behind the row
  double at_sigmas = 0;
  double half_sigmas = 0;
  bool crossed = false;  // drawn as a cross instead of a ring: it does not count
};

/// The middle and two standard deviations to either side are marked; what lies beyond four is drawn at the edge with an
/// arrow. Marks differ in shape, so that a copy in black and white says the same.
/// @param id unique on the page
std::string sigma_figure(std::string_view id, std::vector<SigmaRow> const& rows, std::string_view title,
                         std::string_view description);

}  // namespace wellproof
