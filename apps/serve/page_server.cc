#include "serve/page_server.h"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>
#include <httplib.h>

namespace wellproof {
namespace {

constexpr std::string_view loopback = "127.0.0.1";
constexpr int refused_status = 403;

/// Nothing from elsewhere, nothing in a frame; the core is compiled from its bytes, workers come from the page itself.
constexpr char const* policy =
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self' blob:; style-src 'self' "
    "'unsafe-inline'; img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; base-uri 'none'; "
    "form-action 'none'; frame-ancestors 'none'";

/// The page looks for this to know that there is a book.
constexpr std::string_view before_head_ends = "</head>";
constexpr std::string_view book_mark = "<meta name=\"wellproof-book\" content=\"here\" />";

}  // namespace

std::string_view media_type(std::string_view name) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 7> types{
      {{".html", "text/html; charset=utf-8"},
       {".js", "text/javascript; charset=utf-8"},
       {".css", "text/css; charset=utf-8"},
       {".wasm", "application/wasm"},
       {".svg", "image/svg+xml"},
       {".webmanifest", "application/manifest+json"},
       {".png", "image/png"}}};
  for (auto const& [end, type] : types) {
    if (name.size() >= end.size() && name.substr(name.size() - end.size()) == end) {
      return type;
    }
  }
  return "application/octet-stream";
}

bool is_our_host(std::string_view host, int port) {
  auto const with_port = [&](std::string_view name) { return fmt::format("{}:{}", name, port); };
  constexpr int usual_port = 80;
  return host == with_port(loopback) || host == with_port("localhost") ||
         (port == usual_port && (host == loopback || host == "localhost"));
}

bool is_our_origin(std::string_view origin, int port) {
  constexpr std::string_view scheme = "http://";
  return origin.empty() ||
         (origin.substr(0, scheme.size()) == scheme && is_our_host(origin.substr(scheme.size()), port));
}

class PageServer::Inside {
 public:
  Inside(std::vector<Asset> const& assets, Book book) : book_(std::move(book)) {
    server_.set_payload_max_length(most_body_bytes);
    server_.set_pre_routing_handler([this](httplib::Request const& request, httplib::Response& response) {
      bool const ours = is_our_host(request.get_header_value("Host"), port_) &&
                        is_our_origin(request.get_header_value("Origin"), port_);
      if (!ours) {
        refuse(response, refused_status, "Only the page of this server, opened on this machine, is answered.");
        return httplib::Server::HandlerResponse::Handled;
      }
      return httplib::Server::HandlerResponse::Unhandled;
    });
    server_.set_post_routing_handler([](httplib::Request const&, httplib::Response& response) {
      response.set_header("Content-Security-Policy", policy);
      response.set_header("X-Content-Type-Options", "nosniff");
      response.set_header("Referrer-Policy", "no-referrer");
      response.set_header("Cross-Origin-Opener-Policy", "same-origin");
      response.set_header("Cross-Origin-Resource-Policy", "same-origin");
      response.set_header("Cache-Control", "no-cache");
    });
    for (auto const& asset : assets) {
      std::string bytes(asset.bytes);
      if (asset.name == "index.html" && book_) {
        if (auto const at = bytes.find(before_head_ends); at != std::string::npos) {
          bytes.insert(at, book_mark);
        }
      }
      files_.emplace_back(std::string(asset.name), std::move(bytes));
    }
    // The names are a list and not a folder: a path that is not on it is not there, whatever it is spelled like.
    server_.Get(".*", [this](httplib::Request const& request, httplib::Response& response) {
      std::string const name = request.path == "/" ? "index.html" : request.path.substr(1);
      auto const file =
          std::find_if(files_.begin(), files_.end(), [&](auto const& each) { return each.first == name; });
      if (file == files_.end()) {
        refuse(response, 404, "There is no such file.");
        return;
      }
      response.set_content(file->second, std::string(media_type(name)));
    });
    server_.Post("/book/", [this](httplib::Request const& request, httplib::Response& response) {
      // A form of another page can send neither this type nor this header without being asked for first.
      bool const from_page = request.has_header("X-Wellproof") &&
                             request.get_header_value("Content-Type").rfind("application/json", 0) == 0;
      if (!from_page || !book_) {
        refuse(response, refused_status, "The book is asked by the page, in JSON.");
        return;
      }
      response.set_content(answer_bytes(book_(request.body)), "application/json");
    });
  }

  std::optional<int> bind(int port) {
    std::string const host(loopback);
    if (port == 0) {
      port = server_.bind_to_any_port(host);
    } else if (!server_.bind_to_port(host, port)) {
      port = -1;
    }
    port_ = port;
    return port > 0 ? std::optional(port) : std::nullopt;
  }

  void listen() { server_.listen_after_bind(); }
  void stop() { server_.stop(); }

 private:
  static void refuse(httplib::Response& response, int status, char const* why) {
    response.status = status;
    response.set_content(std::string(why) + "\n", "text/plain; charset=utf-8");
  }

  httplib::Server server_;
  Book book_;
  std::vector<std::pair<std::string, std::string>> files_;
  int port_ = 0;
};

PageServer::PageServer(std::vector<Asset> const& assets, Book book)
    : inside_(std::make_unique<Inside>(assets, std::move(book))) {}

PageServer::~PageServer() = default;

std::optional<int> PageServer::bind(int port) {
  return inside_->bind(port);
}

void PageServer::listen() {
  inside_->listen();
}

void PageServer::stop() {
  inside_->stop();
}

}  // namespace wellproof
