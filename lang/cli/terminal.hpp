#pragma once
#include <chrono>
#include <cstddef>
#include <string>
#include <string_view>

#include "lang/cli/options.hpp"
#include "lang/render/look.hpp"

// The process's two output streams: results and narration, each with its own look.
namespace leat::cli {

class Terminal {
 public:
  Terminal(Colour, bool is_ascii);

  // A reader that has gone away is no fault: what is written to it is dropped. Any other failed
  // write is remembered.
  void result(std::string_view text);
  void narrate(std::string_view text);
  // "leat: headline", and what to do on the next line.
  void refuse(std::string_view headline, std::string_view remedy = {});

  render::Look result_look() const { return result_look_; }
  render::Look narration_look() const { return narration_look_; }
  // How wide results may be: the terminal's columns, 80 elsewhere.
  std::size_t result_columns() const;
  bool is_result_on_terminal() const { return is_result_on_terminal_; }
  bool has_lost_output() const { return has_lost_output_; }
  // Ends the writing; says whether everything got out.
  void flush();

 private:
  render::Look result_look_, narration_look_;
  bool is_result_on_terminal_ = false, has_lost_output_ = false;
};

// Says how far the work is, after the first second of it, then at doubling intervals, each time on
// a line of its own.
class ProgressLines {
 public:
  ProgressLines(Terminal&, std::string what, std::string unit = "settings");
  // Of a total that is not known yet (0) only what is done is told.
  void operator()(std::size_t done, std::size_t total);

 private:
  using Clock = std::chrono::steady_clock;
  Terminal& terminal_;
  std::string what_, unit_;
  Clock::time_point begin_ = Clock::now();
  double next_at_ = 1.0;
};

}  // namespace leat::cli
