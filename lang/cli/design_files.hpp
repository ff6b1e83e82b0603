#pragma once
#include <optional>
#include <string>
#include <vector>

#include "lang/cli/terminal.hpp"

namespace leat::cli {

// The files that are meant by paths of files and folders, each once, in the order of the paths. A
// folder stands for all files in and below it that end in `.leat`, by their names; what begins with
// a dot is passed over, and links to folders are not followed. None where a folder cannot be read
// or holds no design, which has been told.
std::optional<std::vector<std::string>> design_files(std::vector<std::string> const& paths,
                                                     Terminal&);

}  // namespace leat::cli
