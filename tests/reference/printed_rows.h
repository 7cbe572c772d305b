#pragma once
// Rows of a published table kept as text: lines of numbers parted by commas, one line of names above them, comments
// (#).
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "folders.h"

namespace wellproof {

/// All rows of numbers of a table in the folder of published tables; none if the file is not there.
inline std::vector<std::vector<double>> printed_rows(std::string const& name) {
  std::vector<std::vector<double>> rows;
  std::ifstream file(reference_folder() + "/tables/" + name);
  std::string line;
  bool names_seen = false;
  while (std::getline(file, line)) {
    if (line.empty() || line.front() == '#') {
      continue;
    }
    if (!names_seen) {
      names_seen = true;
      continue;
    }
    std::vector<double> row;
    std::istringstream cells(line);
    std::string cell;
    while (std::getline(cells, cell, ',')) {
      row.push_back(std::stod(cell));
    }
    rows.push_back(row);
  }
  return rows;
}

}  // namespace wellproof
