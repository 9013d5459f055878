#include "state.hpp"

#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch::python {

namespace {

template <class Record>
Record record_from(std::span<const Field> fields, const py::handle& dict,
                   const std::string& title) {
    Record record{};
    fill_record(fields, &record, dict.cast<py::dict>(), title);
    return record;
}

template <class P>
py::object part_state(const std::optional<P>& part) {
    if (!part) return py::none();
    return py::str(part_to_json(Part{*part}, -1));
}

template <class P>
std::optional<P> part_from(PartKind kind, const py::handle& state) {
    if (state.is_none()) return std::nullopt;
    return std::get<P>(part_from_json(kind, state.cast<std::string>()));
}

}  // namespace

py::tuple state_of(const RunParts& parts) {
    return py::make_tuple(state_of(parts.run), part_state(parts.wire), part_state(parts.insulation),
                          part_state(parts.connector), parts.conductor_c);
}

RunParts run_parts_from(const py::tuple& state) {
    return {.run = wire_run_from(state[0].cast<py::tuple>()),
            .wire = part_from<Wire>(PartKind::wire, state[1]),
            .insulation = part_from<Insulation>(PartKind::insulation, state[2]),
            .connector = part_from<Connector>(PartKind::connector, state[3]),
            .conductor_c = state[4].cast<double>()};
}

py::tuple state_of(const PlacedDevice& placed) {
    return py::make_tuple(state_of(placed.device), part_to_json(Part{placed.control}, -1),
                          placed.circuits);
}

PlacedDevice placed_device_from(const py::tuple& state) {
    return {.device = device_from(state[0].cast<py::tuple>()),
            .control = *part_from<Control>(PartKind::control, state[1]),
            .circuits = state[2].cast<int>()};
}

namespace {

py::object place_state(const std::optional<PlaceInBank>& place) {
    if (!place) return py::none();
    return py::make_tuple(place->share_of_bank, place->share_of_branch, place->branch_share,
                          place->branch_wire_share);
}

std::optional<PlaceInBank> place_from(const py::handle& state) {
    if (state.is_none()) return std::nullopt;
    const auto numbers = state.cast<std::vector<double>>();
    return PlaceInBank{.share_of_bank = numbers[0],
                       .share_of_branch = numbers[1],
                       .branch_share = numbers[2],
                       .branch_wire_share = numbers[3]};
}

}  // namespace

py::tuple state_of(const Bank& bank) {
    if (bank.unlike) {
        return py::make_tuple(bank.unlike->tree.layout.text(), states_of(bank.unlike->elements));
    }
    return py::make_tuple(part_to_json(Part{bank.element}, -1), part_state(bank.alloy),
                          bank.hookup.label(), bank.owned, bank.coil_temperature_c,
                          part_state(bank.sheath), place_state(bank.place));
}

Bank bank_from(const py::tuple& state) {
    constexpr std::size_t of_unlike = 2;
    if (state.size() == of_unlike) {
        return bank_of(BankTree::parse(state[0].cast<std::string>(), "bank", "elements"),
                       items_from(state[1], bank_from));
    }
    Bank bank{.element = *part_from<Element>(PartKind::element, state[0]),
              .alloy = part_from<Alloy>(PartKind::alloy, state[1]),
              .sheath = part_from<Sheath>(PartKind::sheath, state[5]),
              .hookup = parse_hookup(state[2].cast<std::string>(), "bank", "hookup"),
              .owned = state[3].cast<int>(),
              .coil_temperature_c = state[4].cast<double>()};
    bank.each = element_resistance(bank.element, bank.alloy ? &*bank.alloy : nullptr,
                                   bank.coil_temperature_c);
    bank.place = place_from(state[6]);
    return bank;
}

py::tuple state_of(const WireRun& run) {
    return py::make_tuple(record_to_dict(wire_run_fields(), &run),
                          record_to_dict(surroundings_fields(), &run.surroundings));
}

WireRun wire_run_from(const py::tuple& state) {
    auto run = record_from<WireRun>(wire_run_fields(), state[0], "run");
    run.surroundings = record_from<Surroundings>(surroundings_fields(), state[1], "surroundings");
    return run;
}

py::tuple state_of(const OwnedPanels& owned) {
    py::object measured = py::none();
    if (owned.measured) measured = record_to_dict(panel_measurement_fields(), &*owned.measured);
    return py::make_tuple(record_to_dict(owned_panels_fields(), &owned), measured);
}

OwnedPanels owned_panels_from(const py::tuple& state) {
    auto owned = record_from<OwnedPanels>(owned_panels_fields(), state[0], "panels");
    if (!state[1].is_none()) {
        owned.measured =
            record_from<PanelMeasurement>(panel_measurement_fields(), state[1], "measured");
    }
    return owned;
}

py::tuple state_of(const Device& device) {
    return py::make_tuple(record_to_dict(device_fields(), &device));
}

Device device_from(const py::tuple& state) {
    return record_from<Device>(device_fields(), state[0], "device");
}

Store store_from(const py::handle& state) {
    return record_from<Store>(store_fields(), state, "store");
}

namespace {

py::list other_bank_states(const FilledStore& store) {
    py::list states;
    for (const OtherBank& other : store.others) {
        states.append(py::make_tuple(other.circuit, part_to_json(Part{other.element}, -1),
                                     other.elements, other.element_w, other.limited, other.own,
                                     other.goes_on));
    }
    return states;
}

std::vector<OtherBank> other_banks_from(const py::handle& states) {
    std::vector<OtherBank> others;
    for (const py::handle& each : states) {
        const auto state = each.cast<py::tuple>();
        others.push_back({.circuit = state[0].cast<std::string>(),
                          .element = *part_from<Element>(PartKind::element, state[1]),
                          .elements = state[2].cast<int>(),
                          .element_w = state[3].cast<double>(),
                          .limited = state[4].cast<bool>(),
                          .own = state[5].cast<bool>(),
                          .goes_on = state[6].cast<bool>()});
    }
    return others;
}

}  // namespace

py::tuple state_of(const BankHeat& heat) {
    const FilledStore& store = *heat.store;
    return py::make_tuple(record_to_dict(store_fields(), &store.store),
                          part_to_json(Part{store.medium}, -1), store.charge_hours, store.air_c,
                          store.hottest_air_c, assumption_states(store.assumed),
                          heat.unlike ? py::object(state_of(Bank{.unlike = heat.unlike}))
                                      : py::object(py::str(part_to_json(Part{heat.element}, -1))),
                          part_state(heat.sheath), heat.coil_limit_c, heat.elements,
                          other_bank_states(store), store.place);
}

std::shared_ptr<const BankHeat> bank_heat_from(const py::tuple& state) {
    auto store = std::make_shared<FilledStore>();
    store->store = store_from(state[0]);
    store->medium = *part_from<Medium>(PartKind::medium, state[1]);
    store->charge_hours = state[2].cast<double>();
    store->air_c = state[3].cast<double>();
    store->hottest_air_c = state[4].cast<double>();
    store->assumed = assumptions_from(state[5]);
    store->others = other_banks_from(state[10]);
    store->place = state[11].cast<std::size_t>();
    if (py::isinstance<py::tuple>(state[6])) {
        return bank_heat(std::move(store), bank_from(state[6].cast<py::tuple>()));
    }
    // Of the alloy only its limit counts here.
    std::optional<Alloy> alloy;
    if (const auto limit_c = state[8].cast<std::optional<double>>()) {
        alloy = Alloy{.limit_c = limit_c};
    }
    return bank_heat(std::move(store), *part_from<Element>(PartKind::element, state[6]),
                     part_from<Sheath>(PartKind::sheath, state[7]), alloy, state[9].cast<int>());
}

py::tuple state_of(const Margin& margin) {
    return py::make_tuple(margin.name, margin.subject, static_cast<int>(margin.severity),
                          static_cast<int>(margin.consequence), margin.value, margin.value_low,
                          margin.value_high, margin.limit, std::string(margin.unit.symbol),
                          margin.headroom, margin.said, margin.source,
                          assumption_states(margin.assumed), margin.missing,
                          static_cast<int>(margin.worst_severity), margin.careful_headroom);
}

Margin margin_from(const py::tuple& state) {
    const auto symbol = state[8].cast<std::string>();
    const Unit* unit = find_unit(symbol);
    using Maybe = std::optional<double>;
    return {.name = state[0].cast<std::string>(),
            .subject = state[1].cast<std::string>(),
            .severity = static_cast<Severity>(state[2].cast<int>()),
            .consequence = static_cast<Severity>(state[3].cast<int>()),
            .worst_severity = static_cast<Severity>(state[14].cast<int>()),
            .value = state[4].cast<Maybe>(),
            .value_low = state[5].cast<Maybe>(),
            .value_high = state[6].cast<Maybe>(),
            .limit = state[7].cast<Maybe>(),
            .unit = unit == nullptr ? Unit{} : *unit,
            .headroom = state[9].cast<Maybe>(),
            .careful_headroom = state[15].cast<Maybe>(),
            .said = state[10].cast<Sentence>(),
            .source = state[11].cast<std::string>(),
            .assumed = assumptions_from(state[12]),
            .missing = state[13].cast<std::vector<std::string>>()};
}

py::tuple state_of(const Delivered& delivered) {
    return py::make_tuple(delivered.irradiance_w_m2, delivered.cell_temperature_c,
                          delivered.power_low_w, delivered.power_w, delivered.power_high_w,
                          delivered.voltage_v, delivered.current_a, delivered.wire_w,
                          delivered.maximum_power_w);
}

Delivered delivered_from(const py::tuple& state) {
    const auto number = [&state](std::size_t i) { return state[i].cast<double>(); };
    return {number(0), number(1), number(2), number(3), number(4),
            number(5), number(6), number(7), number(8)};
}

}  // namespace heatmatch::python
