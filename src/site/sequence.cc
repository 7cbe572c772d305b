// Points of the unit cube that fill it more evenly than chance would: Sobol's sequence with the direction numbers of
// Joe and Kuo, each coordinate scrambled after Owen by a hash of its higher bits. Integers throughout, so that every
// machine gives the same bits.
#include <cstddef>  // the table below uses std::size_t without including it

#include <boost/random/detail/sobol_table.hpp>

#include <array>
#include <cstdint>

#include "quantity/chance.h"
#include "site/draw.h"

namespace wellproof {
namespace {

using Table = boost::random::detail::qrng_tables::sobol;
constexpr unsigned bits = 32;

std::uint32_t reversed(std::uint32_t x) {
  x = ((x >> 1U) & 0x55555555U) | ((x & 0x55555555U) << 1U);
  x = ((x >> 2U) & 0x33333333U) | ((x & 0x33333333U) << 2U);
  x = ((x >> 4U) & 0x0F0F0F0FU) | ((x & 0x0F0F0F0FU) << 4U);
  x = ((x >> 8U) & 0x00FF00FFU) | ((x & 0x00FF00FFU) << 8U);
  return (x >> 16U) | (x << 16U);
}

/// A hash in which each bit hangs on lower bits only (Laine & Karras 2011, constants of Burley 2020): on reversed bits,
/// a random flip of each bit by what stands above it, which is Owen's scrambling.
std::uint32_t hashed_upwards(std::uint32_t x, std::uint32_t seed) {
  x += seed;
  x ^= x * 0x6C50B47CU;
  x ^= x * 0xB82F1E52U;
  x ^= x * 0xC7AFE638U;
  x ^= x * 0x8D22F6E6U;
  return x;
}

/// An independent seed for each coordinate.
std::uint32_t seed_of(std::uint64_t seed, std::uint64_t dimension) {
  return static_cast<std::uint32_t>(mixed(seed + (dimension + 1) * chance_step) >> 32U);
}

/// Sobol's coordinate as a binary fraction of 32 bits: the direction numbers of the index's bits, added without carry.
std::uint32_t sobol(std::uint32_t index, std::size_t dimension) {
  if (dimension == 0) {
    return reversed(index);
  }
  std::array<std::uint32_t, bits> m{};
  auto const polynomial = static_cast<std::uint32_t>(Table::polynomial(dimension - 1));
  unsigned degree = 0;
  while ((polynomial >> (degree + 1)) != 0) {
    ++degree;
  }
  std::uint32_t sum = 0;
  for (unsigned j = 0; j < bits && (index >> j) != 0; ++j) {
    if (j < degree) {
      m[j] = static_cast<std::uint32_t>(Table::minit(dimension - 1, j));
    } else {
      m[j] = m[j - degree];
      for (unsigned k = 0; k < degree; ++k) {
        if (((polynomial >> k) & 1U) != 0) {
          m[j] ^= m[j - degree + k] << (degree - k);
        }
      }
    }
    if (((index >> j) & 1U) != 0) {
      sum ^= m[j] << (bits - 1 - j);
    }
  }
  return sum;
}

}  // namespace

std::vector<double> sequence_point(std::uint64_t seed, std::uint32_t index, std::size_t dimensions) {
  std::vector<double> point(dimensions, 0.5);
  if (index == 0) {
    return point;
  }
  for (std::size_t i = 0; i < dimensions; ++i) {
    std::size_t const column = i % static_cast<std::size_t>(Table::max_dimension);
    auto const scrambled = reversed(hashed_upwards(reversed(sobol(index - 1, column)), seed_of(seed, i)));
    point[i] = (scrambled + 0.5) * 0x1p-32;
  }
  return point;
}

}  // namespace wellproof
