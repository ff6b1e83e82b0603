#pragma once
#include <string>
#include <variant>

#include "lang/cli/exit_table.hpp"
#include "lang/cli/options.hpp"
#include "lang/render/outline.hpp"

namespace leat::cli {

// Options, or, where the command line asks for help or the version or cannot be understood, what to
// print instead and how to end.
struct Answer {
  std::string out, err;
  Exit exit = Exit::holds;
};
std::variant<Options, Answer> read_command_line(int count, char const* const* arguments);

// All that the command line can say.
render::Outline outline();

}  // namespace leat::cli
