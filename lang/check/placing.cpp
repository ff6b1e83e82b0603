#include "lang/check/placing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "lang/check/plant_ports.hpp"
#include "lang/check/signals.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::PlaceDeclaration;
using syntax::WorksDeclaration;

constexpr std::size_t most_places = 100'000, most_nested = 50;
constexpr long most_plant_cells = 32'000'000;

class Placing {
 public:
  Placing(Workshop& workshop, Scopes& scopes, Plant& plant)
      : workshop_(workshop), reading_(workshop.reading()), scopes_(scopes), plant_(plant) {}

  // Fills the plant with what the works places; the corner of all is where the file has it, but for
  // what lies west, north or below of 0 0 0: then all is moved.
  void run(std::size_t works) {
    nest_.push_back(works);
    plant_.unfolded.push_back(workshop_.unfolded(works, {}));
    plant_.declaration = plant_.unfolded.back().get();
    auto content = contents(*plant_.declaration, "", Scopes::file);
    auto const box = box_of(0);
    shift(0, {std::max(-box.least.x, 0), std::max(-box.least.y, 0), std::max(-box.least.z, 0)});
    auto const most = box_of(0).most;
    plant_.width = most.x, plant_.depth = most.y, plant_.height = most.z;
    if (is_sound_ && plant_.placed.empty()) report_empty();
    plant_.is_sound = is_sound_ && fits();
    plant_.inlet_names.insert(content.inlets.begin(), content.inlets.end());
    plant_.outlet_names.insert(content.outlets.begin(), content.outlets.end());
  }

 private:
  struct Extent {
    model::Place least, most;  // most is one past the last
  };

  PlantContent contents(WorksDeclaration const& works, std::string const& path, Scopes::Id scope) {
    PlantContent content;
    ByName<source::Span> named;
    for (auto const& item : works.items) {
      auto const* place = std::get_if<PlaceDeclaration>(&item);
      if (place == nullptr) continue;
      auto const [first, is_new] = named.emplace(place->name.text, place->name.span);
      if (!is_new) {
        report_same_name(*place, first->second);
        continue;
      }
      if (is_full(*place)) return content;
      if (!add(*place, path, scope, content)) content.left_out.insert(place->name.text);
    }
    bool const is_connected =
        connect(reading_, works, path, workshop_.ticks_a_second(), plant_, content);
    is_sound_ = is_sound_ && is_connected;
    return content;
  }

  // False where it could not be placed, which has been told.
  bool add(PlaceDeclaration const& place, std::string const& path, Scopes::Id scope,
           PlantContent& content) {
    auto const& names = reading_.names;
    auto const junction = names.junctions.find(place.design.text);
    auto const works = names.works.find(place.design.text);
    if (!junction && !works) {
      reading_.unknown.add(NameKind::design, place.design);
      is_sound_ = false;
      return false;
    }
    auto const design = junction ? *junction : names.junctions.all.size() + *works;
    bool const is_given_well = check_settings(reading_, place, workshop_.settable(design));
    is_sound_ = is_sound_ && is_given_well;
    if (!is_given_well) return false;
    auto const name = path.empty() ? place.name.text : path + "." + place.name.text;
    auto const first = plant_.placed.size();
    auto const replaced = replaced_by(place);
    auto const used = junction ? add_junction(place, *junction, replaced, name, scope, content)
                               : add_works(place, *works, replaced, name, scope, content);
    check_use(place, used);
    put_down(place, first);
    for (auto signal : used) {
      if (replaced.count(signal) == 0) content.used.insert(signal);
    }
    for (auto const& [signal, expression] : replaced) {
      auto const used = Scopes::used_by(reading_.names, {expression});
      content.used.insert(used.begin(), used.end());
    }
    return true;
  }

  using Used = std::set<model::SignalId>;

  // This and the next one enter the ports of what is placed into the content of the works around
  // it, and give the file's signals that it depends on.
  Used add_junction(PlaceDeclaration const& place, std::size_t junction,
                    Scopes::Replaced const& replaced, std::string const& name, Scopes::Id scope,
                    PlantContent& content) {
    auto const shared = workshop_.drawn(junction, place);
    auto const& drawn = *shared;
    auto const& shape = drawn.drawing.shape;
    if (drawn.marks.empty()) is_sound_ = false;
    plant_.placed.push_back({name,
                             place.span,
                             drawn_id(shared),
                             scopes_.add(scope, name, replaced, drawn.plates),
                             {{}, {}, shape.width, shape.depth, shape.height()}});
    enter_ports(place.name.text, drawn.ports.inlets, content.inlets, plant_.inlets);
    enter_ports(place.name.text, drawn.ports.outlets, content.outlets, plant_.outlets);
    return drawn.followed;
  }

  void enter_ports(std::string const& place, std::vector<PortName const*> const& drawn,
                   ByName<std::size_t>& known, std::vector<PlantPort>& ports) {
    auto const placed = plant_.placed.size() - 1;
    for (std::size_t port = 0; port < drawn.size(); ++port) {
      auto const& own = drawn[port]->name;
      known.emplace(place + "." + own.text, ports.size());
      ports.push_back({placed, port, {plant_.placed[placed].name + "." + own.text, own.span}});
    }
  }

  Used add_works(PlaceDeclaration const& place, std::size_t works, Scopes::Replaced const& replaced,
                 std::string const& name, Scopes::Id scope, PlantContent& content) {
    if (std::find(nest_.begin(), nest_.end(), works) != nest_.end()) {
      report_nest(place, works);
      return {};
    }
    if (nest_.size() >= most_nested) {
      report_depth(place);
      return {};
    }
    if (workshop_.too_many.count(works) != 0) {
      is_sound_ = false;
      return {};
    }
    nest_.push_back(works);
    plant_.unfolded.push_back(workshop_.unfolded(works, settings_of(place)));
    auto const inner = scopes_.add(scope, name, replaced, {});
    auto const first = plant_.placed.size();
    auto const placed = contents(*plant_.unfolded.back(), name, inner);
    nest_.pop_back();
    auto const least = box_of(first).least;
    shift(first, {-least.x, -least.y, -least.z});
    for (auto const& [port, id] : placed.inlets)
      content.inlets.emplace(place.name.text + "." + port, id);
    for (auto const& [port, id] : placed.outlets)
      content.outlets.emplace(place.name.text + "." + port, id);
    return placed.used;
  }

  std::size_t drawn_id(std::shared_ptr<DrawnJunction const> const& drawn) {
    auto const [entry, is_new] = drawn_ids_.emplace(drawn.get(), plant_.drawn.size());
    if (is_new) plant_.drawn.push_back(drawn);
    return entry->second;
  }

  // ---- where things stand ----

  Extent box_of(std::size_t first) const {
    if (first == plant_.placed.size()) return {};
    Extent box{plant_.placed[first].standing.corner, plant_.placed[first].standing.corner};
    for (auto at = first; at < plant_.placed.size(); ++at) {
      auto const& standing = plant_.placed[at].standing;
      auto const& corner = standing.corner;
      box.least = {std::min(box.least.x, corner.x), std::min(box.least.y, corner.y),
                   std::min(box.least.z, corner.z)};
      box.most = {std::max(box.most.x, corner.x + standing.across()),
                  std::max(box.most.y, corner.y + standing.along()),
                  std::max(box.most.z, corner.z + standing.height)};
    }
    return box;
  }

  void shift(std::size_t first, model::Place by) {
    for (auto at = first; at < plant_.placed.size(); ++at) {
      auto& corner = plant_.placed[at].standing.corner;
      corner = {corner.x + by.x, corner.y + by.y, corner.z + by.z};
    }
  }

  static source::Posture posture_of(PlaceDeclaration const& place) {
    source::Posture posture;
    posture.is_mirrored = place.mirrored.has_value();
    if (place.turned)
      posture.quarters = place.turned->text == "left" ? 1 : place.turned->text == "about" ? 2 : 3;
    return posture;
  }

  // What stands at 0 0 0 by itself is turned as a whole and moved to its place.
  void put_down(PlaceDeclaration const& place, std::size_t first) {
    auto const most = box_of(first).most;
    source::Standing const whole{
        posture_of(place),
        {static_cast<int>(place.x.literal.value), static_cast<int>(place.y.literal.value),
         static_cast<int>(place.z.literal.value)},
        most.x,
        most.y,
        most.z};
    for (auto at = first; at < plant_.placed.size(); ++at) {
      auto& standing = plant_.placed[at].standing;
      auto const own = standing.corner;
      auto const a = whole.outside(own);
      auto const b =
          whole.outside({own.x + standing.across() - 1, own.y + standing.along() - 1, own.z});
      standing.corner = {std::min(a.x, b.x), std::min(a.y, b.y), a.z};
      standing.posture = combined(whole.posture, standing.posture);
    }
  }

  // ---- faults ----

  bool is_full(PlaceDeclaration const& place) {
    if (plant_.placed.size() < most_places) return false;
    if (is_sound_)
      reading_.sink.report({Listed("too-many"),
                            fmt::format("Works '{}' places more than {} junctions",
                                        plant_.declaration->name.text, most_places),
                            {place.span, fmt::format("number {} stands here", most_places + 1), {}},
                            {},
                            "Build it as several works."});
    workshop_.too_many.insert(nest_.front());
    is_sound_ = false;
    return true;
  }

  bool fits() {
    auto const cells = static_cast<long>(plant_.width) * plant_.depth;
    bool const is_small = plant_.width < 100'000 && plant_.depth < 100'000 &&
                          plant_.height < 10'000 &&
                          cells <= most_plant_cells / std::max(plant_.height, 1);
    if (is_small) return true;
    auto const& name = plant_.declaration->name;
    reading_.sink.report(
        {Listed("too-large"),
         fmt::format("Works '{}' is spread over {} x {} x {} cells", name.text, plant_.width,
                     plant_.depth, plant_.height),
         {name.span,
          fmt::format("a works has at most {} cells from its first to its "
                      "last place",
                      most_plant_cells),
          {}},
         {},
         "Place the junctions nearer to each other and to 0 0 0; joins bridge any way."});
    return false;
  }

  void report_empty() {
    is_sound_ = false;
    if (!reading_.is_whole) return;
    auto const& name = plant_.declaration->name;
    reading_.sink.report({Listed("empty-works"),
                          fmt::format("Works '{}' places nothing", name.text),
                          {name.span, "nothing stands in this works", {}},
                          {},
                          "Place a junction in it: 'place DESIGN as NAME at 0 0 0'."});
  }

  // In a loop the first place of the name is the same words.
  void report_same_name(PlaceDeclaration const& place, source::Span first) {
    is_sound_ = false;
    if (first == place.name.span) {
      reading_.sink.report(
          {Listed("declared-twice"),
           fmt::format("The place '{}' is declared again by each turn of 'for'", place.name.text),
           {place.name.span, "this name is the same each time", {}},
           {},
           fmt::format("Write the number into it, such as '{}[n]'.", place.name.text)});
      return;
    }
    reading_.sink.report(
        {Listed("declared-twice"),
         fmt::format("The place '{}' is declared twice", place.name.text),
         {place.name.span, fmt::format("'{}' is placed here again", place.name.text), {}},
         {{first, fmt::format("'{}' is first placed here", place.name.text), {}}},
         "Give one of them another name, or remove it."});
  }

  void report_nest(PlaceDeclaration const& place, std::size_t works) {
    is_sound_ = false;
    auto const first = std::find(nest_.begin(), nest_.end(), works);
    if (!workshop_.nests.emplace(first, nest_.end()).second) return;
    std::string chain;
    for (auto const id : std::vector(first, nest_.end()))
      chain += reading_.names.works.all[id]->name.text + " -> ";
    auto const& declaration = *reading_.names.works.all[works];
    reading_.sink.report(
        {Listed("works-in-itself"),
         fmt::format("Works contain each other without end: {}{}", chain, declaration.name.text),
         {place.span, fmt::format("'{}' is placed within itself here", declaration.name.text), {}},
         {{declaration.name.span, fmt::format("'{}' is declared here", declaration.name.text), {}}},
         "Take this place out."});
  }

  // Told once: every works around this one comes here again.
  void report_depth(PlaceDeclaration const& place) {
    bool const is_told = !workshop_.too_many.insert(nest_.front()).second;
    is_sound_ = false;
    if (is_told) return;
    reading_.sink.report(
        {Listed("nested-too-deep"),
         fmt::format("Works are placed in works more than {} levels deep", most_nested),
         {place.span, "this level is one too many", {}},
         {},
         "Place some of them side by side."});
  }

  // The place gives a signal that nothing in it depends on: mostly a slip.
  void check_use(PlaceDeclaration const& place, Used const& used) {
    for (auto const& setting : place.signals) {
      if (used.empty() || used.count(*reading_.names.signals.find(setting.name.text)) != 0)
        continue;
      std::string list;
      for (auto signal : used)
        list += (list.empty() ? "" : ", ") + reading_.names.signals.all[signal]->name.text;
      reading_.sink.report(
          {Listed("unused-setting"),
           fmt::format("Nothing in '{}' depends on '{}'", place.design.text, setting.name.text),
           {setting.span, fmt::format("'{}' changes nothing here", setting.name.text), {}},
           {},
           fmt::format("It depends on: {}.", list)});
      is_sound_ = false;
    }
  }

  Scopes::Replaced replaced_by(PlaceDeclaration const& place) const {
    Scopes::Replaced replaced;
    for (auto const& setting : place.signals)
      replaced.emplace(*reading_.names.signals.find(setting.name.text), &setting.value);
    return replaced;
  }

  Workshop& workshop_;
  Reading const& reading_;
  Scopes& scopes_;
  Plant& plant_;
  std::vector<std::size_t> nest_;
  std::map<DrawnJunction const*, std::size_t> drawn_ids_;
  bool is_sound_ = true;
};

}  // namespace

Plant lay_out(Workshop& workshop, std::size_t works, Scopes& scopes) {
  Plant plant;
  Placing(workshop, scopes, plant).run(works);
  return plant;
}

}  // namespace leat::check
