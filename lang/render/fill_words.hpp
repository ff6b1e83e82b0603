#pragma once
#include <functional>
#include <string>

#include "lang/render/subject.hpp"

namespace leat::render {

// What cells of a fill are made of: "rock", "rock when divert else open".
std::string fill_words(Subject const&, model::FillId);

// What a mark stands for: "inlet millhouse, open". Of its inlets and outlets those with a cell that
// is meant; all of them, where nothing says which are.
using IsMeant = std::function<bool(model::Cell)>;
std::string mark_words(Subject const&, model::FillId, IsMeant const& = {});

}  // namespace leat::render
