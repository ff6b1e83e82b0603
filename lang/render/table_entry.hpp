#pragma once
#include "engine/tables/routes.hpp"
#include "lang/render/table_sheet.hpp"

namespace leat::render {

// One destination in words: its rows as cubes that exclude each other, its condition.
DestinationEntry entry_of(Subject const&, tables::Destination const&,
                          logic::RowSet const& reachable, std::vector<std::string> const& inputs);

}  // namespace leat::render
