#include <fmt/format.h>

#include "door/commands.h"
#include "fit/into_site.h"
#include "sheet/layout.h"
#include "sheet/welltest.h"

namespace wellproof {
namespace {

/// The site's text with the result in it. A site that reads well without it must do so with it.
Result<std::string> site_with(Request const& request, WellTest const& test) {
  auto const before = read_site(request.site.text, request.site.file, request.beside);
  auto written = with_well_keys(request.site.text, request.site.file, well_keys(test.fit, request.units),
                                "from the pumping test " + request.test.records.front().file);
  if (!written) {
    return written;
  }
  auto const after = read_site(*written, request.site.file, request.beside);
  if (!after && before) {
    return tl::unexpected(after.error());
  }
  return written;
}

}  // namespace

Answer welltest_command(Request const& request) {
  auto read = read_pumping_test(request.test);
  if (!read) {
    return refused(read.error());
  }
  read->units = request.units;
  WellTest test;
  test.fit = fit_pumping_test(*read);
  test.units = request.units;
  Answer answer;
  bool const known = test.fit.tells_transmissivity;
  if (!request.site.file.empty() && known) {
    auto const written = site_with(request, test);
    if (!written) {
      return refused(written.error());
    }
    test.into = request.site.file;
    answer.files.emplace_back(request.site.file, *written);
  }
  if (!request.site.file.empty() && !known) {
    answer.err = visible(request.site.file) + ": not written, since the data cannot tell the transmissivity\n";
  }
  answer.exit_code = known ? exit_code::fine : exit_code::not_proven;
  answer.out = request.json ? welltest_json(test) : welltest_sheet(test, request.colour);
  if (!request.report.empty()) {
    answer.files.emplace_back(request.report, welltest_report(test));
  }
  return answer;
}

}  // namespace wellproof
