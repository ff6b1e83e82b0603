#pragma once
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <variant>
#include <vector>

#include "lang/diagnostics/sink.hpp"
#include "lang/syntax/document.hpp"

// The names of a design and what they stand for. Everything else in this room asks this table.
// Signals, materials, bodies and junctions are one space of names over a file and all it includes;
// what glyphs stand for, and what ports are called, each file says for itself.
namespace leat::check {

struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const {
    return std::hash<std::string_view>{}(text);
  }
};
// What is found by name. Who goes through it sorts what it tells.
template <class Value>
using ByName = std::unordered_map<std::string, Value, TextHash, std::equal_to<>>;

// Declarations in the order in which they were written, and found by name. A declaration's place in
// the order is the dense id the engine will know it by. Of two with one name only the first is
// entered.
template <class Declaration>
struct Roll {
  std::vector<Declaration const*> all;
  ByName<std::uint32_t> ids;

  std::optional<std::uint32_t> find(std::string_view name) const {
    auto const found = ids.find(name);
    if (found == ids.end()) return std::nullopt;
    return found->second;
  }
  Declaration const* declared(std::string_view name) const {
    auto const id = find(name);
    return id ? all[*id] : nullptr;
  }
  bool enter(std::string const& name, Declaration const& declaration) {
    if (!ids.try_emplace(name, static_cast<std::uint32_t>(all.size())).second) return false;
    all.push_back(&declaration);
    return true;
  }
};

// An inlet or outlet: all marks that carry its name are cells of the one port.
struct PortName {
  syntax::Word name;  // where it is first declared
  std::vector<std::uint32_t> marks;
};

// Ports in the order of their first marks, and found by name.
struct PortNames {
  std::vector<PortName> all;
  std::map<std::string, std::size_t, std::less<>> places;

  void add(syntax::Word const& name, std::uint32_t mark);
  PortName const* find(std::string_view name) const;
};

// A body to judge; the built-in walker has no declaration.
struct ProfileName {
  std::string name;
  syntax::BodyDeclaration const* declaration = nullptr;
};

// What is one file's own. A mark is known by its place among the marks of all files, so that a
// drawing may be asked for it whatever file it comes from.
struct FileNames {
  std::vector<std::uint32_t> marks;                            // as declared
  std::map<std::string, std::uint32_t, std::less<>> mark_ids;  // by glyph
  PortNames inlets, outlets;
  std::vector<std::uint32_t> junctions;  // by their place in Names::junctions
  std::vector<std::uint32_t> works;      // by their place in Names::works

  std::set<std::string> taken;  // names of junctions and works that are left out

  bool draws_nothing() const { return junctions.empty() && works.empty() && taken.empty(); }
};

struct Names {
  Roll<syntax::SignalDeclaration> signals;
  Roll<syntax::MaterialDeclaration> materials;  // declared ones; the built-in ones come before them
  std::vector<syntax::MarkDeclaration const*> marks;  // of all files
  Roll<syntax::JunctionDeclaration> junctions;
  Roll<syntax::WorksDeclaration> works;
  Roll<syntax::BodyDeclaration> bodies;
  std::vector<ProfileName> profiles;  // in judged order
  std::vector<FileNames> files;       // by their number in the text

  // The file that is judged: the others are only what it includes.
  FileNames const& judged() const { return files.front(); }

  std::optional<std::uint32_t> material(std::string_view name) const;
  std::optional<std::uint32_t> profile(std::string_view name) const;
};

// The built-in materials' names, in the order of model::built_in_materials.
std::vector<std::string> const& built_in_material_names();
inline constexpr char const* built_in_body = "walker";

// Enters every declaration; reports what is declared twice or takes a name that is spoken for. Of a
// signal, material or body that two files declare word for word alike, one is entered.
Names collect_names(syntax::Document const&, source::SourceText const&, diagnostics::Sink&);

// The declarations of one kind, in the order in which they were written.
template <class Declaration>
std::vector<Declaration const*> all_of(syntax::Document const& document) {
  std::vector<Declaration const*> found;
  for (auto const& declaration : document.declarations) {
    if (auto const* it = std::get_if<Declaration>(&declaration)) found.push_back(it);
  }
  return found;
}

}  // namespace leat::check
