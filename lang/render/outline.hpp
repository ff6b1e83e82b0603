#pragma once
#include <string>
#include <string_view>
#include <vector>

// What can be said on the command line, as plain data: made from the tree that reads it, turned
// into completions and manual pages.
namespace leat::render {

struct OptionOutline {
  std::string name;   // "--as"; of an argument without dashes what it stands for, "FILE"
  std::string value;  // what follows it, "TEXT"; empty: nothing
  std::vector<std::string> choices;  // all that may follow it, where that is known
  std::string meaning;
  bool is_required = false;
  bool is_repeatable = false;
  bool is_design = false;  // a file that holds one
};

struct CommandOutline {
  std::string name, purpose;
  std::vector<OptionOutline> options, arguments;
};

struct ExitOutline {
  int code = 0;
  std::string_view meaning;
};

struct Outline {
  std::string version, purpose;
  std::vector<ExitOutline> exits;
  std::vector<OptionOutline> options;  // before or behind every command
  std::vector<CommandOutline> commands;
};

// What a command is for, in a paragraph; empty for a name that has none.
std::string_view prose_of(std::string_view command);

// The program's manual page in the macros of man(7), and that of one of its commands.
std::string manual_page(Outline const&);
std::string manual_page(Outline const&, CommandOutline const&);

// Scripts that let a shell complete the program's command line. They need nothing but the shell.
std::string bash_completion(Outline const&);
std::string zsh_completion(Outline const&);
std::string fish_completion(Outline const&);

}  // namespace leat::render
