#include "heatmatch/match/margins/bonding_margin.hpp"

#include "sentences_of_vessels.hpp"

#include "heatmatch/match/margins/touch_limit.hpp"

namespace heatmatch {

using margins_sentences::of_vessels::say;

namespace {

Sentences metal_of(const std::vector<std::string>& fields) {
    Sentences metal;
    for (const std::string& field : fields) {
        if (field == "store.vessel_bonded") metal.push_back(say<"bonding.vessel">());
        if (field == "store.sheath_bonded") metal.push_back(say<"bonding.sheaths">());
        if (field == "site.frames_bonded") metal.push_back(say<"bonding.frames">());
    }
    return metal;
}

}  // namespace

BondingGaps bonding_gaps(const Site& site, const Store* store) {
    BondingGaps gaps;
    const auto look = [&gaps](const std::optional<bool>& bonded, const char* field) {
        if (!bonded) {
            gaps.not_told.emplace_back(field);
        } else if (!*bonded) {
            gaps.open.emplace_back(field);
        }
    };
    look(site.frames_bonded, "site.frames_bonded");
    if (store != nullptr) {
        look(store->vessel_bonded, "store.vessel_bonded");
        look(store->sheath_bonded, "store.sheath_bonded");
    }
    return gaps;
}

Margin bonding_margin(const Circuit& circuit, const Site& site) {
    Margin margin{.name = "bonding",
                  .subject = "metal parts",
                  .severity = Severity::none,
                  .value = circuit.cold_voltage_v(),
                  .limit = touch_limit_v(site),
                  .unit = unit::volt,
                  .source = "nec-690-43"};
    if (*margin.value <= *margin.limit) {
        margin.said = say<"bonding.not_needed">();
        return margin;
    }
    const bool stored = circuit.heat && circuit.heat->store;
    const BondingGaps gaps = bonding_gaps(site, stored ? &circuit.heat->store->store : nullptr);
    if (!gaps.open.empty()) {
        margin.severity = Severity::danger;
        margin.headroom = -1.0;
        margin.said = say<"bonding.open">(with<"metal">(metal_of(gaps.open)));
    } else if (!gaps.not_told.empty()) {
        margin.severity = Severity::warning;
        margin.missing = gaps.not_told;
        margin.said = say<"bonding.not_told">(with<"metal">(metal_of(gaps.not_told)));
    } else {
        margin.said = say<"bonding.done">();
    }
    return margin;
}

}  // namespace heatmatch
