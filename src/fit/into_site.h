#pragma once
// What a fit found, put into a site file as the ranges of some of its keys. Every other line and every remark stays as
// it is.
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "fit/fit_pumping_test.h"
#include "quantity/dimension.h"

namespace wellproof {

/// A key below [well] and its value as text, "400 .. 430 .. 460 m2/d".
struct WellKey {
  std::string key;
  std::string value;
};

/// A key of a site ("pump.wear", "pipe.2.length") and its value as text.
struct SiteKey {
  std::string key;
  std::string value;
};

/// What the test says of the site: transmissivity, storativity and, from the pumped well itself, its losses. Ranges are
/// kept within what a site may say.
std::vector<WellKey> well_keys(PumpingTestFit const& fit, UnitSystem units);

/// The text of the site file with these keys set. A finding where the file cannot be read, has no such pipe run or
/// zone, or writes a table in a way that no line can be added to; it names the key, or the table.
/// @param remark stands behind a line that is new; one that begins like an earlier remark of ours takes its place
Result<std::string> with_site_keys(std::string_view site_text, std::string const& file,
                                   std::vector<SiteKey> const& keys, std::string const& remark);

/// The same for keys of the [well] table.
Result<std::string> with_well_keys(std::string_view site_text, std::string const& file,
                                   std::vector<WellKey> const& keys, std::string const& remark);

}  // namespace wellproof
