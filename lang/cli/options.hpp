#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "engine/compare/comparison.hpp"
#include "engine/model/finding_kind.hpp"
#include "lang/render/picture/palette.hpp"

// What was asked for on the command line, as values.
namespace leat::cli {

enum class Colour { automatic, always, never };

struct CheckOptions {
  std::vector<std::string> files;
  model::Severity fail_on = model::Severity::warning;
  std::string format;  // empty: text or lines, by where the output goes
  std::string out;     // the file to write into; empty: the standard output
  int jobs = 0;        // files judged at a time; 0: as many as there are processors
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

struct RecordOptions {
  std::string file;
  std::vector<std::string> accepted;  // keys, or "all"
};

struct ShowOptions {
  std::string file, when, deeds, junction, format = "text";
  std::optional<int> level;
  bool is_of_islands = false;  // what the drawing falls into, instead of its water
};

struct FollowOptions {
  std::string file, inlet, body, when, deeds, outlet, junction, format = "text";
};

struct DrawOptions {
  std::string file, when, deeds, junction, body, out, place, columns, rows;
  std::vector<int> levels;
  std::vector<std::string> sections, inlets;
  bool is_without_ways = false;
  render::Theme theme = render::Theme::automatic;
};

struct BillOptions {
  std::string file, junction, out, format = "text";
  bool has_steps = false;
};

struct PageOptions {
  std::string file, newer, out, junction;
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
    std::variant<CheckOptions, TableOptions, CompareOptions, RecordOptions, ShowOptions,
                 FollowOptions, DrawOptions, BillOptions, PageOptions, GuardOptions, TrainOptions,
                 WavesOptions, MachineOptions, ExplainOptions, ResolveOptions, TidyOptions,
                 WatchOptions, CompletionOptions, ManualOptions>;

struct Options {
  CommandOptions command;
  Colour colour = Colour::automatic;
  bool is_ascii = false;
};

}  // namespace leat::cli
