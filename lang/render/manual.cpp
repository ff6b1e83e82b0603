#include <fmt/format.h>

#include <utility>

#include "lang/render/outline.hpp"

// Manual pages as groff and mandoc read them: the macros of man(7), and nothing of the one or the
// other.
namespace leat::render {

namespace {

constexpr std::pair<std::string_view, std::string_view> prose[] = {
    {"check",
     "Judges every junction and works of the designs for all combinations of their signals that "
     "can "
     "come about: where each body goes, what is found in the water, and whether each expectation "
     "holds. Nothing is written but the report."},
    {"table",
     "Prints where the bodies of each inlet go, with the condition of each destination as short as "
     "it can be said. In the format expect the table can be pasted into the design, which then "
     "proves it at each check."},
    {"compare",
     "Holds a new revision of a design against an old one by what they do, not by how they are "
     "written: routes, findings, times and what the memory can come to. Each difference is told "
     "with its widest condition and its smallest example."},
    {"record",
     "Writes down what a design does, so that later checks can be held against it. What differs "
     "from an earlier record is shown before it takes its place."},
    {"show", "Draws the levels of a junction with the water that settles in one combination."},
    {"follow",
     "Tells step by step, and rule by rule, how a body gets from an inlet to where it ends, and "
     "how many can follow each other there."},
    {"guard",
     "Tells for each change of a signal how long to wait before it, so that nobody who is inside "
     "is misled, trapped, spilled or hurt by it."},
    {"train",
     "Sends bodies in one after the other, lets them press the plates on their way, and tells "
     "where each of them comes out."},
    {"waves", "Runs the signals of a design over time, tick by tick, after what is done to them."},
    {"machine",
     "Tells the states that the memory of a design can come to, the shortest way to each, and what "
     "can never be or never be left again."},
    {"draw", "Draws the levels of a design as a picture."},
    {"page", "Makes one page of a design that needs nothing else to be read and tried."},
    {"bill", "Lists the blocks that a design is built of, and the steps of building it."},
    {"explain", "Says what a finding means, how it comes about, and what can be done about it."},
    {"resolve",
     "Prints the design as it is understood, with all names, numbers and repetitions worked out."},
    {"tidy",
     "Prints designs back in one style and writes each in the place of what its file held, whole "
     "or not at all. Comments and drawings stay as they are. Before anything is written the result "
     "is read again, and has to mean the same. A design with a fault is left alone."},
    {"watch",
     "Judges a design each time that it, or a file it includes, is saved, and tells what it does "
     "otherwise than before. It is ended by an interrupt."},
    {"completion", "Prints a script that lets a shell complete this command line."},
    {"manual", "Prints a page of this manual in the macros of man(7)."},
};

// Plain text: no sign of it may be taken for a request or an escape.
std::string plain(std::string_view text) {
  std::string shown;
  if (text.starts_with('.') || text.starts_with('\'')) shown += "\\&";
  for (char const sign : text) {
    if (sign == '\\')
      shown += "\\e";
    else if (sign == '-')
      shown += "\\-";
    else if (sign == '\n')
      shown += ' ';
    else
      shown += sign;
  }
  return shown;
}

std::string bold(std::string_view text) { return "\\fB" + plain(text) + "\\fR"; }
std::string slanted(std::string_view text) { return "\\fI" + plain(text) + "\\fR"; }

std::string head(std::string_view title, std::string_view version) {
  constexpr char without_hyphens[] = ".nh\n";  // names of commands have some already
  return fmt::format(".TH {} 1 \"\" \"leat {}\" \"Leat\"\n{}", title, version, without_hyphens);
}

std::string section(std::string_view name) { return fmt::format(".SH {}\n", name); }

std::string entry(OptionOutline const& option, bool is_argument) {
  auto text = ".TP\n" + (is_argument ? slanted(option.name) : bold(option.name));
  if (!option.value.empty()) text += " " + slanted(option.value);
  return text + "\n" + plain(option.meaning) + "\n";
}

std::string synopsis(CommandOutline const& command) {
  std::string text = bold("leat " + command.name);
  for (auto const& option : command.options) {
    auto const shown =
        bold(option.name) + (option.value.empty() ? "" : " " + slanted(option.value));
    text += option.is_required ? "\n" + shown : "\n[" + shown + "]";
  }
  for (auto const& argument : command.arguments) {
    auto const shown = slanted(argument.name) + (argument.is_repeatable ? "..." : "");
    text += argument.is_required ? "\n" + shown : "\n[" + shown + "]";
  }
  return text + "\n";
}

std::string exit_codes(Outline const& outline) {
  auto text = section("EXIT STATUS") + "Of several the gravest: 4, 2, 1, 3, 0 in this order.\n";
  for (auto const& [code, meaning] : outline.exits)
    text += fmt::format(".TP\n{}\n{}\n", bold(std::to_string(code)), plain(meaning));
  return text;
}

constexpr char streams[] =
    "Results go to the standard output, everything else to the standard error.\n";

}  // namespace

std::string_view prose_of(std::string_view command) {
  for (auto const& [name, text] : prose)
    if (name == command) return text;
  return {};
}

std::string manual_page(Outline const& outline) {
  auto text = head("LEAT", outline.version) + section("NAME") + "leat \\- " +
              plain(outline.purpose) + "\n" + section("SYNOPSIS") + bold("leat") + "\n[" +
              slanted("OPTION") + "]... " + slanted("COMMAND") + " [" + slanted("ARGUMENT") +
              "]...\n";
  text += section("DESCRIPTION") +
          "Reads designs of channels in which running water carries creatures, with all the "
          "signals that switch them, and tells what they do before they are built.\n" +
          streams + section("COMMANDS");
  for (auto const& command : outline.commands)
    text += ".TP\n" + bold(command.name) + "\n" + plain(command.purpose) + "\n";
  text += section("OPTIONS");
  for (auto const& option : outline.options) text += entry(option, false);
  text += exit_codes(outline) + section("ENVIRONMENT") +
          ".TP\n\\fBNO_COLOR\\fR, \\fBCLICOLOR_FORCE\\fR\n"
          "No colour, or colour also off a terminal, unless \\-\\-color says otherwise.\n";
  text += section("SEE ALSO");
  for (auto const& command : outline.commands) {
    bool const is_last = &command == &outline.commands.back();
    text += ".BR " + plain("leat-" + command.name) + " (1)" + (is_last ? "\n" : ",\n");
  }
  return text;
}

std::string manual_page(Outline const& outline, CommandOutline const& command) {
  auto const name = "leat-" + command.name;
  auto title = name;
  for (char& sign : title)
    if (sign >= 'a' && sign <= 'z') sign = static_cast<char>(sign - 'a' + 'A');
  auto text = head(title, outline.version) + section("NAME") + plain(name) + " \\- " +
              plain(command.purpose) + "\n" + section("SYNOPSIS") + synopsis(command) +
              section("DESCRIPTION") + plain(prose_of(command.name)) + "\n";
  if (!command.arguments.empty()) text += section("ARGUMENTS");
  for (auto const& argument : command.arguments) text += entry(argument, true);
  text += section("OPTIONS");
  for (auto const& option : command.options) text += entry(option, false);
  for (auto const& option : outline.options) text += entry(option, false);
  return text + exit_codes(outline) + section("SEE ALSO") + ".BR leat (1)\n";
}

}  // namespace leat::render
