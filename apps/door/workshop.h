#pragma once
// The door with a memory, for a page: it keeps the site it was last asked about, so that a share of a proof or another
// setting does not begin from the site's text each time, and it keeps one run that somebody stands in. All it answers
// is what the door would; besides, "command": "live" with what live_desk.h says in "live", and "command": "derive",
// which is a plan without its proof.
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "door/door.h"
#include "door/live_desk.h"

namespace wellproof {

class Workshop {
 public:
  Workshop() = default;
  explicit Workshop(Door::Progress progress) : door_(std::move(progress)) {}

  /// Never throws for what was asked, as Door::ask.
  Answer ask(std::string_view request);

 private:
  Answer carried_out(std::string_view request);
  Result<Prepared const*> at_hand(Request const& request);

  Door door_;
  LiveDesk live_;
  std::string kept_for_;  // the request whose site is kept, without its settings
  std::unique_ptr<Prepared> kept_;
  std::string set_for_;
  Derived as_derived_;
};

}  // namespace wellproof
