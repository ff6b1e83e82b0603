#pragma once

namespace leat::cli {

// The whole program: reads the command line, runs one command, gives the exit code. Nothing is
// thrown out of it.
int run_program(int count, char const* const* arguments) noexcept;

}  // namespace leat::cli
