#include "tests/model/order_model.h"

#include <algorithm>

namespace model {

using namespace domain;
using support::Whereabouts;

namespace {

/// What goes to the practice is recorded before it leaves: then it has begun, too.
void undo(ModelStage& stage) {
    if (stage.progress == Progress::ToDo && stage.hands.empty()) return;
    stage = {.stage = stage.stage, .attempt = stage.attempt + 1};
}

/// Hands on the device: not whoever only received, reviewed, inspected or handed it over.
bool makes(Stage stage) {
    return !support::isAtPractice(stage) && stage != Stage::Receipt &&
           stage != Stage::FaultReview && stage != Stage::Inspection && stage != Stage::Delivery;
}

}  // namespace

void Model::settle() {
    facts.flagged = questions > 0;
    facts.caution = std::ranges::any_of(
        cautions, [&](const std::string& rule) { return !taken.contains(rule); });
    if (stages.empty()) return;
    const auto open = std::ranges::find_if(
        stages, [](const ModelStage& each) { return each.progress != Progress::Done; });
    if (open == stages.end()) return;
    at = static_cast<std::size_t>(open - stages.begin());
    facts.due = due().stage;
    facts.complete = due().complete;
    if (due().progress == Progress::ToDo) facts.where = Whereabouts::ToDo;
}

void Model::undoFrom(Stage stage) {
    auto from = std::ranges::find(stages, stage, &ModelStage::stage);
    if (from == stages.end()) from = stages.begin() + 1;
    std::for_each(from, stages.end(), undo);
}

bool Model::isMaker(const std::string& person) const {
    return std::ranges::any_of(stages, [&](const ModelStage& each) {
        return makes(each.stage) && each.hands.contains(person);
    });
}

}  // namespace model
