#include <fmt/format.h>

#include <algorithm>

#include "lang/check/glyphs.hpp"
#include "lang/check/placing.hpp"

namespace leat::check {

namespace {

template <class Declaration>
std::vector<Declaration const*> as_written(syntax::Document const& folded,
                                           Roll<Declaration> const& roll) {
  std::vector<Declaration const*> found(roll.all.size(), nullptr);
  for (auto const* declaration : all_of<Declaration>(folded)) {
    auto const id = roll.find(declaration->name.text);
    if (id && found[*id] == nullptr) found[*id] = declaration;
  }
  return found;
}

std::vector<std::vector<std::uint32_t>> ports_of_marks(std::vector<PortName const*> const& ports,
                                                       std::size_t marks) {
  std::vector<std::vector<std::uint32_t>> found(marks);
  for (std::uint32_t port = 0; port < ports.size(); ++port) {
    for (auto mark : ports[port]->marks) found[mark].push_back(port);
  }
  return found;
}

}  // namespace

Workshop::Workshop(Reading const& reading, syntax::Document const& folded, Unfolder& unfolder,
                   Numbers const& file_numbers, std::vector<Drawing> const& drawings,
                   std::vector<Ports> const& ports, int ticks_a_second)
    : reading_(reading),
      unfolder_(unfolder),
      numbers_(file_numbers),
      drawings_(drawings),
      ports_(ports),
      ticks_a_second_(ticks_a_second),
      junctions_(as_written(folded, reading.names.junctions)),
      works_(as_written(folded, reading.names.works)) {
  for (auto const* junction : junctions_) settable_.push_back(settable_numbers(*junction));
  for (auto const* works : works_) settable_.push_back(settable_numbers(*works));
}

std::shared_ptr<DrawnJunction const> Workshop::drawn(std::size_t junction,
                                                     syntax::PlaceDeclaration const& place) {
  auto const settings = settings_of(place);
  auto& drawn = drawn_[{junction, settings}];
  if (drawn) return drawn;
  drawn = std::make_shared<DrawnJunction>();
  drawn->junction = junction;
  drawn->ports = ports_[junction];
  if (settings.empty()) {
    drawn->drawing = drawings_[junction];
  } else {
    draw_for(place, settings, *drawn);
  }
  read_signals(*drawn);
  if (drawn->drawing.shape.is_sound && drawn->drawing.strays.empty()) read_cells(*drawn);
  return drawn;
}

// What is wrong only with the numbers of the place has one cause: the first fault is told, and the
// place with it.
void Workshop::draw_for(syntax::PlaceDeclaration const& place, Settings const& settings,
                        DrawnJunction& drawn) {
  auto const& own = drawings_[drawn.junction];
  bool const is_sound = reading_.is_whole && own.shape.is_sound && own.strays.empty();
  diagnostics::Sink faults;
  Unfolder unfolder(faults);
  Reading const reading{reading_.document, reading_.source, reading_.names,
                        reading_.unknown,  faults,          reading_.is_whole};
  drawn.unfolded =
      (is_sound ? unfolder : unfolder_).unfold(*junctions_[drawn.junction], numbers_, settings);
  drawn.drawing = read_drawing(is_sound ? reading : reading_, drawn.unfolded);
  if (faults.empty()) return;
  auto fault = faults.sorted().front();
  fault.others.push_back(
      {place.span,
       fmt::format("it is drawn so for '{}', with what 'where' gives", place.name.text),
       {}});
  fault.remedy = "Let 'where' give a number that the drawing can be drawn with.";
  reading_.sink.report(std::move(fault));
}

void Workshop::read_signals(DrawnJunction& drawn) const {
  auto const& names = reading_.names;
  std::vector<syntax::Expression const*> controls;
  for (std::size_t mark = 0; mark < drawn.drawing.marks.size(); ++mark) {
    if (drawn.drawing.marks[mark].count == 0) continue;
    auto const& declaration = *names.marks[mark];
    if (declaration.choice && declaration.choice->control)
      controls.push_back(&*declaration.choice->control);
    if (declaration.role != syntax::MarkRole::plate) continue;
    if (auto const plate = names.signals.find(declaration.role_name.text))
      drawn.plates.insert(*plate);
  }
  drawn.followed = Scopes::used_by(names, controls);
}

void Workshop::read_cells(DrawnJunction& drawn) const {
  auto const& shape = drawn.drawing.shape;
  GlyphTable const table(reading_.names, drawn.drawing.file);
  auto const marks = reading_.names.marks.size();
  auto const inlets = ports_of_marks(drawn.ports.inlets, marks);
  auto const outlets = ports_of_marks(drawn.ports.outlets, marks);
  drawn.inlets.resize(drawn.ports.inlets.size());
  drawn.outlets.resize(drawn.ports.outlets.size());
  for_each_row(shape, [&](int z, int y, syntax::Row const& row) {
    std::string_view const text = row.text;
    int x = 0;
    for (std::size_t at = 0; at < text.size(); ++x) {
      auto const length = glyph_length(text, at);
      auto const mark = table.mark_of(text.substr(at, length));
      drawn.marks.push_back(mark);
      for (auto port : inlets[mark]) drawn.inlets[port].push_back({x, y, z});
      for (auto port : outlets[mark]) drawn.outlets[port].push_back({x, y, z});
      at += length;
    }
  });
}

std::shared_ptr<syntax::WorksDeclaration const> Workshop::unfolded(std::size_t works,
                                                                   Settings const& settings) {
  auto& unfolded = unfolded_[{works, settings}];
  if (!unfolded && settings.empty())  // as the document has it, which outlives all of this
    unfolded = {std::shared_ptr<void>(), reading_.names.works.all[works]};
  if (!unfolded)
    unfolded = std::make_shared<syntax::WorksDeclaration>(
        unfolder_.unfold(*works_[works], numbers_, settings));
  return unfolded;
}

}  // namespace leat::check
