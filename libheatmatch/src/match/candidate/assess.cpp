#include "heatmatch/match/candidate/assess.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/solar/own_weather.hpp"

namespace heatmatch {

Candidate assess(const Parts& catalog, const Installation& installation,
                 const RankOptions& options) {
    check_rank_options(options);
    const auto shared = std::make_shared<const Parts>(merged_parts(catalog, installation));
    const Parts& parts = *shared;
    check_references(installation, parts);
    if (!installation.circuit) {
        throw InvalidInput(ErrorDetail{
            .part = "installation",
            .field = "circuit",
            .value = "(missing)",
            .allowed = "given",
            .remedy =
                R"(describe the circuit that stands: {"group": "barn pair", "panels": "2S1P", )"
                R"("element": "id", "bank": "1S2P"})"});
    }
    const StandingCircuit& standing = *installation.circuit;
    const OwnedPanels& owned = find_group(installation, standing.group);
    Circuit circuit{.owned = owned,
                    .panel = panel_in_service(owned, find_panel(parts, owned.panel),
                                              installation.site.record_low_c),
                    .panels = parse_hookup(standing.panels, "circuit", "panels")};
    if (circuit.panels.count() > owned.count) {
        throw InvalidInput(ErrorDetail{
            .part = "circuit",
            .field = "panels",
            .value = standing.panels + " (" + std::to_string(circuit.panels.count()) + " panels)",
            .allowed =
                "at most the " + std::to_string(owned.count) + " of group \"" + owned.group + '"',
            .remedy = "correct the hook-up or the count of the group"});
    }
    const Hookup bank = parse_hookup(standing.bank, "circuit", "bank");
    circuit.bank = make_bank(parts, find_element(parts, standing.element), bank, bank.count(),
                             options.coil_temperature_c);
    Sentences remarks;
    const auto weather = options.weather
                             ? options.weather
                             : own_weather(installation, remarks,
                                           options.memory ? &options.memory->weather : nullptr);
    std::optional<SeasonWeather> season;
    Installation judged = installation;
    if (weather) {
        season = season_weather(*weather, installation.goals.months, options.exact_weather);
        judged.site.bright_irradiance_w_m2 = judged_irradiance_w_m2(*season, installation.site);
    }
    circuit.runs = lay_runs(parts, judged, circuit.panel, circuit.panels, bank);
    circuit.devices = place_devices(parts, judged);
    circuit.heat = bank_heat(fill_store(parts, judged), circuit.bank.element, circuit.bank.sheath,
                             circuit.bank.alloy, bank.count());
    if (chooses_for_heat(judged)) {
        lay_for_heat(circuit, parts, judged, bright_extremes(circuit, judged.site));
    }
    Candidate candidate = evaluate(circuit, judged, options.conditions);
    candidate.catalog = shared;
    if (installation.space) candidate.space = space_balance(*installation.space, parts);
    candidate.remarks = std::move(remarks);
    if (season) {
        candidate.season =
            season_of(circuit, season_curves(circuit.panel, *season, options.vector_width), *season,
                      candidate.price_to_buy);
        const Sentence bright = bright_remark(*season, installation.site);
        if (!bright.empty()) candidate.remarks.push_back(bright);
    }
    if (circuit.heat) {
        for (const Sentence& warning : fill_warnings(circuit.heat->store->medium)) {
            candidate.remarks.push_back(warning);
        }
    }
    std::vector<Margin> margins = candidate.margins();
    for (const RunParts& run : circuit.runs) {
        if (!run.run.chooses() || !run.wire) continue;
        // What stands has a wire already: say that another one was taken for it.
        const Assumption assumption{.part = "run \"" + run.run.name + '"',
                                    .field = "wire",
                                    .value = run.wire->id,
                                    .source = "chosen: name the wire that is there"};
        for (Margin& margin : margins) {
            if (margin.subject == assumption.part) margin.assumed.push_back(assumption);
        }
    }
    candidate.made = LazyMargins(std::move(margins));
    return candidate;
}

}  // namespace heatmatch
