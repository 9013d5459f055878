#include "heatmatch/answer/ranking_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/answer/marked_ranking.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

/// Watts in at most four characters.
Sentence watts_cell(double watts) {
    if (watts < 9999.5) return number_cell(watts, 0, unit::watt);
    return say<"cell.thousands">(with<"thousands">(number(watts / 1000.0, 0)));
}

/// Heat, its band, and utilization.
struct HeatCells {
    Sentence heat{};
    Sentence band{};
    Sentence share{};
};

HeatCells season_cells(const Season& season) {
    const auto daily = [&](double kwh) {
        return sentence_of(fitted(kwh / season.days, unit::kilowatt_hour));
    };
    return {.heat = sentence_of(fitted(season.mean_kwh_per_day(), unit::kilowatt_hour)),
            .band = say<"cell.low_high">(with<"low">(daily(season.kwh_low)),
                                         with<"high">(daily(season.kwh_high))),
            .share = sentence_of(percent_number(season.harvest_fraction()))};
}

HeatCells power_cells(const Candidate& candidate) {
    double best = 0.0;
    double delivered = 0.0;
    for (const Delivered& at : candidate.delivered) {
        best += at.maximum_power_w;
        delivered += at.power_w;
    }
    return {.heat = watts_cell(candidate.mean_power_w()),
            .band = say<"cell.low_high">(with<"low">(watts_cell(candidate.mean_power_low_w())),
                                         with<"high">(watts_cell(candidate.mean_power_high_w()))),
            .share = sentence_of(percent_number(best > 0.0 ? delivered / best : 0.0))};
}

/// Sheath temperature for the verdict and its limit; of unlike elements of the one with the least
/// headroom.
Margin nearest_sheath(const Candidate& candidate, double sheath_c) {
    Margin nearest{.value = sheath_c};
    const Bank& bank = candidate.circuit.bank;
    if (!bank.unlike) {
        if (bank.sheath) nearest.limit = bank.sheath->verdict_limit_c;
        return nearest;
    }
    for (const Margin& margin : candidate.margins()) {
        if (margin.name != "sheath temperature" || !margin.value) continue;
        if (!nearest.headroom || margin.headroom.value_or(-1.0) < *nearest.headroom) {
            nearest = margin;
            nearest.headroom = margin.headroom.value_or(-1.0);
        }
    }
    return nearest;
}

/// Sheath temperature for the verdict beside its limit, and power per heated length.
Sentences sheath_cells(const Candidate& candidate) {
    const auto point = heat_of(candidate.circuit, candidate.bright);
    if (!point) return {unknown_cell(), unknown_cell()};
    const Margin sheath = nearest_sheath(candidate, point->sheath_c);
    return {say<"cell.at_limit">(with<"value">(degrees_cell(sheath.value)),
                                 with<"limit">(degrees_cell(sheath.limit))),
            sentence_of(fitted(point->w_per_cm, unit::watt_per_cm))};
}

/// Currency of all prices; empty where they differ.
std::string currency_of(std::span<const Candidate* const> candidates) {
    if (candidates.empty()) return {};
    const std::string& first = candidates.front()->currency;
    const bool one = std::all_of(candidates.begin(), candidates.end(),
                                 [&](const Candidate* each) { return each->currency == first; });
    return one ? first : std::string{};
}

std::vector<TableColumn> columns_of(bool season, bool store, bool share,
                                    const std::string& currency) {
    const auto text = [](Sentence head) { return TableColumn{.head = std::move(head)}; };
    const auto numbers = [](Sentence head) {
        return TableColumn{.head = std::move(head), .number = true};
    };
    std::vector<TableColumn> columns{text(say<"head.place">()), text(say<"head.panels">()),
                                     numbers(say<"head.cold_volts">()),
                                     text(say<"head.elements">())};
    columns.push_back(numbers(season ? say<"head.daily">() : say<"head.mean">()));
    columns.push_back(numbers(season ? say<"head.band">() : say<"head.band_power">()));
    if (share) columns.push_back(numbers(say<"head.share_of_most">()));
    columns.push_back(numbers(say<"head.headroom_left">()));
    columns.push_back(numbers(buy_head(currency, share)));
    if (store) columns.push_back(numbers(say<"head.sheath">()));
    if (store && share) columns.push_back(numbers(unit_cell(unit::watt_per_cm)));
    return columns;
}

Sentences legend_of(bool season, bool store, bool share, const Sentence& buy) {
    Sentences legend{season ? say<"ranking.legend_season">() : say<"ranking.legend_power">()};
    if (share || !store) legend.push_back(say<"ranking.legend_share">());
    if (store) {
        legend.push_back(say<"ranking.legend_sheath">(with<"degrees">(unit_cell(unit::celsius))));
        if (share) {
            legend.push_back(
                say<"ranking.legend_load">(with<"load">(unit_cell(unit::watt_per_cm))));
        }
    }
    legend.push_back(say<"ranking.legend_all">(
        with<"buy">(buy), with<"unused">(1.0), with<"at_limit">(0.0),
        with<"unknown">(unknown_cell()), with<"hookup">(Hookup{.series = 2, .parallel = 1}.label()),
        with<"step">(1.0)));
    return legend;
}

/// The elements, and how many pairings of the same load are folded under them.
Sentence elements_of(const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    if (candidate.like_it == 0) return elements_cell(circuit);
    return say<"cell.elements_like">(with<"element">(circuit.bank.element.id),
                                     with<"bank">(circuit.bank.hookup.label()),
                                     with<"more">(number(candidate.like_it, 0)));
}

Sentences row_of(std::size_t place, const Candidate& candidate, bool store,
                 const RankingTableOptions& options) {
    HeatCells heat = candidate.season ? season_cells(*candidate.season) : power_cells(candidate);
    Sentences row{options.letters ? name_cell(place_letter(place))
                                  : number_cell(static_cast<double>(place), 0),
                  panels_cell(candidate.circuit),
                  number_cell(candidate.circuit.cold_voltage_v(), 0, unit::volt),
                  elements_of(candidate),
                  std::move(heat.heat),
                  std::move(heat.band)};
    if (options.share || !store) row.push_back(std::move(heat.share));
    row.push_back(headroom_left_cell(candidate));
    row.push_back(price_cell(candidate));
    if (store) {
        Sentences cells = sheath_cells(candidate);
        if (!options.share) cells.pop_back();
        for (Sentence& cell : cells) row.push_back(std::move(cell));
    }
    return row;
}

}  // namespace

Sentence buy_head(const std::string& currency, bool wide) {
    if (currency.empty()) return say<"head.buy">();
    return wide ? say<"head.buy_money">(with<"currency">(currency)) : name_cell(currency);
}

bool with_store(std::span<const Candidate* const> candidates) {
    return std::any_of(candidates.begin(), candidates.end(), [](const Candidate* candidate) {
        return candidate->circuit.heat != nullptr;
    });
}

Table ranking_table(std::span<const Candidate* const> candidates,
                    const RankingTableOptions& options) {
    const bool store = with_store(candidates);
    const bool season =
        std::any_of(candidates.begin(), candidates.end(),
                    [](const Candidate* candidate) { return candidate->season.has_value(); });
    Table table{
        .columns = columns_of(season, store, options.share || !store, currency_of(candidates)),
        .legend = legend_of(season, store, options.share,
                            buy_head(currency_of(candidates), options.share || !store))};
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        table.rows.push_back(row_of(i + 1, *candidates[i], store, options));
    }
    return table;
}

Sentences ranking_legend(const Ranking& ranking, bool share) {
    const auto& shown = ranking.candidates.empty() ? ranking.rejected : ranking.candidates;
    const bool store = std::any_of(shown.begin(), shown.end(), [](const Candidate& candidate) {
        return candidate.circuit.heat != nullptr;
    });
    std::vector<const Candidate*> pointers;
    pointers.reserve(shown.size());
    for (const Candidate& each : shown) pointers.push_back(&each);
    Sentences legend = marks_legend(ranking);
    for (Sentence& column : legend_of(ranking.by_season, store, share,
                                      buy_head(currency_of(pointers), share || !store))) {
        legend.push_back(std::move(column));
    }
    const bool folded = std::any_of(shown.begin(), shown.end(), [](const Candidate& candidate) {
        return candidate.like_it > 0;
    });
    if (folded) legend.push_back(say<"ranking.legend_like">(with<"one">(1.0)));
    return legend;
}

Sentence pairing_sentence(const Circuit& circuit) {
    if (circuit.bank.unlike) {
        return say<"cell.pairing_unlike">(with<"array">(circuit.array_title()),
                                          with<"bank">(circuit.bank.label()));
    }
    return say<"cell.pairing">(with<"array">(circuit.array_title()),
                               with<"element">(circuit.bank.element.id),
                               with<"bank">(circuit.bank.hookup.label()));
}

Sentence price_sentence(const Candidate& candidate) {
    if (candidate.currency.empty()) return price_cell(candidate);
    return say<"cell.money">(with<"amount">(price_cell(candidate)),
                             with<"currency">(candidate.currency));
}

std::string place_letter(std::size_t place) {
    std::string letters;
    for (; place > 0; place = (place - 1) / 26) {
        letters.insert(letters.begin(), static_cast<char>('a' + (place - 1) % 26));
    }
    return letters;
}

}  // namespace heatmatch
