#include "heatmatch/match/candidate/rank_options.hpp"

#include "sentences.hpp"

#include <utility>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using candidate_sentences::say;

namespace {

constexpr int any_digits = 12;

[[noreturn]] void refuse(const char* field, const Sentence& value, const Sentence& allowed,
                         Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = "ranking",
                                   .field = field,
                                   .value = value.text(),
                                   .allowed = allowed.text(),
                                   .remedy = std::move(remedy)});
}

Sentence count_of(std::size_t count) {
    return sentence_of(Amount{static_cast<double>(count), unit::none, any_digits});
}

Sentence value_of(double value, const Unit& unit) {
    return sentence_of(Amount{value, unit, 6});
}

void check_condition(const Condition& condition) {
    const auto sun = [](double value) { return Amount{value, unit::watt_per_m2, 6}; };
    constexpr double most_w_m2 = 2000.0;
    if (!(condition.irradiance_w_m2 > 0.0 && condition.irradiance_w_m2 <= most_w_m2)) {
        refuse("conditions irradiance_w_m2", value_of(condition.irradiance_w_m2, unit::watt_per_m2),
               say<"options.above">(with<"low">(sun(0.0)), with<"high">(sun(most_w_m2))),
               say<"options.full_sun">(with<"irradiance">(sun(1000.0))));
    }
    constexpr double coldest_c = -60.0;
    constexpr double hottest_c = 110.0;
    if (!(condition.cell_temperature_c >= coldest_c && condition.cell_temperature_c <= hottest_c)) {
        refuse("conditions cell_temperature_c",
               value_of(condition.cell_temperature_c, unit::celsius),
               say<"options.range">(with<"low">(coldest_c, unit::celsius),
                                    with<"high">(hottest_c, unit::celsius)),
               say<"options.cells_above_air">(
                   with<"low">(Amount{.value = 20.0, .unit = unit::kelvin, .shown = Shown::number}),
                   with<"high">(35.0, unit::kelvin)));
    }
}

}  // namespace

void check_rank_options(const RankOptions& options) {
    constexpr int largest_bank = 64;
    if (options.max_bank < 1 || options.max_bank > largest_bank) {
        refuse("max_bank",
               sentence_of(Amount{static_cast<double>(options.max_bank), unit::none, any_digits}),
               say<"options.range">(with<"low">(1.0), with<"high">(largest_bank)),
               say<"options.usual_banks">());
    }
    if (options.bank && options.bank->count() > options.max_bank) {
        refuse("bank", sentence_of(Name{options.bank->label()}), say<"options.within_max_bank">(),
               say<"options.bank_too_large">());
    }
    constexpr double least_volts = 1.0;
    constexpr double most_volts = 2000.0;
    if (options.volts_max &&
        !(*options.volts_max >= least_volts && *options.volts_max <= most_volts)) {
        refuse("volts_max", value_of(*options.volts_max, unit::volt),
               say<"options.range">(with<"low">(least_volts, unit::volt),
                                    with<"high">(most_volts, unit::volt, 4)),
               say<"options.touch_voltage">(with<"volts">(60.0, unit::volt)));
    }
    constexpr std::size_t most_threads = 256;
    if (options.threads > most_threads) {
        refuse("threads", count_of(options.threads),
               say<"options.at_most">(with<"high">(static_cast<double>(most_threads))),
               say<"options.all_threads">());
    }
    if (options.conditions.empty()) {
        refuse("conditions", say<"options.none">(), say<"options.some_condition">(),
               say<"options.condition_example">(with<"irradiance">(1000.0, unit::none, 4),
                                                with<"cells">(45.0)));
    }
    for (const Condition& condition : options.conditions) check_condition(condition);
    constexpr double coolest_c = 20.0;
    constexpr double hottest_c = 1200.0;
    if (!(options.coil_temperature_c >= coolest_c && options.coil_temperature_c <= hottest_c)) {
        refuse("coil_temperature_c", value_of(options.coil_temperature_c, unit::celsius),
               say<"options.range">(with<"low">(coolest_c, unit::celsius),
                                    with<"high">(hottest_c, unit::celsius, 4)),
               say<"options.default_temperature">(
                   with<"temperature">(RankOptions{}.coil_temperature_c, unit::celsius)));
    }
}

}  // namespace heatmatch
