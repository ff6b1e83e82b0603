#pragma once
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "engine/model/circuit.hpp"
#include "lang/check/names.hpp"

namespace leat::check {

// Which signals a place of a works has to itself: those it replaces, its plates, and all that
// follows from them. A name is looked for from a place outward; what no place has is the file's.
class Scopes {
 public:
  using Id = std::size_t;
  static constexpr Id file = 0;
  // What stands in the place of signals of the file.
  using Replaced = std::map<model::SignalId, syntax::Expression const*>;

  explicit Scopes(Names const&);

  // The expressions in `replaced` speak in the outer scope, and must outlive this.
  Id add(Id outer, std::string name, Replaced replaced, std::set<model::SignalId> const& plates);

  std::size_t size() const { return scopes_.size(); }
  // "north.first"; empty for the file.
  std::string const& name(Id scope) const { return scopes_[scope].name; }
  Id outer(Id scope) const { return scopes_[scope].outer; }
  std::optional<Id> find(std::string_view name) const;
  // The scope whose signal is meant where a signal is named in `scope`.
  Id home(Id scope, model::SignalId) const;
  // "second.late": the place's scope and the signal of the file.
  struct Named {
    Id scope = file;
    model::SignalId signal = 0;
  };
  std::optional<Named> named(Names const&, std::string_view name) const;
  // What stands for the signal in the scope whose own it is, if it is replaced there.
  syntax::Expression const* replacement(Id scope, model::SignalId) const;
  // The signals of the file that an expression and all it follows from use.
  static std::set<model::SignalId> used_by(Names const&,
                                           std::vector<syntax::Expression const*> const&);

 private:
  struct Scope {
    std::string name;
    Id outer = file;
    Replaced replaced;
    std::set<model::SignalId> own;
  };
  std::vector<std::vector<model::SignalId>>
      users_;  // by signal: those that follow from it directly
  std::vector<Scope> scopes_;
  ByName<Id> ids_;
};

}  // namespace leat::check
