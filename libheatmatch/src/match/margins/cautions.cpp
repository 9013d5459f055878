#include "heatmatch/match/margins/cautions.hpp"

#include "sentences.hpp"

namespace heatmatch {

using margins_sentences::say;

Sentences cautions(bool in_liquid) {
    constexpr double dry_v = 60.0;
    constexpr double wet_v = 30.0;
    Sentences all{
        say<"caution.volts">(with<"dry">(dry_v, unit::volt), with<"wet">(wet_v, unit::volt)),
        say<"caution.switches">(),
        say<"caution.cold">(),
        say<"caution.bonding">(),
        say<"caution.combustibles">(),
        say<"caution.limit">(),
    };
    if (in_liquid) {
        all.push_back(say<"caution.vessel">());
        all.push_back(say<"caution.covered">());
        all.push_back(say<"caution.scalding">());
        all.push_back(say<"caution.first_fire">());
    } else {
        all.push_back(say<"caution.steam">());
        all.push_back(say<"caution.dust">());
        all.push_back(say<"caution.first_fire">());
        all.push_back(say<"caution.immersion">());
    }
    all.push_back(say<"caution.codes">());
    return all;
}

}  // namespace heatmatch
