#pragma once
#include "engine/works/judge_works.hpp"
#include "lang/render/table_sheet.hpp"

namespace leat::render {

// More signals than this are not written in columns: the table then has conditions alone.
inline constexpr std::size_t most_columns = 12;

// The condensed table of a works: from every entrance, where bodies arrive and when.
TableSheet works_sheet(Subject const&, works::WorksJudgement const&, TableRequest const&);

}  // namespace leat::render
