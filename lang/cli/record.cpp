#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/commands.hpp"
#include "lang/cli/held_record.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/written_file.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

// The design as it was recorded and as it is.
struct Run {
  std::string path;
  std::optional<record::Record> old;
  record::Record next;  // what would be written
  render::FileComparison differences;
  std::vector<std::string> open;  // keys of what differs and is not accepted
  std::vector<std::string> keys;  // of everything that differs
};

std::string counts_of(record::Record const& record) {
  std::size_t routes = 0, findings = 0, times = 0;
  for (auto const& junction : record.junctions) {
    routes += junction.routes.size();
    findings += junction.findings.size();
    times += junction.times.size();
  }
  return render::listed({render::counted(routes, "route"), render::counted(findings, "finding"),
                         render::counted(times, "time")});
}

bool write(Run const& run, Terminal& terminal) {
  auto const fault = write_file(run.path, record::document(run.next));
  if (fault) terminal.refuse(fault->headline, fault->remedy);
  return !fault;
}

// Adds a junction; false where it cannot be recorded, which has been told.
bool take(Loaded const& loaded, std::size_t i, record::Keys const& accepted, Run& run,
          Terminal& terminal) {
  auto const subject = loaded.subject(i);
  auto const& name = subject.map.junction.name;
  auto const* old = run.old ? find(*run.old, name) : nullptr;
  auto const& junction = loaded.junctions[i];
  auto const known = judged(junction, ProgressLines(terminal, name, progress_unit(junction)));
  HeldRecord const held(subject, known, old);
  if (!held.is_whole() || !held.now()) {
    terminal.refuse(fmt::format("junction {} is not known well enough to be recorded", name),
                    "leat check says what is undecided; nothing was written");
    return false;
  }
  run.differences.sheets.push_back(held.sheet());
  run.keys.insert(run.keys.end(), held.keys().begin(), held.keys().end());
  for (auto const& key : held.keys()) {
    if (!accepted.holds(key)) run.open.push_back(key);
  }
  bool const is_new = run.old && old == nullptr;
  if (is_new && !accepted.holds(name)) run.open.push_back(name);
  if (is_new) run.keys.push_back(name);
  if (old != nullptr)
    run.next.junctions.push_back(record::accepted(*old, *held.now(), accepted));
  else if (!run.old || accepted.holds(name))
    run.next.junctions.push_back(*held.now());
  return true;
}

// Recorded junctions that the design has no more.
void take_gone(Loaded const& loaded, record::Keys const& accepted, Run& run) {
  if (!run.old) return;
  for (auto const& junction : run.old->junctions) {
    bool const is_there =
        std::any_of(loaded.junctions.begin(), loaded.junctions.end(),
                    [&](auto const& j) { return j.map.junction.name == junction.name; });
    if (is_there) continue;
    run.keys.push_back(junction.name);
    run.differences.sheets.push_back(render::missing_sheet(junction.name, true));
    if (accepted.holds(junction.name)) continue;
    run.open.push_back(junction.name);
    run.next.junctions.push_back(junction);
  }
}

bool are_known(RecordOptions const& options, Run const& run, Terminal& terminal) {
  for (auto const& key : options.accepted) {
    if (key == "all" || std::find(run.keys.begin(), run.keys.end(), key) != run.keys.end())
      continue;
    terminal.refuse(
        fmt::format("nothing that differs from the record is called '{}'", render::showable(key)),
        run.keys.empty() ? "nothing differs" : "known: " + render::listed(run.keys, "and", 12));
    return false;
  }
  return true;
}

Exit finish(RecordOptions const& options, Run& run, Terminal& terminal) {
  if (!run.old) {
    if (!options.accepted.empty()) {
      terminal.refuse(
          fmt::format("{} is not there, so nothing differs from it", render::showable(run.path)),
          "leave --accept away to record the design for the first time");
      return Exit::unusable;
    }
    if (!write(run, terminal)) return Exit::unusable;
    terminal.result(
        fmt::format("{}: {} written down\n", render::showable(run.path), counts_of(run.next)));
    return Exit::holds;
  }
  if (run.keys.empty()) {
    terminal.result(fmt::format("{}: the design does as recorded\n", render::showable(run.path)));
    return Exit::holds;
  }
  run.differences.verdict = run.open.empty()
                                ? "everything that differs is accepted"
                                : fmt::format("open: {}", render::listed(run.open, "and", 12));
  terminal.result(render::comparison_text(run.differences, terminal.result_look()));
  if (options.accepted.empty()) {
    terminal.narrate("leat: nothing was written; --accept WHAT, or --accept all, writes it\n");
    return Exit::violated;
  }
  if (!write(run, terminal)) return Exit::unusable;
  terminal.narrate(fmt::format("leat: {} was written\n", render::showable(run.path)));
  return run.open.empty() ? Exit::holds : Exit::violated;
}

}  // namespace

Exit run(RecordOptions const& options, Terminal& terminal) {
  if (options.file == "-") {
    terminal.refuse("a design from the standard input has no place for a record beside it",
                    "name the file");
    return Exit::unusable;
  }
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto old = record_beside(options.file);
  if (auto const* fault = std::get_if<FileFault>(&old)) {
    terminal.refuse(fault->headline, fault->remedy);
    return Exit::unusable;
  }
  Run run;
  run.path = record::path_beside(options.file);
  run.old = std::move(std::get<std::optional<record::Record>>(old));
  run.differences.before = run.path;
  run.differences.after = loaded->text.name();
  record::Keys const accepted{
      options.accepted,
      std::find(options.accepted.begin(), options.accepted.end(), "all") != options.accepted.end()};
  for (std::size_t i = 0; i < loaded->junctions.size(); ++i) {
    if (!take(*loaded, i, accepted, run, terminal)) return Exit::undecided;
  }
  take_gone(*loaded, accepted, run);
  if (!are_known(options, run, terminal)) return Exit::unusable;
  return finish(options, run, terminal);
}

}  // namespace leat::cli
