#pragma once
// The chain that ties each entry of the book to the one before: a change made with another tool breaks it from there
// on. BLAKE2b of 256 bits (RFC 7693), from libsodium.
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "book/entry.h"

namespace wellproof {

/// What stands as the hash before the first entry.
std::string first_before();

/// The hash of an entry: its number, version, record, and the hash before; not what stands in hash and seal.
std::string chain_hash(Entry const& entry);

/// The hash of a record alone: the same in whatever book it stands.
std::string record_hash(Record const& record);

/// Follows a chain from its first entry on and notes where it does not hold: a number or version out of turn, a hash
/// that is not that of what stands there, or of another entry before.
class ChainCheck {
 public:
  void take(Entry const& entry);
  Findings const& faults() const { return faults_; }
  std::string const& last_hash() const { return last_hash_; }

 private:
  Findings faults_;
  std::string last_hash_ = first_before();
  std::uint64_t number_ = 0;
  std::map<std::pair<std::string, EntryKind>, std::uint64_t> versions_;
};

/// "entry 12 (Alder Hollow 4, settings 3)".
std::string name_of(Entry const& entry);

/// Bytes as hexadecimal digits.
std::string hex(std::string_view bytes);
/// And back; empty if it is not that.
std::string from_hex(std::string_view digits);

}  // namespace wellproof
