#pragma once
#include <cstddef>
#include <filesystem>
#include <map>
#include <string>
#include <utility>

#include "lang/lower/file_access.hpp"

// Files for tests, by path. A path that begins with `link/` is another name of what follows.
namespace leat::lower {

class Shelf : public FileAccess {
 public:
  explicit Shelf(std::map<std::string, std::string> files) : files_(std::move(files)) {}

  std::string name_of(std::string const& written, std::string const& from) override {
    return (std::filesystem::path(from).parent_path() / written).lexically_normal().string();
  }
  std::string identity_of(std::string const& name) override {
    return name.starts_with("link/") ? name.substr(5) : name;
  }
  std::variant<std::string, FileFault> read(std::string const& name) override {
    ++times_read[name];
    auto const found = files_.find(identity_of(name));
    if (found == files_.end()) return FileFault{name + " is not there", "Check the name."};
    return found->second;
  }

  std::map<std::string, int> times_read;

 private:
  std::map<std::string, std::string> files_;
};

}  // namespace leat::lower
