#include "needed_devices.hpp"

#include "device_search.hpp"
#include "sentences_of_bill.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/string_protection.hpp"

namespace heatmatch {

namespace {

using candidate_sentences::of_bill::say;

/// What a circuit has, and what it needs in addition.
class Needs {
  public:
    Needs(const Circuit& circuit, const Site& site, const Parts& catalog, std::string_view currency)
        : search_(circuit, site, catalog, currency) {}

    NeededDevices all() {
        add_listed();
        add_disconnect();
        add_sensor(Occasion::limit);
        add_sensor(Occasion::thermostat);
        add_fuses();
        return std::move(found_);
    }

  private:
    void buy(const Control* control, Sentence why, bool of_store = false, int count = 1) {
        NeededDevice needed{.count = count, .why = std::move(why), .of_store = of_store};
        if (control != nullptr) {
            needed.control = *control;
        } else {
            needed.why = say<"bill.no_part">(with<"why">(std::move(needed.why)));
        }
        found_.devices.push_back(std::move(needed));
    }

    /// Why it can do nothing here; empty if it can, or may.
    [[nodiscard]] Sentence useless(const PlacedDevice& placed) const {
        const Device& device = placed.device;
        if (placed.control.sense_high_c) {
            if (search_.can_act(placed)) return {};
            if (!in_range(placed.control, device.set_c)) {
                return say<"bill.out_of_range">(with<"set">(*device.set_c, unit::celsius));
            }
            const Occasion occasion = is_limit(placed) ? Occasion::limit : Occasion::thermostat;
            return opens(circuit(), placed, occasion, search_.at()).why;
        }
        if (device.duty == Duty::protects_a_string) {
            return needs_fuses() && !protects(placed) ? say<"bill.no_fuse">() : Sentence{};
        }
        if (device.duty != Duty::breaks_dc || placed.control.detects) return {};
        Opening by_hand = opens(circuit(), placed, Occasion::by_hand, search_.by_hand());
        if (by_hand.answer != Answer::no) return {};
        for (const Occasion occasion : {Occasion::limit, Occasion::thermostat}) {
            if (search_.driven({placed.control.id}, occasion) != Answer::no) return {};
        }
        return std::move(by_hand.why);
    }

    /// One in each string or branch where its run is one of several.
    [[nodiscard]] int count_of(const PlacedDevice& placed) const {
        const RunParts* run = run_of(circuit(), placed);
        const bool of_string = placed.device.duty == Duty::protects_a_string ||
                               (run != nullptr && run->run.carries == Carried::string);
        if (of_string) return circuit().panels.parallel;
        const bool of_branch = run != nullptr && run->run.carries == Carried::branch;
        return of_branch ? circuit().bank.branches() : 1;
    }

    void add_listed() {
        for (const PlacedDevice& placed : circuit().devices) {
            const Device& device = placed.device;
            if (Sentence why = useless(placed); !why.empty()) {
                found_.remarks.push_back(say<"bill.not_used">(with<"device">(placed.control.id),
                                                              with<"why">(std::move(why))));
                continue;
            }
            Sentence place;
            if (!device.run.empty()) place = say<"bill.place">(with<"run">(device.run));
            found_.devices.push_back({.control = placed.control,
                                      .count = count_of(placed),
                                      .owned = device.owned,
                                      .why = say<"bill.listed">(with<"duty">(word_of(device.duty)),
                                                                with<"place">(std::move(place))),
                                      .of_store = placed.circuits > 1});
        }
    }

    void add_disconnect() {
        const auto opens_by_hand = [this](const PlacedDevice& placed) {
            return opens(circuit(), placed, Occasion::by_hand, search_.by_hand()).answer ==
                   Answer::yes;
        };
        const auto& listed = circuit().devices;
        if (std::any_of(listed.begin(), listed.end(), opens_by_hand)) return;
        const Control* found = search_.cheapest([&](const Control& control) {
            return operated_of(control) == OperatedKind::by_hand && !control.dc_ratings.empty() &&
                   search_.placed(control, opens_by_hand);
        });
        buy(found, say<"bill.disconnect">(with<"volts">(search_.volts()),
                                          with<"amperes">(search_.amperes())));
    }

    /// Whether a listed sensor opens the circuit with some wiring of the listed devices.
    [[nodiscard]] bool is_met(const std::vector<PlacedDevice>& sensors, Occasion occasion) const {
        return std::any_of(sensors.begin(), sensors.end(), [&](PlacedDevice sensor) {
            if (!search_.can_act(sensor)) return false;
            sensor.device.set_c = sensor.device.set_c.value_or(*sensor.control.sense_high_c);
            if (sensor.device.duty != Duty::breaks_dc) sensor.device.drives = search_.breakers();
            return opens(circuit(), sensor, occasion, search_.at()).answer == Answer::yes;
        });
    }

    /// The limit, or the thermostat if one is listed, and what it opens.
    void add_sensor(Occasion occasion) {
        const bool limit = occasion == Occasion::limit;
        std::vector<PlacedDevice> listed;
        for (const PlacedDevice& placed : circuit().devices) {
            if (placed.control.sense_high_c && is_limit(placed) == limit) listed.push_back(placed);
        }
        if ((listed.empty() && !limit) || is_met(listed, occasion)) return;
        const bool has_sensor = std::any_of(listed.begin(), listed.end(), [this](const auto& each) {
            return each.device.duty != Duty::breaks_dc && search_.can_act(each);
        });
        const bool has_breaker = search_.driven(search_.breakers(), occasion) == Answer::yes;
        std::optional<double> set_c;
        if (!listed.empty()) set_c = listed.front().device.set_c;
        const auto suits = [&](const Control& control) {
            return control.sense_high_c && stays_open(control) == limit &&
                   !control.ac_only.value_or(false) && in_range(control, set_c);
        };
        const auto by_itself = [&](PlacedDevice trial) {
            trial.device.set_c = set_c.value_or(*trial.control.sense_high_c);
            return opens(circuit(), trial, occasion, search_.at()).answer == Answer::yes;
        };
        const Control* alone = search_.cheapest([&](const Control& control) {
            return suits(control) && search_.placed(control, by_itself);
        });
        const Control* sensor = has_sensor ? nullptr : search_.cheapest(suits);
        const Control* breaker =
            has_breaker ? nullptr : search_.cheapest([&](const Control& control) {
                return search_.breaker(control, occasion).has_value();
            });
        const bool possible =
            (has_sensor || sensor != nullptr) && (has_breaker || breaker != nullptr);
        const double together = (has_sensor ? 0.0 : search_.price_of(sensor)) +
                                (has_breaker ? 0.0 : search_.price_of(breaker));
        Sentence what = limit ? say<"bill.limit">() : say<"bill.thermostat">();
        if (alone != nullptr && (!possible || search_.price_of(alone) < together)) {
            buy(alone, std::move(what));
            return;
        }
        if (!has_sensor) buy(sensor, std::move(what), true);
        if (has_breaker) return;
        const auto volts = with<"volts">(search_.volts());
        const auto amperes = with<"amperes">(search_.amperes());
        buy(breaker, limit ? say<"bill.limit_breaker">(volts, amperes)
                           : say<"bill.thermostat_breaker">(volts, amperes));
        // The thermostat may open it too.
        if (breaker != nullptr) search_.add(*search_.breaker(*breaker, occasion));
    }

    /// Reverse current into a string, as its margin computes it.
    [[nodiscard]] double fed_a() const { return lasting_fed_a(circuit()); }

    /// The smallest fuse rating of any panel; empty where one does not state it.
    [[nodiscard]] std::optional<double> rated_a() const {
        std::optional<double> least;
        for (const PanelInService* panel : circuit().kinds_of_panels()) {
            const auto& rated = panel->panel.max_series_fuse_a;
            if (!rated) return std::nullopt;
            least = std::min(least.value_or(*rated), *rated);
        }
        return least;
    }

    [[nodiscard]] bool needs_fuses() const {
        const auto rated = rated_a();
        return circuit().panels.parallel > 1 && (!rated || fed_a() > *rated);
    }

    /// Whether it limits the current into a string to the fuse rating of every panel that states
    /// one.
    [[nodiscard]] bool protects(const PlacedDevice& placed) const {
        const auto fuse_a = string_protection_a(circuit(), placed);
        const auto kinds = circuit().kinds_of_panels();
        return fuse_a && std::all_of(kinds.begin(), kinds.end(), [&](const PanelInService* panel) {
                   return *fuse_a <= panel->panel.max_series_fuse_a.value_or(*fuse_a);
               });
    }

    void add_fuses() {
        const auto protects_one = [this](const PlacedDevice& placed) { return protects(placed); };
        const auto& listed = circuit().devices;
        if (!needs_fuses() || std::any_of(listed.begin(), listed.end(), protects_one)) return;
        std::string run;
        for (const RunParts& parts : circuit().runs) {
            if (parts.run.carries == Carried::string) run = parts.run.name;
        }
        const double least_a = table_current_factor * circuit().string_current_a();
        const Control* found = search_.cheapest([&](const Control& control) {
            PlacedDevice trial = DeviceSearch::in_run(control, run);
            trial.device.duty = Duty::protects_a_string;
            return protects(trial) && *string_protection_a(circuit(), trial) >= least_a;
        });
        const auto rated = rated_a();
        const auto fed = with<"fed">(fed_a(), unit::ampere);
        buy(found,
            rated ? say<"bill.fuse">(fed, with<"rated">(*rated, unit::ampere))
                  : say<"bill.fuse_unstated">(fed, with<"field">("max_series_fuse_a")),
            false, circuit().panels.parallel);
    }

    [[nodiscard]] const Circuit& circuit() const { return search_.circuit(); }

    DeviceSearch search_;
    NeededDevices found_{};
};

}  // namespace

NeededDevices needed_devices(const Circuit& circuit, const Site& site, const Parts& catalog,
                             std::string_view currency) {
    return Needs(circuit, site, catalog, currency).all();
}

}  // namespace heatmatch
