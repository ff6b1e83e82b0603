#pragma once
#include <functional>
#include <optional>
#include <string>

#include "lang/cli/design_files.hpp"
#include "lang/cli/exit_table.hpp"
#include "lang/cli/judged.hpp"
#include "lang/render/look.hpp"
#include "lang/render/told.hpp"

namespace leat::cli {

// What is wanted of every file of a run.
struct CheckWish {
  model::Severity fail_on = model::Severity::warning;
  std::string format;
  render::Look look;
};

// One file of a run with all that became of it, told: nothing of its designs is kept.
struct CheckedFile {
  render::ToldFile told;
  Exit exit = Exit::holds;
  bool has_no_junction = false;    // it draws nothing, and that is all that is wrong with it
  std::optional<FileFault> fault;  // it could not be read
  std::string result, narration;   // what text and lines print of it
};

// How far the judging of a junction is. May throw Stopped: what is judged by then is kept, and the
// file is marked as not finished.
using JunctionProgress =
    std::function<void(lower::Junction const&, std::size_t done, std::size_t total)>;

CheckedFile checked_file(DesignFile const&, CheckWish const&, JunctionProgress const&);
// A file that the run did not come to.
CheckedFile unchecked_file(DesignFile const&);
// What was named and cannot be read.
CheckedFile unread_file(FileFault);

}  // namespace leat::cli
