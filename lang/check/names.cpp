#include "lang/check/names.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "engine/model/design.hpp"
#include "lang/check/clause_subject.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using diagnostics::Sink;
using syntax::Word;

constexpr std::size_t most_marks = 65'534;
constexpr std::size_t most_junctions = 1000, most_shares = 10'000'000;
constexpr std::size_t most_materials = std::numeric_limits<model::MaterialId>::max();

// What names are entered from and into.
struct Entering {
  syntax::Document const& document;
  source::SourceText const& source;
  Names& names;
  Sink& sink;

  std::size_t file_of(Word const& word) const { return source.file_of(word.span.begin); }
  FileNames& names_of_file(Word const& word) const { return names.files[file_of(word)]; }
};

void report_twice(Entering const& into, std::string_view kind, Word const& second,
                  Word const& first) {
  into.sink.report({Listed("declared-twice"),
                    fmt::format("The {} '{}' is declared twice", kind, second.text),
                    {second.span, fmt::format("'{}' is declared here again", second.text), {}},
                    {{first.span, fmt::format("'{}' is first declared here", first.text), {}}},
                    fmt::format("Give one of them another {}, or remove it.",
                                kind == "mark" ? "glyph" : "name")});
}

std::string as_written(syntax::SignalDeclaration const& signal) { return line_of(signal); }
std::string as_written(syntax::MaterialDeclaration const& material) { return line_of(material); }
std::string as_written(syntax::BodyDeclaration const& body) {
  std::string all = body.name.text;
  for (auto const& property : body.properties) all += '\n' + line_of(property);
  return all;
}

// Two files may each declare what both use, so that each can be read by itself; but then they have
// to mean the same.
template <class Declaration>
void meet_again(Entering const& into, std::string_view kind, Declaration const& second,
                Declaration const& first) {
  if (into.file_of(second.name) == into.file_of(first.name)) {
    report_twice(into, kind, second.name, first.name);
    return;
  }
  if (as_written(second) == as_written(first)) return;
  auto const& name = second.name.text;
  into.sink.report({Listed("declared-twice"),
                    fmt::format("Two files declare the {} '{}' differently", kind, name),
                    {second.name.span, fmt::format("'{}' is declared here", name), {}},
                    {{first.name.span, fmt::format("'{}' is declared otherwise here", name), {}}},
                    "Declare it in one of the files only, or word for word alike in both."});
}

void report_too_many(Entering const& into, std::string_view kind, std::size_t most,
                     Word const& first_past) {
  bool const is_alone = into.source.file_count() == 1;
  into.sink.report(
      {Listed("too-many"),
       fmt::format("{} more than {} {}",
                   is_alone ? "The file declares" : "The files together declare", most, kind),
       {first_past.span, fmt::format("number {} of the {}", most + 1, kind), {}},
       {},
       is_alone ? fmt::format("Split the design into files with at most {} {} each.", most, kind)
                : "Include fewer files, or split the design."});
}

// A name that the language itself gives a meaning to cannot be declared.
void report_taken(Entering const& into, std::string_view kind, Word const& word,
                  std::string const& owner) {
  into.sink.report({Listed("name-taken"),
                    fmt::format("The {} '{}' takes a name that {}", kind, word.text, owner),
                    {word.span, fmt::format("'{}' {}", word.text, owner), {}},
                    {},
                    fmt::format("Give the {} another name.", kind)});
}

void enter_signals(Entering const& into) {
  auto& signals = into.names.signals;
  for (auto const* block : all_of<syntax::SignalsDeclaration>(into.document)) {
    for (auto const& signal : block->signals) {
      if (signals.enter(signal.name.text, signal)) continue;
      meet_again(into, "signal", signal, *signals.declared(signal.name.text));
    }
  }
}

void enter_materials(Entering const& into) {
  auto const& built_in = built_in_material_names();
  auto const most = most_materials - built_in.size();
  auto& materials = into.names.materials;
  for (auto const* block : all_of<syntax::MaterialsDeclaration>(into.document)) {
    for (auto const& material : block->materials) {
      auto const& name = material.name;
      if (std::find(built_in.begin(), built_in.end(), name.text) != built_in.end()) {
        report_taken(into, "material", name, "is built in");
      } else if (!materials.enter(name.text, material)) {
        meet_again(into, "material", material, *materials.declared(name.text));
      } else if (materials.all.size() == most + 1) {
        report_too_many(into, "materials", most, name);
      }
    }
  }
}

void enter_marks(Entering const& into) {
  auto& marks = into.names.marks;
  for (auto const* block : all_of<syntax::MarksDeclaration>(into.document)) {
    for (auto const& mark : block->marks) {
      auto& file = into.names_of_file(mark.glyph);
      auto const id = static_cast<std::uint32_t>(marks.size());
      auto const [at, is_new] = file.mark_ids.try_emplace(mark.glyph.text, id);
      if (!is_new) {
        report_twice(into, "mark", mark.glyph, marks[at->second]->glyph);
        continue;
      }
      file.marks.push_back(id);
      marks.push_back(&mark);
      if (marks.size() == most_marks + 1) report_too_many(into, "marks", most_marks, mark.glyph);
    }
  }
}

template <class Declaration>
void report_taken_by(Entering const& into, std::string_view kind, Declaration const& second,
                     Word const& first) {
  into.names_of_file(second.name).taken.insert(second.name.text);
  report_twice(into, kind, second.name, first);
}

void enter_junctions(Entering const& into) {
  auto& junctions = into.names.junctions;
  for (auto const* junction : all_of<syntax::JunctionDeclaration>(into.document)) {
    auto const& name = junction->name;
    auto const id = static_cast<std::uint32_t>(junctions.all.size());
    if (junctions.enter(name.text, *junction))
      into.names_of_file(name).junctions.push_back(id);
    else
      report_taken_by(into, "junction", *junction, junctions.declared(name.text)->name);
  }
  auto& works = into.names.works;
  for (auto const* declared : all_of<syntax::WorksDeclaration>(into.document)) {
    auto const& name = declared->name;
    auto const id = static_cast<std::uint32_t>(works.all.size());
    if (auto const* junction = junctions.declared(name.text))
      report_taken_by(into, "junction or works", *declared, junction->name);
    else if (works.enter(name.text, *declared))
      into.names_of_file(name).works.push_back(id);
    else
      report_taken_by(into, "works", *declared, works.declared(name.text)->name);
  }
}

void enter_bodies(Entering const& into) {
  auto& bodies = into.names.bodies;
  for (auto const* body : all_of<syntax::BodyDeclaration>(into.document)) {
    if (bodies.enter(body->name.text, *body)) continue;
    meet_again(into, "body", *body, *bodies.declared(body->name.text));
  }
}

void enter_ports(Entering const& into) {
  for (std::uint32_t mark = 0; mark < into.names.marks.size(); ++mark) {
    auto const& declaration = *into.names.marks[mark];
    auto const& name = declaration.role_name;
    auto& file = into.names_of_file(declaration.glyph);
    if (declaration.role == syntax::MarkRole::inlet) {
      file.inlets.add(name, mark);
      if (is_body(name.text, into.names))
        report_taken(into, "inlet", name, "is also the name of a body");
    } else if (declaration.role == syntax::MarkRole::outlet) {
      file.outlets.add(name, mark);
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

// Every junction is judged with all signals and marks there are, so the junctions together may not
// ask for too many of them. Those past the bound are not looked at.
void check_junction_count(Entering const& into) {
  auto& names = into.names;
  auto const each = std::max<std::size_t>(names.signals.all.size() + names.marks.size(), 1);
  auto const most = std::min(most_junctions, std::max<std::size_t>(most_shares / each, 1));
  auto& all = names.junctions.all;
  if (all.size() <= most) return;
  report_too_many(into, "junctions", most, all[most]->name);
  for (auto junction = all.begin() + static_cast<std::ptrdiff_t>(most); junction != all.end();
       ++junction)
    into.names_of_file((*junction)->name).taken.insert((*junction)->name.text);
  all.resize(most);
  std::erase_if(names.junctions.ids, [&](auto const& entry) { return entry.second >= most; });
  for (auto& file : names.files) std::erase_if(file.junctions, [&](auto id) { return id >= most; });
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

Names collect_names(syntax::Document const& document, source::SourceText const& source,
                    Sink& sink) {
  Names names;
  names.files.resize(source.file_count());
  Entering const into{document, source, names, sink};
  enter_signals(into);
  enter_materials(into);
  enter_marks(into);
  enter_junctions(into);
  enter_bodies(into);
  enter_ports(into);
  check_junction_count(into);
  if (needs_built_in_body(document, names)) names.profiles.push_back({built_in_body, nullptr});
  for (auto const* body : names.bodies.all) names.profiles.push_back({body->name.text, body});
  return names;
}

}  // namespace leat::check
