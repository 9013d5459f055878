#include "heatmatch/match/margins/careful_case.hpp"

#include <algorithm>
#include <memory>
#include <utility>

#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

namespace {

/// Sets facts of records one by one and lists them.
class CarefulFill {
  public:
    explicit CarefulFill(const UnstatedFact* only) : only_(only) {}

    /// Whether any fact of the record was set.
    bool operator()(const std::string& part, std::span<const Field> fields, void* record) {
        std::size_t filled = 0;
        for (const Field& field : fields) {
            if (std::holds_alternative<std::monostate>(field.careful)) continue;
            if (!std::holds_alternative<std::monostate>(field.get(record))) continue;
            if (!takes({part, std::string(field.name)})) continue;
            field.set(record, field.careful);
            ++filled;
        }
        return filled > 0;
    }

    template <class Part>
    bool operator()(const char* kind, std::span<const Field> fields, std::optional<Part>& part) {
        return part && (*this)(quoted(kind, part->id), fields, &*part);
    }

    /// Whether this fact is to be set; it is then listed.
    bool takes(UnstatedFact fact) {
        if (only_ != nullptr && !(fact == *only_)) return false;
        const bool known = std::find(facts.begin(), facts.end(), fact) != facts.end();
        if (!known) facts.push_back(std::move(fact));
        return true;
    }

    static std::string quoted(const char* kind, const std::string& name) {
        return std::string(kind) + " \"" + name + '"';
    }

    std::vector<UnstatedFact> facts{};

  private:
    const UnstatedFact* only_;
};

/// String protection without a stated run counts as placed behind the joint of the strings, where
/// it protects none; without such a run it is omitted.
void place_string_protection(Circuit& circuit, CarefulFill& fill) {
    if (circuit.panels.parallel == 1) return;
    const auto behind =
        std::find_if(circuit.runs.begin(), circuit.runs.end(),
                     [](const RunParts& parts) { return parts.run.carries != Carried::string; });
    std::erase_if(circuit.devices, [&](PlacedDevice& placed) {
        if (placed.device.duty != Duty::protects_a_string || !placed.device.run.empty())
            return false;
        if (!fill.takes({CarefulFill::quoted("device", placed.control.id), "run"})) return false;
        if (behind == circuit.runs.end()) return true;
        placed.device.run = behind->run.name;
        return false;
    });
}

/// Legs whose position is not stated may be as near to each face as is plausible, upright or
/// horizontal.
UnstatedPlaces unstated_places(const Store& store, CarefulFill& fill) {
    const auto takes = [&fill](const char* field) { return fill.takes({"store", field}); };
    return {.height = !store.element_height_mm && takes("element_height_mm"),
            .aside = !store.from_axis_mm && takes("from_axis_mm"),
            .way = !store.element_lies && takes("element_lies")};
}

/// The heat of a bank in a store with other facts.
std::shared_ptr<const BankHeat> heat_in(const Store& store, const UnstatedPlaces& unstated,
                                        const Circuit& circuit) {
    const BankHeat& heat = *circuit.heat;
    auto filled = std::make_shared<FilledStore>(*heat.store);
    filled->store = store;
    filled->unstated = unstated;
    const double air_c = store.air_c.value_or(filled->air_c);
    const double hours = store.charge_hours.value_or(filled->charge_hours);
    if (air_c != filled->air_c || hours != filled->charge_hours ||
        store.moist != heat.store->store.moist || store.stands_on != heat.store->store.stands_on ||
        unstated != heat.store->unstated) {
        filled->hottest_air_c = std::max(filled->hottest_air_c, air_c);
        filled->air_c = air_c;
        filled->charge_hours = hours;
        return bank_heat(std::move(filled), circuit.bank);
    }
    auto same = std::make_shared<BankHeat>(heat);
    same->store = std::move(filled);
    return same;
}

/// Whether any fact of a panel was set: it has more current then.
bool fill_panels(Circuit& circuit, CarefulFill& fill) {
    const auto fill_one = [&fill](Panel& panel) {
        return fill(CarefulFill::quoted("panel", panel.id), panel_fields(), &panel);
    };
    if (!circuit.unlike) return fill_one(circuit.panel.panel);
    auto array = std::make_shared<UnlikeArray>(*circuit.unlike);
    bool filled = false;
    for (GroupInArray& group : array->groups) filled |= fill_one(group.panel.panel);
    if (filled) circuit.unlike = std::move(array);
    return filled;
}

/// A higher current makes wires hotter and increases their resistance.
void warm_wires(Circuit& circuit, const Site& site) {
    const double bright_a =
        circuit.short_circuit_current_a() * site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    for (RunParts& parts : circuit.runs) {
        if (!parts.wire) continue;
        const auto found = parts.temperature(bright_a * circuit.current_share(parts.run));
        if (found && !found->runaway) parts.conductor_c = found->conductor_c;
    }
}

void fill_element(Bank& bank, CarefulFill& fill) {
    fill(CarefulFill::quoted("element", bank.element.id), element_fields(), &bank.element);
    fill("sheath", sheath_fields(), bank.sheath);
}

void fill_bank(Bank& bank, CarefulFill& fill) {
    if (!bank.unlike) return fill_element(bank, fill);
    auto filled = std::make_shared<UnlikeBank>(*bank.unlike);
    for (Bank& element : filled->elements) fill_element(element, fill);
    bank.unlike = std::move(filled);
}

}  // namespace

CarefulCase careful_case(const Circuit& circuit, const Site& site, const UnstatedFact* only) {
    CarefulCase made{.circuit = circuit, .site = site};
    CarefulFill fill(only);
    fill("site", site_fields(), &made.site);
    const bool more_amperes = fill_panels(made.circuit, fill);
    fill_bank(made.circuit.bank, fill);
    for (RunParts& parts : made.circuit.runs) {
        const std::string name = CarefulFill::quoted("run", parts.run.name);
        bool filled = fill(name, wire_run_fields(), &parts.run);
        filled |= fill(name, surroundings_fields(), &parts.run.surroundings);
        filled |= fill("wire", wire_fields(), parts.wire);
        filled |= fill("insulation", insulation_fields(), parts.insulation);
        filled |= fill("connector", connector_fields(), parts.connector);
        if (filled || more_amperes) parts.brightest.reset();
    }
    if (more_amperes) warm_wires(made.circuit, made.site);
    for (PlacedDevice& placed : made.circuit.devices) {
        const std::string name = CarefulFill::quoted("device", placed.control.id);
        const bool stated = placed.device.senses.has_value();
        fill(name, device_fields(), &placed.device);
        placed.anywhere = !stated && placed.device.senses.has_value();
        fill(name, control_fields(), &placed.control);
    }
    place_string_protection(made.circuit, fill);
    if (circuit.heat && circuit.heat->store) {
        Store store = circuit.heat->store->store;
        const bool filled = fill("store", store_fields(), &store);
        const UnstatedPlaces unstated =
            circuit.heat->liquid ? UnstatedPlaces{} : unstated_places(store, fill);
        if (filled || unstated != UnstatedPlaces{}) {
            made.circuit.heat = heat_in(store, unstated, circuit);
        }
    }
    made.facts = std::move(fill.facts);
    return made;
}

}  // namespace heatmatch
