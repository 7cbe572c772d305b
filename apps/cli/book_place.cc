#include "cli/book_place.h"

#include <pwd.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <ctime>

namespace wellproof {
namespace {

std::string from_environment(char const* name) {
  auto const* const value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe): before any thread
  return value == nullptr ? "" : value;
}

}  // namespace

/// Where the book is without --book: the data folder of the XDG Base Directory Specification, 0.8. A relative path in
/// XDG_DATA_HOME counts as none, as it says there. Empty: no such folder is known.
std::string book_of_the_user() {
  std::string folder = from_environment("XDG_DATA_HOME");
  if (folder.rfind('/', 0) != 0) {
    std::string const home = from_environment("HOME");
    if (home.rfind('/', 0) != 0) {
      return "";
    }
    folder = home + "/.local/share";
  }
  return folder + "/wellproof/book.sqlite";
}

/// The folders above the book, readable by the user alone where they are made.
bool folders_made(std::string const& path) {
  for (auto at = path.find('/', 1); at != std::string::npos; at = path.find('/', at + 1)) {
    if (::mkdir(path.substr(0, at).c_str(), 0700) != 0 && errno != EEXIST) {
      struct stat there {};
      if (::stat(path.substr(0, at).c_str(), &there) != 0) {
        return false;
      }
    }
  }
  return true;
}

std::string login_name() {
  auto const* const entry = ::getpwuid(::geteuid());  // NOLINT(concurrency-mt-unsafe): one thread
  return entry == nullptr || entry->pw_name == nullptr ? from_environment("LOGNAME") : entry->pw_name;
}

std::string now_utc() {
  std::time_t const now = std::time(nullptr);
  std::tm parts{};
  ::gmtime_r(&now, &parts);
  char written[sizeof "0000-00-00T00:00:00Z"];
  return std::strftime(written, sizeof written, "%Y-%m-%dT%H:%M:%SZ", &parts) > 0 ? written : "";
}

}  // namespace wellproof
