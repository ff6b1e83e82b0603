#pragma once
#include <vector>

#include "engine/logic/cover.hpp"
#include "engine/logic/small_rows.hpp"

namespace leat::logic {

// A widest cube within what is allowed, and its rows.
struct PrimeCube {
  Cube cube;
  SmallRows rows;
};

// Every prime cube of `allowed` that holds a row of `needed`; both over `inputs` inputs.
//
// Idea: for every choice of inputs to name, from all of them down, the set of rows whose whole cube
// lies within `allowed`: one input fewer is the meet of the set with itself flipped there (the
// merging of Quine and McCluskey, done for all rows at once). A cube is prime where none of the
// choices with one input fewer holds it. Cost: inputs times 2^inputs operations on sets of rows.
// Limit: 8 inputs. Contract: needed lies within allowed.
std::vector<PrimeCube> prime_cubes(SmallRows const& needed, SmallRows const& allowed, int inputs);

}  // namespace leat::logic
