#pragma once
#include <string>
#include <vector>

#include "lang/render/picture/palette.hpp"
#include "lang/render/picture/scene.hpp"

// A whole picture: the cuts one beside and below the other, what the signs mean, and the findings.
namespace leat::render {

struct Sheet {
  PictureScene const& scene;
  std::vector<Cut> cuts;  // in the order in which they are drawn
  Theme theme = Theme::automatic;
  std::string remark{};  // said below the setting, where it is not empty
};

// An SVG document (SVG 1.1, with links as in SVG 2). The same sheet gives the same bytes.
std::string picture_svg(Sheet const&);

// The cells of the cuts, all together.
std::size_t cells_of(Sheet const&);

// What the signs of a scene mean, only those that occur in the cuts: the ids of signs, each over
// the other, and the words.
struct SignLine {
  std::vector<std::string> symbols;
  std::string words;
};
std::vector<SignLine> sign_lines(Sheet const&);

}  // namespace leat::render
