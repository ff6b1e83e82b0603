#include <fmt/format.h>

#include "lang/cli/commands.hpp"
#include "lang/cli/design_files.hpp"
#include "lang/cli/files.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/tidied.hpp"
#include "lang/cli/written_file.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/difference.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

// A design before and after.
struct Change {
  std::string before, after;
  bool is_none() const { return before == after; }
};

void refuse(FileFault const& fault, Terminal& terminal) {
  terminal.refuse(fault.headline, fault.remedy);
}

// None where it cannot be: told.
std::optional<Change> change_of(std::string const& path, Terminal& terminal) {
  auto read = read_file(path);
  if (auto const* fault = std::get_if<FileFault>(&read)) {
    refuse(*fault, terminal);
    return std::nullopt;
  }
  auto& file = std::get<FileText>(read);
  source::SourceText text(file.name, file.text);
  diagnostics::Sink sink;
  Disk disk;
  if (auto after = tidied(text, disk, sink))
    return Change{std::move(file.text), std::move(*after)};
  auto const shown = path == "-" ? "the design" : render::showable(path);
  if (sink.empty()) {
    terminal.refuse(fmt::format("{} would not read the same when tidy: a fault of this program",
                                shown),
                    "it is left as it is");
  } else {
    tell(sink, text, terminal);
    terminal.refuse(shown + " has faults and is left as it is", "mend them, then it can be tidied");
  }
  return std::nullopt;
}

class Tidying {
 public:
  Tidying(bool only_checks, Terminal& terminal) : only_checks_(only_checks), terminal_(terminal) {}

  Exit tidy(std::string const& path) {
    auto const change = change_of(path, terminal_);
    if (!change) return Exit::unusable;
    (change->is_none() ? tidy_before_ : changed_) += 1;
    if (only_checks_) return show(path, *change);
    if (path != "-") return write(path, *change);
    terminal_.result(change->after);
    return Exit::holds;
  }

  // Of several files.
  void sum_up() const {
    auto const were = [](std::size_t count) { return count == 1 ? "was" : "were"; };
    terminal_.narrate(fmt::format("{} {}, {} {} tidy before\n",
                                  render::counted(changed_, "file"),
                                  only_checks_ ? "would change" : "changed", tidy_before_,
                                  were(tidy_before_)));
  }

 private:
  Exit show(std::string const& path, Change const& change) {
    if (change.is_none()) return Exit::holds;
    terminal_.result(render::line_difference(path, change.before, change.after,
                                             terminal_.result_look(),
                                             terminal_.is_result_on_terminal()));
    return Exit::violated;
  }
  Exit write(std::string const& path, Change const& change) {
    if (change.is_none()) return Exit::holds;
    if (auto const fault = write_file(path, change.after)) {
      refuse(*fault, terminal_);
      return Exit::unusable;
    }
    terminal_.narrate(fmt::format("tidied {}\n", render::showable(path)));
    return Exit::holds;
  }

  bool only_checks_;
  Terminal& terminal_;
  std::size_t changed_ = 0, tidy_before_ = 0;
};

}  // namespace

Exit run(TidyOptions const& options, Terminal& terminal) {
  auto const files = design_files(options.paths, terminal);
  if (!files) return Exit::unusable;
  Tidying tidying(options.only_checks, terminal);
  auto exit = Exit::holds;
  for (auto const& file : *files) exit = worst(exit, tidying.tidy(file));
  if (files->size() > 1) tidying.sum_up();
  return exit;
}

}  // namespace leat::cli
