#include "lang/check/scopes.hpp"

#include "lang/check/signals.hpp"

namespace leat::check {

using model::SignalId;

Scopes::Scopes(Names const& names) : users_(names.signals.all.size()), scopes_(1) {
  for (SignalId signal = 0; signal < names.signals.all.size(); ++signal) {
    auto const& declaration = *names.signals.all[signal];
    for (auto const* definition : {&declaration.on, &declaration.off}) {
      if (!*definition) continue;
      for_each_name(**definition, [&](syntax::Expression const& name) {
        if (auto const used = names.signals.find(name.name)) users_[*used].push_back(signal);
      });
    }
  }
}

Scopes::Id Scopes::add(Id outer, std::string name, Replaced replaced,
                       std::set<SignalId> const& plates) {
  Scope scope{std::move(name), outer, std::move(replaced), plates};
  std::vector<SignalId> open(plates.begin(), plates.end());
  for (auto const& [signal, expression] : scope.replaced) {
    if (scope.own.insert(signal).second) open.push_back(signal);
  }
  while (!open.empty()) {
    auto const signal = open.back();
    open.pop_back();
    for (auto user : users_[signal]) {
      if (scope.own.insert(user).second) open.push_back(user);
    }
  }
  ids_.emplace(scope.name, scopes_.size());
  scopes_.push_back(std::move(scope));
  return scopes_.size() - 1;
}

std::optional<Scopes::Id> Scopes::find(std::string_view name) const {
  auto const found = ids_.find(name);
  if (found == ids_.end()) return std::nullopt;
  return found->second;
}

std::optional<Scopes::Named> Scopes::named(Names const& names, std::string_view name) const {
  auto const dot = name.rfind('.');
  if (dot == std::string_view::npos) return std::nullopt;
  auto const scope = find(name.substr(0, dot));
  auto const signal = names.signals.find(name.substr(dot + 1));
  if (!scope || !signal) return std::nullopt;
  return Named{*scope, *signal};
}

Scopes::Id Scopes::home(Id scope, SignalId signal) const {
  while (scope != file && scopes_[scope].own.count(signal) == 0) scope = scopes_[scope].outer;
  return scope;
}

syntax::Expression const* Scopes::replacement(Id scope, SignalId signal) const {
  auto const found = scopes_[scope].replaced.find(signal);
  return found == scopes_[scope].replaced.end() ? nullptr : found->second;
}

std::set<SignalId> Scopes::used_by(Names const& names,
                                   std::vector<syntax::Expression const*> const& roots) {
  std::set<SignalId> used;
  auto open = roots;
  while (!open.empty()) {
    auto const* expression = open.back();
    open.pop_back();
    for_each_name(*expression, [&](syntax::Expression const& name) {
      auto const signal = names.signals.find(name.name);
      if (!signal || !used.insert(*signal).second) return;
      auto const& declaration = *names.signals.all[*signal];
      if (declaration.on) open.push_back(&*declaration.on);
      if (declaration.off) open.push_back(&*declaration.off);
    });
  }
  return used;
}

}  // namespace leat::check
