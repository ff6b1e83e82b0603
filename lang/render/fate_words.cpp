#include "lang/render/fate_words.hpp"

#include <fmt/format.h>

#include "lang/render/words.hpp"

namespace leat::render {

std::string fate_words(Subject const& subject, works::Fate const& fate) {
  auto words = fate.outlets.empty()
                   ? "reaches nothing"
                   : "reaches " + listed(names_of(subject.map.outlets, fate.outlets), "or");
  words += fmt::format(" ({})", word_of(fate.verdict));
  if (fate.is_trapped) words += ", can be trapped";
  if (fate.spills) words += ", can leave the drawing";
  if (fate.is_unsure) words += ", hangs on an unsure move";
  if (fate.is_barred) words += ", may not get in";
  return words;
}

}  // namespace leat::render
