#include "heatmatch/match/circuit/filled_store.hpp"

#include "sentences.hpp"

#include <algorithm>

namespace heatmatch {

using circuit_sentences::say;

namespace {

constexpr double default_hours = 6.0;
constexpr double default_air_c = 30.0;
constexpr double default_hottest_c = 40.0;
constexpr double above_outside_k = 10.0;

}  // namespace

double FilledStore::others_w(bool stagnation) const {
    double sum = 0.0;
    for (const OtherBank& other : others) {
        const std::vector<HeatDay>& list = stagnation ? other.days.year : other.days.season;
        sum += other.power_w() * (other.own ? 1.0 : share_of_hours(list, charge_hours));
    }
    return sum;
}

bool FilledStore::by_hour() const {
    return std::any_of(others.begin(), others.end(),
                       [](const OtherBank& other) { return !other.days.year.empty(); });
}

namespace {

std::size_t circuits_in(const std::vector<OtherBank>& others, std::size_t up_to) {
    const auto end = others.begin() + static_cast<std::ptrdiff_t>(std::min(up_to, others.size()));
    return static_cast<std::size_t>(std::count_if(
        others.begin(), end, [](const OtherBank& other) { return !other.own && !other.goes_on; }));
}

}  // namespace

std::size_t FilledStore::other_circuits() const {
    return circuits_in(others, others.size());
}

std::size_t FilledStore::circuits_before() const {
    return circuits_in(others, place);
}

std::shared_ptr<const FilledStore> fill_store(const Parts& parts,
                                              const Installation& installation) {
    if (!installation.store) return nullptr;
    const Store& store = *installation.store;
    auto filled = std::make_shared<FilledStore>();
    filled->store = store;
    filled->medium = find_medium(parts, store.medium);
    const auto assume = [&filled](const char* field, double value, const Unit& unit, Sentence why) {
        filled->assumed.push_back(
            {"store", field, sentence_of(Amount{value, unit, 4}), std::move(why)});
    };
    const Sentence from_memory = sentence_of(Name{"from memory"});
    filled->charge_hours = store.charge_hours.value_or(default_hours);
    if (!store.charge_hours) assume("charge_hours", default_hours, unit::hour, from_memory);
    filled->air_c = store.air_c.value_or(default_air_c);
    if (!store.air_c) assume("air_c", default_air_c, unit::celsius, from_memory);
    filled->hottest_air_c = std::max(default_hottest_c, filled->air_c);
    const auto& weather = installation.weather;
    if (weather && !weather->temp_max_c.empty()) {
        const double warmest =
            *std::max_element(weather->temp_max_c.begin(), weather->temp_max_c.end());
        const bool outside = store.stands == StorePlace::outside;
        filled->hottest_air_c =
            std::max(filled->air_c, warmest + (outside ? 0.0 : above_outside_k));
        assume("air in high summer", filled->hottest_air_c, unit::celsius,
               outside ? say<"circuit.warmest_month">()
                       : say<"circuit.above_warmest_month">(
                             with<"rise">(above_outside_k, unit::kelvin)));
    } else {
        assume("air in high summer", filled->hottest_air_c, unit::celsius, from_memory);
    }
    return filled;
}

}  // namespace heatmatch
