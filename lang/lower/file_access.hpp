#pragma once
#include <string>
#include <variant>

// What is needed of the outside world to follow `include`. Files are known by the names under which
// messages show them.
namespace leat::lower {

// Why a file cannot be included, and what to do.
struct FileFault {
  std::string headline, remedy;
};

class FileAccess {
 public:
  virtual ~FileAccess() = default;
  // The name of the file that is called `written` within the file `from`.
  virtual std::string name_of(std::string const& written, std::string const& from) = 0;
  // The same for two names exactly if they are names of one file.
  virtual std::string identity_of(std::string const& name) = 0;
  // The file's text, of which there may be more than is understood; then it may be cut there.
  virtual std::variant<std::string, FileFault> read(std::string const& name) = 0;
};

// Where there are no other files.
class NoFiles : public FileAccess {
 public:
  std::string name_of(std::string const& written, std::string const&) override { return written; }
  std::string identity_of(std::string const& name) override { return name; }
  std::variant<std::string, FileFault> read(std::string const& name) override {
    return FileFault{name + " cannot be read: this text stands alone",
                     "Check the design from a file, or take the include away."};
  }
};

}  // namespace leat::lower
