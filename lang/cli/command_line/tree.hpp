#pragma once
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lang/cli/options.hpp"
#include "lang/render/columns.hpp"

// The program's commands and options, in CLI11's terms. The command line is read by this tree, and
// everything that lists commands and options walks it.
namespace leat::cli {

// Neither copied nor moved: the commands write into it while they are read.
class CommandTree {
 public:
  using Words = std::vector<std::string_view>;
  // Of the commands only those that are among these words, where some are: to make all of them is
  // a part of a short run.
  explicit CommandTree(Words only = {});
  CommandTree(CommandTree const&) = delete;
  CommandTree& operator=(CommandTree const&) = delete;

  // A command with the values its options fill; when the command is given, they become the chosen
  // ones. None where it is left out.
  template <class Values>
  struct Command {
    CLI::App* app = nullptr;
    std::shared_ptr<Values> values;
    Values* operator->() const { return values.get(); }
    explicit operator bool() const { return app != nullptr; }
  };
  template <class Values>
  Command<Values> add(char const* name, char const* purpose) {
    if (is_left_out(name)) return {};
    auto values = std::make_shared<Values>();
    auto* command = app_.add_subcommand(name, purpose);
    command->fallthrough()->footer("");
    command->callback([this, values] { options_.command = *values; });
    return {command, values};
  }

  bool has_commands() const { return !app_.get_subcommands({}).empty(); }

  CLI::App& app() { return app_; }
  CLI::App const& app() const { return app_; }
  // After the command line was read.
  Options const& options() const { return options_; }

 private:
  bool is_left_out(std::string_view name) const {
    return !only_.empty() && std::find(only_.begin(), only_.end(), name) == only_.end();
  }

  Words only_;
  CLI::App app_{"leat: verifies creature conveyors of running water before they are built", "leat"};
  Options options_;
};

// The commands, a chapter each; the order is that of the help.
void add_judging(CommandTree&);
void add_looking(CommandTree&);
void add_signals(CommandTree&);
void add_showing(CommandTree&);
void add_reading(CommandTree&);
void add_writing(CommandTree&);
void add_shell(CommandTree&);

// The words that an option may be followed by, as CLI11 shows a set.
template <class Words>
std::string set_of(Words const& words) {
  std::string all;
  for (auto const& [word, value] : words) all += (all.empty() ? "{" : ",") + word;
  return all + "}";
}

// One of some words, which stands for a value.
template <class Words>
CLI::Validator one_of(Words const& words) {
  auto const read = [words](std::string& text) -> std::string {
    auto const known = words.find(text);
    if (known == words.end())
      return fmt::format("'{}' is none of {}", render::showable(text), set_of(words));
    text = CLI::detail::value_string(known->second);
    return {};
  };
  return CLI::Validator(read, set_of(words), "one of");
}

// What several commands take.
void add_file(CLI::App*, std::string& file);
void add_format(CLI::App*, std::string& format, std::vector<std::string> const& known,
                std::string const& meaning);
void add_out(CLI::App*, std::string& out);
void add_when(CLI::App*, std::string& when);
void add_deeds(CLI::App*, std::string& deeds);
void add_junction(CLI::App*, std::string& junction);
void add_fail_on(CLI::App*, model::Severity& fail_on);

}  // namespace leat::cli
