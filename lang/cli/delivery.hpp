#pragma once
#include <string>
#include <string_view>

#include "lang/cli/exit_table.hpp"
#include "lang/cli/terminal.hpp"

namespace leat::cli {

// Where a result goes that may be written to a file: to the one that is named, which is told on the
// narration stream; to the standard output where none is, or `-`.
Exit deliver(std::string_view text, std::string const& path, Terminal&);

}  // namespace leat::cli
