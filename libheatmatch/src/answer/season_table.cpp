#include "heatmatch/answer/season_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

// Beyond these ratios to the best resistance, a bank is reported as too high or too low.
constexpr double too_many = 1.25;
constexpr double too_few = 0.8;

Sentence beside(double ratio) {
    if (ratio > too_many) return say<"season.too_many">();
    return ratio < too_few ? say<"season.too_few">() : Sentence{};
}

Sentence totals(const Season& season) {
    const auto whole = [](double value) { return number(value, 0); };
    const Amount kwh{.value = season.kwh, .unit = unit::kilowatt_hour, .decimals = 0};
    return say<"season.totals">(
        with<"days">(whole(season.days)), with<"kwh">(kwh), with<"low">(whole(season.kwh_low)),
        with<"high">(whole(season.kwh_high)),
        with<"cloud">(season.cloud_band ? say<"season.cloud">() : Sentence{}),
        with<"share">(percent_number(season.harvest_fraction())));
}

Sentence price(const Candidate& candidate, double price_per_kwh) {
    const Amount amount = number(price_per_kwh, 2, unit::money);
    return say<"season.price">(with<"money">(
        candidate.currency.empty()
            ? sentence_of(amount)
            : say<"cell.money">(with<"amount">(amount), with<"currency">(candidate.currency))));
}

}  // namespace

std::optional<int> darkest_month(const Season& season) {
    if (season.months.empty()) return std::nullopt;
    const auto kwh = [&](int month) {
        return season.kwh_per_day.at(static_cast<std::size_t>(month - 1));
    };
    const auto darker = [&](int a, int b) { return kwh(a) < kwh(b); };
    return *std::min_element(season.months.begin(), season.months.end(), darker);
}

Table season_table(const Season& season) {
    Table table{.title = say<"season.title">(), .columns = {{.head = say<"head.month">()}}};
    Sentences delivered{say<"season.delivered">()};
    Sentences possible{say<"season.possible">()};
    Sentences share{say<"head.share">()};
    for (int month = 1; month <= 12; ++month) {
        const auto index = static_cast<std::size_t>(month - 1);
        const double most = season.mpp_kwh_per_day.at(index);
        if (most <= 0.0) continue;
        const double kwh = season.kwh_per_day.at(index);
        const bool of_season =
            std::find(season.months.begin(), season.months.end(), month) != season.months.end();
        table.columns.push_back({.head = of_season
                                             ? say<"season.month">(with<"month">(month_word(month)))
                                             : month_word(month),
                                 .number = true});
        delivered.push_back(sentence_of(fitted(kwh, unit::kilowatt_hour)));
        possible.push_back(sentence_of(fitted(most, unit::kilowatt_hour)));
        share.push_back(sentence_of(percent_number(kwh / most)));
    }
    table.rows = {std::move(delivered), std::move(possible), std::move(share)};
    return table;
}

Sentence season_months_title() {
    return say<"season.months_title">();
}

Sentences season_sentences(const Candidate& candidate) {
    if (!candidate.season) return {};
    const Season& season = *candidate.season;
    const double ohm = candidate.circuit.bank.typical_ohm();
    Sentences sentences{
        totals(season),
        sentence_of(Sentences{season.best_ohm_sentence(), season.stc_match_loss_sentence(),
                              say<"season.bank">(with<"ohm">(ohm, unit::ohm),
                                                 with<"beside">(beside(ohm / season.best_ohm)))}),
        say<"season.near_short">(with<"share">(percent_number(season.near_short_circuit_share)))};
    if (season.price_per_kwh && *season.price_per_kwh > 0.0) {
        sentences.push_back(price(candidate, *season.price_per_kwh));
    }
    sentences.insert(sentences.end(), season.remarks.begin(), season.remarks.end());
    return sentences;
}

}  // namespace heatmatch
