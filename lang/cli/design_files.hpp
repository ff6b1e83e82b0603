#pragma once
#include <optional>
#include <string>
#include <vector>

#include "lang/cli/files.hpp"
#include "lang/cli/terminal.hpp"

namespace leat::cli {

struct DesignFile {
  std::string name;
  bool is_from_folder = false;  // found, not named
};

struct DesignFiles {
  std::vector<DesignFile> files;
  std::vector<FileFault> faults;  // folders that could not be read or hold no design
};

// The files meant by names of files and folders, each once, in the order of the names. Of a folder
// that is every *.leat in it and in the folders below, sorted by name; what begins with a dot is
// passed over. A link to a folder is followed after the folders themselves, and only where it leads
// to one that was not seen yet: no link leads round. Cost: one look at each entry.
DesignFiles design_files(std::vector<std::string> const& names);

// The same by their names alone; none where there is a fault, which has been told.
std::optional<std::vector<std::string>> design_files(std::vector<std::string> const& names,
                                                     Terminal&);

}  // namespace leat::cli
