#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "lang/cli/files.hpp"

// Writing results into files of the outside world.
namespace leat::cli {

// Puts the text in the place of what the file holds, whole or not at all: on a full disk, a
// read-only folder or a broken link the file keeps every byte it had, and the fault says why. A new
// file gets the permissions the user's mask leaves, a replaced one keeps its own. A symbolic link
// stays one: what it leads to is written. Devices and pipes take the text as it comes.
std::optional<FileFault> write_file(std::string const& path, std::string_view text);

}  // namespace leat::cli
