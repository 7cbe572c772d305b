// What holds for every quantity and range, over random numbers, units and bytes.
#include <cmath>
#include <cstdint>
#include <cstring>
#include <iterator>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "quantity/range.h"

namespace wellproof {
namespace {

bool same_bits(double a, double b) {
  return std::memcmp(&a, &b, sizeof a) == 0;
}

rc::Gen<Dimension> any_dimension() {
  return rc::gen::elementOf(std::vector<Dimension>(std::begin(all_dimensions), std::end(all_dimensions)));
}

rc::Gen<UnitSystem> any_system() {
  return rc::gen::element(UnitSystem::us, UnitSystem::metric);
}

// Every finite double is as likely as any other: all signs, exponents and last bits.
rc::Gen<double> any_finite() {
  return rc::gen::suchThat(rc::gen::map(rc::gen::arbitrary<std::uint64_t>(),
                                        [](std::uint64_t bits) {
                                          // The generator likes small integers; spread them over all bits.
                                          std::uint64_t const spread = bits * 0x9E3779B97F4A7C15U;
                                          double number = 0;
                                          std::memcpy(&number, &spread, sizeof number);
                                          return number;
                                        }),
                           [](double number) { return std::isfinite(number); });
}

// Numbers of the sizes that a site has, with all their digits.
rc::Gen<double> ordinary() {
  return rc::gen::map(rc::gen::tuple(rc::gen::inRange(-1000000000, 1000000000), rc::gen::inRange(1, 1000000)),
                      [](std::tuple<int, int> const& parts) {
                        return static_cast<double>(std::get<0>(parts)) / static_cast<double>(std::get<1>(parts));
                      });
}

rc::Gen<Range> any_range() {
  return rc::gen::map(rc::gen::tuple(rc::gen::inRange(0, 4), ordinary(), ordinary(), ordinary()),
                      [](std::tuple<int, double, double, double> const& parts) -> Range {
                        auto const [kind, a, b, c] = parts;
                        double const width = std::abs(b) + 1e-3;
                        double const part = std::abs(c) / (std::abs(c) + 1);
                        if (kind == 0) {
                          return Fixed{a};
                        }
                        if (kind == 1) {
                          return Normal{a, width};
                        }
                        if (kind == 2) {
                          return Even{a, a + width};
                        }
                        return Triangular{a, a + part * width, a + width};
                      });
}

// Bytes, and pieces that a reader might take for something.
rc::Gen<std::string> any_text() {
  auto const piece = rc::gen::oneOf(rc::gen::container<std::string>(rc::gen::arbitrary<char>()),
                                    rc::gen::elementOf(std::vector<std::string>{" ",
                                                                                "..",
                                                                                "...",
                                                                                "to ",
                                                                                " to ",
                                                                                "±",
                                                                                "+/-",
                                                                                "+-",
                                                                                "%",
                                                                                "ft",
                                                                                "in",
                                                                                "'",
                                                                                "\"",
                                                                                "AWG",
                                                                                "/0",
                                                                                "1",
                                                                                "-",
                                                                                "3/4",
                                                                                "1e",
                                                                                "e9",
                                                                                "°",
                                                                                "³",
                                                                                "Ω",
                                                                                "µ",
                                                                                "·",
                                                                                "^",
                                                                                ",",
                                                                                ".",
                                                                                "5",
                                                                                "gpm",
                                                                                "m",
                                                                                "Hz/",
                                                                                "\xc3",
                                                                                "\xe2\x80",
                                                                                "nan",
                                                                                "inf",
                                                                                "999999999999999999999",
                                                                                "1e308",
                                                                                "1e-320",
                                                                                "min",
                                                                                "h",
                                                                                "d",
                                                                                "°F",
                                                                                "K"}));
  return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece), [](std::vector<std::string> const& pieces) {
    std::string text;
    for (std::string const& each : pieces) {
      text += each;
    }
    return text;
  });
}

RC_GTEST_PROP(quantity_law, exact_text_reads_back_bit_for_bit, ()) {
  double const value = *rc::gen::oneOf(any_finite(), ordinary());
  Dimension const dimension = *any_dimension();
  std::string const text = write_quantity_exactly(value, dimension, *any_system());
  auto const back = read_quantity(text, dimension);
  RC_ASSERT(back.has_value());
  RC_ASSERT(same_bits(*back, value));
  RC_ASSERT(text.size() <= 40U);
}

RC_GTEST_PROP(quantity_law, shown_text_reads_back_to_four_digits, ()) {
  double const value = *ordinary();
  Dimension const dimension = *any_dimension();
  UnitSystem const system = *any_system();
  auto const back = read_quantity(write_quantity(value, dimension, system), dimension);
  RC_ASSERT(back.has_value());
  // Four digits of what is shown: for temperatures counted from the zero of the scale.
  double const shown_size = std::abs(value - customary_unit(dimension, system).offset);
  RC_ASSERT(std::abs(*back - value) <= 0.5001e-3 * shown_size + 1e-12);
}

RC_GTEST_PROP(quantity_law, a_number_in_any_unit_reads_as_factor_times_number_plus_offset, ()) {
  Unit const& unit = units()[*rc::gen::inRange<std::size_t>(0, units().size())];
  std::string_view const spelling = *rc::gen::elementOf(unit.spellings);
  double const number = *ordinary();
  auto const value = read_quantity(fmt::format("{:.17g} {}", number, spelling), unit.dimension);
  RC_ASSERT(value.has_value());
  RC_ASSERT(std::abs(*value - (unit.factor * number + unit.offset)) <= 1e-15 * std::abs(unit.factor * number));
}

RC_GTEST_PROP(quantity_law, what_a_person_wrote_is_written_back_as_it_was, ()) {
  Dimension const dimension = *rc::gen::suchThat(any_dimension(), [](Dimension d) { return d != Dimension::time; });
  UnitSystem const system = *any_system();
  int const hundredths = *rc::gen::inRange(-1000000, 1000000);
  std::string const number = fmt::format("{}", hundredths / 100.0);
  std::string_view const unit = customary_unit(dimension, system).spelling;
  std::string const text = unit.empty() ? number : fmt::format("{} {}", number, unit);
  auto const value = read_quantity(text, dimension);
  RC_ASSERT(value.has_value());
  RC_ASSERT(write_quantity_exactly(*value, dimension, system) == text);
}

RC_GTEST_PROP(quantity_law, exact_text_of_a_range_reads_back_to_it, ()) {
  Range const range = *any_range();
  Dimension const dimension = *any_dimension();
  auto const back = read_range(write_range_exactly(range, dimension, *any_system()), dimension);
  RC_ASSERT(back.has_value());
  RC_ASSERT(*back == range);
}

RC_GTEST_PROP(quantity_law, no_text_crashes_the_reader_and_every_refusal_says_what_and_where, ()) {
  std::string const text = *any_text();
  Dimension const dimension = *any_dimension();
  auto const check = [&](TextError const& error) {
    RC_ASSERT(error.offset <= text.size());
    RC_ASSERT(!error.found.empty());
    RC_ASSERT(!error.expected.empty());
  };
  if (auto const value = read_quantity(text, dimension)) {
    RC_ASSERT(std::isfinite(*value));
  } else {
    check(value.error());
  }
  if (auto const range = read_range(text, dimension)) {
    RC_ASSERT(std::isfinite(lowest(*range)));
    RC_ASSERT(std::isfinite(highest(*range)));
    RC_ASSERT(lowest(*range) <= highest(*range));
  } else {
    check(range.error());
  }
}

RC_GTEST_PROP(quantity_law, quantiles_rise_from_the_lowest_to_the_highest, ()) {
  Range const range = *any_range();
  constexpr int steps = 1000;
  int const a = *rc::gen::inRange(0, steps);
  int const b = *rc::gen::inRange(a + 1, steps + 1);
  double const lower = quantile(range, static_cast<double>(a) / steps);
  double const higher = quantile(range, static_cast<double>(b) / steps);
  RC_ASSERT(lowest(range) <= lower);
  RC_ASSERT(higher <= highest(range));
  // The width may drown in the last digits of a number far from zero.
  bool const resolved = highest(range) - lowest(range) > 1e-9 * std::abs(middle(range));
  bool const level_allowed = is_fixed(range) || !resolved;
  bool const rises = level_allowed ? lower <= higher : lower < higher;
  RC_ASSERT(rises);
}

RC_GTEST_PROP(quantity_law, the_mean_and_spread_of_the_quantiles_are_those_of_the_distribution, ()) {
  Range const range = *any_range();
  constexpr int count = 20000;
  double const origin = middle(range);
  double sum = 0;
  double squares = 0;
  for (int i = 0; i < count; ++i) {
    double const x = quantile(range, (i + 0.5) / count) - origin;
    sum += x;
    squares += x * x;
  }
  double const mean = sum / count;
  double const variance = squares / count - mean * mean;
  double expected_mean = 0;
  double expected_variance = 0;
  if (auto const* normal = std::get_if<Normal>(&range)) {
    // Cut at c = 3: 1 - 2 c phi(c) / erf(c/√2) of the uncut variance (Johnson, Kotz, Balakrishnan 1994, section 10.1).
    double const sigma = normal->half_width_95 / 1.96;
    double const phi_3 = std::exp(-4.5) / std::sqrt(2 * 3.14159265358979323846);
    expected_mean = normal->mean - origin;
    expected_variance = sigma * sigma * (1 - 6 * phi_3 / std::erf(3 / std::sqrt(2.0)));
  } else if (auto const* even = std::get_if<Even>(&range)) {
    double const width = even->high - even->low;
    expected_mean = (even->low - origin) + width / 2;
    expected_variance = width * width / 12;
  } else if (auto const* triangular = std::get_if<Triangular>(&range)) {
    double const a = triangular->low - origin;
    double const m = triangular->mode - origin;
    double const b = triangular->high - origin;
    expected_mean = (a + m + b) / 3;
    expected_variance = (a * a + m * m + b * b - a * m - a * b - m * b) / 18;
  }
  double const width = highest(range) - lowest(range);
  double const rounding = 1e-12 * (std::abs(origin) + width);
  RC_ASSERT(std::abs(mean - expected_mean) <= 1e-4 * width + rounding);
  RC_ASSERT(std::abs(variance - expected_variance) <= 1e-3 * expected_variance + rounding * (width + rounding));
}

RC_GTEST_PROP(quantity_law, one_slip_in_a_long_word_is_found_again, ()) {
  std::vector<std::string_view> const keys = {"well.static_level", "pressure.target", "motor.current_limit"};
  std::string word(*rc::gen::elementOf(keys));
  std::string const meant = word;
  std::size_t const at = *rc::gen::inRange<std::size_t>(0, word.size() - 1);
  switch (*rc::gen::inRange(0, 4)) {
    case 0:
      word.erase(at, 1);
      break;
    case 1:
      word.insert(at, 1, 'q');
      break;
    case 2:
      word[at] = 'q';
      break;
    default:
      std::swap(word[at], word[at + 1]);
  }
  RC_ASSERT(nearest_word(word, keys) == meant);
}

}  // namespace
}  // namespace wellproof
