#include "heatmatch/match/plan/plan_judge.hpp"

#include "match/candidate/begun_circuit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/heat/joint_layout.hpp"
#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/circuit/bank.hpp"
#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/solar/group_weather.hpp"

namespace heatmatch {

namespace {

/// How many elements of a kind the installation owns.
int owned_of(const Installation& installation, const std::string& element) {
    int owned = 0;
    for (const AllowedElements& entry : installation.elements) {
        if (!entry.any && entry.element == element) owned += entry.count;
    }
    return owned;
}

}  // namespace

bool lies_before(const ExistingCircuit& a, const ExistingCircuit& b) {
    return std::tie(a.element, a.bank, a.elements, a.group, a.panels, a.array) <
           std::tie(b.element, b.bank, b.elements, b.group, b.panels, b.array);
}

PlanJudge::PlanJudge(std::shared_ptr<const Parts> parts, const Installation& installation,
                     const RankOptions& options, const std::shared_ptr<const Weather>& weather)
    : parts_(std::move(parts)), coil_temperature_c_(options.coil_temperature_c) {
    // The runs and devices of the first circuit are the pattern of all.
    pattern_ = existing_circuits(installation).size() > 1 ? installation_of(installation, 0)
                                                          : installation;
    pattern_.circuit.reset();
    pattern_.circuits.clear();
    for (const OwnedPanels& owned : installation.panels) {
        Group group{.owned = owned,
                    .panel = panel_in_service(owned, find_panel(*parts_, owned.panel),
                                              installation.site.record_low_c),
                    .brightest_w_m2 = installation.site.bright_irradiance_w_m2};
        if (weather) {
            group.brightest_w_m2 = std::max(group.brightest_w_m2,
                                            brightest_of_group(*weather, owned, installation.site));
        }
        groups_.push_back(std::move(group));
    }
    devices_ = place_devices(*parts_, pattern_);
    store_ = fill_store(*parts_, pattern_);
}

const PlanJudge::Group& PlanJudge::group_of(const std::string& name) const {
    const auto found = std::find_if(groups_.begin(), groups_.end(),
                                    [&](const Group& group) { return group.owned.group == name; });
    if (found == groups_.end()) static_cast<void>(find_group(pattern_, name));
    return *found;
}

Site PlanJudge::site_of(const ExistingCircuit& circuit) const {
    Site site = pattern_.site;
    for (const std::string& name : groups_of(circuit)) {
        site.bright_irradiance_w_m2 =
            std::max(site.bright_irradiance_w_m2, group_of(name).brightest_w_m2);
    }
    return site;
}

Installation PlanJudge::with(std::span<const ExistingCircuit> circuits) const {
    Installation changed = pattern_;
    changed.circuits.assign(circuits.begin(), circuits.end());
    std::stable_sort(changed.circuits.begin(), changed.circuits.end(), lies_before);
    for (std::size_t i = 0; i < changed.circuits.size(); ++i) {
        if (changed.circuits[i].name.empty()) {
            changed.circuits[i].name = "circuit " + std::to_string(i + 1);
        }
    }
    return changed;
}

Installation PlanJudge::alone(const ExistingCircuit& circuit) const {
    Installation judged = pattern_;
    judged.site = site_of(circuit);
    judged.circuit = circuit;
    return judged;
}

Circuit PlanJudge::panels_of(const ExistingCircuit& circuit) const {
    if (circuit.array.empty()) {
        const Group& group = group_of(circuit.group);
        return {.owned = group.owned,
                .panel = group.panel,
                .panels = parse_hookup(circuit.panels, "circuit", "panels"),
                .name = circuit.name};
    }
    UnlikeArray array{.layout = Layout::parse(circuit.array, "circuit", "array")};
    Hookup panels{.series = 1, .parallel = static_cast<int>(array.layout.strings.size())};
    for (const auto& names : plain_strings(array.layout, "circuit", "array")) {
        std::vector<std::size_t>& string = array.strings.emplace_back();
        for (const std::string& name : names) {
            const Group& group = group_of(name);
            string.push_back(array.add(group.owned, group.panel));
        }
        panels.series = std::max(panels.series, static_cast<int>(string.size()));
    }
    return {.panels = panels,
            .unlike = std::make_shared<const UnlikeArray>(std::move(array)),
            .name = circuit.name};
}

Bank PlanJudge::bank_of(const ExistingCircuit& circuit) const {
    if (!circuit.elements.empty()) {
        return lay_bank(*parts_, circuit.elements, coil_temperature_c_);
    }
    const Hookup bank = parse_hookup(circuit.bank, "circuit", "bank");
    return make_bank(*parts_, find_element(*parts_, circuit.element), bank,
                     std::min(owned_of(pattern_, circuit.element), bank.count()),
                     coil_temperature_c_);
}

Circuit PlanJudge::unwired(const ExistingCircuit& circuit) const {
    Circuit made = panels_of(circuit);
    made.bank = bank_of(circuit);
    made.devices = devices_;
    return made;
}

Circuit PlanJudge::framed(const ExistingCircuit& circuit, const Installation& judged) const {
    const bool by_branch =
        std::any_of(judged.runs.begin(), judged.runs.end(),
                    [](const WireRun& run) { return run.carries == Carried::branch; });
    const std::string key = circuit.group + '\n' + circuit.panels + '\n' + circuit.array + '\n' +
                            (by_branch ? circuit.bank + circuit.elements : std::string());
    {
        const std::scoped_lock lock(frames_lock_);
        const auto known = frames_.find(key);
        if (known != frames_.end()) return known->second;
    }
    Circuit made = unwired(circuit);
    made.runs = lay_runs(*parts_, judged, made);
    const std::scoped_lock lock(frames_lock_);
    return frames_.emplace(key, std::move(made)).first->second;
}

Circuit PlanJudge::laid(const ExistingCircuit& circuit, const Installation& judged) const {
    Circuit made = framed(circuit, judged);
    made.name = circuit.name;
    made.bank = bank_of(circuit);
    return made;
}

Circuit PlanJudge::wired(const ExistingCircuit& circuit) const {
    const Installation judged = alone(circuit);
    Circuit made = laid(circuit, judged);
    made.heat = bank_heat(store_, made.bank);
    if (chooses_for_heat(judged)) {
        lay_for_heat(made, *parts_, judged, bright_extremes(made, judged.site));
    }
    return made;
}

Bill PlanJudge::bill(std::span<const Circuit> circuits) const {
    // Devices are bought for the sun at which they are judged.
    Installation judged = pattern_;
    for (const Group& group : groups_) {
        judged.site.bright_irradiance_w_m2 =
            std::max(judged.site.bright_irradiance_w_m2, group.brightest_w_m2);
    }
    return joint_bill(circuits, judged, *parts_);
}

void PlanJudge::add_bill(PlanVerdict& verdict, std::span<const Circuit> circuits) const {
    const Bill whole = bill(circuits);
    verdict.price = whole.typical().value_or(std::numeric_limits<double>::infinity());
    verdict.affordable = whole.within_budget() == Answer::yes;
    for (const BillLine& line : whole.lines) {
        if (line.kind != PartKind::wire)
            verdict.parts += static_cast<int>(std::lround(line.quantity));
    }
}

PlanVerdict PlanJudge::price(std::span<const ExistingCircuit> circuits) const {
    std::vector<Circuit> made;
    for (const ExistingCircuit& circuit : with(circuits).circuits) made.push_back(wired(circuit));
    PlanVerdict verdict;
    add_bill(verdict, made);
    return verdict;
}

bool PlanJudge::fit(std::span<const ExistingCircuit> circuits) const {
    if (!store_) return true;
    std::vector<BankInStore> banks;
    for (const ExistingCircuit& circuit : circuits) {
        const Bank bank = bank_of(circuit);
        if (!bank.unlike) {
            banks.push_back({.element = bank.element, .elements = bank.hookup.count()});
            continue;
        }
        for (const Bank& one : bank.unlike->elements) banks.push_back({.element = one.element});
    }
    try {
        return joint_layout(banks, store_->store).front().misfit.empty();
    } catch (const InvalidInput&) {
        return true;  // sizes are missing: the margin says so
    }
}

PlanVerdict PlanJudge::judge(std::span<const ExistingCircuit> circuits) const {
    const Installation all = with(circuits);
    if (!fit(all.circuits)) {
        // Elements that do not fit are a danger whatever else is found.
        return {.danger = true,
                .headroom = -1.0,
                .heat_headroom = -1.0,
                .reason = "fit in store",
                .subject = "store",
                .price = std::numeric_limits<double>::infinity(),
                .element_w = std::vector<double>(circuits.size(), 0.0)};
    }
    std::vector<BegunCircuit> begun;
    for (const ExistingCircuit& circuit : all.circuits) {
        BegunCircuit one{.judged = alone(circuit)};
        one.circuit = laid(circuit, one.judged);
        begun.push_back(std::move(one));
    }
    share_store(begun, *parts_);
    if (chooses_for_heat(pattern_)) {
        for (BegunCircuit& one : begun) {
            lay_for_heat(one.circuit, *parts_, one.judged,
                         bright_extremes(one.circuit, one.judged.site));
        }
        if (begun.size() > 1) share_store(begun, *parts_);
    }
    count_limits(begun);
    PlanVerdict verdict;
    std::vector<Circuit> wired;
    for (const BegunCircuit& one : begun) {
        Candidate candidate{.circuit = one.circuit, .site = one.judged.site};
        candidate.bright = bright_extremes(one.circuit, one.judged.site);
        verdict.element_w.push_back(candidate.bright.element_power_w);
        for (const Margin& margin : candidate.margins()) verdict.add(margin);
        if (verdict.danger && begun.size() > 1) {
            verdict.price = std::numeric_limits<double>::infinity();
            return verdict;
        }
        wired.push_back(one.circuit);
    }
    add_bill(verdict, wired);
    return verdict;
}

}  // namespace heatmatch
