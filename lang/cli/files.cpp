#include "lang/cli/files.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

#include "lang/render/columns.hpp"
#include "lang/source/soundness.hpp"

namespace leat::cli {

namespace {

struct Closer {
  void operator()(std::FILE* file) const {
    if (file != stdin) std::fclose(file);
  }
};
using File = std::unique_ptr<std::FILE, Closer>;

FileFault fault(std::string const& path, std::string_view what, std::string remedy) {
  return {path, fmt::format("{} {}", render::showable(path), what), std::move(remedy)};
}

FileFault not_opened(std::string const& path, int error) {
  if (error == ENOENT) return fault(path, "is not there", "Check the name and the folder.");
  if (error == EACCES) return fault(path, "may not be read", "Check who may read it.");
  return fault(path, fmt::format("cannot be read: {}", std::strerror(error)), "");
}

}  // namespace

std::variant<FileText, FileFault> read_file(std::string const& path) {
  bool const is_input = path == "-";
  auto const& name = path;
  std::error_code ignored;
  if (!is_input && std::filesystem::is_directory(path, ignored)) {
    return fault(name, "is a folder, not a design", "Name the files in it.");
  }
  errno = 0;
  File const file(is_input ? stdin : std::fopen(path.c_str(), "rb"));
  if (!file) return not_opened(name, errno);
  std::string text;
  std::string buffer(std::size_t{1} << 16, '\0');
  while (auto const count = std::fread(buffer.data(), 1, buffer.size(), file.get())) {
    text.append(buffer, 0, count);
    if (text.size() <= source::largest_text) continue;
    return fault(
        name,
        fmt::format("is larger than {} MiB, the most that is read", source::largest_text >> 20),
        "A design is a small text: check that this is the right file.");
  }
  if (std::ferror(file.get()) != 0) return not_opened(name, errno);
  return FileText{name, std::move(text)};
}

}  // namespace leat::cli
