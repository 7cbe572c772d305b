#pragma once
// Text that grows by formatted pieces.
#include <iterator>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace wellproof {

template <class... Parts>
void put(std::string& out, fmt::format_string<Parts...> form, Parts&&... parts) {
  fmt::format_to(std::back_inserter(out), form, std::forward<Parts>(parts)...);
}

}  // namespace wellproof
