#include <fmt/format.h>

#include <atomic>
#include <thread>

#include "lang/cli/checked_file.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/crew.hpp"
#include "lang/cli/interruption.hpp"
#include "lang/cli/written_file.hpp"
#include "lang/render/findings_formats.hpp"

namespace leat::cli {

namespace {

std::string format_of(CheckOptions const& options, Terminal const& terminal) {
  if (!options.format.empty()) return options.format;
  return options.out.empty() && terminal.is_result_on_terminal() ? "text" : "lines";
}

std::string_view meaning_of(Exit exit) {
  for (auto const& row : exit_table) {
    if (row.code == exit) return row.meaning;
  }
  return {};
}

// How far the workers are, for the one who tells it; and how he stops them.
class Watch {
 public:
  struct State {
    std::string junction, unit;
    std::size_t done = 0, total = 0;
  };
  void tell(lower::Junction const& junction, std::size_t done, std::size_t total) {
    if (is_stopped_) throw Stopped{};
    std::lock_guard const lock(mutex_);
    state_ = {junction.map.junction.name, progress_unit(junction), done, total};
  }
  State state() {
    std::lock_guard const lock(mutex_);
    return state_;
  }
  void stop() { is_stopped_ = true; }
  bool is_stopped() const { return is_stopped_; }

 private:
  std::atomic<bool> is_stopped_ = false;
  std::mutex mutex_;
  State state_;
};

// One run of the command: files are checked by several workers, and told by this thread in the
// order of their names.
class CheckRun {
 public:
  CheckRun(CheckOptions const& options, Terminal& terminal)
      : options_(options),
        terminal_(terminal),
        wish_{options.fail_on, format_of(options, terminal),
              options.out.empty() ? terminal.result_look()
                                  : render::Look{false, terminal.result_look().is_ascii}},
        designs_(design_files(options.files)),
        file_lines_(terminal, "checked", "files") {
    run_.fail_on = options.fail_on;
    run_.version = LEAT_VERSION;
  }

  Exit done() {
    check_all();
    for (auto& fault : designs_.faults) tell(unread_file(std::move(fault)));
    // What a run found before it was stopped is no verdict on the whole.
    auto const exit = run_.is_interrupted ? Exit::undecided : exit_;
    run_.exit = static_cast<int>(exit);
    run_.exit_meaning = meaning_of(exit);
    put_end();
    if (options_.out.empty()) return exit;
    auto const fault = write_file(options_.out, text_);
    if (!fault) return exit;
    terminal_.refuse(fault->headline, fault->remedy);
    return worst(exit, Exit::unusable);
  }

 private:
  void check_all() {
    auto const jobs = options_.jobs > 0 ? static_cast<std::size_t>(options_.jobs)
                                        : std::max(1u, std::thread::hardware_concurrency());
    if (designs_.files.size() == 1) return check_one();
    Crew<CheckedFile> crew(designs_.files.size(), jobs, [this](std::size_t number) {
      auto const& design = designs_.files[number];
      if (watch_.is_stopped()) return unchecked_file(design);
      return checked_file(design, wish_, [this](auto const& junction, auto done, auto total) {
        watch_.tell(junction, done, total);
      });
    });
    while (!crew.is_all_taken()) {
      constexpr std::chrono::milliseconds moment(50);
      if (auto file = crew.take(moment)) tell(std::move(*file));
      if (interruption_.has_come()) watch_.stop();
      tell_progress(crew.ready_count());
    }
  }

  // A file alone is checked by this thread.
  void check_one() {
    auto const& design = designs_.files.front();
    tell(checked_file(design, wish_, [this](auto const& junction, auto done, auto total) {
      if (interruption_.has_come()) watch_.stop();
      watch_.tell(junction, done, total);
      tell_progress(0);
    }));
  }

  void tell_progress(std::size_t ready) {
    if (designs_.files.size() > 1) return file_lines_(ready, designs_.files.size());
    auto const [junction, unit, done, total] = watch_.state();
    if (junction.empty()) return;
    if (junction != told_junction_) junction_lines_.emplace(terminal_, junction, unit);
    told_junction_ = junction;
    (*junction_lines_)(done, total);
  }

  bool is_document() const { return wish_.format != "text" && wish_.format != "lines"; }

  void put(std::string const& text) {
    if (options_.out.empty())
      terminal_.result(text);
    else
      text_ += text;
  }

  void tell(CheckedFile file) {
    if (file.has_no_junction) {
      ++run_.without_junctions;
      return;
    }
    exit_ = worst(exit_, file.exit);
    run_.is_interrupted = run_.is_interrupted || !file.told.is_finished;
    if (file.fault && !is_document()) terminal_.refuse(file.fault->headline, file.fault->remedy);
    if (wish_.format == "text" && !file.result.empty()) {
      if (has_put_) put("\n");
      has_put_ = true;
    }
    put(file.result);
    if (!file.narration.empty()) {
      terminal_.flush();
      terminal_.narrate(file.narration);
    }
    run_.files.push_back(std::move(file.told));
  }

  // Documents are written whole; of text and lines only the last word is missing, where there is
  // more to say than was said of the one file.
  void put_end() {
    if (wish_.format == "json") put(render::findings_document(run_));
    if (wish_.format == "sarif") put(render::findings_sarif(run_));
    if (wish_.format == "junit") put(render::findings_junit(run_));
    if (wish_.format == "csv") put(render::findings_csv(run_));
    if (wish_.format == "markdown") put(render::findings_markdown(run_));
    bool const is_one = run_.files.size() == 1 && run_.without_junctions == 0;
    if (is_document() || (is_one && !run_.is_interrupted)) return;
    auto const line = render::run_line(run_);
    if (wish_.format == "text") return put((has_put_ ? "\n" : "") + line);
    terminal_.flush();
    terminal_.narrate(line);
  }

  CheckOptions const& options_;
  Terminal& terminal_;
  Interruption const interruption_;
  CheckWish wish_;
  DesignFiles designs_;
  Watch watch_;
  ProgressLines file_lines_;
  std::optional<ProgressLines> junction_lines_;
  std::string told_junction_;
  render::ToldRun run_;
  Exit exit_ = Exit::holds;
  bool has_put_ = false;
  std::string text_;  // what goes into a file
};

}  // namespace

Exit run(CheckOptions const& options, Terminal& terminal) {
  return CheckRun(options, terminal).done();
}

}  // namespace leat::cli
