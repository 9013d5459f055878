#include "heatmatch/match/candidate/candidate.hpp"

#include <algorithm>
#include <iterator>

#include "heatmatch/match/margins/array_margins.hpp"
#include "heatmatch/match/margins/bank_margins.hpp"
#include "heatmatch/match/margins/device_margins.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/match/margins/run_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"
#include "heatmatch/match/margins/unlike_margins.hpp"

namespace heatmatch {

namespace {

double mean_of(const std::vector<Delivered>& delivered, double Delivered::*power) {
    if (delivered.empty()) return 0.0;
    double sum = 0.0;
    for (const Delivered& at : delivered) sum += at.*power;
    return sum / static_cast<double>(delivered.size());
}

void append(std::vector<Margin>& margins, std::vector<Margin> more) {
    margins.insert(margins.end(), std::make_move_iterator(more.begin()),
                   std::make_move_iterator(more.end()));
}

std::vector<Margin> heat_margins_of(const Circuit& circuit, const Site& site,
                                    const Extremes& bright) {
    const std::optional<HeatPoint> heat = heat_of(circuit, bright);
    const OpeningSite at = opening_site(site);
    std::vector<Margin> margins = sheath_margins(circuit, heat, at);
    append(margins, limit_margins(circuit, heat, at));
    margins.push_back(survivor_sheath_margin(circuit, bright));
    append(margins, tail_margins(circuit, site, bright, heat));
    append(margins, store_margins(circuit, heat, at));
    return margins;
}

std::vector<Margin> margins_of(const Circuit& circuit, const Site& site, const Extremes& bright) {
    std::optional<UnlikeMargins> unlike;
    if (circuit.bank.unlike) unlike = unlike_margins(circuit, site, bright);
    std::vector<Margin> margins = unlike ? unlike->bank : bank_margins(circuit, bright);
    append(margins, array_margins(circuit, site));
    append(margins, run_margins(circuit, site));
    append(margins, device_margins(circuit, site));
    append(margins, unlike ? unlike->heat : heat_margins_of(circuit, site, bright));
    return margins;
}

/// The largest power of the elements in another case, with rear light added.
Extremes bright_as(const Candidate& candidate, const Circuit& as, const Site& at) {
    const bool same = as.short_circuit_current_a() == candidate.circuit.short_circuit_current_a();
    return same ? candidate.bright : bright_extremes(as, at);
}

int rank_of(Severity severity) {
    return severity == Severity::not_assessed ? -1 : static_cast<int>(severity);
}

bool may_hide_danger(const Margin& margin) {
    return margin.worst_severity == Severity::danger && !margin.missing.empty();
}

/// The sheath temperature in a described store is unknown because a fact is missing.
bool sheath_unknown(const Margin& margin) {
    return margin.name == "sheath temperature" && margin.severity == Severity::not_assessed &&
           may_hide_danger(margin);
}

/// The missing fact of the first such margin; nothing without one.
std::optional<UnstatedFact> missing_fact(const std::vector<Margin>& margins,
                                         bool (*such)(const Margin&)) {
    const auto found = std::find_if(margins.begin(), margins.end(), such);
    if (found == margins.end()) return std::nullopt;
    return UnstatedFact{found->subject, found->missing.front()};
}

}  // namespace

double Candidate::mean_power_w() const {
    return mean_of(delivered, &Delivered::power_w);
}

double Candidate::mean_power_low_w() const {
    return mean_of(delivered, &Delivered::power_low_w);
}

double Candidate::mean_power_high_w() const {
    return mean_of(delivered, &Delivered::power_high_w);
}

const std::vector<Margin>& Candidate::margins() const& {
    return made.read([this] {
        return judged(circuit, site, [this](const Circuit& as, const Site& at) {
            return margins_of(as, at, bright_as(*this, as, at));
        });
    });
}

std::vector<Margin> Candidate::margins() const&& {
    const Candidate& self = *this;
    return self.margins();
}

double Candidate::objective() const {
    return season ? season->kwh : mean_power_w();
}

const Margin* Candidate::worst() const {
    const Margin* worst = nullptr;
    for (const Margin& margin : margins()) {
        if (margin.severity == Severity::not_assessed) continue;
        if (worst == nullptr || rank_of(margin.severity) > rank_of(worst->severity) ||
            (margin.severity == worst->severity &&
             margin.headroom.value_or(1.0) < worst->headroom.value_or(1.0))) {
            worst = &margin;
        }
    }
    return worst;
}

Severity Candidate::severity() const {
    const Margin* found = worst();
    return found == nullptr ? Severity::not_assessed : found->severity;
}

Severity Candidate::worst_severity() const {
    int worst = 0;
    for (const Margin& margin : margins()) {
        worst = std::max(worst, static_cast<int>(margin.worst_severity));
    }
    return static_cast<Severity>(worst);
}

std::optional<UnstatedFact> Candidate::deciding_fact() const {
    if (worst_severity() != Severity::danger || severity() == Severity::danger) return std::nullopt;
    // A check that was not made has no careful case in which a danger would be found. Without the
    // sheath temperature the most important limit is missing, so its fact comes first.
    if (circuit.heat) {
        if (auto fact = missing_fact(margins(), sheath_unknown)) return fact;
    }
    const auto all = careful_case(circuit, site).facts;
    for (const UnstatedFact& fact : all) {
        const CarefulCase alone = careful_case(circuit, site, &fact);
        const std::vector<Margin> found =
            margins_of(alone.circuit, alone.site, bright_as(*this, alone.circuit, alone.site));
        const bool decides = std::any_of(found.begin(), found.end(), [](const Margin& margin) {
            return margin.severity == Severity::danger;
        });
        if (decides) return fact;
    }
    if (auto fact = missing_fact(margins(), may_hide_danger)) return fact;
    return all.empty() ? std::nullopt : std::optional(all.front());
}

double Candidate::smallest_headroom() const {
    return screen_margins(margins()).headroom;
}

const Margin* Candidate::nearest_limit() const {
    const Margin* nearest = nullptr;
    for (const Margin& margin : margins()) {
        if (margin.consequence != Severity::danger || !margin.headroom) continue;
        if (nearest == nullptr || *margin.headroom < *nearest->headroom) nearest = &margin;
    }
    return nearest;
}

bool Candidate::heat_unknown() const {
    return circuit.heat && !circuit.heat->missing.empty();
}

int Candidate::not_assessed() const {
    return static_cast<int>(std::count_if(
        margins().begin(), margins().end(),
        [](const Margin& margin) { return margin.severity == Severity::not_assessed; }));
}

std::vector<Assumption> Candidate::assumed() const {
    std::vector<Assumption> all;
    const auto add = [&all](const std::vector<Assumption>& more) {
        for (const Assumption& assumption : more) {
            if (std::find(all.begin(), all.end(), assumption) == all.end())
                all.push_back(assumption);
        }
    };
    for (const PanelInService* panel : circuit.kinds_of_panels()) add(panel->assumed);
    add(circuit.bank.assumed());
    if (season) add(season->assumed);
    for (const Margin& margin : margins()) add(margin.assumed);
    return all;
}

Candidate evaluate(const Circuit& circuit, const Installation& installation,
                   const std::vector<Condition>& conditions, const Parts& catalog) {
    Candidate candidate{.circuit = circuit, .site = installation.site};
    for (const Condition& condition : conditions) {
        candidate.delivered.push_back(
            deliver(circuit, condition.irradiance_w_m2, condition.cell_temperature_c));
    }
    candidate.bright = bright_extremes(circuit, installation.site);
    candidate.bill = bill_of(circuit, installation, catalog);
    candidate.price_to_buy = candidate.bill.typical();
    candidate.currency = candidate.bill.currency;
    if (candidate.currency.empty()) {
        candidate.currency = circuit.bank.kinds().front().element.price.currency;
    }
    return candidate;
}

}  // namespace heatmatch
