#include "random_yard.hpp"

#include "demo.hpp"
#include "yard_parts.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

using heatmatch::Installation;
using heatmatch::Parts;
using heatmatch::WireRun;

namespace {

constexpr auto panel_ids = std::to_array<std::string_view>(
    {"silicon-36-cell-100", "silicon-60-cell-270", "silicon-72-cell-355", "half-cut-144-cell-545",
     "cdte-72", "cdte-430"});
constexpr auto dry_elements =
    std::to_array<std::string_view>({"storage-rod-1050-230", "tubular-1000-120", "strip-500-120",
                                     "oven-lower-1200-230", "sauna-rod-2000-230"});
constexpr auto wet_elements = std::to_array<std::string_view>(
    {"immersion-1500-120", "immersion-dc-600-48", "immersion-low-density-2000-240"});
constexpr auto fills = std::to_array<std::string_view>(
    {"dry-sand", "dry-sand", "dry-gravel", "sand-with-steel-turnings", "crushed-basalt",
     "fire-brick", "soapstone"});
constexpr auto cool_wires = std::to_array<std::string_view>(
    {"pv-wire-12-awg", "pv-cable-4-mm2", "use-2-10-awg", "thhn-12-awg", "xhhw-2-10-awg"});
constexpr auto hot_wires = std::to_array<std::string_view>(
    {"silicone-12-awg", "fep-14-awg", "tggt-14-awg", "mica-glass-14-awg", "thhn-14-awg"});
constexpr auto cool_joints =
    std::to_array<std::string_view>({"pv-plug-4-mm", "lever-splice", "twist-on-ceramic"});
constexpr auto hot_joints = std::to_array<std::string_view>(
    {"ceramic-block-brass", "ring-terminal-nickel", "stud-stainless-two-nuts"});
void add_panel(Installation& yard, Dice& dice) {
    heatmatch::Panel panel =
        part_of_yard(heatmatch::find_panel(starter(), dice.one_of(panel_ids)), "panel");
    state_fact(panel.bypass_diodes, 3);
    state_fact(panel.power_tolerance_pct, dice.between(0.0, 5.0));
    const double drawn = dice.between(0.3, 0.9);
    state_fact(panel.bifaciality, drawn);
    // One label in three states a current with rear light. It follows from an earlier draw, because
    // another draw would change all later installations of a seed.
    const int told = static_cast<int>(1000.0 * drawn) % 3;
    if (told == 1) panel.i_sc_bnpi = panel.i_sc * (1.0 + 0.135 * *panel.bifaciality);
    if (told == 2) panel.i_sc_bsi = panel.i_sc * (1.0 + 0.3 * *panel.bifaciality);
    yard.parts.panels.push_back(panel);
    const int series = dice.from(1, 4);
    const int parallel = dice.from(1, 3);
    heatmatch::OwnedPanels owned{.group = "row", .panel = "panel", .count = 64};
    owned.age_years = dice.between(0.0, 25.0);
    owned.rear_blocked = static_cast<int>(10.0 * *owned.age_years) % 2 == 1;
    yard.panels = {owned};
    yard.circuit = heatmatch::ExistingCircuit{.group = "row", .element = "element"};
    yard.circuit->panels = std::to_string(series) + 'S' + std::to_string(parallel) + 'P';
}

void add_bank(Installation& yard, Dice& dice, bool wet) {
    heatmatch::Element element =
        part_of_yard(heatmatch::find_element(
                         starter(), wet ? dice.one_of(wet_elements) : dice.one_of(dry_elements)),
                     "element");
    // The sheath keeps its id: the conductivity of the cold end is looked up by it.
    yard.parts.sheaths.push_back(
        part_of_yard(heatmatch::find_sheath(starter(), element.sheath), element.sheath));
    state_fact(yard.parts.sheaths.back().bare, false);
    yard.parts.alloys.push_back(
        part_of_yard(heatmatch::find_alloy(starter(), "nicr-80-20"), "alloy"));
    element.alloy = "alloy";
    const double ohm = *element.rated_v * *element.rated_v / *element.rated_w;
    element.resistance_ohm = ohm;
    element.measured_resistance_ohm = ohm * dice.between(0.95, 1.05);
    element.insulation_resistance_mohm = dice.between(0.2, 60.0);
    element.built_in_ac_control = false;
    element.rated_dc = dice.coin();
    state_fact(element.legs, 1);
    state_fact(element.leg_spacing_mm, 60.0);
    yard.parts.elements.push_back(element);
    const int series = dice.from(1, 2);
    const int parallel = dice.from(1, 2);
    yard.elements = {{.element = "element", .count = series * parallel}};
    yard.circuit->bank = std::to_string(series) + 'S' + std::to_string(parallel) + 'P';
}

void add_run(Installation& yard, Dice& dice, const std::string& name, heatmatch::Carried carries) {
    const bool hot = carries == heatmatch::Carried::bank || carries == heatmatch::Carried::branch;
    Parts& parts = yard.parts;
    heatmatch::Wire wire = part_of_yard(
        heatmatch::find_wire(starter(), hot ? dice.one_of(hot_wires) : dice.one_of(cool_wires)),
        "wire-" + name);
    heatmatch::Insulation cover =
        part_of_yard(heatmatch::find_insulation(starter(), wire.insulation), "cover-" + name);
    state_fact(cover.limit_wet_c, cover.limit_c);
    wire.insulation = cover.id;
    state_fact(wire.resistance_ohm_per_km, 1000.0 * heatmatch::resistance_ohm_per_m(wire, 20.0));
    state_fact(wire.voltage_rating_v, 600.0);
    wire.sunlight_resistant = true;
    state_fact(wire.direct_burial, dice.coin());
    state_fact(wire.ampacity_method, heatmatch::LayingMethod{});
    heatmatch::Connector joint =
        part_of_yard(heatmatch::find_connector(
                         starter(), hot ? dice.one_of(hot_joints) : dice.one_of(cool_joints)),
                     "joint-" + name);
    state_fact(joint.voltage_rating_v, 600.0);
    state_fact(joint.current_rating_a, 25.0);
    WireRun run{.name = name, .carries = carries};
    run.length_m = hot ? dice.between(0.2, 1.5) : dice.between(1.0, 30.0);
    run.wire = wire.id;
    run.connector = joint.id;
    run.joint_ohm = dice.between(0.0, 0.05);
    run.inside = dice.coin();
    heatmatch::Surroundings& around = run.surroundings;
    constexpr auto kinds = std::to_array<heatmatch::SurroundingsKind>(
        {heatmatch::SurroundingsKind::sunlit, heatmatch::SurroundingsKind::open_air,
         heatmatch::SurroundingsKind::conduit, heatmatch::SurroundingsKind::cavity,
         heatmatch::SurroundingsKind::buried});
    constexpr auto hot_kinds = std::to_array<heatmatch::SurroundingsKind>(
        {heatmatch::SurroundingsKind::open_air, heatmatch::SurroundingsKind::conduit,
         heatmatch::SurroundingsKind::cavity});
    around.kind = hot ? dice.one_of(hot_kinds) : dice.one_of(kinds);
    around.air_c = hot ? dice.between(20.0, 150.0) : dice.between(0.0, 60.0);
    if (around.kind == heatmatch::SurroundingsKind::sunlit) {
        around.irradiance_w_m2 = dice.between(300.0, 1200.0);
    }
    if (around.kind == heatmatch::SurroundingsKind::sunlit ||
        around.kind == heatmatch::SurroundingsKind::open_air) {
        around.wind_m_s = dice.between(0.0, 3.0);
    }
    around.loaded_conductors = dice.from(2, 12);
    around.metal_raceway = dice.coin();
    around.roof_distance_mm = dice.between(0.0, 1000.0);
    parts.wires.push_back(wire);
    parts.insulations.push_back(cover);
    parts.connectors.push_back(joint);
    yard.runs.push_back(run);
}

void add_store(Installation& yard, Dice& dice, bool wet) {
    heatmatch::Medium fill =
        part_of_yard(heatmatch::find_medium(starter(), wet ? "water" : dice.one_of(fills)), "fill");
    yard.parts.media.push_back(fill);
    heatmatch::Store store{.medium = "fill"};
    store.shape = dice.coin() ? heatmatch::StoreShape::cylinder : heatmatch::StoreShape::box;
    if (store.shape == heatmatch::StoreShape::cylinder) {
        store.diameter_m = dice.between(0.4, 0.9);
    } else {
        store.width_m = dice.between(0.4, 0.9);
        store.depth_m = dice.between(0.4, 0.9);
    }
    store.height_m = dice.between(0.8, 1.4);
    store.wall_emissivity = dice.between(0.2, 0.95);
    store.top_u_w_m2k = dice.between(0.5, 6.0);
    if (dice.coin()) store.side_u_w_m2k = dice.between(0.3, 6.0);
    store.bottom_u_w_m2k = dice.between(0.5, 6.0);
    store.element_spacing_mm = dice.between(60.0, 140.0);
    if (dice.from(0, 3) == 0) store.spreader_diameter_mm = dice.between(30.0, 60.0);
    store.stands = dice.coin() ? heatmatch::StorePlace::in_space : heatmatch::StorePlace::outside;
    store.charge_hours = dice.between(2.0, 10.0);
    store.air_c = dice.between(30.0, 45.0);  // from the usual value upward
    constexpr auto places = std::to_array<heatmatch::StoreTerminals>(
        {heatmatch::StoreTerminals::through_wall, heatmatch::StoreTerminals::box_outside,
         heatmatch::StoreTerminals::buried});
    store.terminals = dice.one_of(places);
    store.moist = dice.coin();
    store.vented = dice.coin();
    store.combustible_distance_mm = dice.between(0.0, 1500.0);
    // From the same draw, so that later installations of a seed stay the same.
    store.element_height_mm = 20.0 + *store.combustible_distance_mm / 15.0;
    store.from_axis_mm = 0.1 * (*store.element_height_mm - 20.0);
    store.element_lies = *store.element_height_mm > 70.0;
    store.stands_on = *store.element_height_mm > 45.0 ? heatmatch::StandsOn::wood
                                                      : heatmatch::StandsOn::metal_legs;
    constexpr auto materials = std::to_array<heatmatch::StoreMaterial>(
        {heatmatch::StoreMaterial::ceramic_fibre, heatmatch::StoreMaterial::stainless_steel,
         heatmatch::StoreMaterial::vermiculite});
    store.vessel = dice.one_of(materials);
    store.liner = dice.one_of(materials);
    store.lagging = dice.one_of(materials);
    store.vessel_mm = 0.8;
    store.lagging_mm = 100.0;  // the careful end: a thickness derived from the heat loss is less
    store.element_covered = dice.coin();
    store.vessel_bonded = dice.coin();
    store.sheath_bonded = dice.coin();
    store.loss_factor = dice.between(0.7, 1.3);
    yard.store = store;
}

void fill_site(heatmatch::Site& site, Dice& dice) {
    site.record_low_c = dice.between(-40.0, 5.0);
    site.bright_irradiance_w_m2 = dice.between(800.0, 1300.0);
    site.wet = dice.coin();
    site.array_on = dice.coin() ? heatmatch::ArrayPlace::ground : heatmatch::ArrayPlace::building;
    site.earthing = dice.coin() ? heatmatch::Earthing::floating : heatmatch::Earthing::grounded;
    site.frames_bonded = dice.coin();
    site.live_parts_enclosed = dice.coin();
    site.code = dice.coin() ? heatmatch::WiringCode::nec : heatmatch::WiringCode::iec;
}

}  // namespace

Installation random_yard(Dice& dice) {
    Installation yard;
    yard.name = "random";
    const bool wet = dice.from(0, 3) == 0;
    fill_site(yard.site, dice);
    add_panel(yard, dice);
    add_bank(yard, dice, wet);
    add_run(yard, dice, "home", heatmatch::Carried::array);
    add_run(yard, dice, "string", heatmatch::Carried::string);
    add_run(yard, dice, "tail", heatmatch::Carried::bank);
    add_store(yard, dice, wet);
    for (int i = dice.from(0, 3); i > 0; --i) {
        add_random_device(yard, dice, "device-" + std::to_string(i));
    }
    if (dice.coin()) add_limit_that_opens(yard, dice);
    constexpr double warm_c = 37.5;
    yard.store->rods_packed = *yard.store->air_c < warm_c;  // no draw: other fields keep theirs
    return yard;
}

std::vector<YardRecord> records_of(Installation& yard) {
    std::vector<YardRecord> records{{"site", heatmatch::site_fields(), &yard.site}};
    for (heatmatch::OwnedPanels& owned : yard.panels) {
        records.push_back({"panels", heatmatch::owned_panels_fields(), &owned});
    }
    if (yard.store) records.push_back({"store", heatmatch::store_fields(), &*yard.store});
    for (WireRun& run : yard.runs) {
        records.push_back({"run", heatmatch::wire_run_fields(), &run});
        records.push_back({"surroundings", heatmatch::surroundings_fields(), &run.surroundings});
    }
    for (heatmatch::Device& device : yard.devices) {
        records.push_back({"device", heatmatch::device_fields(), &device});
    }
    for_each_list(yard.parts, [&records](auto& list, heatmatch::PartKind kind) {
        const heatmatch::PartKindInfo& info = heatmatch::part_kind(kind);
        for (auto& part : list) {
            records.push_back({std::string(info.name), info.fields, &part});
        }
    });
    return records;
}
