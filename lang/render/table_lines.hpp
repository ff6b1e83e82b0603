#pragma once
#include "lang/render/table_sheet.hpp"

// The lines that the text and Markdown tables both set.
namespace leat::render {

// Lanes of one inlet whose bodies go the same ways are told once.
struct LaneGroup {
  std::string inlet;
  std::vector<std::string> bodies;
  Lane const* lane = nullptr;
};
std::vector<LaneGroup> grouped(TableSheet const&);

// Heading and rows of a group's table: signals, where the body goes, verdict, and for a full
// sheet what else is to be said.
std::vector<std::vector<std::string>> table_lines(TableSheet const&, Lane const&);

// "and 3 of 4 combinations".
std::string share_words(Count count, Count of);

}  // namespace leat::render
