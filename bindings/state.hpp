#pragma once

#include "pybind.hpp"

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"

/// Content of pickles: plain dicts and tuples, from the field tables.
namespace heatmatch::python {

[[nodiscard]] py::tuple state_of(const WireRun& run);
[[nodiscard]] WireRun wire_run_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const OwnedPanels& owned);
[[nodiscard]] OwnedPanels owned_panels_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Device& device);
[[nodiscard]] Device device_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const RunParts& parts);
[[nodiscard]] RunParts run_parts_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const PlacedDevice& placed);
[[nodiscard]] PlacedDevice placed_device_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Bank& bank);
[[nodiscard]] Bank bank_from(const py::tuple& state);
[[nodiscard]] Store store_from(const py::handle& state);
[[nodiscard]] py::tuple state_of(const BankHeat& heat);
[[nodiscard]] std::shared_ptr<const BankHeat> bank_heat_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Extremes& bright);
[[nodiscard]] Extremes extremes_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Margin& margin);
[[nodiscard]] Margin margin_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Circuit& circuit);
[[nodiscard]] Circuit circuit_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Season& season);
[[nodiscard]] Season season_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const SpaceBalance& space);
[[nodiscard]] SpaceBalance space_balance_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Bill& bill);
[[nodiscard]] Bill bill_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Candidate& candidate);
[[nodiscard]] Candidate candidate_from(const py::tuple& state);
[[nodiscard]] py::tuple state_of(const Delivered& delivered);
[[nodiscard]] Delivered delivered_from(const py::tuple& state);

/// The runs of a candidate against a catalog, or the parts it was chosen among.
[[nodiscard]] std::vector<WireCheck> checked_wires(const Candidate& candidate,
                                                   const Catalog* catalog);

/// A tuple of the states of all items.
template <class Item>
py::tuple states_of(const std::vector<Item>& items) {
    py::tuple states(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) states[i] = state_of(items[i]);
    return states;
}

template <class Item>
std::vector<Item> items_from(const py::handle& states, Item (*read)(const py::tuple&)) {
    std::vector<Item> items;
    for (const py::handle& state : states) items.push_back(read(state.cast<py::tuple>()));
    return items;
}

}  // namespace heatmatch::python
