#pragma once
// A chart as inline SVG: lines with their names beside them, bands, marks. Lines differ in colour and in dash, and each
// bears its own name, so that a copy in black and white says the same. Colours by okabe_ito_2008, darkened for print.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/axis.h"

namespace wellproof {

struct Stroke {
  std::string_view colour;
  std::string_view dash;  // as SVG's stroke-dasharray; empty: solid
  double width = 2;
};

namespace stroke {
inline constexpr Stroke blue{"#00598f", "", 2};
inline constexpr Stroke rust{"#b3480a", "7 3", 2};
inline constexpr Stroke green{"#00735a", "2 3", 2.4};
inline constexpr Stroke plum{"#8d3f75", "9 3 2 3", 2};
inline constexpr Stroke ink{"#20262c", "", 1.3};
inline constexpr Stroke ink_dashed{"#20262c", "5 4", 1.3};
inline constexpr Stroke grey{"#6a737b", "", 1.3};
inline constexpr Stroke mark{"#20262c", "1.5 2.5", 1.1};
}  // namespace stroke

/// A point of a line, in SI of the two axes.
struct ChartPoint {
  double x = 0;
  double y = 0;
};

/// What a reading is drawn as: places differ in shape as well as in colour.
enum class Shape { ring, square, triangle, diamond };

/// Text as it may stand in HTML and in attributes.
std::string escaped(std::string_view text);

class Chart {
 public:
  /// @param id unique on the page; letters, digits and dashes
  Chart(std::string id, Axis x, Axis y, double width, double height);

  /// A line with its name to the right of the plot. Points that are no numbers break it.
  void line(std::vector<ChartPoint> points, Stroke stroke, std::string name);
  /// A line with its name on it, at its start.
  void named_at_start(std::vector<ChartPoint> points, Stroke stroke, std::string name);
  /// Between two lines over the same x.
  void band(std::vector<ChartPoint> low, std::vector<ChartPoint> high, Stroke stroke);
  /// Level over a stretch of x, named to the right.
  void level(double y, double from_x, double to_x, Stroke stroke, std::string name);
  /// The same over a short stretch, named before its beginning with its figure.
  void threshold(double y, double from_x, double to_x, std::string name);
  /// Upright through the plot, named above it.
  void upright(double x, Stroke stroke, std::string name);
  /// A hatched stretch of x, named above it.
  void zone(double from_x, double to_x, std::string name);
  void dot(double x, double y);
  /// Readings, each with the shape; what is no number or outside the plot is left out.
  void marks(std::vector<ChartPoint> points, Shape shape, Stroke stroke);
  /// Room to the right for names at the least: for charts that stand one above the other.
  void keep_right(double width) { least_right_ = width; }
  /// Leaves out the figures under the x axis.
  void without_x_figures() { x_figures_ = false; }

  /// @param title, description for those who cannot see it
  std::string svg(std::string_view title, std::string_view description) const;

 private:
  enum class NamePlace { right, at_start, before_start };
  struct Line {
    std::vector<ChartPoint> points;
    Stroke stroke;
    std::string name;
    NamePlace place = NamePlace::right;
  };
  struct Band {
    std::vector<ChartPoint> outline;
    Stroke stroke;
  };
  struct Upright {
    double from_x = 0;
    double to_x = 0;
    Stroke stroke;
    std::string name;
  };
  struct Marks {
    std::vector<ChartPoint> points;
    Shape shape = Shape::ring;
    Stroke stroke;
  };
  struct Frame {
    double left = 0;
    double right = 0;
    double top = 0;
    double bottom = 0;
  };
  struct Label {
    double x = 0;  // where the line ends
    double y = 0;
    double text_y = 0;
    std::string name;
    Stroke stroke;
  };

  double x_of(double x, Frame const& frame) const;
  double y_of(double y, Frame const& frame) const;
  std::string grid(Frame const& frame) const;
  std::string uprights(Frame const& frame, std::vector<std::size_t> const& rows) const;
  std::string lines(Frame const& frame) const;
  std::string path(std::vector<ChartPoint> const& points, Frame const& frame) const;
  std::string readings(Frame const& frame) const;
  std::string names_at_start(Frame const& frame) const;
  std::string names_to_the_right(Frame const& frame) const;
  std::vector<std::size_t> rows_of_upright_names(Frame const& frame) const;

  std::string id_;
  Axis x_;
  Axis y_;
  double width_;
  double height_;
  double least_right_ = 0;
  bool x_figures_ = true;
  std::vector<Line> lines_;
  std::vector<Band> bands_;
  std::vector<Upright> uprights_;
  std::vector<ChartPoint> dots_;
  std::vector<Marks> marks_;
};

}  // namespace wellproof
