#include "cli/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstdint>
#include <cstring>
#include <filesystem>

#include <fmt/format.h>

namespace wellproof {
namespace {

std::string reason() {
  return std::strerror(errno);  // NOLINT(concurrency-mt-unsafe): files are handled by one thread
}

/// A descriptor that is closed when it goes.
class Open {
 public:
  explicit Open(int descriptor) : descriptor_(descriptor) {}
  Open(Open const&) = delete;
  Open(Open&&) = delete;
  Open& operator=(Open const&) = delete;
  Open& operator=(Open&&) = delete;
  ~Open() { close(); }
  int number() const { return descriptor_; }
  bool close() {
    int const was = descriptor_;
    descriptor_ = -1;
    return was < 0 || ::close(was) == 0;
  }

 private:
  int descriptor_;
};

bool write_all(int descriptor, std::string const& text) {
  std::size_t done = 0;
  while (done < text.size()) {
    auto const wrote = ::write(descriptor, text.data() + done, text.size() - done);
    if (wrote < 0 && errno == EINTR) {
      continue;
    }
    if (wrote < 0) {
      return false;
    }
    done += static_cast<std::size_t>(wrote);
  }
  return true;
}

/// The name of the file that is being written, where a signal's handler finds it.
std::array<char, 4096> half_written{};
std::atomic<bool> half_written_stands{false};

/// Names it while it is being written; a name too long for the place is left to the next start.
class HalfWritten {
 public:
  explicit HalfWritten(std::string const& path) {
    if (path.size() < half_written.size()) {
      std::memcpy(half_written.data(), path.c_str(), path.size() + 1);
      half_written_stands = true;
    }
  }
  HalfWritten(HalfWritten const&) = delete;
  HalfWritten(HalfWritten&&) = delete;
  HalfWritten& operator=(HalfWritten const&) = delete;
  HalfWritten& operator=(HalfWritten&&) = delete;
  ~HalfWritten() { half_written_stands = false; }
};

NotWritten not_written(std::string why) {
  return {false, std::move(why)};
}

/// Moves the finished file to its place. Without leave to replace, a link does it: it fails where a file stands.
tl::expected<void, NotWritten> moved(std::string const& from, std::string const& to, bool may_replace) {
  if (may_replace) {
    if (::rename(from.c_str(), to.c_str()) != 0) {
      return tl::unexpected(not_written(reason()));
    }
    return {};
  }
  if (::link(from.c_str(), to.c_str()) == 0) {
    ::unlink(from.c_str());
    return {};
  }
  if (errno == EEXIST) {
    return tl::unexpected(NotWritten{true, "there is a file already"});
  }
  // A file system without links: look, then move.
  struct stat there {};
  if (::lstat(to.c_str(), &there) == 0) {
    return tl::unexpected(NotWritten{true, "there is a file already"});
  }
  if (::rename(from.c_str(), to.c_str()) != 0) {
    return tl::unexpected(not_written(reason()));
  }
  return {};
}

}  // namespace

tl::expected<std::string, NotRead> read_file(std::string const& path, std::size_t most_bytes) {
  Open const file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.number() < 0) {
    bool const absent = errno == ENOENT || errno == ENOTDIR || errno == ENAMETOOLONG || errno == ELOOP;
    return tl::unexpected(NotRead{absent, errno == ENOENT ? "no such file" : reason()});
  }
  struct stat is {};
  if (::fstat(file.number(), &is) == 0 && S_ISDIR(is.st_mode)) {
    return tl::unexpected(NotRead{true, "a folder"});
  }
  std::string text;
  std::array<char, 65536> piece{};
  for (;;) {
    auto const got = ::read(file.number(), piece.data(), piece.size());
    if (got < 0 && errno == EINTR) {
      continue;
    }
    if (got < 0) {
      return tl::unexpected(NotRead{false, reason()});
    }
    if (got == 0) {
      return text;
    }
    text.append(piece.data(), static_cast<std::size_t>(got));
    if (text.size() > most_bytes) {
      return tl::unexpected(NotRead{true, fmt::format("more than {} MB", most_bytes >> 20U)});
    }
  }
}

tl::expected<void, NotWritten> write_file(std::string const& path, std::string const& text, bool may_replace) {
  struct stat there {};
  bool const stands = ::stat(path.c_str(), &there) == 0;
  if (stands && !may_replace) {
    return tl::unexpected(NotWritten{true, "there is a file already"});
  }
  if (stands && S_ISDIR(there.st_mode)) {
    return tl::unexpected(not_written("it is a folder"));
  }
  if (stands && !S_ISREG(there.st_mode)) {
    // A device or a pipe is written to; it is not put out of its place.
    Open device(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (device.number() < 0 || !write_all(device.number(), text) || !device.close()) {
      return tl::unexpected(not_written(reason()));
    }
    return {};
  }
  // Through a link the file it names is replaced, and the link stays.
  std::error_code error;
  auto const real = stands ? std::filesystem::canonical(path, error) : std::filesystem::path(path);
  std::string const place = error ? path : real.string();
  std::string const beside = fmt::format("{}.{}.part", place, ::getpid());
  HalfWritten const named(beside);
  Open file(::open(beside.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
  if (file.number() < 0) {
    return tl::unexpected(not_written(reason()));
  }
  if (stands) {
    ::fchmod(file.number(), there.st_mode & 07777U);
  }
  bool const whole = write_all(file.number(), text) && ::fsync(file.number()) == 0;
  if (!whole || !file.close()) {
    auto const why = reason();
    ::unlink(beside.c_str());
    return tl::unexpected(not_written(why));
  }
  auto done = moved(beside, place, may_replace);
  if (!done) {
    ::unlink(beside.c_str());
  }
  return done;
}

void remove_half_written() noexcept {
  if (half_written_stands) {
    ::unlink(half_written.data());
  }
}

int first_line_not_utf8(std::string const& text) {
  int line = 1;
  for (std::size_t at = 0; at < text.size();) {
    auto const byte = [&](std::size_t i) { return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i])); };
    std::uint32_t const first = byte(at);
    std::size_t const bytes = first < 0x80   ? 1
                              : first < 0xC2 ? 0
                              : first < 0xE0 ? 2
                              : first < 0xF0 ? 3
                              : first < 0xF5 ? 4
                                             : 0;
    if (bytes == 0 || at + bytes > text.size()) {
      return line;
    }
    for (std::size_t i = 1; i < bytes; ++i) {
      if ((byte(at + i) & 0xC0U) != 0x80U) {
        return line;
      }
    }
    // Too long a form, a half of a surrogate pair, or beyond the last character.
    bool const refused =
        bytes > 2 && ((first == 0xE0 && byte(at + 1) < 0xA0) || (first == 0xED && byte(at + 1) > 0x9F) ||
                      (first == 0xF0 && byte(at + 1) < 0x90) || (first == 0xF4 && byte(at + 1) > 0x8F));
    if (refused) {
      return line;
    }
    line += first == '\n' ? 1 : 0;
    at += bytes;
  }
  return 0;
}

}  // namespace wellproof
