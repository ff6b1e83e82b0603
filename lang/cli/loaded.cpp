#include "lang/cli/loaded.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/files.hpp"
#include "lang/diagnostics/near_name.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

std::string hint(std::string const& name, std::vector<std::string> const& known) {
  if (auto const near = diagnostics::near_name(name, known)) {
    return fmt::format("did you mean '{}'?", *near);
  }
  return known.empty() ? "" : "known: " + render::listed(known, "and", 12);
}

void refuse_name(std::string const& name, std::string_view kind,
                 std::vector<std::string> const& known, Terminal& terminal) {
  terminal.refuse(fmt::format("the design has no {} '{}'", kind, render::showable(name)),
                  hint(name, known));
}

std::optional<std::uint32_t> find_port(std::map<std::string, std::uint32_t> const& ports,
                                       std::string const& name, std::string_view kind,
                                       Terminal& terminal) {
  if (auto const found = ports.find(name); found != ports.end()) return found->second;
  std::vector<std::string> known;
  for (auto const& [port, id] : ports) known.push_back(port);
  refuse_name(name, kind, known, terminal);
  return std::nullopt;
}

}  // namespace

std::unique_ptr<Loaded> load(std::string const& path, Terminal& terminal) {
  auto read = read_file(path);
  if (auto const* fault = std::get_if<FileFault>(&read)) {
    terminal.refuse(fault->headline, fault->remedy);
    return nullptr;
  }
  auto& file = std::get<FileText>(read);
  auto loaded = std::make_unique<Loaded>(
      Loaded{source::SourceText(std::move(file.name), std::move(file.text)), {}});
  diagnostics::Sink sink;
  Disk disk;
  loaded->junctions = lower::read_designs(loaded->text, disk, sink);
  if (sink.empty()) return loaded;
  tell(sink, loaded->text, terminal);
  return nullptr;
}

void tell(diagnostics::Sink const& sink, source::SourceText const& text, Terminal& terminal) {
  for (auto const& found : sink.sorted()) {
    terminal.narrate(render::diagnostic_text(found, text, terminal.narration_look()));
  }
  if (sink.left_out() > 0) {
    terminal.narrate(fmt::format("and {} more\n", render::counted(sink.left_out(), "fault")));
  }
}

std::optional<std::vector<std::size_t>> chosen_junctions(Loaded const& loaded,
                                                         std::string const& name,
                                                         Terminal& terminal) {
  std::vector<std::size_t> chosen;
  std::vector<source::Named> known;
  for (std::size_t i = 0; i < loaded.junctions.size(); ++i) {
    known.push_back(loaded.junctions[i].map.junction);
    if (name.empty()) chosen.push_back(i);
  }
  if (name.empty()) return chosen;
  auto const id = find_name(known, name, "junction", terminal);
  if (!id) return std::nullopt;
  return std::vector<std::size_t>{*id};
}

std::vector<std::size_t> with_inlet(Loaded const& loaded, std::vector<std::size_t> const& chosen,
                                    std::string const& inlet) {
  std::vector<std::size_t> found;
  for (auto i : chosen) {
    auto const& map = loaded.junctions[i].map;
    bool const is_there = map.inlet_names.count(inlet) != 0 ||
                          std::any_of(map.inlets.begin(), map.inlets.end(),
                                      [&](auto const& named) { return named.name == inlet; });
    if (is_there) found.push_back(i);
  }
  return found.empty() ? chosen : found;
}

void warn_of_restless(render::Subject const& subject, Terminal& terminal) {
  terminal.refuse(fmt::format("junction {}: after some events the signals never come to rest; "
                              "nothing is known of what follows them",
                              subject.map.junction.name),
                  "leat machine names the loop");
}

void refuse_undecided(render::Subject const& subject, std::string const& too_much, bool never_rests,
                      Terminal& terminal) {
  auto const why = never_rests ? "its signals never come to rest as built" : too_much;
  terminal.refuse(fmt::format("junction {} is undecided: {}", subject.map.junction.name, why),
                  never_rests ? "leat machine names the loop"
                              : "split the junction, or take signals or delays out of it");
}

std::optional<std::uint32_t> find_name(std::vector<source::Named> const& named,
                                       std::string const& name, std::string_view kind,
                                       Terminal& terminal) {
  std::vector<std::string> known;
  for (std::uint32_t i = 0; i < named.size(); ++i) {
    if (named[i].name == name) return i;
    known.push_back(named[i].name);
  }
  refuse_name(name, kind, known, terminal);
  return std::nullopt;
}

std::optional<model::InletId> find_inlet(source::SourceMap const& map, std::string const& name,
                                         Terminal& terminal) {
  return map.is_works() ? find_port(map.inlet_names, name, "inlet", terminal)
                        : find_name(map.inlets, name, "inlet", terminal);
}

std::optional<model::OutletId> find_outlet(source::SourceMap const& map, std::string const& name,
                                           Terminal& terminal) {
  return map.is_works() ? find_port(map.outlet_names, name, "outlet", terminal)
                        : find_name(map.outlets, name, "outlet", terminal);
}

}  // namespace leat::cli
