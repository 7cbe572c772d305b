// The stops on their days: time of day to the right, days downwards, the newest at the bottom.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "quantity/customary.h"
#include "sheet/chart.h"
#include "sheet/explain_sheet.h"
#include "sheet/put.h"

namespace wellproof {
namespace {

constexpr double width = 760;
constexpr double left = 86;
constexpr double right = 150;
constexpr double top = 26;
constexpr double row = 24;
constexpr double bottom = 34;
constexpr int most_days = 21;

double x_of(double time_of_day_s) {
  return left + (width - left - right) * time_of_day_s / day_long_s;
}

std::string_view colour_of(std::size_t place) {
  static constexpr std::string_view colours[] = {"#00598f", "#b3480a", "#00735a", "#8d3f75", "#20262c"};
  return colours[place % std::size(colours)];
}

/// A mark; kinds differ in shape as well as in colour.
std::string mark(std::size_t place, double x, double y) {
  auto const colour = colour_of(place);
  constexpr double r = 5;
  switch (place % 4) {
    case 0:
      return fmt::format(
          "<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{}\" fill=\"#fff\" stroke=\"{}\" stroke-width=\"2\"/>", x, y, r,
          colour);
    case 1:
      return fmt::format(
          "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"9\" height=\"9\" fill=\"#fff\" stroke=\"{}\" stroke-width=\"2\"/>",
          x - 4.5, y - 4.5, colour);
    case 2:
      return fmt::format("<path d=\"M{:.1f} {:.1f}l6 10h-12z\" fill=\"#fff\" stroke=\"{}\" stroke-width=\"2\"/>", x,
                         y - 6, colour);
    default:
      return fmt::format("<path d=\"M{:.1f} {:.1f}l6 6l-6 6l-6 -6z\" fill=\"#fff\" stroke=\"{}\" stroke-width=\"2\"/>",
                         x, y - 6, colour);
  }
}

}  // namespace

std::string stops_figure(Explanation const& explanation) {
  auto const& history = explanation.history;
  if (!history.now) {
    return "";
  }
  double const now_s = history.now->since_1970_s;
  double const today_s = history.now->midnight().since_1970_s;
  int days = 1;
  std::vector<std::size_t> kinds;
  for (auto const& stop : history.stops) {
    if (stop.time_of_day_s) {
      int const back = static_cast<int>(std::ceil((today_s - (now_s - stop.age_s)) / day_long_s));
      days = std::max(days, std::min(most_days, back + 1));
      auto const kind = static_cast<std::size_t>(stop.kind);
      if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end()) {
        kinds.push_back(kind);
      }
    }
  }
  if (kinds.empty()) {
    return "";
  }
  double const height = top + bottom + row * days;
  std::string out =
      fmt::format("<svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-label=\"{}\">\n<g class=\"grid\">", width,
                  height, escaped("The stops by day and time of day. " + history_says(explanation)));
  for (int hour = 0; hour <= 24; hour += 3) {
    double const x = x_of(hour * hour_s);
    put(out, "<line x1=\"{0:.1f}\" x2=\"{0:.1f}\" y1=\"{1:.1f}\" y2=\"{2:.1f}\"/>", x, top, height - bottom);
  }
  out += "</g>\n";
  for (auto const& [from_h, to_h] : {std::pair{0.0, 6.0}, std::pair{21.0, 24.0}}) {
    put(out, "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"#6a737b\" opacity=\"0.09\"/>",
        x_of(from_h * hour_s), top, x_of(to_h * hour_s) - x_of(from_h * hour_s), row * days);
  }
  put(out, "<rect class=\"frame\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\"/>\n", left, top,
      width - left - right, row * days);
  for (int hour = 0; hour <= 24; hour += 6) {
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">{}:00</text>", x_of(hour * hour_s),
        height - bottom + 15, hour);
  }
  put(out, "<text class=\"axis\" x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">time of day</text>\n",
      x_of(0.5 * day_long_s), height - 4);
  auto const y_of = [&](int back) { return top + row * (days - 1 - back) + 0.5 * row; };
  for (int back = 0; back < days; ++back) {
    auto const date = text(WallClock{today_s - back * day_long_s}).substr(0, 10);
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"end\">{}</text>", left - 8, y_of(back) + 4, date);
  }
  std::string marks;
  int older = 0;
  for (auto const& stop : history.stops) {
    if (!stop.time_of_day_s) {
      continue;
    }
    int const back = static_cast<int>(std::ceil((today_s - (now_s - stop.age_s)) / day_long_s));
    if (back >= days) {
      ++older;
      continue;
    }
    auto const kind = static_cast<std::size_t>(stop.kind);
    auto const place = static_cast<std::size_t>(std::find(kinds.begin(), kinds.end(), kind) - kinds.begin());
    double const x = x_of(*stop.time_of_day_s);
    bool const rests = stop.kind == StopCause::dry_run || stop.kind == StopCause::closed_discharge;
    if (rests) {
      double const end_s = std::min(day_long_s, *stop.time_of_day_s + explanation.settings.dry_run_rest_s);
      put(out,
          "<line x1=\"{0:.1f}\" x2=\"{1:.1f}\" y1=\"{2:.1f}\" y2=\"{2:.1f}\" stroke=\"{3}\" stroke-width=\"3\" "
          "opacity=\"0.45\"/>",
          x, x_of(end_s), y_of(back), colour_of(place));
    }
    marks += mark(place, x, y_of(back));
  }
  out += "\n" + marks + "\n";
  double const now_x = x_of(history.now->time_of_day_s());
  put(out,
      "<line x1=\"{0:.1f}\" x2=\"{0:.1f}\" y1=\"{1:.1f}\" y2=\"{2:.1f}\" stroke=\"#20262c\" stroke-width=\"1.5\" "
      "stroke-dasharray=\"2 3\"/><text class=\"name\" x=\"{0:.1f}\" y=\"{3:.1f}\" text-anchor=\"middle\">now"
      "</text>\n",
      now_x, y_of(0) - 0.5 * row, y_of(0) + 0.5 * row, top - 8);
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    double const y = top + 12 + 20 * static_cast<double>(i);
    out += mark(i, width - right + 18, y);
    put(out, "<text class=\"name\" x=\"{:.1f}\" y=\"{:.1f}\">{}</text>\n", width - right + 30, y + 4,
        says(all_stop_kinds[kinds[i]]));
  }
  if (older > 0) {
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\">{} older not shown</text>\n", left, top - 8, older);
  }
  return out + "</svg>\n";
}

}  // namespace wellproof
