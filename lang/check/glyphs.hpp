#pragma once
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string_view>
#include <unordered_map>

#include "lang/check/names.hpp"
#include "lang/source/code_point.hpp"

namespace leat::check {

// The length in bytes of the glyph at `at`: one cell of a row is one code point.
inline std::size_t glyph_length(std::string_view text, std::size_t at) {
  if (static_cast<unsigned char>(text[at]) < 0x80) return 1;
  return std::max<std::size_t>(source::code_point_at(text, at).length, 1);
}

// From a file's glyphs to its marks in constant time: a table for the single bytes, a hash for the
// longer ones.
class GlyphTable {
 public:
  static constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();

  GlyphTable(Names const& names, std::size_t file) {
    single_.fill(none);
    for (auto const mark : names.files[file].marks) {
      std::string_view const glyph = names.marks[mark]->glyph.text;
      if (glyph.size() == 1)
        single_[static_cast<unsigned char>(glyph[0])] = mark;
      else
        longer_.emplace(glyph, mark);
    }
  }
  std::uint32_t mark_of(std::string_view glyph) const {
    if (glyph.size() == 1) return single_[static_cast<unsigned char>(glyph[0])];
    auto const found = longer_.find(glyph);
    return found == longer_.end() ? none : found->second;
  }

 private:
  std::array<std::uint32_t, 256> single_;
  std::unordered_map<std::string_view, std::uint32_t> longer_;
};

}  // namespace leat::check
