#include "sheet/chart.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "sheet/layout.h"
#include "sheet/put.h"

namespace wellproof {
namespace {

constexpr double letter_width = 6.3;  // of the chart's 11 px letters, a little generous
constexpr double row_height = 14;
constexpr double left_room = 56;
constexpr double x_figures_room = 40;
constexpr double top_room = 8;

double text_width(std::string_view text) {
  return letter_width * static_cast<double>(columns(text));
}

bool drawable(ChartPoint const& point) {
  return std::isfinite(point.x) && std::isfinite(point.y);
}

std::string stroke_attributes(Stroke const& stroke) {
  std::string out = fmt::format("stroke=\"{}\" stroke-width=\"{:g}\"", stroke.colour, stroke.width);
  if (!stroke.dash.empty()) {
    out += fmt::format(" stroke-dasharray=\"{}\"", stroke.dash);
  }
  return out;
}

/// Pushes texts apart that would print over each other, and keeps them between top and bottom.
template <class Labels>
void spread_out(Labels& labels, double top, double bottom) {
  std::sort(labels.begin(), labels.end(), [](auto const& a, auto const& b) { return a.text_y < b.text_y; });
  double least = top;
  for (auto& label : labels) {
    label.text_y = std::max(label.text_y, least);
    least = label.text_y + row_height;
  }
  double most = bottom;
  for (auto label = labels.rbegin(); label != labels.rend(); ++label) {
    label->text_y = std::min(label->text_y, most);
    most = label->text_y - row_height;
  }
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string out;
  for (char const letter : visible(text)) {
    switch (letter) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += letter;
    }
  }
  return out;
}

Chart::Chart(std::string id, Axis x, Axis y, double width, double height)
    : id_(std::move(id)), x_(std::move(x)), y_(std::move(y)), width_(width), height_(height) {}

void Chart::line(std::vector<ChartPoint> points, Stroke stroke, std::string name) {
  lines_.push_back({std::move(points), stroke, std::move(name), NamePlace::right});
}

void Chart::named_at_start(std::vector<ChartPoint> points, Stroke stroke, std::string name) {
  lines_.push_back({std::move(points), stroke, std::move(name), NamePlace::at_start});
}

void Chart::band(std::vector<ChartPoint> low, std::vector<ChartPoint> high, Stroke stroke) {
  high.insert(high.end(), low.rbegin(), low.rend());
  high.erase(std::remove_if(high.begin(), high.end(), [](auto const& point) { return !drawable(point); }), high.end());
  bands_.push_back({std::move(high), stroke});
}

void Chart::level(double y, double from_x, double to_x, Stroke stroke, std::string name) {
  line({{from_x, y}, {to_x, y}}, stroke, std::move(name));
}

void Chart::threshold(double y, double from_x, double to_x, std::string name) {
  Stroke heavy = stroke::ink;
  heavy.width = 2.6;
  lines_.push_back({{{from_x, y}, {to_x, y}}, heavy, std::move(name), NamePlace::before_start});
}

void Chart::upright(double x, Stroke stroke, std::string name) {
  if (std::isfinite(x)) {
    uprights_.push_back({x, x, stroke, std::move(name)});
  }
}

void Chart::zone(double from_x, double to_x, std::string name) {
  if (std::isfinite(from_x) && std::isfinite(to_x)) {
    uprights_.push_back({from_x, to_x, stroke::grey, std::move(name)});
  }
}

void Chart::dot(double x, double y) {
  dots_.push_back({x, y});
}

void Chart::marks(std::vector<ChartPoint> points, Shape shape, Stroke stroke) {
  marks_.push_back({std::move(points), shape, stroke});
}

double Chart::x_of(double x, Frame const& frame) const {
  // Far outside the plot a viewer's own arithmetic would suffer; the clip cuts there anyway.
  return frame.left + std::clamp(x_.share(x), -10.0, 10.0) * (frame.right - frame.left);
}

double Chart::y_of(double y, Frame const& frame) const {
  return frame.bottom - std::clamp(y_.share(y), -10.0, 10.0) * (frame.bottom - frame.top);
}

std::string Chart::grid(Frame const& frame) const {
  std::string out = "<g class=\"grid\">";
  for (auto const& tick : y_.ticks) {
    double const y = y_of(tick.at * y_.factor + y_.offset, frame);
    put(out, "<line x1=\"{:.1f}\" x2=\"{:.1f}\" y1=\"{:.1f}\" y2=\"{:.1f}\"/>", frame.left, frame.right, y, y);
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"end\">{}</text>", frame.left - 6, y + 4, tick.text);
  }
  for (auto const& tick : x_.ticks) {
    double const x = x_of(tick.at * x_.factor + x_.offset, frame);
    put(out, "<line x1=\"{:.1f}\" x2=\"{:.1f}\" y1=\"{:.1f}\" y2=\"{:.1f}\"/>", x, x, frame.top, frame.bottom);
    if (x_figures_) {
      put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">{}</text>", x, frame.bottom + 15, tick.text);
    }
  }
  if (x_figures_) {
    put(out, "<text class=\"axis\" x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">{}</text>",
        (frame.left + frame.right) / 2, frame.bottom + 32, escaped(x_.title));
  }
  put(out, "<text class=\"axis\" transform=\"translate(12 {:.1f}) rotate(-90)\" text-anchor=\"middle\">{}</text>",
      (frame.top + frame.bottom) / 2, escaped(y_.title));
  put(out, "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" class=\"frame\"/></g>", frame.left,
      frame.top, frame.right - frame.left, frame.bottom - frame.top);
  return out;
}

std::vector<std::size_t> Chart::rows_of_upright_names(Frame const& frame) const {
  // The lowest row in which a name touches no other.
  std::vector<std::vector<std::pair<double, double>>> taken;
  std::vector<std::size_t> rows;
  for (auto const& upright : uprights_) {
    if (upright.name.empty()) {
      rows.push_back(0);
      continue;
    }
    double const middle = (x_of(upright.from_x, frame) + x_of(upright.to_x, frame)) / 2;
    double const half = text_width(upright.name) / 2 + 4;
    std::size_t row = 0;
    auto const touches = [&](std::pair<double, double> const& other) {
      return middle - half < other.second && middle + half > other.first;
    };
    while (row < taken.size() && std::any_of(taken[row].begin(), taken[row].end(), touches)) {
      ++row;
    }
    if (row == taken.size()) {
      taken.emplace_back();
    }
    taken[row].emplace_back(middle - half, middle + half);
    rows.push_back(row);
  }
  return rows;
}

std::string Chart::uprights(Frame const& frame, std::vector<std::size_t> const& rows) const {
  std::string out;
  for (std::size_t i = 0; i < uprights_.size(); ++i) {
    auto const& upright = uprights_[i];
    double const from = std::clamp(x_of(upright.from_x, frame), frame.left, frame.right);
    double const to = std::clamp(x_of(upright.to_x, frame), frame.left, frame.right);
    double const name_y = frame.top - 6 - row_height * static_cast<double>(rows[i]);
    double const line_top = upright.name.empty() ? frame.top : name_y + 3;
    if (to - from > 0) {
      put(out, "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"url(#{}-hatch)\"/>", from,
          frame.top, to - from, frame.bottom - frame.top, id_);
    } else {
      put(out, "<line x1=\"{:.1f}\" x2=\"{:.1f}\" y1=\"{:.1f}\" y2=\"{:.1f}\" {}/>", from, from, line_top, frame.bottom,
          stroke_attributes(upright.stroke));
    }
    if (!upright.name.empty()) {
      put(out, "<text class=\"name\" x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">{}</text>", (from + to) / 2,
          name_y, escaped(upright.name));
    }
  }
  return out;
}

std::string Chart::path(std::vector<ChartPoint> const& points, Frame const& frame) const {
  std::string out;
  bool pen_down = false;
  for (auto const& point : points) {
    // Nothing below zero stands on a logarithmic axis.
    if (!drawable(point) || std::isnan(x_.share(point.x)) || std::isnan(y_.share(point.y))) {
      pen_down = false;
      continue;
    }
    put(out, "{}{:.1f} {:.1f}", pen_down ? "L" : "M", x_of(point.x, frame), y_of(point.y, frame));
    pen_down = true;
  }
  return out;
}

std::string Chart::lines(Frame const& frame) const {
  std::string out = fmt::format("<g clip-path=\"url(#{}-plot)\" fill=\"none\">", id_);
  for (auto const& band : bands_) {
    put(out, "<path d=\"{}Z\" fill=\"{}\" fill-opacity=\"0.14\"/>", path(band.outline, frame), band.stroke.colour);
  }
  for (auto const& line : lines_) {
    put(out, "<path d=\"{}\" {} stroke-linejoin=\"round\"/>", path(line.points, frame), stroke_attributes(line.stroke));
  }
  for (auto const& dot : dots_) {
    if (drawable(dot)) {
      put(out, "<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"3.6\" class=\"dot\"/>", x_of(dot.x, frame), y_of(dot.y, frame));
    }
  }
  return out + "</g>";
}

std::string Chart::readings(Frame const& frame) const {
  std::string out;
  for (auto const& marks : marks_) {
    put(out, "<path fill=\"#fff\" fill-opacity=\"0.7\" stroke=\"{}\" stroke-width=\"1.2\" d=\"", marks.stroke.colour);
    for (auto const& point : marks.points) {
      bool const inside = drawable(point) && x_.share(point.x) >= 0 && x_.share(point.x) <= 1 &&
                          y_.share(point.y) >= 0 && y_.share(point.y) <= 1;
      if (!inside) {
        continue;
      }
      double const x = x_of(point.x, frame);
      double const y = y_of(point.y, frame);
      switch (marks.shape) {
        case Shape::ring:
          put(out, "M{:.1f} {:.1f}a2.8 2.8 0 1 0 5.6 0a2.8 2.8 0 1 0 -5.6 0Z", x - 2.8, y);
          break;
        case Shape::square:
          put(out, "M{:.1f} {:.1f}h5v5h-5Z", x - 2.5, y - 2.5);
          break;
        case Shape::triangle:
          put(out, "M{:.1f} {:.1f}l3.2 5.4h-6.4Z", x, y - 3.2);
          break;
        case Shape::diamond:
          put(out, "M{:.1f} {:.1f}l3.2 3.2l-3.2 3.2l-3.2 -3.2Z", x, y - 3.2);
          break;
      }
    }
    out += "\"/>";
  }
  return out;
}

std::string Chart::names_at_start(Frame const& frame) const {
  std::string out;
  for (auto const& line : lines_) {
    if (line.place == NamePlace::right || line.points.empty() || !drawable(line.points.front())) {
      continue;
    }
    bool const before = line.place == NamePlace::before_start;
    put(out, "<text class=\"name\" x=\"{:.1f}\" y=\"{:.1f}\"{}>{}</text>",
        x_of(line.points.front().x, frame) + (before ? -5 : 5), y_of(line.points.front().y, frame) + (before ? 4 : -5),
        before ? " text-anchor=\"end\"" : "", escaped(line.name));
  }
  return out;
}

std::string Chart::names_to_the_right(Frame const& frame) const {
  std::vector<Label> labels;
  for (auto const& line : lines_) {
    if (line.place != NamePlace::right || line.name.empty()) {
      continue;
    }
    auto const inside = [&](ChartPoint const& point) {
      return drawable(point) && x_.share(point.x) < 1.001 && y_.share(point.y) > -0.001 && y_.share(point.y) < 1.001;
    };
    auto const last = std::find_if(line.points.rbegin(), line.points.rend(), inside);
    if (last != line.points.rend()) {
      double const y = y_of(last->y, frame);
      labels.push_back({x_of(last->x, frame), y, y + 4, line.name, line.stroke});
    }
  }
  spread_out(labels, frame.top + 8, frame.bottom + 2);
  std::string out;
  for (auto const& label : labels) {
    put(out, "<path d=\"M{:.1f} {:.1f}L{:.1f} {:.1f}\" class=\"leader\" stroke=\"{}\"/>", label.x + 1, label.y,
        frame.right + 16, label.text_y - 4, label.stroke.colour);
    put(out, "<text class=\"name\" x=\"{:.1f}\" y=\"{:.1f}\" fill=\"{}\">{}</text>", frame.right + 20, label.text_y,
        label.stroke.colour, escaped(label.name));
  }
  return out;
}

std::string Chart::svg(std::string_view title, std::string_view description) const {
  double right_room = std::max(12.0, least_right_);
  for (auto const& line : lines_) {
    if (line.place == NamePlace::right && !line.name.empty()) {
      right_room = std::max(right_room, text_width(line.name) + 24);
    }
  }
  Frame frame{left_room, width_ - right_room, top_room, height_ - (x_figures_ ? x_figures_room : 6)};
  auto const rows = rows_of_upright_names(frame);
  std::size_t rows_taken = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    rows_taken = uprights_[i].name.empty() ? rows_taken : std::max(rows_taken, rows[i] + 1);
  }
  frame.top += row_height * static_cast<double>(rows_taken);

  std::string out;
  put(out,
      "<svg viewBox=\"0 0 {:g} {:g}\" role=\"img\" aria-labelledby=\"{}-title {}-says\"><title id=\"{}-title\">{}"
      "</title><desc id=\"{}-says\">{}</desc>",
      width_, height_, id_, id_, id_, escaped(title), id_, escaped(description));
  put(out,
      "<defs><clipPath id=\"{}-plot\"><rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\"/></clipPath>"
      "<pattern id=\"{}-hatch\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
      "patternTransform=\"rotate(45)\"><line x1=\"0\" x2=\"0\" y1=\"0\" y2=\"6\" class=\"hatch\"/></pattern></defs>",
      id_, frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top, id_);
  out += grid(frame) + uprights(frame, rows) + lines(frame) + readings(frame) + names_at_start(frame) +
         names_to_the_right(frame);
  return out + "</svg>\n";
}

}  // namespace wellproof
