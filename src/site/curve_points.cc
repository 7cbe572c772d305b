#include "site/curve_points.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "contract/nearest.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr std::size_t least_points = 3;
constexpr std::size_t most_points = 200;
constexpr double water_n_m3 = 9.80665 * 998.2;
constexpr double most_efficiency = 0.9;  // no small pump comes near; beyond it a unit is mistaken
constexpr double shut_part = 0.15;       // the first point must lie this near to zero flow, or the shut head is unknown

constexpr std::array<std::string_view, 3> quantities{"flow", "head", "power"};
constexpr std::array<Dimension, 3> dimensions{Dimension::flow, Dimension::length, Dimension::power};

struct PlacedPoint {
  CurvePoint point;
  Place place;
};

/// What every curve must show, whatever it was written in.
void check(Entered& entered, std::vector<PlacedPoint> const& points, Place const& whole, std::string const& key) {
  if (points.size() < least_points) {
    entered.find_fault(whole, key, fmt::format("{} points", points.size()),
                       fmt::format("at least {} points of flow, head and power", least_points));
    return;
  }
  auto const text = [](double value, Dimension dimension) { return write_quantity(value, dimension, UnitSystem::us); };
  double const first_m3_s = points.front().point.flow_m3_s;
  double const last_m3_s = points.back().point.flow_m3_s;
  if (first_m3_s > shut_part * last_m3_s) {
    entered.find_fault(points.front().place, key, "a first point at " + text(first_m3_s, Dimension::flow),
                       "a point at zero flow first: it tells the head against a shut line");
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    auto const& here = points[i].point;
    if (here.flow_m3_s < 0 || here.head_m < 0) {
      entered.find_fault(points[i].place, key, "a flow or head below zero", "flow and head of zero or more");
    }
    if (!(here.shaft_power_w > 0)) {
      entered.find_fault(points[i].place, key, "shaft power " + text(here.shaft_power_w, Dimension::power),
                         "shaft power above zero");
    } else if (water_n_m3 * here.flow_m3_s * here.head_m > most_efficiency * here.shaft_power_w) {
      entered.find_fault(points[i].place, key,
                         fmt::format("an efficiency of {:.0f} %",
                                     100 * water_n_m3 * here.flow_m3_s * here.head_m / here.shaft_power_w),
                         fmt::format("at most {:.0f} %: more shaft power, or another unit", 100 * most_efficiency));
    }
    if (i == 0) {
      continue;
    }
    auto const& before = points[i - 1].point;
    if (!(here.flow_m3_s > before.flow_m3_s)) {
      entered.find_fault(points[i].place, key, text(here.flow_m3_s, Dimension::flow),
                         "a flow above that of the point before, " + text(before.flow_m3_s, Dimension::flow));
    }
    if (!(here.head_m < before.head_m)) {
      entered.find_fault(points[i].place, key, text(here.head_m, Dimension::length),
                         "a head below that of the point before, " + text(before.head_m, Dimension::length));
    }
  }
}

std::vector<PlacedPoint> inline_points(Entered& entered, Node const& list) {
  std::vector<PlacedPoint> points;
  for (auto const& row : list.items) {
    if (row.kind != Node::Kind::array || row.items.size() != 3) {
      entered.find_fault(entered.place_of(row), "pump.curve",
                         row.kind == Node::Kind::array ? fmt::format("a list of {}", row.items.size()) : in_words(row),
                         "[flow, head, shaft power], such as [\"10 gpm\", \"280 ft\", \"1.2 hp\"]");
      continue;
    }
    std::array<std::optional<double>, 3> numbers;
    for (std::size_t i = 0; i < 3; ++i) {
      numbers[i] = entered.number(row.items[i], "pump.curve", dimensions[i]);
    }
    if (numbers[0] && numbers[1] && numbers[2]) {
      points.push_back({{*numbers[0], *numbers[1], *numbers[2]}, entered.place_of(row)});
    }
  }
  return points;
}

std::string_view trimmed(std::string_view text) {
  auto const first = text.find_first_not_of(" \t\r");
  return first == text.npos ? std::string_view{} : text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

struct Cell {
  std::string_view text;
  int column;  // in bytes, which are characters in all that is not a finding anyway
};

std::vector<Cell> cells_of(std::string_view line) {
  std::vector<Cell> cells;
  std::size_t at = 0;
  while (at <= line.size()) {
    auto const end = std::min(line.find_first_of(",;\t", at), line.size());
    auto const raw = line.substr(at, end - at);
    auto const lead = std::min(raw.find_first_not_of(" \t"), raw.size());
    cells.push_back({trimmed(raw), static_cast<int>(at + lead) + 1});
    at = end + 1;
  }
  return cells;
}

/// Reads the table of a file beside; findings name that file.
class Table {
 public:
  Table(Entered& entered, Beside const& file) : entered_(entered), file_(file) {}

  std::vector<PlacedPoint> points() {
    std::string_view left = file_.text;
    int line = 0;
    bool headed = false;
    std::vector<PlacedPoint> points;
    while (!left.empty() && points.size() <= most_points) {
      ++line;
      auto const end = std::min(left.find('\n'), left.size());
      auto const text = left.substr(0, end);
      left.remove_prefix(std::min(end + 1, left.size()));
      if (trimmed(text).empty() || trimmed(text).front() == '#') {
        continue;
      }
      if (!headed) {
        headed = true;
        if (!head(text, line)) {
          return {};
        }
      } else {
        row(text, line, points);
      }
    }
    return points;
  }

 private:
  Place at(int line, int column) const { return {file_.name, line, column}; }

  bool head(std::string_view text, int line) {
    auto const cells = cells_of(text);
    bool right = true;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      auto const bar = cells[i].text.find('_');
      auto const what = cells[i].text.substr(0, bar);
      auto const* const found = std::find(quantities.begin(), quantities.end(), what);
      if (found == quantities.end() || bar == cells[i].text.npos) {
        entered_.find_fault(at(line, cells[i].column), "pump.curve_file", fmt::format("\"{}\"", cells[i].text),
                            "a head such as flow_gpm, head_ft or power_hp", nearest_word(what, quantities));
        right = false;
        continue;
      }
      auto const index = static_cast<std::size_t>(found - quantities.begin());
      std::string const unit(cells[i].text.substr(bar + 1));
      if (auto const one = read_quantity("1 " + unit, dimensions[index]); !one) {
        entered_.find_fault(at(line, cells[i].column + static_cast<int>(bar) + 1), "pump.curve_file", one.error().found,
                            one.error().expected, one.error().nearest);
        right = false;
      }
      columns_[index] = i;
      units_[index] = unit;
    }
    for (std::size_t i = 0; i < 3; ++i) {
      if (right && !columns_[i]) {
        entered_.find_fault(at(line, 1), "pump.curve_file", fmt::format("no column of {}", quantities[i]),
                            "columns of flow, head and power");
        right = false;
      }
    }
    return right;
  }

  void row(std::string_view text, int line, std::vector<PlacedPoint>& points) {
    auto const cells = cells_of(text);
    std::array<double, 3> numbers{};
    for (std::size_t i = 0; i < 3; ++i) {
      if (*columns_[i] >= cells.size()) {
        entered_.find_fault(at(line, 1), "pump.curve_file", fmt::format("{} values", cells.size()),
                            "flow, head and power");
        return;
      }
      auto const& cell = cells[*columns_[i]];
      auto const read = read_quantity(std::string(cell.text) + ' ' + units_[i], dimensions[i]);
      if (!read) {
        entered_.find_fault(at(line, cell.column), "pump.curve_file", fmt::format("\"{}\"", cell.text),
                            fmt::format("a number: {} in {}", quantities[i], units_[i]));
        return;
      }
      numbers[i] = *read;
    }
    points.push_back({{numbers[0], numbers[1], numbers[2]}, at(line, 1)});
  }

  Entered& entered_;
  Beside const& file_;
  std::array<std::optional<std::size_t>, 3> columns_;
  std::array<std::string, 3> units_;
};

}  // namespace

std::vector<CurvePoint> read_curve(Entered& entered, std::vector<Beside> const& beside) {
  auto const before = entered.findings().size();
  auto const* list = entered.find("pump.curve");
  auto const name = entered.text("pump.curve_file");
  std::vector<PlacedPoint> points;
  std::string key = "pump.curve";
  Place whole;
  if (list != nullptr && name) {
    entered.find_fault(entered.place_of("pump.curve_file"), "pump.curve_file", "a curve in the file and one beside it",
                       "one curve");
    return {};
  }
  if (list != nullptr) {
    whole = entered.place_of(*list);
    if (list->kind != Node::Kind::array) {
      entered.find_fault(whole, key, in_words(*list), "a list of points [flow, head, shaft power]");
      return {};
    }
    points = inline_points(entered, *list);
  } else if (name) {
    key = "pump.curve_file";
    auto const file = std::find_if(beside.begin(), beside.end(), [&](Beside const& one) { return one.name == *name; });
    if (file == beside.end()) {
      entered.find_fault(entered.place_of(key), key, '"' + *name + '"', "the name of a file that can be read");
      return {};
    }
    whole = {file->name, 1, 1};
    points = Table(entered, *file).points();
  } else {
    return {};
  }
  if (points.size() > most_points) {
    entered.find_fault(whole, key, "very many points", fmt::format("at most {} points", most_points));
  } else if (entered.findings().size() == before) {
    check(entered, points, whole, key);
  }
  std::vector<CurvePoint> curve;
  if (entered.findings().size() == before) {
    for (auto const& one : points) {
      curve.push_back(one.point);
    }
  }
  return curve;
}

}  // namespace wellproof
