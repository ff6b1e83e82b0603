#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "engine/compare/comparison.hpp"
#include "engine/model/finding_kind.hpp"

// What was asked for on the command line, as values.
namespace leat::cli {

enum class Colour { automatic, always, never };

struct CheckOptions {
  std::vector<std::string> files;
  model::Severity fail_on = model::Severity::warning;
  std::string format;  // text, lines or json; empty: by where the output goes
};

struct TableOptions {
  std::string file, format = "text", inlet, body, junction;
  bool is_full = false;
  bool is_fresh = false;  // each combination with its fresh water, as if built so
};

struct CompareOptions {
  std::string before, after, format = "text";
  std::vector<std::string> renamings;  // OLD=NEW
  compare::Change fail_on = compare::Change::other;
};

struct ShowOptions {
  std::string file, when, deeds, junction, format = "text";
  std::optional<int> level;
  bool is_of_islands = false;  // what the drawing falls into, instead of its water
};

struct FollowOptions {
  std::string file, inlet, body, when, deeds, outlet, junction, format = "text";
};

struct GuardOptions {
  std::string file, junction, format = "text";
};

struct TrainOptions {
  std::string file, inlet, body, deeds, interval, junction, format = "text";
  int count = 8;
};

struct WavesOptions {
  std::string file, deeds, duration, signals, format = "text";
};

struct MachineOptions {
  std::string file, format = "text";
  bool is_full = false;
};

struct TidyOptions {
  std::vector<std::string> paths;  // files, folders, or - for the standard input
  bool only_checks = false;
};

struct WatchOptions {
  std::vector<std::string> paths;  // files and folders
  model::Severity fail_on = model::Severity::warning;
  std::string format;  // text or lines; empty: by where the output goes
};

struct CompletionOptions {
  std::string shell;
};

struct ManualOptions {
  std::string command;  // none: of the whole program
};

struct ExplainOptions {
  std::string name;
};

struct ResolveOptions {
  std::string file;
};

using CommandOptions =
    std::variant<CheckOptions, TableOptions, CompareOptions, ShowOptions, FollowOptions,
                 GuardOptions, TrainOptions, WavesOptions, MachineOptions, ExplainOptions,
                 ResolveOptions, TidyOptions, WatchOptions, CompletionOptions, ManualOptions>;

struct Options {
  CommandOptions command;
  Colour colour = Colour::automatic;
  bool is_ascii = false;
};

}  // namespace leat::cli
