#include "heatmatch/match/margins/cautions.hpp"

#include "sentences.hpp"

namespace heatmatch {

using margins_sentences::say;

Sentences cautions() {
    constexpr double dry_v = 60.0;
    constexpr double wet_v = 30.0;
    return {
        say<"caution.volts">(with<"dry">(dry_v, unit::volt), with<"wet">(wet_v, unit::volt)),
        say<"caution.switches">(),
        say<"caution.cold">(),
        say<"caution.bonding">(),
        say<"caution.combustibles">(),
        say<"caution.limit">(),
        say<"caution.steam">(),
        say<"caution.dust">(),
        say<"caution.first_fire">(),
        say<"caution.immersion">(),
        say<"caution.codes">(),
    };
}

}  // namespace heatmatch
