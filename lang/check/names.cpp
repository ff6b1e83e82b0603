#include "lang/check/names.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "engine/model/design.hpp"
#include "lang/check/clause_subject.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using diagnostics::Sink;
using syntax::Word;

constexpr std::size_t most_marks = 65'534;
constexpr std::size_t most_junctions = 1000, most_shares = 10'000'000;
constexpr std::size_t most_materials = std::numeric_limits<model::MaterialId>::max();

void report_twice(Sink& sink, std::string_view kind, Word const& second, Word const& first) {
  sink.report({Listed("declared-twice"),
               fmt::format("The {} '{}' is declared twice", kind, second.text),
               {second.span, fmt::format("'{}' is declared here again", second.text), {}},
               {{first.span, fmt::format("'{}' is first declared here", first.text), {}}},
               fmt::format("Give one of them another {}, or remove it.",
                           kind == "mark" ? "glyph" : "name")});
}

void report_too_many(Sink& sink, std::string_view kind, std::size_t most, Word const& first_past) {
  sink.report({Listed("too-many"),
               fmt::format("The file declares more than {} {}", most, kind),
               {first_past.span, fmt::format("number {} of the {}", most + 1, kind), {}},
               {},
               fmt::format("Split the design into files with at most {} {} each.", most, kind)});
}

// A name that the language itself gives a meaning to cannot be declared.
void report_taken(Sink& sink, std::string_view kind, Word const& word, std::string const& owner) {
  sink.report({Listed("name-taken"),
               fmt::format("The {} '{}' takes a name that {}", kind, word.text, owner),
               {word.span, fmt::format("'{}' {}", word.text, owner), {}},
               {},
               fmt::format("Give the {} another name.", kind)});
}

void enter_signals(syntax::Document const& document, Names& names, Sink& sink) {
  for (auto const* block : all_of<syntax::SignalsDeclaration>(document)) {
    for (auto const& signal : block->signals) {
      if (names.signals.enter(signal.name.text, signal)) continue;
      report_twice(sink, "signal", signal.name, names.signals.declared(signal.name.text)->name);
    }
  }
}

void enter_materials(syntax::Document const& document, Names& names, Sink& sink) {
  auto const& built_in = built_in_material_names();
  auto const most = most_materials - built_in.size();
  for (auto const* block : all_of<syntax::MaterialsDeclaration>(document)) {
    for (auto const& material : block->materials) {
      auto const& name = material.name;
      if (std::find(built_in.begin(), built_in.end(), name.text) != built_in.end()) {
        report_taken(sink, "material", name, "is built in");
      } else if (!names.materials.enter(name.text, material)) {
        report_twice(sink, "material", name, names.materials.declared(name.text)->name);
      } else if (names.materials.all.size() == most + 1) {
        report_too_many(sink, "materials", most, name);
      }
    }
  }
}

void enter_marks(syntax::Document const& document, Names& names, Sink& sink) {
  for (auto const* block : all_of<syntax::MarksDeclaration>(document)) {
    for (auto const& mark : block->marks) {
      if (!names.marks.enter(mark.glyph.text, mark)) {
        report_twice(sink, "mark", mark.glyph, names.marks.declared(mark.glyph.text)->glyph);
      } else if (names.marks.all.size() == most_marks + 1) {
        report_too_many(sink, "marks", most_marks, mark.glyph);
      }
    }
  }
}

void enter_junctions_and_bodies(syntax::Document const& document, Names& names, Sink& sink) {
  for (auto const* junction : all_of<syntax::JunctionDeclaration>(document)) {
    if (names.junctions.enter(junction->name.text, *junction)) continue;
    report_twice(sink, "junction", junction->name,
                 names.junctions.declared(junction->name.text)->name);
  }
  for (auto const* works : all_of<syntax::WorksDeclaration>(document)) {
    if (auto const* junction = names.junctions.declared(works->name.text)) {
      report_twice(sink, "junction or works", works->name, junction->name);
    } else if (!names.works.enter(works->name.text, *works)) {
      report_twice(sink, "works", works->name, names.works.declared(works->name.text)->name);
    }
  }
  for (auto const* body : all_of<syntax::BodyDeclaration>(document)) {
    if (names.bodies.enter(body->name.text, *body)) continue;
    report_twice(sink, "body", body->name, names.bodies.declared(body->name.text)->name);
  }
}

void enter_ports(Names& names, Sink& sink) {
  for (std::uint32_t mark = 0; mark < names.marks.all.size(); ++mark) {
    auto const& declaration = *names.marks.all[mark];
    auto const& name = declaration.role_name;
    if (declaration.role == syntax::MarkRole::inlet) {
      names.inlets.add(name, mark);
      if (names.bodies.find(name.text) || name.text == built_in_body)
        report_taken(sink, "inlet", name, "is also the name of a body");
    } else if (declaration.role == syntax::MarkRole::outlet) {
      names.outlets.add(name, mark);
    }
  }
}

// The walker is judged where the file declares no body, or names it without declaring it.
bool needs_built_in_body(syntax::Document const& document, Names const& names) {
  if (names.bodies.find(built_in_body)) return false;
  if (names.bodies.all.empty()) return true;
  for (auto const* table : all_of<syntax::TableDeclaration>(document)) {
    if (table->body && table->body->text == built_in_body) return true;
  }
  for (auto const* block : all_of<syntax::ExpectDeclaration>(document)) {
    for (auto const& clause : block->clauses) {
      auto const* body = subject_of(clause, names).body;
      if (body && body->text == built_in_body) return true;
    }
  }
  return false;
}

// Every junction is judged with all signals and marks of its file, so the file's junctions together
// may not ask for too many of them.
void check_junction_count(Names const& names, Sink& sink) {
  auto const each = std::max<std::size_t>(names.signals.all.size() + names.marks.all.size(), 1);
  auto const most = std::min(most_junctions, std::max<std::size_t>(most_shares / each, 1));
  if (names.junctions.all.size() > most)
    report_too_many(sink, "junctions", most, names.junctions.all[most]->name);
}

}  // namespace

std::vector<std::string> const& built_in_material_names() {
  static std::vector<std::string> const names{"rock", "open", "water", "sign", "plate"};
  static_assert(model::built_in_materials.size() == 5);
  return names;
}

std::optional<std::uint32_t> Names::material(std::string_view name) const {
  auto const& built_in = built_in_material_names();
  auto const at = std::find(built_in.begin(), built_in.end(), name);
  if (at != built_in.end()) return static_cast<std::uint32_t>(at - built_in.begin());
  if (auto const declared = materials.find(name))
    return static_cast<std::uint32_t>(built_in.size()) + *declared;
  return std::nullopt;
}

std::optional<std::uint32_t> Names::profile(std::string_view name) const {
  bool const has_built_in = profiles.size() > bodies.all.size();
  if (has_built_in && name == built_in_body) return 0;
  auto const body = bodies.find(name);
  if (!body) return std::nullopt;
  return *body + (has_built_in ? 1 : 0);
}

void PortNames::add(Word const& name, std::uint32_t mark) {
  auto const [at, is_new] = places.try_emplace(name.text, all.size());
  if (is_new) all.push_back({name, {}});
  all[at->second].marks.push_back(mark);
}

PortName const* PortNames::find(std::string_view name) const {
  auto const at = places.find(name);
  return at == places.end() ? nullptr : &all[at->second];
}

Names collect_names(syntax::Document const& document, Sink& sink) {
  Names names;
  enter_signals(document, names, sink);
  enter_materials(document, names, sink);
  enter_marks(document, names, sink);
  enter_junctions_and_bodies(document, names, sink);
  enter_ports(names, sink);
  check_junction_count(names, sink);
  if (needs_built_in_body(document, names)) names.profiles.push_back({built_in_body, nullptr});
  for (auto const* body : names.bodies.all) names.profiles.push_back({body->name.text, body});
  return names;
}

}  // namespace leat::check
