#pragma once
// The report: one HTML file that needs nothing else, reads without colour and prints on Letter and A4. It holds no date
// and no script, so that the same plan gives the same bytes.
#include <string>
#include <string_view>

#include "sheet/plan.h"

namespace wellproof {

std::string html_report(Plan const& plan);

/// Its look (report_style.cc).
std::string_view report_style();

}  // namespace wellproof
