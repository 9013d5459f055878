#include "said.hpp"

#include "sentences_of_runs.hpp"

#include "heatmatch/base/shown_word.hpp"

namespace heatmatch {

using margins_sentences::of_runs::say;

void add(Margin& margin, Sentence more) {
    margin.said = sentence_of(Sentences{std::move(margin.said), std::move(more)});
}

Sentence metal_limit(const Wire& wire) {
    const auto metal =
        wire.plating == Plating::bare
            ? say<"run.bare_metal">(with<"conductor">(shown_choice(wire.conductor)))
            : say<"run.plated_metal">(with<"plating">(shown_choice(wire.plating)),
                                      with<"conductor">(shown_choice(wire.conductor)));
    return say<"run.plating">(with<"metal">(metal));
}

}  // namespace heatmatch
