#include "lang/cli/written_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <utility>
#include <variant>

#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

namespace fs = std::filesystem;

// 0 or the error number of what failed.
using Errno = int;

class Descriptor {
 public:
  explicit Descriptor(int id) : id_(id) {}
  Descriptor(Descriptor const&) = delete;
  Descriptor& operator=(Descriptor const&) = delete;
  ~Descriptor() { close(); }
  bool is_open() const { return id_ >= 0; }
  int id() const { return id_; }
  Errno close() {
    if (id_ < 0) return 0;
    return ::close(std::exchange(id_, -1)) == 0 ? 0 : errno;
  }

 private:
  int id_;
};

std::string remedy_for(Errno error) {
  switch (error) {
    case ENOENT:
    case ENOTDIR:
      return "Make its folder first, or name another one.";
    case EACCES:
    case EPERM:
      return "Check who may write it, and who may write in its folder.";
    case EROFS:
      return "Its disk takes no changes: write elsewhere.";
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
      return "Make room, or write elsewhere; what stood there before still does.";
    case EISDIR:
      return "Name a file in it.";
    case ELOOP:
      return "The link leads back to itself: mend it, or name a file.";
    default:
      return "What stood there before still does.";
  }
}

FileFault not_written(std::string const& path, Errno error) {
  auto const shown = path.empty() ? std::string("a file without a name") : render::showable(path);
  return {path, fmt::format("{} cannot be written: {}", shown, std::strerror(error)),
          remedy_for(error)};
}

// What a chain of links ends in where nothing stands yet.
std::variant<fs::path, Errno> end_of_links(fs::path path) {
  constexpr int most_links = 40;
  for (int i = 0; i < most_links; ++i) {
    std::error_code error;
    auto const target = fs::read_symlink(path, error);
    if (error) return path;
    path = path.parent_path() / target;
  }
  return ELOOP;
}

Errno write_all(int file, std::string_view text) {
  while (!text.empty()) {
    auto const count = ::write(file, text.data(), text.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(count));
  }
  return 0;
}

// What is no plain file has nothing to keep.
Errno write_through(fs::path const& path, std::string_view text) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC | O_NOCTTY));
  if (!file.is_open()) return errno;
  auto const error = write_all(file.id(), text);
  auto const closing = file.close();
  return error != 0 ? error : closing;
}

// A file of a name that nobody has, in the folder given. It goes away again unless it takes the
// place of another.
class PartialFile {
 public:
  PartialFile(fs::path const& folder, ::mode_t mode) : file_(create(folder, mode)) {}
  PartialFile(PartialFile const&) = delete;
  PartialFile& operator=(PartialFile const&) = delete;
  ~PartialFile() {
    if (is_there_) ::unlink(path_.c_str());
  }
  bool is_there() const { return is_there_; }
  Errno fill(std::string_view text, struct stat const* as) {
    // Only root may give files away; for everybody else the file is theirs either way.
    if (as != nullptr && ::fchown(file_.id(), as->st_uid, as->st_gid) != 0 && errno != EPERM)
      return errno;
    if (as != nullptr && ::fchmod(file_.id(), as->st_mode & 07777) != 0) return errno;
    if (auto const error = write_all(file_.id(), text)) return error;
    if (::fsync(file_.id()) != 0) return errno;
    return file_.close();
  }
  Errno take_place_of(fs::path const& target) {
    if (::rename(path_.c_str(), target.c_str()) != 0) return errno;
    is_there_ = false;
    return 0;
  }

 private:
  int create(fs::path const& folder, ::mode_t mode) {
    constexpr int most_names = 1000;
    for (int i = 0; i < most_names; ++i) {
      path_ = folder / fmt::format(".leat-{}-{}.part", ::getpid(), i);
      int const id = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
      is_there_ = id >= 0;
      if (is_there_ || errno != EEXIST) return id;
    }
    return -1;
  }

  bool is_there_ = false;
  fs::path path_;
  Descriptor file_;
};

// The new text is made whole beside the old one and put in its place by one rename, which the
// system does at once or not at all (POSIX rename); the text is on the disk before, so that a
// machine that stops shows one of the two. Costs room for both. Other hard names of the old file
// keep the old text.
Errno replace(fs::path const& target, std::string_view text, struct stat const* old) {
  if (old != nullptr && ::access(target.c_str(), W_OK) != 0) return errno;
  auto const folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  constexpr ::mode_t what_the_mask_leaves = 0666;
  PartialFile partial(folder, old != nullptr ? old->st_mode & 0777 : what_the_mask_leaves);
  if (!partial.is_there()) return errno;
  if (auto const error = partial.fill(text, old)) return error;
  if (auto const error = partial.take_place_of(target)) return error;
  // The new name too should outlast a stop of the machine; some file systems cannot promise it.
  Descriptor const directory(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (directory.is_open()) ::fsync(directory.id());
  return 0;
}

Errno written(std::string const& path, std::string_view text) {
  struct stat old {};
  if (::stat(path.c_str(), &old) == 0) {
    if (S_ISDIR(old.st_mode)) return EISDIR;
    if (!S_ISREG(old.st_mode)) return write_through(path, text);
    std::error_code error;
    auto const target = fs::canonical(path, error);
    return error ? error.value() : replace(target, text, &old);
  }
  if (errno != ENOENT) return errno;
  auto const end = end_of_links(path);
  if (auto const* error = std::get_if<Errno>(&end)) return *error;
  auto const& target = std::get<fs::path>(end);
  if (target.empty()) return ENOENT;
  return target.has_filename() ? replace(target, text, nullptr) : EISDIR;
}

}  // namespace

std::optional<FileFault> write_file(std::string const& path, std::string_view text) {
  if (auto const error = written(path, text)) return not_written(path, error);
  return std::nullopt;
}

}  // namespace leat::cli
