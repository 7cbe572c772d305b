#include "book/lock.h"

#include <new>
#include <utility>

#include <sodium.h>
#include <nlohmann/json.hpp>

#include "book/chain.h"
#include "contract/require.h"

namespace wellproof {
namespace {

constexpr std::size_t salt_bytes = crypto_pwhash_argon2id_SALTBYTES;
constexpr std::size_t verifier_bytes = 32;
constexpr std::uint64_t most_passes = 20;
constexpr std::uint64_t most_memory_bytes = std::uint64_t{1} << 30U;
// Of the key that the phrase gives, two others are made for the two uses: knowing one does not tell the other.
constexpr char context[crypto_kdf_CONTEXTBYTES + 1] = "wellbook";
constexpr std::uint64_t use_verifier = 1;
constexpr std::uint64_t use_seal = 2;

unsigned char* bytes_of(std::string& text) {
  return reinterpret_cast<unsigned char*>(text.data());  // NOLINT(cppcoreguidelines-pro-type-reinterpret-cast)
}

/// The key of a phrase under a salt, whether or not it is the lock's.
SealKey derived(LockCost cost, std::string const& salt, std::string_view phrase) {
  require(sodium_init() >= 0, "the library of pass phrases starts");
  std::string salt_raw = from_hex(salt);
  require(salt_raw.size() == salt_bytes, "a salt has its length");
  SealKey::Bytes master{};
  if (crypto_pwhash(master.data(), master.size(), phrase.data(), phrase.size(), bytes_of(salt_raw), cost.passes,
                    static_cast<std::size_t>(cost.memory_bytes), crypto_pwhash_ALG_ARGON2ID13) != 0) {
    throw std::bad_alloc();
  }
  std::string verifier(verifier_bytes, '\0');
  SealKey::Bytes key{};
  crypto_kdf_derive_from_key(bytes_of(verifier), verifier.size(), use_verifier, context, master.data());
  crypto_kdf_derive_from_key(key.data(), key.size(), use_seal, context, master.data());
  sodium_memzero(master.data(), master.size());
  SealKey made(key, hex(verifier));
  sodium_memzero(key.data(), key.size());
  return made;
}

Finding not_a_lock() {
  return {{"", 0, 0}, "lock", "an entry of another form", "a lock that this program wrote", ""};
}

}  // namespace

SealKey::SealKey(Bytes bytes, std::string verifier) : bytes_(bytes), verifier_(std::move(verifier)) {}

SealKey::SealKey(SealKey&& other) noexcept : bytes_(other.bytes_), verifier_(std::move(other.verifier_)) {
  sodium_memzero(other.bytes_.data(), other.bytes_.size());
}

SealKey& SealKey::operator=(SealKey&& other) noexcept {
  std::swap(bytes_, other.bytes_);
  std::swap(verifier_, other.verifier_);
  return *this;
}

SealKey::~SealKey() {
  sodium_memzero(bytes_.data(), bytes_.size());
}

std::string SealKey::seal(std::string_view hash) const {
  std::string in(hash);
  std::string out(crypto_generichash_BYTES, '\0');
  crypto_generichash(bytes_of(out), out.size(), bytes_of(in), in.size(), bytes_.data(), bytes_.size());
  return hex(out);
}

Lock new_lock(std::string_view phrase, LockCost cost) {
  require(sodium_init() >= 0, "the library of pass phrases starts");
  std::string salt(salt_bytes, '\0');
  randombytes_buf(salt.data(), salt.size());
  Lock lock{cost, hex(salt), ""};
  lock.verifier = derived(cost, lock.salt, phrase).verifier();
  return lock;
}

std::optional<SealKey> key_of(Lock const& lock, std::string_view phrase) {
  SealKey key = derived(lock.cost, lock.salt, phrase);
  return key.fits(lock) ? std::optional<SealKey>(std::move(key)) : std::nullopt;
}

std::string written(Lock const& lock) {
  nlohmann::ordered_json const json{{"argon2id", "1.3"},
                                    {"passes", lock.cost.passes},
                                    {"memory_bytes", lock.cost.memory_bytes},
                                    {"salt", lock.salt},
                                    {"verifier", lock.verifier}};
  return json.dump(2) + "\n";
}

Result<Lock> read_lock(std::string_view text) {
  auto const json = nlohmann::json::parse(text, nullptr, false);
  bool const formed = json.is_object() && json.contains("passes") && json["passes"].is_number_unsigned() &&
                      json.contains("memory_bytes") && json["memory_bytes"].is_number_unsigned() &&
                      json.contains("salt") && json["salt"].is_string() && json.contains("verifier") &&
                      json["verifier"].is_string();
  if (!formed) {
    return tl::unexpected(Findings{not_a_lock()});
  }
  Lock const lock{{json["passes"].get<std::uint64_t>(), json["memory_bytes"].get<std::uint64_t>()},
                  json["salt"].get<std::string>(),
                  json["verifier"].get<std::string>()};
  bool const bounded = lock.cost.passes >= crypto_pwhash_argon2id_OPSLIMIT_MIN && lock.cost.passes <= most_passes &&
                       lock.cost.memory_bytes >= crypto_pwhash_argon2id_MEMLIMIT_MIN &&
                       lock.cost.memory_bytes <= most_memory_bytes;
  if (!bounded || from_hex(lock.salt).size() != salt_bytes || from_hex(lock.verifier).size() != verifier_bytes) {
    return tl::unexpected(Findings{not_a_lock()});
  }
  return lock;
}

}  // namespace wellproof
