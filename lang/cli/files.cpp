#include "lang/cli/files.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <utility>
#include <vector>

#include "lang/diagnostics/near_name.hpp"
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
  if (auto const size = is_input ? 0 : std::filesystem::file_size(path, ignored);
      !ignored && size <= source::largest_text)
    text.reserve(size);
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

namespace {

namespace fs = std::filesystem;

// Where a name is wrong, most likely a letter is. Folders of very many files are not searched.
std::string remedy_for_missing(fs::path const& path) {
  constexpr std::size_t most_compared = 2000;
  std::error_code error;
  std::vector<std::string> known;
  auto const folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    if (known.size() == most_compared) return "Check the name and the folder.";
    known.push_back(at->path().filename().string());
  }
  auto const near = diagnostics::near_name(path.filename().string(), known);
  return near ? fmt::format("The nearest name in that folder is '{}'.", *near)
              : "Check the name and the folder.";
}

bool are_one_file(fs::path const& one, fs::path const& other) {
  std::error_code error;
  auto const place = fs::canonical(one, error);
  if (error) return false;
  return fs::canonical(other, error) == place && !error;
}

}  // namespace

// A path through `..` is shortened, so that names do not grow along a chain of includes, but only
// if that leads to the same file: a folder on the way may be a link.
std::string Disk::name_of(std::string const& written, std::string const& from) {
  auto const path = fs::path(from).parent_path() / written;
  auto const shorter = path.lexically_normal();
  auto name = (are_one_file(path, shorter) ? shorter : path).string();
  return name == "-" ? "./-" : name;
}

std::string Disk::identity_of(std::string const& name) {
  std::error_code error;
  auto const place = name == "-" ? fs::path() : fs::canonical(name, error);
  return error || name == "-" ? name : place.string();
}

std::variant<std::string, lower::FileFault> Disk::read(std::string const& name) {
  std::error_code error;
  auto const status = fs::status(name, error);
  auto const shown = render::showable(name);
  if (status.type() == fs::file_type::not_found)
    return lower::FileFault{shown + " is not there", remedy_for_missing(name)};
  if (fs::is_directory(status))
    return lower::FileFault{shown + " is a folder, not a design",
                            "Include the files in it, each by its name."};
  if (fs::exists(status) && !fs::is_regular_file(status))
    return lower::FileFault{shown + " is a device or pipe, not a file",
                            "Include a design that is kept in a file."};
  auto found = read_file(name);
  if (auto* fault = std::get_if<FileFault>(&found))
    return lower::FileFault{std::move(fault->headline), fault->remedy.empty()
                                                            ? "Check the file, and who may read it."
                                                            : std::move(fault->remedy)};
  return std::move(std::get<FileText>(found).text);
}

}  // namespace leat::cli
