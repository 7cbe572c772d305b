#pragma once
// The pass phrase of a book. While a book is locked this program adds nothing to it without the phrase, and seals what
// it adds with a key that only the phrase gives. It hides nothing: whoever has the file can read it, and can change it
// with another tool; but nobody without the phrase can make seals that fit, so that a check with the phrase shows it.
// Argon2id (RFC 9106) makes guessing slow.
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "contract/finding.h"

namespace wellproof {

/// What one try of a pass phrase costs.
struct LockCost {
  std::uint64_t passes = 3;
  std::uint64_t memory_bytes = std::uint64_t{64} << 20U;
};

/// A lock as it stands in the book. verifier tells whether a phrase is right; it gives neither phrase nor key away.
struct Lock {
  LockCost cost;
  std::string salt;      // hexadecimal digits
  std::string verifier;  // hexadecimal digits
};

/// The key that a pass phrase gives. Wiped when it goes.
class SealKey {
 public:
  using Bytes = std::array<unsigned char, 32>;
  SealKey(Bytes bytes, std::string verifier);
  SealKey(SealKey const&) = delete;
  SealKey(SealKey&& other) noexcept;
  SealKey& operator=(SealKey const&) = delete;
  SealKey& operator=(SealKey&& other) noexcept;
  ~SealKey();

  std::string const& verifier() const { return verifier_; }
  bool fits(Lock const& lock) const { return lock.verifier == verifier_; }
  /// The seal on a hash of the chain.
  std::string seal(std::string_view hash) const;

 private:
  Bytes bytes_;
  std::string verifier_;
};

/// A new lock with a salt of its own. Throws std::bad_alloc if the memory for it is not there.
Lock new_lock(std::string_view phrase, LockCost cost = {});

/// The key, if the phrase is the lock's.
std::optional<SealKey> key_of(Lock const& lock, std::string_view phrase);

/// As the content of an entry, and back. A lock of another form, or one that costs more than a machine should be made
/// to spend, is a finding.
std::string written(Lock const& lock);
Result<Lock> read_lock(std::string_view text);

}  // namespace wellproof
