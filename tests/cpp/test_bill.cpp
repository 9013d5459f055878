#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/rank/rank.hpp"

using namespace heatmatch;

namespace {

/// Controls with prices made for the test: typical 15, 5, 50 and 8; the cheapest is for AC only.
Parts few_controls() {
    Parts parts;
    parts.controls = {
        {.id = "ac-switch",
         .ac_only = true,
         .operated = OperatedKind::by_hand,
         .price = {.low = 1.0, .high = 1.0, .currency = "USD"}},
        {.id = "switch",
         .dc_ratings = {{600.0, 63.0, 2}},
         .poles = 2,
         .operated = OperatedKind::by_hand,
         .price = {.low = 10.0, .high = 20.0, .currency = "USD"}},
        {.id = "disc",
         .family = "snap disc",
         .dc_ratings = {{30.0, 1.0, 1}},
         .sense_low_c = 70.0,
         .sense_high_c = 200.0,
         .reset = ResetKind::manual,
         .price = {.low = 4.0, .high = 6.0, .currency = "USD"}},
        {.id = "contactor",
         .dc_ratings = {{600.0, 100.0, 1}},
         .operated = OperatedKind::by_coil,
         .semiconductor = false,
         .price = {.low = 40.0, .high = 60.0, .currency = "USD"}},
        {.id = "fuse",
         .family = "fuse",
         .dc_ratings = {{1000.0, 15.0, 1}},
         .operated = OperatedKind::by_current,
         .price = {.low = 8.0, .currency = "USD"}},
    };
    return parts;
}

Installation at_cold_site() {
    Installation installation;
    installation.site = cold_site;
    installation.goals.currency = "USD";
    return installation;
}

/// A run of 5 m at 2 USD a metre.
RunParts priced_run(Carried carries) {
    RunParts run = bench_run("thhn-12-awg", 30.0);
    run.run.length_m = 5.0;
    run.run.carries = carries;
    run.wire->price = {.low = 2.0, .high = 2.0, .currency = "USD"};
    return run;
}

/// Two of three elements at 15 USD to buy, 6 of 10 m of wire, 3 of 4 connectors at 2 USD.
Circuit one_string() {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 3});
    circuit.bank.owned = 1;
    circuit.bank.element.price = {.low = 10.0, .high = 20.0, .currency = "USD"};
    RunParts run = priced_run(Carried::array);
    run.run.owned_m = 4.0;
    run.run.owned_connectors = 1;
    run.connector = find_connector(starter(), "pv-plug-4-mm");
    run.connector->price = {.low = 1.0, .high = 3.0, .currency = "USD"};
    circuit.runs = {run};
    return circuit;
}

Bill bill(const Circuit& circuit, const Parts& catalog = few_controls()) {
    return bill_of(circuit, at_cold_site(), catalog);
}

PlacedDevice listed(std::string_view control, Duty duty, int owned = 0) {
    PlacedDevice placed{.control = find_control(few_controls(), control)};
    placed.device = {.part = placed.control.id,
                     .run = duty == Duty::senses_only ? "" : "bench",
                     .duty = duty,
                     .poles_used = 2,
                     .owned = owned};
    return placed;
}

const BillLine* line_of(const Bill& bill, std::string_view part) {
    for (const BillLine& line : bill.lines) {
        if (line.part == part) return &line;
    }
    return nullptr;
}

}  // namespace

// Source: sums by hand of the prices made for the test.
TEST_CASE("the bill of one string: elements, wire, connectors, disconnect, limit, contactor") {
    const Bill all = bill(one_string());
    REQUIRE(all.complete());
    CHECK(all.currency == "USD");
    CHECK(*all.typical() == doctest::Approx(2 * 15.0 + 6 * 2.0 + 3 * 2.0 + 15.0 + 5.0 + 50.0));
    CHECK(*all.low() == doctest::Approx(2 * 10.0 + 6 * 2.0 + 3 * 1.0 + 10.0 + 4.0 + 40.0));
    CHECK(*all.high() == doctest::Approx(2 * 20.0 + 6 * 2.0 + 3 * 3.0 + 20.0 + 6.0 + 60.0));
    REQUIRE(line_of(all, "thhn-12-awg") != nullptr);
    CHECK(line_of(all, "thhn-12-awg")->quantity == 10.0);
    CHECK(line_of(all, "thhn-12-awg")->to_buy == 6.0);
    CHECK(line_of(all, "thhn-12-awg")->unit() == unit::metre);
    CHECK(line_of(all, "ac-switch") == nullptr);
    for (const BillLine& line : all.lines) CHECK(line.why.text().back() == '.');
}

// Source: sums by hand; fuses of nec-690-9 where the others feed more than the panel's fuse.
TEST_CASE("the bill of three strings: their wire, and a fuse each") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {1, 3}, "tubular-1000-120", {1, 1});
    RunParts run = priced_run(Carried::string);
    run.run.owned_m = 10.0;
    circuit.runs = {run};
    REQUIRE(circuit.panel.panel.max_series_fuse_a);
    REQUIRE(2 * 1.25 * circuit.panel.bright_isc_a() > *circuit.panel.panel.max_series_fuse_a);
    const Bill all = bill(circuit);
    REQUIRE(all.complete());
    CHECK(*all.typical() == doctest::Approx(20 * 2.0 + 15.0 + 5.0 + 50.0 + 3 * 8.0));
    REQUIRE(line_of(all, "fuse") != nullptr);
    CHECK(line_of(all, "fuse")->quantity == 3.0);
    circuit.panel.panel.max_series_fuse_a.reset();
    CHECK(line_of(bill(circuit), "fuse") != nullptr);
    circuit.panel.panel.max_series_fuse_a = 100.0;
    CHECK(line_of(bill(circuit), "fuse") == nullptr);
}

TEST_CASE("a listed device counts for what it can do in its place") {
    Circuit circuit = one_string();
    const double without = *bill(circuit).typical();
    circuit.devices = {listed("ac-switch", Duty::breaks_dc)};
    const Bill replaced = bill(circuit);
    CHECK(*replaced.typical() == doctest::Approx(without));
    CHECK(line_of(replaced, "ac-switch") == nullptr);
    REQUIRE(replaced.remarks.size() == 1);
    CHECK(contains(replaced.remarks.front(), "ac-switch"));
    circuit.devices = {listed("switch", Duty::breaks_dc)};
    CHECK(*bill(circuit).typical() == doctest::Approx(without));
    circuit.devices = {listed("switch", Duty::breaks_dc, 1)};
    CHECK(*bill(circuit).typical() == doctest::Approx(without - 15.0));
    circuit.devices.push_back(listed("disc", Duty::senses_only, 1));
    CHECK(*bill(circuit).typical() == doctest::Approx(without - 15.0 - 5.0));
    // Its set point is out of range: another limit with that range is needed, and none has it.
    circuit.devices.back().device.set_c = 300.0;
    const Bill none = bill(circuit);
    CHECK_FALSE(none.typical());
    circuit.devices.back().device.set_c = 150.0;
    circuit.devices.push_back(listed("contactor", Duty::breaks_dc, 1));
    CHECK(*bill(circuit).typical() == doctest::Approx(30.0 + 12.0 + 6.0));
}

TEST_CASE("where no part can do it, the line says so and the bill is not known") {
    Parts catalog = few_controls();
    catalog.controls.erase(catalog.controls.begin() + 1);
    const Bill none = bill(one_string(), catalog);
    CHECK_FALSE(none.complete());
    CHECK_FALSE(none.typical());
    const auto missing =
        std::count_if(none.lines.begin(), none.lines.end(),
                      [](const BillLine& line) { return line.state == BillState::no_part; });
    CHECK(missing == 1);
}

TEST_CASE("an unknown price never counts as within the budget, other currencies are not added") {
    Installation rich = at_cold_site();
    rich.goals.budget = 1e6;
    Circuit circuit = one_string();
    CHECK(bill_of(circuit, rich, few_controls()).within_budget() == Answer::yes);
    circuit.runs.front().wire->price = {};
    const Bill unknown = bill_of(circuit, rich, few_controls());
    CHECK(unknown.within_budget() == Answer::unknown);
    CHECK_FALSE(unknown.typical());
    circuit.runs.front().wire->price = {.low = 2.0, .currency = "EUR"};
    const Bill mixed = bill_of(circuit, rich, few_controls());
    CHECK(mixed.within_budget() == Answer::unknown);
    CHECK(line_of(mixed, "thhn-12-awg")->state == BillState::other_currency);
    // What is owned needs no price.
    circuit.runs.front().run.owned_m = 10.0;
    CHECK(bill_of(circuit, rich, few_controls()).within_budget() == Answer::yes);
    rich.goals.budget = 1.0;
    CHECK(bill_of(circuit, rich, few_controls()).within_budget() == Answer::no);
}

TEST_CASE("more owned never raises a bill of the demo, one owned device less never lowers it") {
    for (std::size_t i = 0; i < demo_ranking().candidates.size(); i += 20) {
        Circuit circuit = demo_ranking().candidates[i].circuit;
        const Installation installation = demo();
        const auto price = [&](const Circuit& changed) {
            return bill_of(changed, installation, starter()).typical().value_or(1e9);
        };
        const double before = price(circuit);
        CHECK(before == *demo_ranking().candidates[i].price_to_buy);
        for (std::size_t d = 0; d < circuit.devices.size(); ++d) {
            Circuit changed = circuit;
            changed.devices[d].device.owned = 0;
            CHECK(price(changed) >= before);
            changed.devices[d].device.owned = 5;
            CHECK(price(changed) <= before);
            changed = circuit;
            changed.devices.erase(changed.devices.begin() + static_cast<std::ptrdiff_t>(d));
            CHECK(price(changed) >= before);
        }
        for (std::size_t r = 0; r < circuit.runs.size(); ++r) {
            Circuit changed = circuit;
            changed.runs[r].run.owned_m += 1.0;
            changed.runs[r].run.owned_connectors += 1;
            CHECK(price(changed) <= before);
        }
        Circuit owned = circuit;
        owned.bank.owned = owned.bank.hookup.count();
        CHECK(price(owned) <= before);
    }
}

// Source: arithmetic: the store's limit counts once, and so do owned elements, wire and connectors.
TEST_CASE("circuits of one store share its limit, listed devices and owned elements") {
    Installation installation = at_cold_site();
    installation.elements = {{.element = "tubular-1000-120", .count = 1}};
    const Circuit circuit = one_string();
    const std::vector<Circuit> two{circuit, circuit};
    const Bill one = joint_bill(std::span(two).first(1), installation, few_controls());
    CHECK(*one.typical() == doctest::Approx(*bill(circuit).typical()));
    const Bill both = joint_bill(two, installation, few_controls());
    CHECK(*both.typical() ==
          doctest::Approx(5 * 15.0 + 16 * 2.0 + 7 * 2.0 + 2 * 15.0 + 5.0 + 100.0));
    Circuit with = circuit;
    with.devices = {listed("disc", Duty::senses_only)};
    const std::vector<Circuit> listing{with, with};
    // A listed device is a piece in each circuit, unless both pass through it.
    const double one_disc = 5.0;
    CHECK(*joint_bill(listing, installation, few_controls()).typical() ==
          doctest::Approx(*both.typical() + one_disc));
    with.devices.front().circuits = 2;
    const std::vector<Circuit> sharing{with, with};
    CHECK(*joint_bill(sharing, installation, few_controls()).typical() ==
          doctest::Approx(*both.typical()));
}

// Source: arithmetic: 20 m of wire are needed, 12 m owned: 8 m to buy, however they are shared.
TEST_CASE("what one circuit uses of what is owned is not there for the next") {
    Installation installation = at_cold_site();
    Circuit circuit = one_string();
    circuit.runs = {priced_run(Carried::array)};
    circuit.runs.front().run.owned_m = 12.0;
    circuit.runs.front().run.wire = circuit.runs.front().wire->id;
    installation.runs = {circuit.runs.front().run};
    const std::vector<Circuit> two{circuit, circuit};
    const auto wire_to_buy = [](const Bill& of) {
        double sum = 0.0;
        for (const BillLine& line : of.lines) {
            if (line.kind == PartKind::wire) sum += line.to_buy;
        }
        return sum;
    };
    CHECK(wire_to_buy(joint_bill(two, installation, few_controls())) == doctest::Approx(8.0));
    const std::vector<Bill> bills = bills_in_turn(two, installation, few_controls());
    REQUIRE(bills.size() == 2);
    CHECK(wire_to_buy(bills[0]) == doctest::Approx(0.0));
    CHECK(wire_to_buy(bills[1]) == doctest::Approx(8.0));
}

TEST_CASE("a ranking keeps pairings of unknown bills after those within the budget") {
    Installation installation = demo();
    installation.goals.budget = 100.0;
    Parts parts = starter();
    for (Element& element : parts.elements) {
        if (element.id == "storage-rod-1050-230") element.price = {};
    }
    for (AllowedElements& allowed : installation.elements) {
        if (allowed.any) allowed.any->price_max.reset();
    }
    const Ranking ranking = rank(parts, installation, keep_all());
    bool unknown = false;
    for (const Candidate& candidate : ranking.candidates) {
        const Answer within = candidate.bill.within_budget();
        CHECK(within != Answer::no);
        if (within == Answer::unknown) unknown = true;
        CHECK((within == Answer::unknown) == unknown);
    }
    CHECK(unknown);
    for (const Candidate& candidate : ranking.pareto) {
        CHECK(candidate.bill.within_budget() == Answer::yes);
    }
}
