#include "lang/cli/written_file.hpp"

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <thread>

#include "tests/support/catch.hpp"

namespace leat::cli {

namespace {

namespace fs = std::filesystem;

// A folder of its own for each case, gone after it.
struct Folder {
  fs::path path;
  Folder() {
    auto pattern = (fs::temp_directory_path() / "leat-written-XXXXXX").string();
    path = ::mkdtemp(pattern.data());
  }
  Folder(Folder const&) = delete;
  Folder& operator=(Folder const&) = delete;
  ~Folder() { fs::remove_all(path); }

  std::string at(std::string const& name) const { return (path / name).string(); }
  void put(std::string const& name, std::string const& text) const {
    std::ofstream(at(name), std::ios::binary) << text;
  }
  std::string text(std::string const& name) const {
    std::ifstream file(at(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  std::size_t size() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(path), {}));
  }
};

::mode_t mode_of(std::string const& path) {
  struct stat found {};
  REQUIRE(::stat(path.c_str(), &found) == 0);
  return found.st_mode & 07777;
}

// Runs in a process of its own, whose limits and user may be changed.
bool holds_elsewhere(std::function<bool()> const& claim) {
  auto const child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) ::_exit(claim() ? 0 : 1);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

bool speaks_of(std::optional<FileFault> const& fault, std::string const& words) {
  return fault && fault->headline.find(words) != std::string::npos && !fault->remedy.empty();
}

// For root nothing is forbidden: what is must be tried as somebody else.
bool is_nobody() {
  constexpr ::uid_t nobody = 65534;
  return ::geteuid() != 0 || (::setgid(nobody) == 0 && ::setuid(nobody) == 0);
}

}  // namespace

TEST_CASE("a new file holds the text, every byte of it, with what the mask leaves") {
  Folder const folder;
  std::string const text("nothing\0is\r\nlost \xff", 17);
  auto const mask = ::umask(027);
  auto const fault = write_file(folder.at("new.json"), text);
  ::umask(mask);
  CHECK_FALSE(fault);
  CHECK(folder.text("new.json") == text);
  CHECK(mode_of(folder.at("new.json")) == 0640);
  CHECK(folder.size() == 1);
}

TEST_CASE("a path of one word is written in the current folder") {
  Folder const folder;
  CHECK(holds_elsewhere(
      [&] { return ::chdir(folder.path.c_str()) == 0 && !write_file("bare.txt", "here"); }));
  CHECK(folder.text("bare.txt") == "here");
}

TEST_CASE("a replaced file keeps its permissions") {
  Folder const folder;
  folder.put("old.json", "a longer text than the new one");
  REQUIRE(::chmod(folder.at("old.json").c_str(), 0604) == 0);
  CHECK_FALSE(write_file(folder.at("old.json"), "new"));
  CHECK(folder.text("old.json") == "new");
  CHECK(mode_of(folder.at("old.json")) == 0604);
  CHECK(folder.size() == 1);
}

TEST_CASE("a symbolic link stays one, and what it leads to is written") {
  Folder const folder;
  fs::create_directory(folder.at("deep"));
  folder.put("deep/real.txt", "old");
  fs::create_symlink("deep/real.txt", folder.at("first"));
  fs::create_symlink("first", folder.at("second"));
  CHECK_FALSE(write_file(folder.at("second"), "new"));
  CHECK(fs::is_symlink(folder.at("first")));
  CHECK(fs::is_symlink(folder.at("second")));
  CHECK_FALSE(fs::is_symlink(folder.at("deep/real.txt")));
  CHECK(folder.text("deep/real.txt") == "new");
}

TEST_CASE("a link to what is not there yet makes it there") {
  Folder const folder;
  fs::create_directory(folder.at("deep"));
  fs::create_symlink("deep/new.txt", folder.at("link"));
  CHECK_FALSE(write_file(folder.at("link"), "text"));
  CHECK(fs::is_symlink(folder.at("link")));
  CHECK(folder.text("deep/new.txt") == "text");
}

TEST_CASE("what cannot be a file is refused, with a remedy, and nothing is left behind") {
  Folder const folder;
  fs::create_symlink("loop", folder.at("loop"));
  fs::create_directory(folder.at("inner"));
  folder.put("plain", "kept");
  CHECK(speaks_of(write_file(folder.at("inner"), "x"), "directory"));
  CHECK(speaks_of(write_file(folder.at("nowhere/x"), "x"), "No such file"));
  CHECK(speaks_of(write_file(folder.at("nowhere/"), "x"), "directory"));
  CHECK(speaks_of(write_file(folder.at("plain/x"), "x"), "Not a directory"));
  CHECK(speaks_of(write_file(folder.at("loop"), "x"), "symbolic links"));
  CHECK(speaks_of(write_file("", "x"), "without a name"));
  CHECK(speaks_of(write_file(folder.at(std::string(300, 'n')), "x"), "too long"));
  CHECK(folder.size() == 3);
  CHECK(folder.text("plain") == "kept");
}

TEST_CASE("the name in the fault does nothing to the one who reads it") {
  auto const fault = write_file("no/\x1b[31m\xe2\x80\xae", "x");
  REQUIRE(fault);
  CHECK(fault->headline.find('\x1b') == std::string::npos);
  CHECK(fault->headline.find("\xe2\x80\xae") == std::string::npos);
}

TEST_CASE("on a full disk the old text stays, whole, and nothing beside it") {
  Folder const folder;
  folder.put("old.json", "the old text");
  // No more than so many bytes fit into any file: what a full disk is to the one who writes.
  CHECK(holds_elsewhere([&] {
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit const room{64, 64};
    return ::setrlimit(RLIMIT_FSIZE, &room) == 0 &&
           speaks_of(write_file(folder.at("old.json"), std::string(1000, 'n')), "too large") &&
           speaks_of(write_file(folder.at("new.json"), std::string(1000, 'n')), "too large");
  }));
  CHECK(folder.text("old.json") == "the old text");
  CHECK(folder.size() == 1);
  CHECK(speaks_of(write_file("/dev/full", "x"), "No space left"));
}

TEST_CASE("a file that may not be written stays as it is") {
  Folder const folder;
  folder.put("old.json", "the old text");
  REQUIRE(::chmod(folder.path.c_str(), 0777) == 0);
  REQUIRE(::chmod(folder.at("old.json").c_str(), 0444) == 0);
  CHECK(holds_elsewhere([&] {
    return is_nobody() && speaks_of(write_file(folder.at("old.json"), "new"), "denied");
  }));
  CHECK(folder.text("old.json") == "the old text");
  CHECK(folder.size() == 1);
}

TEST_CASE("a folder that takes no new file loses none") {
  Folder const folder;
  folder.put("old.json", "the old text");
  REQUIRE(::chmod(folder.at("old.json").c_str(), 0666) == 0);
  REQUIRE(::chmod(folder.path.c_str(), 0555) == 0);
  CHECK(holds_elsewhere([&] {
    return is_nobody() && speaks_of(write_file(folder.at("old.json"), "new"), "denied") &&
           speaks_of(write_file(folder.at("new.json"), "new"), "denied");
  }));
  CHECK(folder.text("old.json") == "the old text");
  CHECK(folder.size() == 1);
  REQUIRE(::chmod(folder.path.c_str(), 0755) == 0);
}

TEST_CASE("devices and pipes take the text as it comes") {
  CHECK_FALSE(write_file("/dev/null", "gone"));
  int ends[2];
  REQUIRE(::pipe(ends) == 0);
  CHECK_FALSE(write_file("/proc/self/fd/" + std::to_string(ends[1]), "through"));
  char seen[16] = {};
  CHECK(::read(ends[0], seen, sizeof seen) == 7);
  CHECK(std::string(seen) == "through");
  ::close(ends[0]);
  ::close(ends[1]);
}

TEST_CASE("who reads while it is written sees one of the two texts, whole") {
  Folder const folder;
  std::string const old(100000, 'o'), fresh(150000, 'f');
  folder.put("read.txt", old);
  std::size_t broken = 0, seen = 0;
  std::thread writer([&] {
    for (int i = 0; i < 60; ++i) write_file(folder.at("read.txt"), i % 2 == 0 ? fresh : old);
    write_file(folder.at("done"), "");
  });
  while (!fs::exists(folder.at("done"))) {
    auto const text = folder.text("read.txt");
    ++seen;
    if (text != old && text != fresh) ++broken;
  }
  writer.join();
  CHECK(seen > 0);
  CHECK(broken == 0);
}

}  // namespace leat::cli
