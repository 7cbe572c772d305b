#pragma once
// What was derived from a site as text, so that one hand derives and the others prove: threads of a browser share no
// memory. A number reads back as the same number.
#include <optional>
#include <string>
#include <string_view>

#include "settings/derive.h"

namespace wellproof {

/// @param ground all that it was derived from, in the bytes of its request
std::string derived_text(Derived const& derived, std::string_view ground);

/// Nothing where it is no such text, or was derived from other ground: then it has to be derived anew.
std::optional<Derived> read_derived(std::string_view text, std::string_view ground);

}  // namespace wellproof
