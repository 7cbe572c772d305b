#pragma once
// The door with a memory, for a page: it keeps the site it was last asked about, so that a share of a proof or another
// setting does not begin from the site's text each time, and it keeps one run that somebody stands in. All it answers
// is what the door would; besides, "command": "live" with what live_desk.h says in "live", and "command": "derive",
// which is a plan without its proof and brings as a file what was derived, for other hands. A plan put together of
// shares is made over the site that is kept. Of "explain" it keeps the worlds: answers of checks that come later are
// ranked over those, as asking on at a terminal does, where the door alone would look further into what the answers
// leave.
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "door/door.h"
#include "door/explaining.h"
#include "door/live_desk.h"

namespace wellproof {

class Workshop {
 public:
  Workshop() = default;
  explicit Workshop(Door::Progress progress) : door_(progress), progress_(std::move(progress)) {}

  /// Never throws for what was asked, as Door::ask.
  Answer ask(std::string_view request);

 private:
  Answer carried_out(std::string_view request);
  Result<Prepared const*> at_hand(Request const& request);
  Answer explained(Request request);

  Door door_;
  Door::Progress progress_;
  LiveDesk live_;
  std::string kept_for_;  // the request whose site is kept, without its settings
  std::unique_ptr<Prepared> kept_;
  std::optional<std::string> set_for_;
  Derived as_derived_;
  std::string explained_for_;  // the request whose worlds are kept, without answers
  std::optional<Explaining> explaining_;
};

}  // namespace wellproof
