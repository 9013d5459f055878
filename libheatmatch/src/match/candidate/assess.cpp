#include "heatmatch/match/candidate/assess.hpp"

#include "begun_circuit.hpp"
#include "sentences.hpp"
#include "used_twice.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/space_need.hpp"
#include "heatmatch/match/candidate/two_sided_season.hpp"
#include "heatmatch/match/candidate/unlike_season.hpp"
#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/solar/group_weather.hpp"
#include "heatmatch/solar/own_weather.hpp"

namespace heatmatch {

using candidate_sentences::say;

namespace {

Bank existing_bank(const Parts& parts, const ExistingCircuit& existing, double coil_c) {
    if (!existing.elements.empty()) return lay_bank(parts, existing.elements, coil_c);
    const Hookup bank = parse_hookup(existing.bank, "circuit", "bank");
    return make_bank(parts, find_element(parts, existing.element), bank, bank.count(), coil_c);
}

/// The panels of a circuit: of one group, or of several.
Circuit array_alone(const Parts& parts, const Installation& installation) {
    const ExistingCircuit& existing = *installation.circuit;
    if (!existing.array.empty()) {
        const std::string part = "circuit " + quote(existing.name);
        auto array = std::make_shared<UnlikeArray>(
            unlike_array(Layout::parse(existing.array, part, "array"), installation, parts, part));
        Hookup panels{.series = 1, .parallel = static_cast<int>(array->strings.size())};
        for (const auto& string : array->strings) {
            panels.series = std::max(panels.series, static_cast<int>(string.size()));
        }
        return {.panels = panels, .unlike = std::move(array), .name = existing.name};
    }
    const OwnedPanels& owned = find_group(installation, existing.group);
    Circuit circuit{.owned = owned,
                    .panel = panel_in_service(owned, find_panel(parts, owned.panel),
                                              installation.site.record_low_c),
                    .panels = parse_hookup(existing.panels, "circuit", "panels"),
                    .name = existing.name};
    if (circuit.panels.count() > owned.count) {
        throw InvalidInput(ErrorDetail{
            .part = "circuit",
            .field = "panels",
            .value = say<"assess.panels_used">(with<"hookup">(existing.panels),
                                               with<"count">(circuit.panels.count(), unit::none, 9))
                         .text(),
            .allowed = say<"assess.panels_owned">(with<"count">(owned.count, unit::none, 9),
                                                  with<"group">(owned.group))
                           .text(),
            .remedy = say<"assess.correct_hookup">()});
    }
    return circuit;
}

Circuit unwired(const Parts& parts, const Installation& installation, const RankOptions& options) {
    Circuit circuit = array_alone(parts, installation);
    circuit.bank = existing_bank(parts, *installation.circuit, options.coil_temperature_c);
    return circuit;
}

/// In how many circuits a device is: one that none names is a piece in each.
int circuits_through(const Device& device, const std::vector<ExistingCircuit>& circuits) {
    const auto naming =
        std::count_if(circuits.begin(), circuits.end(), [&](const ExistingCircuit& circuit) {
            return std::find(circuit.devices.begin(), circuit.devices.end(), device.part) !=
                   circuit.devices.end();
        });
    return std::max(1, static_cast<int>(naming));
}

/// The weather of its panels, and the irradiance at which its margins are judged.
void add_season(BegunCircuit& begun, const RankOptions& options) {
    const Weather& weather = *begun.weather;
    Site& site = begun.judged.site;
    const std::vector<int>& months = begun.judged.goals.months;
    if (begun.circuit.unlike) {
        begun.season = season_weather(weather, months, options.exact_weather);
        begun.season->brightest_w_m2 =
            array_sun(*begun.circuit.unlike, weather, site).brightest_w_m2;
    } else {
        const OwnedPanels& owned = begun.circuit.owned;
        const auto own = group_weather(weather, owned, site);
        const Weather& sun = own ? *own : weather;
        begun.season = season_weather(sun, months, options.exact_weather);
        begun.season->brightest_w_m2 =
            std::max(begun.season->brightest_w_m2, brightest_of_group(weather, owned, site));
        add_two_sided(*begun.season, sun, months, options.exact_weather, begun.circuit.panel);
    }
    const Sentence bright = bright_remark(*begun.season, site);
    if (!bright.empty()) begun.remarks.push_back(bright);
    site.bright_irradiance_w_m2 = judged_irradiance_w_m2(*begun.season, site);
}

BegunCircuit begin(const Parts& parts, Installation installation, const RankOptions& options) {
    BegunCircuit begun{.judged = std::move(installation)};
    begun.circuit = unwired(parts, begun.judged, options);
    begun.weather = options.weather
                        ? options.weather
                        : own_weather(begun.judged, begun.remarks,
                                      options.memory ? &options.memory->weather : nullptr);
    if (begun.weather) add_season(begun, options);
    if (begun.weather && begun.judged.space) {
        begun.needed_kwh_per_day = needed_kwh_per_day(space_balance(*begun.judged.space, parts),
                                                      *begun.weather, begun.season->months);
    }
    begun.circuit.runs = lay_runs(parts, begun.judged, begun.circuit);
    begun.circuit.devices = place_devices(parts, begun.judged);
    return begun;
}

/// Energy of the season, where there is weather.
std::optional<Season> season_begun(const BegunCircuit& begun, const Candidate& candidate,
                                   const RankOptions& options) {
    if (!begun.season) return std::nullopt;
    const Circuit& circuit = begun.circuit;
    if (circuit.unlike) {
        return unlike_season(circuit, *begun.weather, begun.judged.site,
                             {.months = begun.judged.goals.months,
                              .exact = options.exact_weather,
                              .price_to_buy = candidate.price_to_buy});
    }
    return season_of(
        circuit,
        season_curves(circuit.panel, *begun.season, options.vector_width, circuit.panels.series),
        *begun.season, candidate.price_to_buy);
}

/// Chooses the wires at the elements by that heat; whether any was to be chosen.
bool lay_at_elements(std::vector<BegunCircuit>& all, const Parts& parts) {
    bool chosen = false;
    for (BegunCircuit& begun : all) {
        if (!chooses_for_heat(begun.judged)) continue;
        chosen = true;
        lay_for_heat(begun.circuit, parts, begun.judged,
                     bright_extremes(begun.circuit, begun.judged.site));
    }
    return chosen;
}

/// The existing circuit has a wire: reports that another one was assumed for it.
void report_chosen_wires(std::vector<Margin>& margins, const Circuit& circuit) {
    for (const RunParts& run : circuit.runs) {
        if (!run.run.chooses() || !run.wire) continue;
        const Assumption assumption{.part = "run \"" + run.run.name + '"',
                                    .field = "wire",
                                    .value = sentence_of(Name{run.wire->id}),
                                    .source = say<"assess.chosen">()};
        for (Margin& margin : margins) {
            if (margin.subject == assumption.part) margin.assumed.push_back(assumption);
        }
    }
}

/// The candidate of one circuit; `bill` is its own among several, else null.
Candidate finish(BegunCircuit&& begun, const std::shared_ptr<const Parts>& parts,
                 const RankOptions& options, const Bill* bill) {
    const Circuit& circuit = begun.circuit;
    const Installation& judged = begun.judged;
    Candidate candidate = evaluate(circuit, judged, options.conditions, *parts);
    if (bill != nullptr) {
        candidate.bill = *bill;
        candidate.price_to_buy = bill->typical();
    }
    candidate.catalog = parts;
    if (judged.space) candidate.space = space_balance(*judged.space, *parts);
    if (candidate.space) candidate.space->needed_kwh_per_day = begun.needed_kwh_per_day;
    candidate.remarks = std::move(begun.remarks);
    candidate.season = season_begun(begun, candidate, options);
    if (circuit.heat) {
        for (const Sentence& warning : fill_warnings(circuit.heat->store->medium)) {
            candidate.remarks.push_back(warning);
        }
        const std::size_t circuits = circuit.heat->store->other_circuits() + 1;
        if (circuits > 1) {
            const auto count = with<"count">(static_cast<double>(circuits));
            candidate.remarks.push_back(circuit.heat->store->by_hour()
                                            ? say<"assess.together_by_hour">(count)
                                            : say<"assess.together">(count));
        }
    }
    std::vector<Margin> margins = candidate.margins();
    report_chosen_wires(margins, circuit);
    candidate.made = LazyMargins(std::move(margins));
    return candidate;
}

/// The bill of each circuit: what is owned is there for one of them only, and what the first ones
/// cost is no longer in the budget.
std::vector<Bill> bills_of(const std::vector<BegunCircuit>& all, const Installation& installation,
                           const Parts& parts) {
    std::vector<Circuit> circuits;
    circuits.reserve(all.size());
    for (const BegunCircuit& begun : all) circuits.push_back(begun.circuit);
    // Devices are bought for the sun at which they are judged.
    Installation judged = installation;
    for (const BegunCircuit& begun : all) {
        judged.site.bright_irradiance_w_m2 =
            std::max(judged.site.bright_irradiance_w_m2, begun.judged.site.bright_irradiance_w_m2);
    }
    std::vector<Bill> bills = bills_in_turn(circuits, judged, parts);
    std::optional<double> left = installation.goals.budget;
    for (Bill& bill : bills) {
        bill.budget = left;
        if (left) left = std::max(0.0, *left - bill.typical().value_or(*left));
    }
    return bills;
}

}  // namespace

std::vector<Candidate> assess_circuits(const Parts& catalog, const Installation& installation,
                                       const RankOptions& options) {
    check_rank_options(options);
    const auto shared = std::make_shared<const Parts>(merged_parts(catalog, installation));
    check_installation(installation, *shared);
    const std::vector<ExistingCircuit> circuits = existing_circuits(installation);
    if (circuits.empty()) {
        throw InvalidInput(ErrorDetail{
            .part = "installation",
            .field = "circuit",
            .value = "(missing)",
            .allowed = "given",
            .remedy = say<"assess.describe_circuit">(
                with<"example">(Name{R"({"group": "barn pair", "panels": "2S1P", "element": "id", )"
                                     R"("bank": "1S2P"})"}))});
    }
    check_used_twice(installation, circuits);
    std::vector<BegunCircuit> all;
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        all.push_back(begin(*shared, installation_of(installation, i), options));
        for (PlacedDevice& placed : all.back().circuit.devices) {
            placed.circuits = circuits_through(placed.device, circuits);
        }
    }
    share_store(all, *shared);
    // The wire at the elements changes their power, and that the heat of the other circuits.
    if (lay_at_elements(all, *shared) && all.size() > 1) share_store(all, *shared);
    count_limits(all);
    std::vector<Bill> bills;
    if (all.size() > 1) bills = bills_of(all, installation, *shared);
    std::vector<Candidate> candidates;
    for (BegunCircuit& begun : all) {
        const Bill* bill = bills.empty() ? nullptr : &bills[candidates.size()];
        candidates.push_back(finish(std::move(begun), shared, options, bill));
    }
    return candidates;
}

Candidate assess(const Parts& catalog, const Installation& installation,
                 const RankOptions& options) {
    if (installation.circuits.size() > 1) {
        throw InvalidInput(
            ErrorDetail{.part = "installation",
                        .field = "circuits",
                        .value = std::to_string(installation.circuits.size()) + " circuits",
                        .allowed = "one circuit",
                        .remedy = say<"assess.all_circuits">()});
    }
    return assess_circuits(catalog, installation, options).front();
}

}  // namespace heatmatch
