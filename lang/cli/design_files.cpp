#include "lang/cli/design_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <filesystem>
#include <set>
#include <utility>

#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

namespace fs = std::filesystem;

// One name for each file or folder of the disk.
fs::path identity_of(fs::path const& path) {
  std::error_code error;
  auto place = fs::canonical(path, error);
  return error ? path : place;
}

class Search {
 public:
  void add(std::string const& name) {
    std::error_code error;
    if (name == "-" || !fs::is_directory(name, error)) {
      add_file(name, false);
      return;
    }
    auto const before = found_.files.size() + skipped_ + found_.faults.size();
    folders_ = {fs::path(name)};
    std::vector<fs::path> designs;
    while (!folders_.empty() || !links_.empty()) {
      auto& next = folders_.empty() ? links_ : folders_;
      auto const folder = next.front();
      next.pop_front();
      if (seen_.insert(identity_of(folder)).second)
        look_into(folder, designs);
      else
        ++skipped_;
    }
    std::sort(designs.begin(), designs.end());
    for (auto const& design : designs) add_file(design.string(), true);
    if (before == found_.files.size() + skipped_ + found_.faults.size())
      fault(name, "holds no design", "A design is a file whose name ends in .leat.");
  }

  DesignFiles found() && { return std::move(found_); }

 private:
  // A file that was named twice is one file all the same.
  void add_file(std::string name, bool is_from_folder) {
    if (name != "-" && !seen_.insert(identity_of(name)).second) {
      ++skipped_;
      return;
    }
    if (name == "-" && std::exchange(has_input_, true)) return;
    found_.files.push_back({std::move(name), is_from_folder});
  }

  void look_into(fs::path const& folder, std::vector<fs::path>& designs) {
    std::error_code error;
    std::vector<fs::directory_entry> entries;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
      entries.push_back(*at);
    if (error) {
      fault(folder.string(), fmt::format("cannot be read: {}", error.message()),
            "Check who may read it, or name the files in it.");
      return;
    }
    std::sort(entries.begin(), entries.end());
    for (auto const& entry : entries) {
      auto const name = entry.path().filename();
      if (name.string().starts_with('.')) continue;
      auto const path = folder == "." ? name : entry.path();
      std::error_code ignored;
      if (entry.is_directory(ignored))
        (entry.is_symlink(ignored) ? links_ : folders_).push_back(path);
      else if (name.extension() == ".leat" && entry.is_regular_file(ignored))
        designs.push_back(path);
    }
  }

  void fault(std::string const& name, std::string_view what, std::string remedy) {
    found_.faults.push_back(
        {name, fmt::format("{} {}", render::showable(name), what), std::move(remedy)});
  }

  DesignFiles found_;
  std::deque<fs::path> folders_, links_;
  std::set<fs::path> seen_;
  std::size_t skipped_ = 0;  // files and folders come across a second time
  bool has_input_ = false;
};

}  // namespace

DesignFiles design_files(std::vector<std::string> const& names) {
  Search search;
  for (auto const& name : names) search.add(name);
  return std::move(search).found();
}

std::optional<std::vector<std::string>> design_files(std::vector<std::string> const& names,
                                                     Terminal& terminal) {
  auto const found = design_files(names);
  for (auto const& fault : found.faults) terminal.refuse(fault.headline, fault.remedy);
  if (!found.faults.empty()) return std::nullopt;
  std::vector<std::string> files;
  for (auto const& file : found.files) files.push_back(file.name);
  return files;
}

}  // namespace leat::cli
