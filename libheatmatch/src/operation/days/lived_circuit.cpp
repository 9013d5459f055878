#include "lived_circuit.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

constexpr double seconds_per_hour = 3600.0;

/// Temperatures of one element at the end of a step.
struct ElementPeaks {
    double sheath_c = 0.0;
    double coil_c = 0.0;
    std::optional<double> terminal_c{};
};

}  // namespace

std::vector<Circuit> seen_in_store(const Circuit& circuit) {
    if (!circuit.bank.unlike) return {circuit};
    // Power changes: that of the others is not the one of their view.
    const std::vector<double> no_w(circuit.bank.unlike->elements.size(), 0.0);
    std::vector<Circuit> seen;
    for (std::size_t i = 0; i < no_w.size(); ++i) seen.push_back(element_view(circuit, i, no_w));
    return seen;
}

LivedCircuit::LivedCircuit(const Candidate& candidate, const DayWeather& weather,
                           const DayOptions& options, std::size_t bank)
    : candidate_(&candidate),
      weather_(&weather),
      electrical_step_s_(options.electrical_step_s),
      bank_(bank),
      circuit_(candidate.circuit) {
    const BankHeat& heat = *candidate.circuit.heat;
    const Store& store = heat.store->store;
    run_.title = candidate.circuit.title();
    run_.days = weather.hours() / hours_of_day;
    run_.first_hour = weather.first_hour;
    run_.bed_model = heat.liquid ? BedModel::water : BedModel::r_z_field;
    run_.remarks = weather.remarks;
    run_.sun_of_month = weather.sun_of_month;
    run_.assumed = weather.assumed;
    const auto add = [this](const std::vector<Assumption>& more) {
        run_.assumed.insert(run_.assumed.end(), more.begin(), more.end());
    };
    add(heat.assumed);
    for (const Circuit& seen : seen_in_store(candidate.circuit)) {
        elements_.push_back({.heated_m = seen.heat->heated_length_m, .tail = tail_heat(seen)});
    }
    if (candidate.circuit.bank.unlike) {
        const UnlikeBank& unlike = *candidate.circuit.bank.unlike;
        for (std::size_t i = 0; i < unlike.elements.size(); ++i) {
            run_.series.elements.push_back(
                {.number = static_cast<int>(i) + 1, .title = unlike.title_of(i)});
        }
    }
    power_w_.assign(elements_.size(), 0.0);
    const auto kinds = candidate.circuit.kinds_of_panels();
    const bool bifacial = std::any_of(kinds.begin(), kinds.end(), [](const PanelInService* panel) {
        return !panel->rear.none();
    });
    if (bifacial) add(weather.rear_assumed);
    for (const Lived& element : elements_) {
        if (element.tail.known()) add(element.tail.assumed);
    }
    run_.heats_space = candidate.space && candidate.space->known() && !options.air_around_c;
    if (run_.heats_space) {
        add(candidate.space->assumed);
        run_.remarks.push_back(say<"days.space_alone">());
        if (!store.stands) {
            run_.assumed.push_back({"store", "stands", sentence_of(Name{"in space"}),
                                    sentence_of(Name{"class default"})});
        }
    } else if (!options.air_around_c) {
        run_.remarks.push_back(say<"days.space_not_known">());
    }
    if (store.moist.value_or(false) && !heat.liquid) {
        run_.remarks.push_back(say<"days.counts_as_dry">());
    }
    switches_ =
        DaySwitches(store_switches(candidate.circuit, run_.remarks, opening_site(candidate.site)),
                    options.switches);
}

void LivedCircuit::take_sun(std::size_t row) {
    if (row_taken_ && row == row_) return;
    row_ = row;
    row_taken_ = true;
    circuit_.set_sun(*weather_, row);
}

LivedCircuit::Electric LivedCircuit::electric(const StoreModel& store, double from_h,
                                              double step_h) {
    const double row_s = weather_->step_h * seconds_per_hour;
    const double longest_s = std::min(electrical_step_s_, row_s);
    const auto parts =
        std::max(1L, static_cast<long>(std::ceil(step_h * seconds_per_hour / longest_s - 1e-9)));
    const double share = 1.0 / static_cast<double>(parts);
    const bool open = switches_.open();
    circuit_.set_wire_current(current_a_);
    const std::size_t count = elements_.size();
    Electric sum{.banks_w = std::vector<double>(count), .banks_a = std::vector<double>(count)};
    std::vector<double> coils_c(count);
    for (long part = 0; part < parts; ++part) {
        const double at_h = from_h + (static_cast<double>(part) + 0.5) * share * step_h;
        const auto row =
            std::min(weather_->size() - 1, static_cast<std::size_t>(at_h / weather_->step_h));
        take_sun(row);
        const double bare = weather_->bare_share[row];
        sum.irradiance_w_m2 += weather_->irradiance_w_m2[row] * share;
        sum.available_w += circuit_.maximum_power_w() * bare * share;
        Flow flow;
        if (!open) {
            for (std::size_t i = 0; i < count; ++i) coils_c[i] = coil_c(store, i, power_w_[i]);
            circuit_.set_coils_c(coils_c);
            flow = circuit_.flow();
        }
        const std::vector<OperatingPoint> points = circuit_.elements_at(flow);
        for (std::size_t i = 0; i < count; ++i) {
            power_w_[i] = points[i].power_w * bare;
            sum.banks_w[i] += power_w_[i] * share;
            sum.banks_a[i] += points[i].current_a * share;
        }
        current_a_ = flow.current_a;
        sum.power_w += flow.power_w * bare * share;
        sum.wire_w += flow.wire_w * bare * share;
        sum.voltage_v += flow.voltage_v * share;
        sum.current_a += flow.current_a * share;
    }
    return sum;
}

void LivedCircuit::record(const Electric& now, const StoreModel& store, double step_h) {
    run_.energy.available_kwh += now.available_w * step_h / 1000.0;
    run_.energy.delivered_kwh += now.power_w * step_h / 1000.0;
    run_.energy.wire_kwh += now.wire_w * step_h / 1000.0;
    DaySeries& series = run_.series;
    series.irradiance_w_m2.push_back(now.irradiance_w_m2);
    series.available_w.push_back(now.available_w);
    series.power_w.push_back(now.power_w);
    series.bank_v.push_back(now.voltage_v);
    series.bank_a.push_back(now.current_a);
    double sheath_c = -zero_celsius_k;
    double hottest_coil_c = -zero_celsius_k;
    std::optional<double> hottest_terminal_c;
    for (std::size_t i = 0; i < elements_.size(); ++i) {
        ElementPeaks at{.sheath_c = store.sheath_c(bank_ + i),
                        .coil_c = coil_c(store, i, now.banks_w[i])};
        if (elements_[i].tail.known()) at.terminal_c = terminal_c(now, store, i);
        sheath_c = std::max(sheath_c, at.sheath_c);
        hottest_coil_c = std::max(hottest_coil_c, at.coil_c);
        if (at.terminal_c) {
            hottest_terminal_c =
                std::max(hottest_terminal_c.value_or(*at.terminal_c), *at.terminal_c);
        }
        if (series.elements.empty()) continue;
        ElementSeries& own = series.elements[i];
        own.power_w.push_back(now.banks_w[i]);
        own.sheath_c.push_back(at.sheath_c);
        own.coil_c.push_back(at.coil_c);
        if (at.terminal_c) own.terminal_c.push_back(*at.terminal_c);
    }
    series.sheath_c.push_back(sheath_c);
    series.coil_c.push_back(hottest_coil_c);
    if (hottest_terminal_c) series.terminal_c.push_back(*hottest_terminal_c);
}

double LivedCircuit::coil_c(const StoreModel& store, std::size_t element, double power_w) const {
    return store.sheath_c(bank_ + element) +
           coil_above_sheath_k(power_w / elements_[element].heated_m);
}

double LivedCircuit::terminal_c(const Electric& now, const StoreModel& store,
                                std::size_t element) const {
    constexpr double hottest_c = 1500.0;
    const TailHeat& tail = elements_[element].tail;
    const Bank& bank = candidate_->circuit.bank;
    const std::size_t place = bank_ + element;
    HotTail hot = tail.beside_wall(store.edge_c(), store.wall_c());
    hot.bed_c = std::min(hottest_c, store.near_leg_c(tail.bed_distance_m, place));
    hot.sheath_c = std::clamp(store.sheath_c(place), hot.bed_c, hottest_c);
    hot.bed_conductivity_w_mk = store.conductivity_w_mk(hot.bed_c);
    hot.pin_a = bank.unlike ? now.banks_a[element] : now.current_a / bank.hookup.parallel;
    hot.current_a = now.current_a;
    if (tail.run.run.carries == Carried::branch) {
        const double over =
            bank.unlike ? bank.unlike->elements[element].current_over_element(true) : 1.0;
        hot.current_a = std::min(now.current_a, *hot.pin_a * over);
    }
    const auto& insulation = tail.run.insulation;
    const TailTemperatures at =
        tail_temperatures(hot, *tail.run.wire, insulation ? &*insulation : nullptr);
    return at.runaway ? hottest_c : at.terminal_c;
}

}  // namespace heatmatch
