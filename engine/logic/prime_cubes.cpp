#include "engine/logic/prime_cubes.hpp"

#include <array>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {

using Named = std::uint32_t;  // a choice of places

// Per choice of places to name, the rows whose cube lies within what is allowed.
struct Implicants {
  std::array<SmallRows, 1u << SmallRows::most_inputs> of;
};

Implicants implicants_of(SmallRows const& allowed, int inputs) {
  Implicants implicants;
  auto const all = (Named{1} << inputs) - 1;
  implicants.of[all] = allowed;
  for (Named named = all; named-- > 0;) {
    auto const place = std::countr_one(named);
    auto const& narrower = implicants.of[named | Named{1} << place];
    implicants.of[named] = narrower & narrower.flipped(place);
  }
  return implicants;
}

// Each cube once: by the row in which the places it leaves open are off.
SmallRows primes_naming(Implicants const& implicants, Named named, int inputs) {
  auto primes = implicants.of[named];
  for (int place = 0; place < inputs; ++place) {
    auto const bit = Named{1} << place;
    primes &= (named & bit) != 0 ? ~implicants.of[named ^ bit] : ~SmallRows::where_on(place);
  }
  return primes;
}

PrimeCube cube_around(Row row, Named named, int inputs) {
  PrimeCube prime;
  prime.rows.insert(row);
  for (int place = 0; place < inputs; ++place) {
    auto const input_bit = std::uint32_t{1} << (inputs - 1 - place);
    if ((named >> place & 1u) == 0) {
      prime.rows |= prime.rows.flipped(place);
    } else {
      prime.cube.care |= input_bit;
      if ((row >> place & 1u) != 0) prime.cube.value |= input_bit;
    }
  }
  return prime;
}

}  // namespace

std::vector<PrimeCube> prime_cubes(SmallRows const& needed, SmallRows const& allowed, int inputs) {
  require(inputs >= 0 && inputs <= SmallRows::most_inputs, "prime_cubes: too many inputs");
  require(needed.is_within(allowed), "prime_cubes: needed rows must be allowed");
  auto const implicants = implicants_of(allowed, inputs);
  std::vector<PrimeCube> primes;
  for (Named named = 0; named < Named{1} << inputs; ++named) {
    primes_naming(implicants, named, inputs).each([&](Row row) {
      auto prime = cube_around(row, named, inputs);
      if (prime.rows.meets(needed)) primes.push_back(prime);
    });
  }
  return primes;
}

}  // namespace leat::logic
