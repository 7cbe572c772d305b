#pragma once
// The page over HTTP, for the browser of this machine and nobody else: bound to loopback, a fixed list of files, and
// the book behind POST /book/. A request that does not come from the page itself is refused: another Host (a name that
// was made to point here), another Origin, a body over the limit.
#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "clerk/clerk.h"

namespace wellproof {

/// A file of the page.
struct Asset {
  std::string_view name;  // "page.js"
  std::string_view bytes;
};

/// The files of the page that this program was built with; empty if it was built without.
std::vector<Asset> const& page_assets();

inline constexpr std::size_t most_body_bytes = std::size_t{4} << 20U;

/// What kind of file a name says that it is.
std::string_view media_type(std::string_view name);

/// Whether a Host header means this server: loopback by number or name, and the port.
bool is_our_host(std::string_view host, int port);
/// Whether an Origin header, if there is one, is a page of this server.
bool is_our_origin(std::string_view origin, int port);

/// What the page asks of the book, as JSON: {"command": "add", "site": {…}, "files": [{"kind": "settings", …}], "why":
/// "", "address": "", "version": 2, "pass": ""}. The rest of BookRequest is the server's to say.
Result<BookRequest> read_book_request(std::string_view bytes);
/// The pass phrase that came along; empty if none did.
std::string pass_of(std::string_view bytes);

class PageServer {
 public:
  /// Answers a book request from its bytes; empty: there is no book.
  using Book = std::function<Answer(std::string_view bytes)>;

  PageServer(std::vector<Asset> const& assets, Book book);
  ~PageServer();
  PageServer(PageServer const&) = delete;
  PageServer& operator=(PageServer const&) = delete;
  PageServer(PageServer&&) = delete;
  PageServer& operator=(PageServer&&) = delete;

  /// Takes a port of 127.0.0.1, any free one for 0. Nothing if it is not to be had.
  std::optional<int> bind(int port);
  /// Answers until stop().
  void listen();
  void stop();

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace wellproof
