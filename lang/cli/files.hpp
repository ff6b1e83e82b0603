#pragma once
#include <string>
#include <variant>

// Reading design files from the outside world.
namespace leat::cli {

struct FileText {
  std::string name, text;
};

// Why a file cannot be used, and what to do.
struct FileFault {
  std::string name, headline, remedy;
};

// The whole text of a file, or of the standard input for `-`. Reading stops at the largest text
// that is understood, however long the file is.
std::variant<FileText, FileFault> read_file(std::string const& path);

}  // namespace leat::cli
