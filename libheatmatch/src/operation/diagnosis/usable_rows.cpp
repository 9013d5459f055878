#include "usable_rows.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace heatmatch {

using diagnosis_sentences::count_of;
using diagnosis_sentences::say;

namespace {

constexpr double nothing_read = std::numeric_limits<double>::quiet_NaN();

bool electrical(const Reading& r) {
    return r.array_v || r.bank_v || r.bank_a || r.open_v || r.short_a || r.element_ohm ||
           r.bank_ohm;
}

int filled(const Reading& r) {
    int count = 0;
    for (const auto& value : {r.array_v, r.bank_v, r.bank_a, r.irradiance_w_m2,
                              r.panel_temperature_c, r.air_c, r.open_v, r.short_a}) {
        count += value ? 1 : 0;
    }
    return count;
}

}  // namespace

FitRow fit_row(const Reading& reading, const DiagnosisOptions& options) {
    FitRow row{.air_c = reading.air_c.value_or(nothing_read)};
    const auto put = [&row](std::size_t quantity, const std::optional<double>& read, double share,
                            double floor) {
        row.read[quantity] = read.value_or(nothing_read);
        row.sigma[quantity] = share * std::fabs(read.value_or(0.0)) + floor;
    };
    put(array_v, reading.array_v, options.volt_share, options.volt_v);
    put(bank_v, reading.bank_v, options.volt_share, options.volt_v);
    put(bank_a, reading.bank_a, options.ampere_share, options.ampere_a);
    put(open_v, reading.open_v, options.volt_share, options.volt_v);
    put(short_a, reading.short_a, options.ampere_share, options.ampere_a);
    put(element_ohm, reading.element_ohm, options.ohm_share, options.ohm_ohm);
    put(bank_ohm, reading.bank_ohm, options.ohm_share, options.ohm_ohm);
    constexpr double sun_floor_w_m2 = 5.0;
    put(irradiance, reading.irradiance_w_m2, options.irradiance_share, sun_floor_w_m2);
    put(panel_temperature, reading.panel_temperature_c, 0.0, options.panel_temperature_k);
    row.wanted = {.load = reading.array_v || reading.bank_v || reading.bank_a,
                  .open = reading.open_v.has_value(),
                  .shorted = reading.short_a.has_value()};
    return row;
}

std::vector<Reading> chosen_rows(const std::vector<Reading>& rows, std::size_t most,
                                 Sentences& remarks) {
    std::vector<Reading> usable;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(usable), electrical);
    if (usable.size() <= most) return usable;
    std::vector<Reading> chosen;
    const auto take = [&](std::size_t count, auto test) {
        std::vector<const Reading*> fitting;
        for (const Reading& row : usable) {
            if (test(row)) fitting.push_back(&row);
        }
        std::stable_sort(fitting.begin(), fitting.end(), [](const auto* a, const auto* b) {
            return a->bank_a.value_or(0.0) < b->bank_a.value_or(0.0);
        });
        const std::size_t n = std::min(count, fitting.size());
        for (std::size_t i = 0; i < n; ++i) {
            // From the brightest down, evenly.
            const std::size_t at = fitting.size() - 1 - i * fitting.size() / n;
            if (std::find(chosen.begin(), chosen.end(), *fitting[at]) == chosen.end()) {
                chosen.push_back(*fitting[at]);
            }
        }
    };
    take(std::max<std::size_t>(1, most / 6),
         [](const Reading& r) { return r.element_ohm || r.bank_ohm; });
    take(std::max<std::size_t>(1, most / 4),
         [](const Reading& r) { return r.open_v || r.short_a; });
    double most_a = 0.0;
    int fullest = 0;
    for (const Reading& row : usable) most_a = std::max(most_a, row.bank_a.value_or(0.0));
    const auto heats = [&](const Reading& r) { return r.bank_a.value_or(most_a) >= 0.1 * most_a; };
    for (const Reading& row : usable) {
        if (heats(row)) fullest = std::max(fullest, filled(row));
    }
    if (chosen.size() < most) {
        take(most - chosen.size(),
             [&](const Reading& r) { return heats(r) && filled(r) == fullest; });
    }
    if (chosen.size() > most) chosen.resize(most);
    remarks.push_back(
        say<"diagnosis.rows">(count_of<"used">(chosen.size()), count_of<"all">(usable.size())));
    return chosen;
}

}  // namespace heatmatch
