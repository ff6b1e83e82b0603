#pragma once
#include <string>
#include <variant>

#include "lang/lower/file_access.hpp"

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

// The files of this machine, as `include` names them: a path is taken from the folder of the file
// that it stands in, and from the current folder in what comes from the standard input. Only plain
// files are read: no device or pipe, which may never end.
class Disk : public lower::FileAccess {
 public:
  std::string name_of(std::string const& written, std::string const& from) override;
  std::string identity_of(std::string const& name) override;
  std::variant<std::string, lower::FileFault> read(std::string const& name) override;
};

}  // namespace leat::cli
