#include "demo.hpp"
#include "random_yard.hpp"
#include "yard_parts.hpp"

#include <algorithm>
#include <array>
#include <string_view>

using heatmatch::Installation;

namespace {

constexpr auto control_ids = std::to_array<std::string_view>(
    {"pv-isolator-4-pole", "pv-isolator-2-pole", "pv-switch-fuses-600-v",
     "dc-breaker-polarised-2-pole", "dc-breaker-non-polarised-2-pole", "gpv-fuse-10x38",
     "gpv-fuse-20-a", "dc-contactor-sealed-450-v", "dc-contactor-open-150-v",
     "dc-solid-state-relay-200-v", "ac-toggle-switch", "snap-disc-fixed", "snap-disc-manual-reset",
     "capillary-thermostat-300", "limit-controller-thermocouple", "panel-meter-dc",
     "thermal-link"});

}  // namespace

void add_random_device(Installation& yard, Dice& dice, const std::string& id) {
    heatmatch::Control control =
        part_of_yard(heatmatch::find_control(starter(), dice.one_of(control_ids)), id);
    state_fact(control.semiconductor, heatmatch::is_semiconductor(control).value_or(false));
    if (const auto operated = heatmatch::operated_of(control))
        state_fact(control.operated, *operated);
    state_fact(control.polarised, false);
    state_fact(control.terminal_limit_c, dice.between(60.0, 90.0));
    heatmatch::Device device{.part = id};
    std::vector<heatmatch::Duty> duties{heatmatch::Duty::breaks_dc, heatmatch::Duty::breaks_dc,
                                        heatmatch::Duty::carries_dc};
    if (control.sense_high_c) duties = {heatmatch::Duty::senses_only, heatmatch::Duty::breaks_dc};
    if (heatmatch::is_fuse(control)) duties = {heatmatch::Duty::protects_a_string};
    device.duty = dice.one_of(duties);
    if (device.duty == heatmatch::Duty::senses_only) {
        device.senses = dice.one_of(std::to_array<heatmatch::SensedPlace>(
            {heatmatch::SensedPlace::wall, heatmatch::SensedPlace::lid,
             heatmatch::SensedPlace::bed}));
        for (const heatmatch::Control& other : yard.parts.controls) {
            if (dice.coin()) device.drives.push_back(other.id);
        }
    } else {
        device.run = dice.one_of(yard.runs).name;
        int most = 1;
        for (const heatmatch::DcRating& pair : control.dc_ratings)
            most = std::max(most, pair.poles);
        device.poles_used = dice.from(1, most);
    }
    if (control.sense_high_c) {
        device.set_c = dice.between(control.sense_low_c.value_or(40.0),
                                    std::min(*control.sense_high_c, 350.0));
        device.set_tolerance_k = dice.between(0.0, 10.0);
        device.opens_on_supply_loss = dice.coin();
        device.opens_on_probe_break = dice.coin();
    }
    yard.parts.controls.push_back(control);
    yard.devices.push_back(device);
}

void add_limit_that_opens(Installation& yard, Dice& dice) {
    heatmatch::Control contactor = part_of_yard(
        heatmatch::find_control(starter(), "dc-contactor-sealed-450-v"), "limit-contactor");
    contactor.dc_ratings = {{.v_dc = 1000.0, .a_dc = dice.between(10.0, 60.0), .poles = 1}};
    yard.parts.controls.push_back(contactor);
    yard.parts.controls.push_back(
        part_of_yard(heatmatch::find_control(starter(), "limit-controller-thermocouple"), "limit"));
    yard.devices.push_back(
        {.part = contactor.id, .run = "home", .duty = heatmatch::Duty::breaks_dc});
    heatmatch::Device limit{.part = "limit", .duty = heatmatch::Duty::senses_only};
    limit.set_c = dice.between(35.0, 110.0);
    limit.senses = dice.coin() ? heatmatch::SensedPlace::wall : heatmatch::SensedPlace::lid;
    limit.drives = {contactor.id};
    limit.set_tolerance_k = dice.between(0.0, 10.0);
    limit.opens_on_supply_loss = dice.coin();
    limit.opens_on_probe_break = dice.coin();
    yard.devices.push_back(limit);
}
