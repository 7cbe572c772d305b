#include "book/chain.h"

#include <cstddef>

#include <fmt/format.h>
#include <sodium.h>

#include "contract/require.h"

namespace wellproof {
namespace {

constexpr std::size_t hash_bytes = 32;

unsigned char const* bytes_of(std::string_view text) {
  return reinterpret_cast<unsigned char const*>(text.data());  // NOLINT(cppcoreguidelines-pro-type-reinterpret-cast)
}

/// Each part goes in behind its length, so that no two records share a text to be hashed.
class Hasher {
 public:
  Hasher() {
    require(sodium_init() >= 0, "the library of hashes starts");
    crypto_generichash_init(&state_, nullptr, 0, hash_bytes);
  }

  void number(std::uint64_t value) {
    unsigned char eight[8];
    for (std::size_t i = 0; i < 8; ++i) {
      eight[i] = static_cast<unsigned char>(value >> (8 * i));
    }
    crypto_generichash_update(&state_, eight, sizeof eight);
  }

  void part(std::string_view text) {
    number(text.size());
    crypto_generichash_update(&state_, bytes_of(text), text.size());
  }

  void record(Record const& record) {
    part(record.site);
    part(word(record.kind));
    part(record.who);
    part(record.at);
    part(record.why);
    part(record.name);
    part(record.content);
    number(record.beside.size());
    for (auto const& file : record.beside) {
      part(file.name);
      part(file.text);
    }
  }

  std::string digits() {
    unsigned char out[hash_bytes];
    crypto_generichash_final(&state_, out, sizeof out);
    std::string bytes;
    for (auto const byte : out) {
      bytes += static_cast<char>(byte);
    }
    return hex(bytes);
  }

 private:
  crypto_generichash_state state_{};
};

}  // namespace

std::string first_before() {
  return std::string(2 * hash_bytes, '0');
}

std::string chain_hash(Entry const& entry) {
  Hasher hasher;
  hasher.part(entry.before);
  hasher.number(entry.number);
  hasher.number(entry.version);
  hasher.record(entry.record);
  return hasher.digits();
}

std::string record_hash(Record const& record) {
  Hasher hasher;
  hasher.record(record);
  return hasher.digits();
}

std::string name_of(Entry const& entry) {
  return entry.record.site.empty() ? fmt::format("entry {} ({})", entry.number, word(entry.record.kind))
                                   : fmt::format("entry {} ({}, {} {})", entry.number, entry.record.site,
                                                 word(entry.record.kind), entry.version);
}

void ChainCheck::take(Entry const& entry) {
  auto const fault = [&](std::string found, std::string expected) {
    faults_.push_back({{"", 0, 0}, name_of(entry), std::move(found), std::move(expected), ""});
  };
  if (entry.number != number_ + 1) {
    fault(fmt::format("number {}", entry.number), fmt::format("number {}: entries are missing", number_ + 1));
  } else if (entry.before != last_hash_) {
    fault("another hash of the entry before", "the hash of the entry that stands before it");
  }
  if (chain_hash(entry) != entry.hash) {
    fault("something else than was written", "what its hash was made of");
  }
  auto& version = versions_[{entry.record.site, entry.record.kind}];
  if (entry.version != version + 1) {
    fault(fmt::format("version {}", entry.version), fmt::format("version {}", version + 1));
  }
  version = entry.version;
  number_ = entry.number;
  last_hash_ = entry.hash;
}

std::string hex(std::string_view bytes) {
  std::string digits(2 * bytes.size() + 1, '\0');
  sodium_bin2hex(digits.data(), digits.size(), bytes_of(bytes), bytes.size());
  digits.pop_back();
  return digits;
}

std::string from_hex(std::string_view digits) {
  std::string bytes(digits.size() / 2, '\0');
  std::size_t got = 0;
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast)
  auto* const out = reinterpret_cast<unsigned char*>(bytes.data());
  bool const read = digits.size() % 2 == 0 &&
                    sodium_hex2bin(out, bytes.size(), digits.data(), digits.size(), nullptr, &got, nullptr) == 0;
  return read && got == bytes.size() ? bytes : "";
}

}  // namespace wellproof
