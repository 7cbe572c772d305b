#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/layout.h"
#include "sheet/welltest.h"

namespace wellproof {
namespace {

std::string results(WellTest const& test, Paint const& paint) {
  Table table{{{"", false}, {"", false}, {"Value", true}, {"95 % between", false}, {"How", false}}, {}};
  for (auto const& line : result_lines(test)) {
    table.rows.push_back({line.name, line.sign, line.value, line.interval, line.standing});
  }
  return heading("Result", paint) + text(table, paint);
}

std::string places(WellTest const& test, Paint const& paint) {
  Table table{{{"Place", false}, {"Readings", true}, {"RMSE", true}, {"T alone", true}, {"S alone", true}}, {}};
  for (auto const& record : test.fit.records) {
    table.rows.push_back({place_words(record, test.units), fmt::format("{}", record.readings.size()),
                          write_quantity(record.rmse_m, Dimension::length, test.units),
                          record.alone_transmissivity_m2_s ? write_quantity(record.alone_transmissivity_m2_s->value,
                                                                            Dimension::transmissivity, test.units)
                                                           : "–",
                          record.alone_storativity ? fmt::format("{:.3g}", record.alone_storativity->value) : "–"});
  }
  return heading("Places", paint) + text(table, paint);
}

}  // namespace

std::string welltest_sheet(WellTest const& test, bool colour) {
  Paint const paint(colour);
  auto const& fit = test.fit;
  std::string out =
      (fit.tells_transmissivity ? paint.good(verdict_words(test)) : paint.bad(verdict_words(test))) + "\n";
  out += block(result_says(test), "  ", "  ");
  out += results(test, paint);
  out += heading("Test", paint) + block(test_says(test), "  ", "  ");
  if (fit.records.size() > 1) {
    out += places(test, paint);
  }
  out += heading("Notes", paint);
  for (auto const& note : fit.notes) {
    out += block(note.says, "  - ", "    ");
  }
  for (auto const& caution : test_cautions()) {
    out += block(caution, "  - ", "    ");
  }
  if (!test.into.empty()) {
    out += "\n" + block("Written into " + visible(test.into) + ".", "", "  ");
  }
  return out;
}

}  // namespace wellproof
