#include "lang/check/plant_ports.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/check/signals.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/diagnostics/near_name.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using Named = ByName<std::size_t>;
using Ends = std::map<std::string, std::size_t, std::less<>>;

constexpr std::size_t most_listed = 8, most_compared = 500;

std::string remedy_for(syntax::Word const& word, Named const& known) {
  std::vector<std::string> names;
  for (auto const& [name, id] : known) names.push_back(name);
  std::sort(names.begin(), names.end());
  names.resize(std::min(names.size(), most_compared));
  if (auto const near = diagnostics::near_name(word.text, names))
    return fmt::format("The nearest known name is '{}'.", *near);
  if (names.empty() || names.size() > most_listed)
    return "Name a place and a port of what is placed, such as 'first.kiln'.";
  std::string list;
  for (auto const& name : names) list += (list.empty() ? "" : ", ") + name;
  return fmt::format("Known here: {}.", list);
}

std::optional<std::size_t> find(Reading const& reading, syntax::Word const& word,
                                PlantContent const& content, bool is_outlet) {
  auto const& known = is_outlet ? content.outlets : content.inlets;
  auto const& others = is_outlet ? content.inlets : content.outlets;
  if (auto const found = known.find(word.text); found != known.end()) return found->second;
  bool const is_other = others.count(word.text) != 0;
  auto const* kind = is_outlet ? "outlet" : "inlet";
  reading.sink.report(
      {is_outlet ? Listed("unknown-outlet") : Listed("unknown-inlet"),
       is_other ? fmt::format("'{}' is an {}, where an {} is wanted", word.text,
                              is_outlet ? "inlet" : "outlet", kind)
                : fmt::format("The works has no {} '{}'", kind, word.text),
       {word.span, fmt::format("an {} of something placed is wanted here", kind), {}},
       {},
       remedy_for(word, known)});
  return std::nullopt;
}

class Connecting {
 public:
  Connecting(Reading const& reading, int ticks_a_second, Plant& plant, PlantContent& content)
      : reading_(reading), ticks_a_second_(ticks_a_second), plant_(plant), content_(content) {}

  bool join(syntax::JoinDeclaration const& declaration) {
    auto const outlet = find(reading_, declaration.outlet, content_, true);
    auto const inlet = find(reading_, declaration.inlet, content_, false);
    if (!outlet || !inlet) return false;
    if (plant_.outlets[*outlet].is_joined) {
      auto const known =
          std::find_if(plant_.joins.begin(), plant_.joins.end(),
                       [&](Channel const& channel) { return channel.outlet == *outlet; });
      reading_.sink.report({Listed("joined-twice"),
                            fmt::format("The outlet '{}' is joined twice", declaration.outlet.text),
                            {declaration.span, "it is joined here again", {}},
                            {{known->span, "it is first joined here", {}}},
                            "A channel leads to one place: remove one of the joins. Many outlets "
                            "may be joined to one "
                            "inlet."});
      return false;
    }
    Channel channel{*outlet, *inlet, std::nullopt, declaration.span};
    if (declaration.duration) {
      if (!is_in_range(reading_, *declaration.duration, "The join", ticks_a_second_)) return false;
      channel.ticks = ticks_of(*declaration.duration, ticks_a_second_);
    }
    plant_.outlets[*outlet].is_joined = true;
    plant_.inlets[*inlet].is_joined = true;
    plant_.joins.push_back(channel);
    return true;
  }

  bool name(syntax::PortDeclaration const& declaration, std::string const& path) {
    auto const port = find(reading_, declaration.port, content_, declaration.is_outlet);
    if (!port) return false;
    auto& known = declaration.is_outlet ? content_.outlets : content_.inlets;
    if (!known.emplace(declaration.name.text, *port).second) {
      auto const* kind = declaration.is_outlet ? "outlet" : "inlet";
      reading_.sink.report(
          {Listed("name-taken"),
           fmt::format("The works has two {}s '{}'", kind, declaration.name.text),
           {declaration.name.span, "this name is already given to another one", {}},
           {},
           fmt::format("Give the {} another name.", kind)});
      return false;
    }
    auto& named = declaration.is_outlet ? plant_.outlets[*port] : plant_.inlets[*port];
    named.name = {path.empty() ? declaration.name.text : path + "." + declaration.name.text,
                  declaration.span};
    return true;
  }

 private:
  Reading const& reading_;
  int ticks_a_second_;
  Plant& plant_;
  PlantContent& content_;
};

std::vector<model::Place> cells_of(Plant const& plant, PlantPort const& port, bool is_outlet) {
  auto const& placed = plant.placed[port.placed];
  auto const& drawn = *plant.drawn[placed.drawn];
  std::vector<model::Place> cells;
  for (auto const& own : (is_outlet ? drawn.outlets : drawn.inlets)[port.port])
    cells.push_back(placed.standing.outside(own));
  std::sort(cells.begin(), cells.end());
  return cells;
}

// Takes the marked ports away; gives the new number of each of the others.
std::vector<std::size_t> without(std::vector<bool> const& is_gone, std::vector<PlantPort>& ports) {
  std::vector<std::size_t> number(ports.size(), ports.size());
  std::size_t left = 0;
  for (std::size_t i = 0; i < ports.size(); ++i) {
    if (is_gone[i]) continue;
    number[i] = left;
    if (left != i) ports[left] = std::move(ports[i]);
    ++left;
  }
  ports.resize(left);
  return number;
}

Ends ends_of(Named const& known, std::vector<std::size_t> const& number,
             std::vector<PlantPort> const& ports) {
  Ends ends;
  for (auto const& [name, id] : known) {
    if (number[id] < ports.size() && !ports[number[id]].is_joined) ends.emplace(name, number[id]);
  }
  return ends;
}

}  // namespace

bool connect(Reading const& reading, syntax::WorksDeclaration const& works, std::string const& path,
             int ticks_a_second, Plant& plant, PlantContent& content) {
  Connecting connecting(reading, ticks_a_second, plant, content);
  bool is_sound = true;
  for (auto const& item : works.items) {
    if (auto const* join = std::get_if<syntax::JoinDeclaration>(&item))
      is_sound = connecting.join(*join) && is_sound;
    if (auto const* port = std::get_if<syntax::PortDeclaration>(&item))
      is_sound = connecting.name(*port, path) && is_sound;
  }
  return is_sound;
}

void settle_ports(Plant& plant, PlantContent const& content) {
  std::map<std::vector<model::Place>, std::size_t> inlet_at;
  for (std::size_t i = 0; i < plant.inlets.size(); ++i) {
    if (!plant.inlets[i].is_joined) inlet_at.emplace(cells_of(plant, plant.inlets[i], false), i);
  }
  std::vector<bool> is_inlet_gone(plant.inlets.size()), is_outlet_gone(plant.outlets.size());
  for (std::size_t o = 0; o < plant.outlets.size(); ++o) {
    if (plant.outlets[o].is_joined) continue;
    auto const same = inlet_at.find(cells_of(plant, plant.outlets[o], true));
    if (same == inlet_at.end() || plant.inlets[same->second].placed == plant.outlets[o].placed)
      continue;
    is_outlet_gone[o] = true;
    is_inlet_gone[same->second] = true;
  }
  auto const inlets = without(is_inlet_gone, plant.inlets);
  auto const outlets = without(is_outlet_gone, plant.outlets);
  for (auto& channel : plant.joins) {
    channel.outlet = outlets[channel.outlet];
    channel.inlet = inlets[channel.inlet];
  }
  plant.end_inlets = ends_of(content.inlets, inlets, plant.inlets);
  plant.end_outlets = ends_of(content.outlets, outlets, plant.outlets);
}

}  // namespace leat::check
