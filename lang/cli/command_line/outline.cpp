#include <algorithm>
#include <sstream>

#include "lang/cli/command_line/command_line.hpp"
#include "lang/cli/command_line/tree.hpp"
#include "lang/render/finding_pages.hpp"

namespace leat::cli {

namespace {

// What an option may be followed by stands between braces in the description of its type.
std::vector<std::string> choices_of(CLI::Option const& option) {
  std::vector<std::string> choices;
  auto const type = option.get_type_name();
  auto const begin = type.find('{'), end = type.find('}');
  if (begin == std::string::npos || end == std::string::npos) return choices;
  std::istringstream words(type.substr(begin + 1, end - begin - 1));
  for (std::string word; std::getline(words, word, ',');) choices.push_back(word);
  return choices;
}

std::string value_of(CLI::Option const& option) {
  if (option.get_items_expected_max() == 0) return {};
  if (!option.get_option_text().empty()) return option.get_option_text();
  auto const type = option.get_type_name();
  return type.substr(0, type.find(':'));
}

render::OptionOutline outline_of(CLI::Option const& option) {
  bool const is_argument = option.get_positional();
  auto const name = is_argument ? option.get_name(true) : "--" + option.get_lnames().front();
  return {name,
          is_argument ? "" : value_of(option),
          choices_of(option),
          option.get_description(),
          option.get_required(),
          option.get_items_expected_max() > 1};
}

void put(CLI::App const& app, std::vector<render::OptionOutline>& options,
         std::vector<render::OptionOutline>* arguments) {
  for (auto const* option : app.get_options()) {
    if (option->get_positional() && arguments != nullptr)
      arguments->push_back(outline_of(*option));
    else if (!option->get_lnames().empty())
      options.push_back(outline_of(*option));
  }
}

// Each command has its own `--help`, which the program has too.
void drop_repeated(std::vector<render::OptionOutline>& options,
                   std::vector<render::OptionOutline> const& known) {
  auto const is_known = [&](render::OptionOutline const& option) {
    return std::any_of(known.begin(), known.end(), [&](render::OptionOutline const& other) {
      return other.name == option.name;
    });
  };
  options.erase(std::remove_if(options.begin(), options.end(), is_known), options.end());
}

// An argument's name says in every command what it stands for.
void explain_arguments(render::Outline& all) {
  std::vector<std::string> commands;
  for (auto const& command : all.commands) commands.push_back(command.name);
  for (auto& command : all.commands) {
    for (auto& argument : command.arguments) {
      argument.is_design =
          argument.name == "FILE" || argument.name == "OLD" || argument.name == "NEW";
      if (argument.name == "COMMAND") argument.choices = commands;
      if (argument.name == "NAME") argument.choices = render::explained_names();
    }
  }
}

}  // namespace

render::Outline outline() {
  CommandTree const tree;
  auto const& app = tree.app();
  render::Outline all;
  all.version = LEAT_VERSION;
  all.purpose = app.get_description().substr(app.get_description().find(": ") + 2);
  for (auto const& row : exit_table) all.exits.push_back({static_cast<int>(row.code), row.meaning});
  put(app, all.options, nullptr);
  for (auto const* app_of_command : app.get_subcommands({})) {
    render::CommandOutline command{
        app_of_command->get_name(), app_of_command->get_description(), {}, {}};
    put(*app_of_command, command.options, &command.arguments);
    drop_repeated(command.options, all.options);
    all.commands.push_back(std::move(command));
  }
  explain_arguments(all);
  return all;
}

}  // namespace leat::cli
