#include "recommend.hpp"

#include <algorithm>
#include <array>

namespace heatmatch {

namespace {

bool same_parts(const ScreenContext& context, const Pairing& a, const Pairing& b) {
    const Bank& one = context.banks[a.bank];
    const Bank& other = context.banks[b.bank];
    return a.group == b.group && a.panels == b.panels && one.element.id == other.element.id &&
           one.hookup.count() == other.hookup.count();
}

}  // namespace

std::vector<Pairing> Recommendation::all() const {
    std::vector<Pairing> pairings;
    if (first) pairings.push_back(*first);
    for (const auto& [kind, pairing] : alternatives) pairings.push_back(pairing);
    return pairings;
}

Recommendation recommend(const ScreenContext& context, const Shortlist& shortlist) {
    Recommendation found;
    if (shortlist.empty()) return found;
    found.first = *shortlist.recommended();
    for (std::size_t i = 0; i < alternative_words.size(); ++i) {
        const auto kind = static_cast<AlternativeKind>(i);
        const Pairing* const best = shortlist.alternative(kind);
        if (best == nullptr) continue;
        const std::vector<Pairing> before = found.all();
        const bool named = std::any_of(before.begin(), before.end(), [&](const Pairing& other) {
            return same_parts(context, *best, other);
        });
        if (!named) found.alternatives.emplace_back(kind, *best);
    }
    return found;
}

}  // namespace heatmatch
