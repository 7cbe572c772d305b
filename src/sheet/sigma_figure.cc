#include "sheet/sigma_figure.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "sheet/chart.h"
#include "sheet/put.h"

namespace wellproof {
namespace {

constexpr double width = 760;
constexpr double row_height = 20;
constexpr double top = 26;
constexpr double left = 230;
constexpr double right = 520;
constexpr double most_sigmas = 4;

double x_of(double sigmas) {
  double const share = (std::clamp(sigmas, -most_sigmas, most_sigmas) + most_sigmas) / (2 * most_sigmas);
  return left + share * (right - left);
}

std::string mark(SigmaRow const& row, double y) {
  double const x = x_of(row.at_sigmas);
  std::string out;
  if (std::abs(row.at_sigmas) > most_sigmas) {
    double const tip = row.at_sigmas > 0 ? 7 : -7;
    put(out, "<path d=\"M{:.1f} {:.1f}l{:.1f} 5v-10z\" fill=\"#20262c\"/>", x + tip, y, -tip);
  } else if (row.crossed) {
    put(out, "<path d=\"M{:.1f} {:.1f}l9 9m0 -9l-9 9\" fill=\"none\" stroke=\"#b3480a\" stroke-width=\"2\"/>", x - 4.5,
        y - 4.5);
  } else {
    put(out, "<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"4\" class=\"dot\"/>", x, y);
  }
  return out;
}

}  // namespace

std::string sigma_figure(std::string_view id, std::vector<SigmaRow> const& rows, std::string_view title,
                         std::string_view description) {
  double const bottom = top + row_height * static_cast<double>(rows.size());
  std::string out;
  put(out,
      "<svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-labelledby=\"{}-t {}-d\"><title id=\"{}-t\">{}</title>"
      "<desc id=\"{}-d\">{}</desc>\n",
      width, bottom + 24, id, id, id, escaped(title), id, escaped(description));
  put(out, "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"#f3f1ea\"/>\n", x_of(-2), top,
      x_of(2) - x_of(-2), bottom - top);
  out += "<g class=\"grid\">";
  for (int sigmas = -4; sigmas <= 4; ++sigmas) {
    put(out, "<line x1=\"{0:.1f}\" y1=\"{1:.1f}\" x2=\"{0:.1f}\" y2=\"{2:.1f}\"/>", x_of(sigmas), top, bottom);
  }
  put(out, "</g>\n<line x1=\"{0:.1f}\" y1=\"{1:.1f}\" x2=\"{0:.1f}\" y2=\"{2:.1f}\" stroke=\"#20262c\"/>\n", x_of(0),
      top, bottom);
  for (int sigmas = -4; sigmas <= 4; sigmas += 2) {
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">{}{}</text>", x_of(sigmas), bottom + 15,
        sigmas > 0 ? "+" : "", sigmas);
  }
  put(out, "<text class=\"axis\" x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">standard deviations</text>\n",
      x_of(0), top - 10);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    auto const& row = rows[i];
    double const y = top + row_height * (static_cast<double>(i) + 0.5);
    put(out, "<text class=\"name\" x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"end\">{}</text>", left - 10, y + 4,
        escaped(row.name));
    if (row.half_sigmas > 0) {
      put(out,
          "<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" stroke=\"#00598f\" stroke-width=\"2.5\"/>",
          x_of(row.at_sigmas - row.half_sigmas), y, x_of(row.at_sigmas + row.half_sigmas), y);
    }
    out += mark(row, y);
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\">{}</text>\n", right + 10, y + 4, escaped(row.value));
  }
  return out + "</svg>\n";
}

}  // namespace wellproof
