#include "lang/cli/program.hpp"

#include <cstdio>
#include <exception>
#include <new>

#include "engine/contract.hpp"
#include "lang/cli/command_line/command_line.hpp"
#include "lang/cli/commands.hpp"

namespace leat::cli {

namespace {

Exit run_answer(Answer const& answer) {
  std::fputs(answer.out.c_str(), stdout);
  std::fputs(answer.err.c_str(), stderr);
  std::fflush(stdout);
  return answer.exit;
}

Exit run_options(Options const& options) {
  Terminal terminal(options.colour, options.is_ascii);
  auto const exit =
      std::visit([&](auto const& command) { return run(command, terminal); }, options.command);
  terminal.flush();
  if (!terminal.has_lost_output()) return exit;
  terminal.refuse("the results could not be written", "check the room where they were to go");
  return worst(exit, Exit::unusable);
}

Exit own_fault(char const* what) {
  std::fprintf(stderr, "leat: a fault of this program, not of your design: %s\n", what);
  return Exit::fault;
}

}  // namespace

int run_program(int count, char const* const* arguments) noexcept {
  auto exit = Exit::fault;
  try {
    auto const read = read_command_line(count, arguments);
    auto const* options = std::get_if<Options>(&read);
    exit = options != nullptr ? run_options(*options) : run_answer(std::get<Answer>(read));
  } catch (ContractBroken const& broken) {
    exit = own_fault(broken.what());
  } catch (std::bad_alloc const&) {
    exit = own_fault("not enough memory");
  } catch (std::exception const& error) {
    exit = own_fault(error.what());
  } catch (...) {
    exit = own_fault("something unknown was thrown");
  }
  return static_cast<int>(exit);
}

}  // namespace leat::cli
