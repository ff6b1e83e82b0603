#include "lang/cli/terminal.hpp"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>

namespace leat::cli {

namespace {

bool is_set(char const* name) {
  auto const* value = std::getenv(name);
  return value != nullptr && *value != '\0';
}

// The switch first, then CLICOLOR_FORCE and NO_COLOR, then what the stream is.
bool is_coloured(Colour colour, int stream) {
  if (colour != Colour::automatic) return colour == Colour::always;
  if (is_set("NO_COLOR")) return false;
  auto const* forced = std::getenv("CLICOLOR_FORCE");
  if (forced != nullptr && *forced != '\0' && std::string_view(forced) != "0") return true;
  auto const* kind = std::getenv("TERM");
  return isatty(stream) != 0 && kind != nullptr && std::string_view(kind) != "dumb";
}

}  // namespace

Terminal::Terminal(Colour colour, bool is_ascii)
    : result_look_{is_coloured(colour, STDOUT_FILENO), is_ascii},
      narration_look_{is_coloured(colour, STDERR_FILENO), is_ascii},
      is_result_on_terminal_(isatty(STDOUT_FILENO) != 0) {
  // A reader that has gone away, or no more room in a file, is a failed write, not the end.
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);
}

void Terminal::result(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() && errno != EPIPE) {
    has_lost_output_ = true;
  }
}

void Terminal::narrate(std::string_view text) { std::fwrite(text.data(), 1, text.size(), stderr); }

void Terminal::refuse(std::string_view headline, std::string_view remedy) {
  auto const look = narration_look_;
  narrate(fmt::format("{} {}\n", render::painted(look, render::Role::error, "leat:"), headline));
  if (!remedy.empty()) narrate(fmt::format("      {}\n", remedy));
}

std::size_t Terminal::result_columns() const {
  constexpr std::size_t elsewhere = 80;
  winsize size{};
  bool const is_told =
      is_result_on_terminal_ && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0;
  return is_told ? size.ws_col : elsewhere;
}

void Terminal::flush() {
  if (std::fflush(stdout) != 0 && errno != EPIPE) has_lost_output_ = true;
}

ProgressLines::ProgressLines(Terminal& terminal, std::string what, std::string unit)
    : terminal_(terminal), what_(std::move(what)), unit_(std::move(unit)) {}

void ProgressLines::operator()(std::size_t done, std::size_t total) {
  auto const elapsed = std::chrono::duration<double>(Clock::now() - begin_).count();
  if (elapsed < next_at_ || (total > 0 && done >= total)) return;
  next_at_ = elapsed * 2;
  auto line = fmt::format("{}: {}{} {}, {:.0f} s", what_, done,
                          total > 0 ? fmt::format(" of {}", total) : "", unit_, elapsed);
  if (total > 0 && done > 0)
    line += fmt::format(", about {:.0f} s left",
                        elapsed / static_cast<double>(done) * static_cast<double>(total - done));
  terminal_.narrate(line + "\n");
}

}  // namespace leat::cli
