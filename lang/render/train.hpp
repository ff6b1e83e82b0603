#pragma once
#include <string>
#include <vector>

#include "engine/explore/train.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"

// A train of bodies and where each of them ended: `leat train`.
namespace leat::render {

struct TrainPart {
  Subject subject;
  explore::TrainOrder order;
  explore::TrainRun run;
};

std::string train_text(TrainPart const&, Look);

// leat-train: `leat train --as json`.
std::string train_document(std::vector<TrainPart> const&);

}  // namespace leat::render
