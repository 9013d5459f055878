#include "heatmatch/answer/drawing_labels.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <utility>

#include "heatmatch/answer/first_screen.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Sentence distance_of(const std::optional<double>& mm) {
    return sentence_of(Amount{.value = mm.value_or(0.0), .unit = unit::millimetre});
}

Sentence metres(const std::optional<double>& length) {
    if (!length) return say<"drawing.unknown">();
    return sentence_of(Amount{.value = *length, .unit = unit::metre});
}

Sentences labels_of_run(const RunParts& run) {
    Sentence length = say<"drawing.length">(with<"length">(run.run.length_m, unit::metre));
    if (!run.wire) return {say<"drawing.no_wire">(), std::move(length)};
    const Amount size{.value = run.wire->area_mm2, .unit = unit::square_millimetre};
    Amount other = size;
    other.shown = Shown::other;
    return {name_cell(run.wire->label),
            say<"drawing.size">(with<"size">(size), with<"other">(other)), std::move(length)};
}

Sentence doing_of(const Device& device) {
    if (device.duty == Duty::senses_only) {
        Sentence set;
        if (device.set_c) set = say<"drawing.set">(with<"degrees">(*device.set_c, unit::celsius));
        return say<"drawing.senses">(
            with<"place">(shown_choice(device.senses.value_or(SensedPlace::wall))),
            with<"set">(std::move(set)));
    }
    if (device.run.empty())
        return say<"drawing.elsewhere">(with<"duty">(shown_choice(device.duty)));
    return choice_cell(device.duty);
}

Sentence size_of(const Store& store, const std::string& fill) {
    const auto name = with<"fill">(fill);
    const auto height = with<"height">(metres(store.height_m));
    if (store.shape == StoreShape::cylinder && store.diameter_m) {
        return say<"drawing.cylinder">(name, with<"diameter">(metres(store.diameter_m)), height);
    }
    if (store.shape == StoreShape::box && (store.width_m || store.depth_m)) {
        return say<"drawing.box">(name, with<"width">(metres(store.width_m)),
                                  with<"depth">(metres(store.depth_m)), height);
    }
    return say<"drawing.no_size">(name);
}

Sentence place_of(const Store& store) {
    Sentence spacing;
    Sentence height;
    Sentence axis;
    if (store.element_spacing_mm) {
        spacing = say<"drawing.spacing">(with<"distance">(distance_of(store.element_spacing_mm)));
    }
    if (store.element_height_mm) {
        height = say<"drawing.height">(with<"distance">(distance_of(store.element_height_mm)));
    }
    if (store.from_axis_mm) {
        axis = *store.from_axis_mm > 0.0
                   ? say<"drawing.axis">(with<"distance">(distance_of(store.from_axis_mm)))
                   : say<"drawing.middle">();
    }
    const bool nothing = spacing.empty() && height.empty() && axis.empty();
    if (nothing && !store.element_lies) return say<"drawing.not_placed">();
    const auto apart = with<"spacing">(std::move(spacing));
    const auto above = with<"height">(std::move(height));
    const auto aside = with<"axis">(std::move(axis));
    if (!store.element_lies) return say<"drawing.placed">(apart, above, aside);
    return *store.element_lies ? say<"drawing.lie">(apart, above, aside)
                               : say<"drawing.upright">(apart, above, aside);
}

Sentence around(const Store& store) {
    Sentence base;
    Sentence clear;
    if (store.stands_on) base = say<"drawing.base">(with<"base">(shown_choice(store.stands_on)));
    if (store.combustible_distance_mm) {
        clear = say<"drawing.clear">(with<"distance">(distance_of(store.combustible_distance_mm)));
    }
    if (!store.vessel) {
        return say<"drawing.no_vessel">(with<"base">(std::move(base)),
                                        with<"clear">(std::move(clear)));
    }
    return say<"drawing.vessel">(with<"vessel">(shown_choice(store.vessel)),
                                 with<"base">(std::move(base)), with<"clear">(std::move(clear)));
}

}  // namespace

DrawingLabels drawing_labels(const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    DrawingLabels labels{
        .array = {shop_panels(circuit),
                  say<"drawing.array">(
                      with<"volts">(circuit.cold_voltage_v(), unit::volt),
                      with<"amps">(circuit.short_circuit_current_a(), unit::ampere))},
        .bank = {say<"drawing.bank">(with<"elements">(shop_elements(circuit)),
                                     with<"ohm">(circuit.bank.typical_ohm(), unit::ohm))}};
    if (!candidate.delivered.empty()) {
        const Delivered& at = candidate.delivered.front();
        labels.working = {say<"drawing.working">(
            with<"volts">(at.voltage_v, unit::volt), with<"amps">(at.current_a, unit::ampere),
            with<"sun">(at.irradiance_w_m2, unit::watt_per_m2))};
    }
    for (const RunParts& run : circuit.runs) labels.runs.push_back(labels_of_run(run));
    for (const PlacedDevice& placed : circuit.devices) {
        labels.devices.push_back({name_cell(placed.control.label), doing_of(placed.device)});
    }
    return labels;
}

Sentences store_labels(const Candidate& candidate) {
    const auto& heat = candidate.circuit.heat;
    if (!heat || !heat->store) return {};
    const Store& store = heat->store->store;
    return {size_of(store, heat->store->medium.label), place_of(store), around(store)};
}

}  // namespace heatmatch
