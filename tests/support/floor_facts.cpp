#include "tests/support/floor_facts.h"

#include <algorithm>

namespace support {

using namespace domain;

bool isAtPractice(Stage stage) {
    return stage == Stage::FrameworkTryIn || stage == Stage::ToothTryIn ||
           stage == Stage::SaddleImpression;
}

std::vector<Stage> stagesWrittenOut(Route route) {
    using enum Stage;
    switch (route) {
        case Route::CastFramework:
            return {Receipt,    Survey,     BlockOut,  Duplication,    WaxUp,
                    Investing,  Casting,    Finishing, FrameworkTryIn, ToothSetUp,
                    ToothTryIn, Processing, Polishing, Inspection,     Delivery};
        case Route::MilledFramework:
            return {Receipt,    Survey,     DigitalDesign, Milling,   Finishing,  FrameworkTryIn,
                    ToothSetUp, ToothTryIn, Processing,    Polishing, Inspection, Delivery};
        case Route::PrintedFramework:
            return {Receipt,    Survey,     DigitalDesign, Printing,  Finishing,  FrameworkTryIn,
                    ToothSetUp, ToothTryIn, Processing,    Polishing, Inspection, Delivery};
        case Route::InterimResin:
            return {Receipt, ToothSetUp, ToothTryIn, Processing, Polishing, Inspection, Delivery};
        case Route::Repair:
            return {Receipt, Joining, Processing, Polishing, Inspection, Delivery};
        case Route::Addition:
            return {Receipt, ToothSetUp, Joining, Processing, Polishing, Inspection, Delivery};
        case Route::Reline:
            return {Receipt, Processing, Polishing, Inspection, Delivery};
        case Route::AlteredCast: {
            auto stages = stagesWrittenOut(Route::CastFramework);
            const auto after = std::ranges::find(stages, FrameworkTryIn) + 1;
            stages.insert(after, {SaddleImpression, Stage::AlteredCast});
            return stages;
        }
        case Route::Remake: {
            auto stages = stagesWrittenOut(Route::CastFramework);
            stages.insert(stages.begin() + 1, FaultReview);
            return stages;
        }
    }
    return {};
}

}  // namespace support
