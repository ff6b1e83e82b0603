#include "engine/explore/state_keys.hpp"

#include <bit>
#include <map>
#include <random>
#include <set>

#include "engine/contract.hpp"
#include "engine/explore/known_keys.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using explore::KnownKeys;
using explore::StateKeys;
using logic::Code;

namespace {

// Includes the code if it is not yet, with the keys made so far brought along.
void include(StateKeys& keys, Code code, std::map<Code, StateKeys::Key>& known) {
  auto const key = keys.key_of(code);
  if (!keys.includes(key)) {
    auto const step = keys.include(key);
    for (auto& [other, old] : known) CHECK(step(old) == old);  // what is in the span stays
  }
  known[code] = keys.key_of(code);
}

}  // namespace

// Closed form: 2^d codes spanned by d of them (and the first) have the keys 0 to 2^d - 1.
TEST_CASE("codes that follow by parity have dense keys") {
  std::mt19937_64 dice(5);
  auto const first = dice();
  std::vector<Code> spanning;
  for (int i = 0; i < 10; ++i) spanning.push_back(dice());
  StateKeys keys(first);
  std::map<Code, StateKeys::Key> known;
  for (auto code : spanning) include(keys, first ^ code, known);
  CHECK(keys.dimensions() == 10);
  std::set<StateKeys::Key> found;
  for (unsigned chosen = 0; chosen < 1024; ++chosen) {
    auto code = first;
    for (unsigned i = 0; i < 10; ++i) code ^= (chosen >> i & 1u) != 0 ? spanning[i] : 0;
    found.insert(keys.key_of(code));
  }
  CHECK(found.size() == 1024);
  CHECK(*found.rbegin() == 1023);
}

TEST_CASE("law: keys and codes tell each other, whatever has been included") {
  for (unsigned seed = 0; seed < 50; ++seed) {
    std::mt19937_64 dice(seed);
    auto const mask = seed % 2 == 0 ? ~Code{0} : dice() & dice();  // some variables never change
    StateKeys keys(dice());
    std::map<Code, StateKeys::Key> known;
    for (int i = 0; i < 80; ++i) include(keys, keys.code_of(0) ^ (dice() & mask), known);
    CHECK(keys.dimensions() == std::popcount(mask));
    bool is_right = true;
    for (int i = 0; i < 100; ++i) {
      auto const code = dice();
      auto const key = keys.key_of(code);
      is_right = is_right && keys.code_of(key) == code;
      auto const variable = static_cast<std::size_t>(dice() % 64);
      is_right =
          is_right && keys.key_of(code ^ Code{1} << variable) == (key ^ keys.change(variable));
    }
    for (auto const& [code, key] : known) is_right = is_right && keys.key_of(code) == key;
    CHECK(is_right);
  }
}

TEST_CASE("what is included already breaks the contract") {
  StateKeys keys(7);
  CHECK_THROWS_AS(keys.include(0), ContractBroken);
}

TEST_CASE("law: known keys are those inserted, dense or not, however often the table widens") {
  for (int bits : {5, 14, 40, 64}) {
    std::mt19937_64 dice(static_cast<unsigned>(bits));
    KnownKeys known;
    std::set<KnownKeys::Key> inserted;
    auto const random_key = [&] { return bits == 64 ? dice() : dice() >> (64 - bits); };
    bool is_right = true;
    for (int i = 0; i < 20000; ++i) {
      auto const key = random_key();
      is_right = is_right && known.is_known(key) == (inserted.count(key) != 0);
      if (inserted.insert(key).second) known.insert(key);
      if (i % 97 == 0) known.widen(bits);
    }
    INFO("bits " << bits);
    CHECK(is_right);
    CHECK(known.dense_end() >= (bits < 12 ? 1u << bits : 1u << 12));
  }
}
