#include "door/door.h"

#include <new>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "contract/require.h"
#include "door/commands.h"

namespace wellproof {
namespace {

using Progress = Door::Progress;

struct Command {
  std::string_view name;
  Answer (*carry_out)(Request const& request, Progress const& progress);
};

template <Answer (*quick)(Request const&)>
Answer without_progress(Request const& request, Progress const&) {
  return quick(request);
}

constexpr Command commands[] = {{"plan", plan_command},
                                {"map", without_progress<map_command>},
                                {"run", without_progress<run_command>},
                                {"tune", without_progress<tune_command>},
                                {"compare", compare_command},
                                {"sheet", sheet_command},
                                {"check", without_progress<check_command>},
                                {"scenarios", without_progress<scenarios_command>},
                                {"new", without_progress<new_command>},
                                {"welltest", without_progress<welltest_command>},
                                {"fit", fit_command},
                                {"explain", explain_command},
                                {"share", without_progress<share_command>}};

Answer carried_out(Request const& request, Progress const& progress) {
  std::vector<std::string_view> names;
  for (auto const& command : commands) {
    if (command.name == request.command) {
      return command.carry_out(request, progress);
    }
    names.push_back(command.name);
  }
  return refused({{{"request", 0, 0},
                   "command",
                   "\"" + request.command + "\"",
                   fmt::format("one of {}", fmt::join(names, ", ")),
                   nearest_word(request.command, names)}});
}

Answer gave_way(std::string const& why) {
  return {exit_code::machine, "", "wellproof: " + why + "\n", {}};
}

}  // namespace

Answer refused(Findings const& findings) {
  Answer answer;
  answer.exit_code = exit_code::bad_input;
  for (auto const& finding : findings) {
    answer.err += text(finding) + "\n";
  }
  answer.findings = findings;
  return answer;
}

Answer Door::ask(std::string_view request) const {
  try {
    auto const read = read_request(request);
    return read ? carried_out(*read, progress_) : refused(read.error());
  } catch (std::bad_alloc const&) {
    return gave_way("out of memory");
  } catch (ContractBroken const& broken) {
    return gave_way(std::string("a promise of the program's own code does not hold: ") + broken.what() +
                    ". Please report this with the command and the site file.");
  } catch (std::system_error const& error) {
    return gave_way(std::string("the system refused: ") + error.what());
  } catch (std::exception const& error) {
    return gave_way(std::string("stopped by a fault of its own: ") + error.what());
  }
}

}  // namespace wellproof
