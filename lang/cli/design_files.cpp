#include "lang/cli/design_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

namespace fs = std::filesystem;

bool is_hidden(fs::path const& path) { return path.filename().string().starts_with('.'); }

// By their names, so that the order is the same on every machine. `error` says why one could not be
// read.
std::vector<std::string> below(fs::path const& folder, std::error_code& error) {
  std::vector<std::string> found;
  fs::recursive_directory_iterator at(folder, error), end;
  for (; !error && at != end; at.increment(error)) {
    if (is_hidden(at->path())) {
      at.disable_recursion_pending();
    } else if (at->path().extension() == ".leat" && at->is_regular_file()) {
      found.push_back(at->path().string());
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

std::optional<std::vector<std::string>> design_files(std::vector<std::string> const& paths,
                                                     Terminal& terminal) {
  std::vector<std::string> files;
  std::set<std::string> known;
  auto const add = [&](std::string const& file) {
    if (known.insert(file).second) files.push_back(file);
  };
  for (auto const& path : paths) {
    std::error_code error;
    if (path == "-" || !fs::is_directory(path, error)) {
      add(path);
      continue;
    }
    auto const found = below(path, error);
    auto const shown = render::showable(path);
    if (error) {
      terminal.refuse(fmt::format("the folder {} cannot be read: {}", shown, error.message()),
                      "check who may read it, or name the files");
      return std::nullopt;
    }
    if (found.empty()) {
      terminal.refuse(fmt::format("the folder {} holds no design", shown),
                      "designs are files that end in .leat");
      return std::nullopt;
    }
    for (auto const& file : found) add(file);
  }
  return files;
}

}  // namespace leat::cli
