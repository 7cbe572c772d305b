#pragma once
// The commands behind the door, one function each.
#include "door/door.h"

namespace wellproof {

struct Prepared;

Answer plan_command(Request const& request, Door::Progress const& progress);
/// The same for whom the site is at hand already.
Answer plan_answer(Request const& request, Prepared ready, Door::Progress const& progress);
Answer map_command(Request const& request);
Answer run_command(Request const& request);
Answer tune_command(Request const& request);
Answer check_command(Request const& request);
Answer scenarios_command(Request const& request);
Answer new_command(Request const& request);
Answer welltest_command(Request const& request);
Answer compare_command(Request const& request, Door::Progress const& progress);
Answer fit_command(Request const& request, Door::Progress const& progress);
Answer sheet_command(Request const& request, Door::Progress const& progress);

Answer share_command(Request const& request);

Answer explain_command(Request const& request, Door::Progress const& progress);

/// The findings, one a line, with the exit code of bad input.
Answer refused(Findings const& findings);

}  // namespace wellproof
