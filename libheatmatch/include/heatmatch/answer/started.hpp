#pragma once

#include <span>
#include <string>

#include "heatmatch/answer/questions.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// An answer as it was typed. What is behind # is kept as a note.
struct TypedAnswer {
    QuestionKind question = QuestionKind::name;
    std::string text{};
};

/// How an answer was read, or, where it was not accepted, why not.
struct Understanding {
    bool accepted = true;
    Sentence said{};
};

/// An installation made from answers, and what was assumed where there was none.
struct Started {
    Installation installation{};
    Sentences assumed{};
};

/// Reads one answer after those given before, and checks it by the field tables. A bare number is
/// in the unit of that unit set.
[[nodiscard]] Understanding understand(const Parts& parts, std::span<const TypedAnswer> earlier,
                                       const TypedAnswer& answer,
                                       UnitSystem system = UnitSystem::si);

/// The installation of those answers; open questions are assumed, and the assumptions and notes
/// kept in its notes. It can be ranked as it is. Throws InvalidInput for an answer that
/// understand() does not accept.
[[nodiscard]] Started start_installation(const Parts& parts, std::span<const TypedAnswer> answers,
                                         UnitSystem system = UnitSystem::si);

}  // namespace heatmatch
