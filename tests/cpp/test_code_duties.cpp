#include "demo.hpp"

#include <set>

#include "heatmatch/match/candidate/code_duties.hpp"

using namespace heatmatch;

namespace {

/// Panels of 43 V cold each in series, strings beside each other, one run of wire.
Circuit yard(int series, int parallel = 1, std::optional<bool> inside = true) {
    Circuit circuit =
        bench_circuit("silicon-60-cell-245", {series, parallel}, "tubular-1000-120", {1, 1});
    RunParts parts = bench_run("pv-wire-10-awg", 20.0);
    parts.run.inside = inside;
    circuit.runs.push_back(parts);
    return circuit;
}

Site american() {
    return {.record_low_c = -20.0, .code = WiringCode::nec};
}

Site european() {
    return {.record_low_c = -20.0, .code = WiringCode::iec};
}

CodeDuty duty(const Circuit& circuit, const Site& site, std::string_view name,
              const Parts* catalog = nullptr) {
    for (const CodeDuty& each : code_duties(circuit, site, catalog)) {
        if (each.name == name) return each;
    }
    FAIL("no such duty");
    return {};
}

std::string said(const CodeDuty& duty) {
    return duty.description.text();
}

}  // namespace

TEST_CASE("the stated code determines the duties, else both codes") {
    const auto count = [](const Site& site, WiringCode code) {
        const auto duties = code_duties(yard(2), site);
        return std::count_if(duties.begin(), duties.end(),
                             [code](const CodeDuty& each) { return each.code == code; });
    };
    CHECK(count(american(), WiringCode::nec) == 9);
    CHECK(count(american(), WiringCode::iec) == 0);
    CHECK(count(european(), WiringCode::iec) == 5);
    CHECK(count(european(), WiringCode::nec) == 0);
    CHECK(count(cold_site, WiringCode::nec) == 9);
    CHECK(count(cold_site, WiringCode::iec) == 5);
}

TEST_CASE("each duty has a sentence and a source, whatever is stated") {
    for (const int series : {1, 2, 4}) {
        for (const Site& site : {american(), european(), cold_site}) {
            for (const CodeDuty& each : code_duties(yard(series), site, &starter())) {
                CAPTURE(each.name);
                CHECK(said(each).back() == '.');
                CHECK(said(each).find_first_of("{}") == std::string::npos);
                CHECK_FALSE(each.source.empty());
                CHECK((each.met_by == DutyMeans::not_due) == (each.applies == Answer::no));
            }
        }
    }
}

// Source: NEC 690.11: 80 V or greater; one panel is 43 V here, two are 87 V.
TEST_CASE("arc-fault protection begins at 80 V, and is met by nothing of the catalog") {
    CHECK(duty(yard(1), american(), "arc-fault protection").applies == Answer::no);
    const CodeDuty found = duty(yard(2), american(), "arc-fault protection", &starter());
    CHECK(found.applies == Answer::yes);
    CHECK(found.begins_v == 80.0);
    CHECK(found.met_by == DutyMeans::not_met);
    CHECK(found.suitable_controls.empty());
    CHECK(contains(said(found), "No control of the catalog detects them."));
}

// Source: NEC 690.11, exception: off buildings, in metal raceway or underground.
TEST_CASE("its exception counts only where all of it is stated") {
    Site site = american();
    site.array_on = ArrayPlace::ground;
    Circuit circuit = yard(2, 1, false);
    const auto applies = [&] { return duty(circuit, site, "arc-fault protection").applies; };
    CHECK(applies() == Answer::unknown);
    circuit.runs[0].run.surroundings.metal_raceway = true;
    CHECK(applies() == Answer::no);
    circuit.runs[0].run.surroundings.metal_raceway = false;
    CHECK(applies() == Answer::yes);
    circuit.runs[0].run.surroundings.kind = SurroundingsKind::buried;
    CHECK(applies() == Answer::no);
    circuit.runs[0].run.inside.reset();
    CHECK(applies() == Answer::unknown);
    const CodeDuty perhaps = duty(circuit, site, "arc-fault protection");
    CHECK(perhaps.missing == std::vector<std::string>{"run.inside"});
    CHECK(perhaps.met_by == DutyMeans::not_met);
    site.array_on = ArrayPlace::building;
    CHECK(applies() == Answer::yes);
}

// Source: NEC 690.41(B): above 30 V or 8 A; exception: solidly grounded, two in parallel, off
// buildings.
TEST_CASE("earth-fault protection begins above 30 V or 8 A, except as stated in the exception") {
    Site site = american();
    const CodeDuty found = duty(yard(1), site, "earth-fault protection");
    CHECK(found.applies == Answer::yes);
    CHECK(found.begins_v == 30.0);
    CHECK(found.begins_a == 8.0);
    site.array_on = ArrayPlace::ground;
    const auto applies = [&](int parallel) {
        return duty(yard(1, parallel, false), site, "earth-fault protection").applies;
    };
    CHECK(applies(2) == Answer::unknown);
    CHECK(applies(3) == Answer::yes);
    site.earthing = Earthing::grounded;
    CHECK(applies(2) == Answer::no);
    CHECK(applies(3) == Answer::yes);
    site.earthing = Earthing::floating;
    CHECK(applies(2) == Answer::yes);
}

// Source: NEC 690.41(B)(1) and (2): in all conductors, and the circuit is disconnected; IEC
// 60364-7-712, 712.421.101: a monitor that tells.
TEST_CASE("a detector is enough to report a fault, and has to open something to protect") {
    Circuit circuit = yard(2);
    const auto protects = [&] { return duty(circuit, american(), "earth-fault protection"); };
    const auto reports = [&] { return duty(circuit, european(), "earth-fault detection"); };
    CHECK(protects().met_by == DutyMeans::not_met);
    CHECK(reports().met_by == DutyMeans::not_met);
    CHECK(contains(said(duty(circuit, european(), "earth-fault detection", &starter())),
                   "insulation-monitor-1000-v"));

    circuit.devices = {bench_device("functional-earth-fuse-1-a", "carries dc")};
    CHECK(protects().met_by == DutyMeans::not_met);
    CHECK(contains(said(protects()), "no fault of the grounded pole"));
    CHECK(reports().met_by == DutyMeans::nobody_stated);

    circuit.devices = {bench_device("insulation-monitor-1000-v", "senses only", 1, "")};
    CHECK(reports().met_by == DutyMeans::a_device);
    CHECK(reports().devices == std::vector<std::string>{"insulation-monitor-1000-v"});
    CHECK(protects().met_by == DutyMeans::nobody_stated);
    CHECK(protects().missing == std::vector<std::string>{"device.drives"});

    circuit.devices.push_back(bench_device("dc-contactor-sealed-450-v", "breaks dc"));
    circuit.devices[0].device.drives = {"dc-contactor-sealed-450-v"};
    CHECK(protects().met_by == DutyMeans::a_device);
    CHECK(protects().devices ==
          std::vector<std::string>{"insulation-monitor-1000-v", "dc-contactor-sealed-450-v"});
    CHECK(contains(said(protects()), "Whether they are listed for it is not checked"));
}

// Source: NEC 690.12: on or in buildings; 30 V outside the array.
TEST_CASE("rapid shutdown is due where panels or wires are on or in a building") {
    Site site = american();
    CHECK(duty(yard(2), site, "rapid shutdown").applies == Answer::yes);
    CHECK(duty(yard(2, 1, false), site, "rapid shutdown").applies == Answer::unknown);
    site.array_on = ArrayPlace::ground;
    CHECK(duty(yard(2, 1, false), site, "rapid shutdown").applies == Answer::no);
    Circuit circuit = yard(2);
    CHECK(duty(circuit, site, "rapid shutdown").met_by == DutyMeans::not_met);
    circuit.devices = {bench_device("dc-contactor-sealed-450-v", "breaks dc")};
    CHECK(duty(circuit, site, "rapid shutdown").met_by == DutyMeans::not_met);
    circuit.devices[0].device.opens_on_supply_loss = true;
    const CodeDuty perhaps = duty(circuit, site, "rapid shutdown");
    CHECK(perhaps.met_by == DutyMeans::nobody_stated);
    CHECK(contains(said(perhaps), "Whether it is at the array"));
}

// Source: NEC 690.13; IEC 60364-7-712: all live conductors.
TEST_CASE("a disconnect is a device that opens by hand here") {
    Circuit circuit = yard(2);
    CHECK(duty(circuit, american(), "disconnect").met_by == DutyMeans::not_met);
    circuit.devices = {bench_device("pv-isolator-2-pole", "breaks dc", 2)};
    CHECK(duty(circuit, american(), "disconnect").met_by == DutyMeans::a_device);
    CHECK(duty(circuit, european(), "disconnect").met_by == DutyMeans::a_device);
    circuit.devices = {bench_device("ac-toggle-switch", "breaks dc")};
    const CodeDuty none = duty(circuit, american(), "disconnect");
    CHECK(none.met_by == DutyMeans::not_met);
    CHECK(none.devices.empty());
}

// Source: NEC 110.27(A): 50 V; IEC 60364-4-41, 414.4.5: 60 V dry, 30 V in every other case.
TEST_CASE("guarding begins by place and code, and unstated counts as wet") {
    CHECK(duty(yard(1), american(), "guarded live parts").applies == Answer::no);  // 43 V
    CHECK(duty(yard(2), american(), "guarded live parts").applies == Answer::yes);
    Site site = european();
    CHECK(duty(yard(1), site, "guarded live parts").applies == Answer::unknown);
    CHECK(duty(yard(1), site, "guarded live parts").begins_v == 30.0);
    site.wet = false;
    CHECK(duty(yard(1), site, "guarded live parts").applies == Answer::no);
    CHECK(duty(yard(2), site, "guarded live parts").applies == Answer::yes);
    site.wet = true;
    const auto met = [&] { return duty(yard(2), site, "guarded live parts").met_by; };
    CHECK(met() == DutyMeans::nobody_stated);
    site.live_parts_enclosed = false;
    CHECK(met() == DutyMeans::not_met);
    site.live_parts_enclosed = true;
    CHECK(met() == DutyMeans::as_stated);
    Circuit bare = yard(2);
    bare.runs[0].insulation.reset();
    CHECK(duty(bare, site, "guarded live parts").met_by == DutyMeans::nobody_stated);
}

// Source: NEC 690.31(D): metal around wires inside, above 30 V or 8 A; NEC 690.43.
TEST_CASE("metal around wires inside and bonds are as they are stated") {
    Circuit circuit = yard(2);
    Site site = american();
    const auto metal = [&] { return duty(circuit, site, "metal around wires"); };
    CHECK(metal().met_by == DutyMeans::not_met);
    circuit.runs[0].run.surroundings.kind = SurroundingsKind::conduit;
    CHECK(metal().met_by == DutyMeans::nobody_stated);
    circuit.runs[0].run.surroundings.metal_raceway = true;
    CHECK(metal().met_by == DutyMeans::as_stated);
    circuit.runs[0].run.inside = false;
    CHECK(metal().applies == Answer::no);
    const auto bonding = [&] { return duty(circuit, site, "bonding"); };
    CHECK(bonding().met_by == DutyMeans::nobody_stated);
    CHECK(bonding().missing == std::vector<std::string>{"site.frames_bonded"});
    site.frames_bonded = false;
    CHECK(bonding().met_by == DutyMeans::not_met);
    site.frames_bonded = true;
    CHECK(bonding().met_by == DutyMeans::as_stated);
}

TEST_CASE("labels and listing cannot be checked from data") {
    CHECK(duty(yard(1), american(), "listing").met_by == DutyMeans::nobody_stated);
    CHECK(duty(yard(1), american(), "labels").met_by == DutyMeans::nobody_stated);
    CHECK(duty(yard(1), european(), "labels").met_by == DutyMeans::nobody_stated);
}

TEST_CASE("omitting a fact never removes a duty") {
    Site site = american();
    site.array_on = ArrayPlace::ground;
    site.earthing = Earthing::grounded;
    site.frames_bonded = true;
    site.live_parts_enclosed = true;
    const Circuit circuit = yard(2, 1, false);
    std::set<std::string> due;
    for (const CodeDuty& each : code_duties(circuit, site)) {
        if (each.applies != Answer::no) due.insert(each.name);
    }
    Circuit untold = circuit;
    untold.runs[0].run.inside.reset();
    for (const CodeDuty& each : code_duties(untold, american())) {
        CAPTURE(each.name);
        if (due.count(each.name) != 0) CHECK(each.applies != Answer::no);
    }
}
