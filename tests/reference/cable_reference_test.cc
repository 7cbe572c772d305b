// Copper conductors against the code's table and the wire standard.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "folders.h"
#include "plant/cable.h"

namespace wellproof {
namespace {

constexpr double inch_m = 0.0254;
constexpr double kilofoot_m = 304.8;

struct CodeResistance {
  int gauge;
  double ohm_kft;
};

// nec_2020, chapter 9, table 8, uncoated stranded copper at 75 °C. 14 to 8 from memory, 6 to 2 as printed.
constexpr CodeResistance code_resistances[] = {{14, 3.14}, {12, 1.98}, {10, 1.24}, {8, 0.778},
                                               {6, 0.491}, {4, 0.308}, {3, 0.245}, {2, 0.194}};

TEST(CableReference, stranded_conductors_resist_as_the_code_lists) {
  for (auto const& row : code_resistances) {
    double const found_ohm = cable_resistance_ohm(awg_diameter_m(row.gauge), kilofoot_m, 75);
    EXPECT_NEAR(found_ohm, row.ohm_kft, 0.005 * row.ohm_kft) << "AWG " << row.gauge;
  }
}

// The table's note: R2 = R1·(1 + 0.00323·(T2 − 75)).
TEST(CableReference, resistance_follows_temperature_as_the_code_says) {
  double const diameter_m = awg_diameter_m(10);
  double const at_75_ohm = cable_resistance_ohm(diameter_m, kilofoot_m, 75);
  for (double const temperature_c : {10.0, 20.0, 40.0, 90.0}) {
    double const expected_ohm = at_75_ohm * (1 + 0.00323 * (temperature_c - 75));
    EXPECT_NEAR(cable_resistance_ohm(diameter_m, kilofoot_m, temperature_c), expected_ohm, 0.001 * expected_ohm);
  }
}

/// One line of the table of conductors: gauge, diameter [in], and the solid wire's resistance [Ω/kft] at 20 and 75 °C.
struct WireRow {
  int gauge = 0;
  double diameter_in = 0;
  double solid_20_ohm_kft = 0;
  double solid_75_ohm_kft = 0;
};

std::vector<WireRow> wire_rows() {
  std::vector<WireRow> rows;
  std::ifstream file(reference_folder() + "/tables/copper_awg.csv");
  std::string line;
  while (std::getline(file, line)) {
    std::vector<std::string> cells;
    std::istringstream parts(line);
    for (std::string cell; std::getline(parts, cell, ',');) {
      cells.push_back(cell);
    }
    if (cells.size() > 5 && cells[0].find_first_not_of("0123456789") == std::string::npos) {
      rows.push_back({std::stoi(cells[0]), std::stod(cells[1]), std::stod(cells[4]), std::stod(cells[5])});
    }
  }
  return rows;
}

TEST(CableReference, every_gauge_of_the_wire_table) {
  auto const rows = wire_rows();
  if (rows.empty()) {
    GTEST_SKIP() << "no copper_awg.csv in the folder of published tables";
  }
  EXPECT_GE(rows.size(), 8u);
  for (auto const& row : rows) {
    double const diameter_m = awg_diameter_m(row.gauge);
    EXPECT_NEAR(diameter_m, row.diameter_in * inch_m, 0.000006 * inch_m) << "AWG " << row.gauge;
    // Stranding adds 2 % to the solid wire's.
    EXPECT_NEAR(cable_resistance_ohm(diameter_m, kilofoot_m, 20), 1.02 * row.solid_20_ohm_kft,
                0.0005 * row.solid_20_ohm_kft);
    EXPECT_NEAR(cable_resistance_ohm(diameter_m, kilofoot_m, 75), 1.02 * row.solid_75_ohm_kft,
                0.0005 * row.solid_75_ohm_kft);
  }
}

}  // namespace
}  // namespace wellproof
