#include <fmt/format.h>

#include <algorithm>

#include "lang/render/outline.hpp"

// Completion scripts. What may follow an option is offered where it is known, files where designs
// are wanted, nothing where only the user can know.
namespace leat::render {

namespace {

std::string words(std::vector<std::string> const& all) {
  std::string text;
  for (auto const& word : all) text += (text.empty() ? "" : " ") + word;
  return text;
}

std::vector<std::string> names_of(std::vector<OptionOutline> const& options) {
  std::vector<std::string> names;
  for (auto const& option : options) names.push_back(option.name);
  return names;
}

std::vector<std::string> command_names(Outline const& outline) {
  std::vector<std::string> names;
  for (auto const& command : outline.commands) names.push_back(command.name);
  return names;
}

std::vector<OptionOutline> all_options(Outline const& outline, CommandOutline const& command) {
  auto options = command.options;
  options.insert(options.end(), outline.options.begin(), outline.options.end());
  return options;
}

bool takes_files(CommandOutline const& command) {
  return std::any_of(command.arguments.begin(), command.arguments.end(),
                     [](OptionOutline const& argument) { return argument.is_design; });
}

std::vector<std::string> argument_choices(CommandOutline const& command) {
  std::vector<std::string> choices;
  for (auto const& argument : command.arguments)
    choices.insert(choices.end(), argument.choices.begin(), argument.choices.end());
  return choices;
}

// Within single quotes of a shell of the Bourne family.
std::string quoted(std::string_view text) {
  std::string shown = "'";
  for (char const sign : text) {
    if (sign == '\'')
      shown += "'\\''";
    else
      shown += sign;
  }
  return shown + "'";
}

// ---- bash ----

// The arms of a case for the word before: an option and what follows it.
std::string bash_values(std::vector<OptionOutline> const& options) {
  std::string text;
  for (auto const& option : options) {
    if (option.value.empty()) continue;
    text += fmt::format("        {}) words={}; taken=1 ;;\n", option.name,
                        quoted(words(option.choices)));
  }
  return text.empty() ? text : "      case $before in\n" + text + "      esac\n";
}

std::string bash_arm(Outline const& outline, CommandOutline const& command) {
  auto const options = all_options(outline, command);
  auto text =
      fmt::format("    {})\n      options={}\n      arguments={}\n      files={}\n", command.name,
                  quoted(words(names_of(options))), quoted(words(argument_choices(command))),
                  takes_files(command) ? "1" : "");
  return text + bash_values(options) + "      ;;\n";
}

constexpr char bash_begin[] = R"(# Completion of leat for bash: to be sourced.
_leat() {
  local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
  local command= options= arguments= files= words= taken= i
  COMPREPLY=()
  if [[ $current == '=' ]]; then
    current=
  elif [[ $before == '=' ]]; then
    before=${COMP_WORDS[COMP_CWORD-2]}
  fi
  for ((i = 1; i < COMP_CWORD; ++i)); do
    case ${COMP_WORDS[i]} in
)";

constexpr char bash_end[] = R"(  esac
  if [[ $taken ]]; then
    COMPREPLY=($(compgen -W "$words" -- "$current"))
  elif [[ $current == -* ]]; then
    COMPREPLY=($(compgen -W "$options" -- "$current"))
  else
    COMPREPLY=($(compgen -W "$arguments" -- "$current"))
    if [[ $files ]]; then
      local IFS=$'\n'
      compopt -o filenames 2>/dev/null
      COMPREPLY+=($(compgen -f -X '!*.leat' -- "$current") $(compgen -d -- "$current"))
    fi
  fi
}
complete -F _leat leat
)";

}  // namespace

std::string bash_completion(Outline const& outline) {
  std::string text = bash_begin;
  for (auto const& option : outline.options)
    if (!option.value.empty()) text += fmt::format("      {}) ((++i)) ;;\n", option.name);
  text += "      -*|'=') ;;\n      *) command=${COMP_WORDS[i]}; break ;;\n    esac\n  done\n";
  text += "  case $command in\n    '')\n      options=" + quoted(words(names_of(outline.options))) +
          "\n      arguments=" + quoted(words(command_names(outline))) + "\n" +
          bash_values(outline.options) + "      ;;\n";
  for (auto const& command : outline.commands) text += bash_arm(outline, command);
  return text + bash_end;
}

// ---- zsh ----

namespace {

// Within the brackets or behind the colon of a specification.
std::string described(std::string_view text) {
  std::string shown;
  for (char const sign : text) {
    if (sign == '[' || sign == ']' || sign == ':' || sign == '\\') shown += '\\';
    shown += sign;
  }
  return shown;
}

std::string zsh_action(OptionOutline const& option) {
  return option.choices.empty() ? " " : "(" + words(option.choices) + ")";
}

std::string zsh_option(OptionOutline const& option) {
  auto spec = option.name + "[" + described(option.meaning) + "]";
  if (!option.value.empty()) spec += ":" + described(option.value) + ":" + zsh_action(option);
  return quoted((option.is_repeatable ? "*" : "") + spec);
}

std::string zsh_argument(OptionOutline const& argument) {
  auto const action =
      argument.is_design ? std::string("_files -g \"*.leat(-.)\"") : zsh_action(argument);
  return quoted((argument.is_repeatable ? "*:" : ":") + described(argument.name) + ":" + action);
}

}  // namespace

std::string zsh_completion(Outline const& outline) {
  std::string text =
      "#compdef leat\n# Completion of leat for zsh: to be put into a folder of $fpath as _leat.\n"
      "_leat() {\n  local context state state_descr line\n  typeset -A opt_args\n"
      "  _arguments -C";
  for (auto const& option : outline.options) text += " \\\n    " + zsh_option(option);
  text +=
      " \\\n    ':command:->command' \\\n    '*::argument:->argument' && return\n"
      "  case $state in\n    command)\n      local -a commands=(\n";
  for (auto const& command : outline.commands)
    text += "        " + quoted(command.name + ":" + described(command.purpose)) + "\n";
  text +=
      "      )\n      _describe command commands\n      ;;\n    argument)\n"
      "      case $line[1] in\n";
  for (auto const& command : outline.commands) {
    text += "        " + command.name + ")\n          _arguments";
    for (auto const& option : all_options(outline, command))
      text += " \\\n            " + zsh_option(option);
    for (auto const& argument : command.arguments)
      text += " \\\n            " + zsh_argument(argument);
    text += "\n          ;;\n";
  }
  return text + "      esac\n      ;;\n  esac\n}\n_leat \"$@\"\n";
}

// ---- fish ----

namespace {

std::string fish_quoted(std::string_view text) {
  std::string shown = "'";
  for (char const sign : text) {
    if (sign == '\'' || sign == '\\') shown += '\\';
    shown += sign;
  }
  return shown + "'";
}

std::string fish_option(OptionOutline const& option) {
  auto text = " -l " + option.name.substr(2) + " -d " + fish_quoted(option.meaning);
  if (option.value.empty()) return text;
  return text + " -x" + (option.choices.empty() ? "" : " -a " + fish_quoted(words(option.choices)));
}

}  // namespace

std::string fish_completion(Outline const& outline) {
  std::string text =
      "# Completion of leat for fish: to be put among its completions as leat.fish.\n"
      "complete -c leat -f\n";
  for (auto const& option : outline.options)
    text += "complete -c leat" + fish_option(option) + "\n";
  for (auto const& command : outline.commands) {
    text += fmt::format("complete -c leat -n __fish_use_subcommand -a {} -d {}\n", command.name,
                        fish_quoted(command.purpose));
    auto const seen =
        fmt::format("complete -c leat -n '__fish_seen_subcommand_from {}'", command.name);
    for (auto const& option : command.options) text += seen + fish_option(option) + "\n";
    auto const choices = words(argument_choices(command));
    if (!choices.empty()) text += seen + " -a " + fish_quoted(choices) + "\n";
    if (takes_files(command)) text += seen + " -k -a '(__fish_complete_suffix .leat)'\n";
  }
  return text;
}

}  // namespace leat::render
