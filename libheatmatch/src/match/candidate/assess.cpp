#include "heatmatch/match/candidate/assess.hpp"

#include "sentences.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/two_sided_season.hpp"
#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/solar/own_weather.hpp"

namespace heatmatch {

using candidate_sentences::say;

Candidate assess(const Parts& catalog, const Installation& installation,
                 const RankOptions& options) {
    check_rank_options(options);
    const auto shared = std::make_shared<const Parts>(merged_parts(catalog, installation));
    const Parts& parts = *shared;
    check_installation(installation, parts);
    if (!installation.circuit) {
        throw InvalidInput(ErrorDetail{
            .part = "installation",
            .field = "circuit",
            .value = "(missing)",
            .allowed = "given",
            .remedy = say<"assess.describe_circuit">(
                with<"example">(Name{R"({"group": "barn pair", "panels": "2S1P", "element": "id", )"
                                     R"("bank": "1S2P"})"}))});
    }
    const ExistingCircuit& standing = *installation.circuit;
    const OwnedPanels& owned = find_group(installation, standing.group);
    Circuit circuit{.owned = owned,
                    .panel = panel_in_service(owned, find_panel(parts, owned.panel),
                                              installation.site.record_low_c),
                    .panels = parse_hookup(standing.panels, "circuit", "panels")};
    if (circuit.panels.count() > owned.count) {
        throw InvalidInput(ErrorDetail{
            .part = "circuit",
            .field = "panels",
            .value = say<"assess.panels_used">(with<"hookup">(standing.panels),
                                               with<"count">(circuit.panels.count(), unit::none, 9))
                         .text(),
            .allowed = say<"assess.panels_owned">(with<"count">(owned.count, unit::none, 9),
                                                  with<"group">(owned.group))
                           .text(),
            .remedy = say<"assess.correct_hookup">()});
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
        add_two_sided(*season, *weather, installation.goals.months, options.exact_weather,
                      circuit.panel);
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
        // The existing circuit has a wire: report that another one was assumed for it.
        const Assumption assumption{.part = "run \"" + run.run.name + '"',
                                    .field = "wire",
                                    .value = sentence_of(Name{run.wire->id}),
                                    .source = say<"assess.chosen">()};
        for (Margin& margin : margins) {
            if (margin.subject == assumption.part) margin.assumed.push_back(assumption);
        }
    }
    candidate.made = LazyMargins(std::move(margins));
    return candidate;
}

}  // namespace heatmatch
