#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <csignal>
#include <ctime>

#include "lang/cli/commands.hpp"
#include "lang/cli/compared.hpp"
#include "lang/cli/design_files.hpp"
#include "lang/cli/files.hpp"
#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

// What tells that a file was saved, whether written in its place or put there by another name.
struct Stamp {
  bool is_there = false;
  ::timespec saved{};
  ::off_t size = 0;
  ::ino_t node = 0;
  bool operator==(Stamp const& other) const {
    return is_there == other.is_there && saved.tv_sec == other.saved.tv_sec &&
           saved.tv_nsec == other.saved.tv_nsec && size == other.size && node == other.node;
  }
};

Stamp stamp_of(std::string const& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0) return {};
  return {true, status.st_mtim, status.st_size, status.st_ino};
}

// A design and the files that it is read from.
struct Watched {
  std::string path;
  std::vector<std::string> files;
  std::vector<Stamp> judged, seen;  // by file: when it was judged, and when last looked at
  std::unique_ptr<Loaded> last;     // the last one without a fault
  Exit exit = Exit::holds;

  std::vector<Stamp> look() const {
    std::vector<Stamp> stamps;
    for (auto const& file : files) stamps.push_back(stamp_of(file));
    return stamps;
  }
  // Whether something was saved and is there to be read. Who saves may take out the old text first:
  // what has just changed is looked at once more.
  bool was_saved() {
    auto stamps = look();
    bool const is_quiet = stamps == seen;
    seen = std::move(stamps);
    return is_quiet && seen != judged &&
           std::all_of(seen.begin(), seen.end(), [](Stamp const& stamp) { return stamp.is_there; });
  }
};

// Holds interrupts back, so that one ends the watch between two judgements and with their exit
// code. In long work it ends the program at once, as ever.
class Patience {
 public:
  Patience() {
    ::sigemptyset(&interrupts_);
    ::sigaddset(&interrupts_, SIGINT);
    ::sigaddset(&interrupts_, SIGTERM);
    ::sigprocmask(SIG_BLOCK, &interrupts_, nullptr);
  }
  Patience(Patience const&) = delete;
  Patience& operator=(Patience const&) = delete;
  ~Patience() { ::sigprocmask(SIG_UNBLOCK, &interrupts_, nullptr); }

  // Waits for a moment; whether an interrupt came instead.
  bool ends() const {
    constexpr ::timespec moment{0, 200'000'000};
    return ::sigtimedwait(&interrupts_, nullptr, &moment) > 0;
  }
  template <class Work>
  void suspended_for(Work const& work) const {
    ::sigprocmask(SIG_UNBLOCK, &interrupts_, nullptr);
    work();
    ::sigprocmask(SIG_BLOCK, &interrupts_, nullptr);
  }

 private:
  ::sigset_t interrupts_;
};

class Watch {
 public:
  Watch(WatchOptions const& options, Terminal& terminal) : options_(options), terminal_(terminal) {}

  void judge(Watched& watched) {
    auto now = read(watched);
    CheckOptions check;
    check.files = {watched.path};
    check.fail_on = options_.fail_on;
    check.format = options_.format;
    watched.exit = run(check, terminal_);
    if (now && watched.last) tell_changes(*watched.last, *now);
    if (now) watched.last = std::move(now);
  }

 private:
  // The design with what it includes, or none where it has faults: the check tells them.
  std::unique_ptr<Loaded> read(Watched& watched) {
    watched.files = {watched.path};
    watched.judged = watched.seen = watched.look();
    auto text = read_file(watched.path);
    auto* file = std::get_if<FileText>(&text);
    if (file == nullptr) return nullptr;
    auto loaded = std::make_unique<Loaded>(
        Loaded{source::SourceText(std::move(file->name), std::move(file->text)), {}});
    diagnostics::Sink sink;
    Disk disk;
    loaded->junctions = lower::read_designs(loaded->text, disk, sink);
    for (std::size_t i = 1; i < loaded->text.file_count(); ++i)
      watched.files.push_back(loaded->text.name(i));
    auto const stamp = watched.judged.front();
    watched.judged = watched.look();
    watched.judged.front() = stamp;
    watched.seen = watched.judged;
    return sink.empty() ? std::move(loaded) : nullptr;
  }

  void tell_changes(Loaded const& before, Loaded const& now) {
    auto const compared = compare_designs(before, now, {}, false, terminal_);
    auto const is_plain = [](auto const& sheet) { return sheet.entries.empty(); };
    auto const& sheets = compared.comparison.sheets;
    if (!std::all_of(sheets.begin(), sheets.end(), is_plain))
      terminal_.result(render::comparison_text(compared.comparison, terminal_.result_look()));
    terminal_.result(fmt::format("{}: since the last save {}\n", render::showable(now.text.name()),
                                 compared.comparison.verdict));
  }

  WatchOptions const& options_;
  Terminal& terminal_;
};

}  // namespace

Exit run(WatchOptions const& options, Terminal& terminal) {
  auto const files = design_files(options.paths, terminal);
  if (!files) return Exit::unusable;
  if (std::find(files->begin(), files->end(), "-") != files->end()) {
    terminal.refuse("the standard input cannot be watched", "name files or folders");
    return Exit::unusable;
  }
  Watch watch(options, terminal);
  Patience const patience;
  auto const judge = [&](Watched& watched) {
    patience.suspended_for([&] { watch.judge(watched); });
    terminal.flush();
  };
  std::vector<Watched> all(files->size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    all[i].path = (*files)[i];
    judge(all[i]);
  }
  terminal.narrate("watching; an interrupt ends it\n");
  while (!patience.ends()) {
    for (auto& watched : all) {
      if (!watched.was_saved()) continue;
      terminal.result(fmt::format("\n{}: saved\n", render::showable(watched.path)));
      judge(watched);
    }
  }
  auto exit = Exit::holds;
  for (auto const& watched : all) exit = worst(exit, watched.exit);
  return exit;
}

}  // namespace leat::cli
