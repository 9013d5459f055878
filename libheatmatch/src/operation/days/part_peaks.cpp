#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

namespace {

using List = std::vector<double>;

struct Highest {
    double value = 0.0;
    double hours = 0.0;
};

Highest highest_of(const List& values, const List& hours) {
    const auto at = std::max_element(values.begin(), values.end());
    return {*at, hours[static_cast<std::size_t>(at - values.begin())]};
}

/// Series for a margin of that name; null where a simulation has none.
const List* list_for(std::string_view name, const DayRun& run, const List& surface, bool liquid) {
    const DaySeries& series = run.series;
    if (name == "sheath temperature") return &series.sheath_c;
    if (name == "store ceiling") return liquid ? &series.bed_mean_c : &series.sheath_c;
    if (name == "coil temperature") return &series.coil_c;
    if (name == "wall and lid" || name == "touch temperature") return &surface;
    if (name == "terminal temperature" || name == "end seal" || name == "hot tail insulation" ||
        name == "hot tail plating" || name == "hot tail joint") {
        return &series.terminal_c;
    }
    return nullptr;
}

/// The same of the unlike elements with that subject, of several the hottest; empty for any other
/// margin.
List list_of_elements(const Margin& margin, const DayRun& run) {
    List hottest;
    for (const ElementSeries& one : run.series.elements) {
        if (one.title != margin.subject) continue;
        const List* list = nullptr;
        if (margin.name == "sheath temperature") list = &one.sheath_c;
        if (margin.name == "coil temperature") list = &one.coil_c;
        if (margin.name == "terminal temperature" || margin.name == "end seal") {
            list = &one.terminal_c;
        }
        if (list == nullptr) continue;
        if (hottest.empty()) hottest = *list;
        for (std::size_t i = 0; i < list->size(); ++i) {
            hottest[i] = std::max(hottest[i], (*list)[i]);
        }
    }
    return hottest;
}

/// The element of a margin: of unlike ones its view, else the whole circuit.
struct PeakElement {
    std::optional<Sheath> sheath{};
    bool damp = false;
};

std::vector<ElementSeen> seen_of(const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    if (!circuit.bank.unlike) {
        return {{.circuit = circuit, .bright = candidate.bright}};
    }
    return elements_seen(circuit, candidate.bright);
}

PeakElement element_of(const std::vector<ElementSeen>& seen, const Margin& margin) {
    PeakElement found;
    for (const ElementSeen& one : seen) {
        if (!one.title.empty() && one.title != margin.subject) continue;
        found.sheath = one.circuit.bank.sheath;
        const auto& heat = one.circuit.heat;
        found.damp = found.damp || (heat && heat->damp_at(one.bright.element_power_w));
    }
    return found;
}

/// The margin's own sentence describes cold, bright weather and the fill at its worst end.
Sentence sheath_text(const std::optional<Sheath>& sheath) {
    if (!sheath) return make_sentence<days_sentences::table, "days.sheath_not_known", "value">();
    return make_sentence<days_sentences::table, "days.sheath_reaches", "value", "limit">(
        with<"sheath">(sheath->label));
}

}  // namespace

std::vector<PartPeak> part_peaks(const Candidate& candidate, const DayRun& run) {
    std::vector<PartPeak> peaks;
    const DaySeries& series = run.series;
    if (series.hours.empty()) return peaks;
    const bool liquid = candidate.circuit.heat && candidate.circuit.heat->liquid;
    List surface(series.wall_c.size());
    std::transform(series.wall_c.begin(), series.wall_c.end(), series.lid_c.begin(),
                   surface.begin(), [](double wall, double lid) { return std::max(wall, lid); });
    const std::vector<ElementSeen> seen = seen_of(candidate);
    for (const Margin& margin : candidate.margins()) {
        const List own = list_of_elements(margin, run);
        const List* list = own.empty() ? list_for(margin.name, run, surface, liquid) : &own;
        if (list == nullptr || list->empty()) continue;
        const Highest highest = highest_of(*list, series.hours);
        PartPeak peak{.margin = margin, .hours = highest.hours};
        peak.margin.value = highest.value;
        peak.margin.value_low.reset();
        peak.margin.value_high.reset();
        if (margin.name == "sheath temperature") {
            const PeakElement element = element_of(seen, margin);
            peak.margin.said = sheath_text(element.sheath);
            // The simulation assumes a dry fill: for a bed that stays damp its result is a warning.
            if (element.damp) peak.margin.consequence = Severity::warning;
        }
        if (peak.margin.limit) {
            constexpr double below_k = 50.0;  // for a limit below room temperature, in deep cold
            const double limit_c = *peak.margin.limit;
            grade(peak.margin, limit_c > room_c ? room_c : limit_c - below_k);
            const bool near_wood = margin.name == "wall and lid" && highest.value > wood_near_c;
            if (near_wood && peak.margin.severity == Severity::none) {
                peak.margin.severity = Severity::caution;
            }
        } else if (margin.severity != Severity::none) {
            peak.margin.severity = Severity::not_assessed;
        }
        peaks.push_back(std::move(peak));
    }
    return peaks;
}

}  // namespace heatmatch
