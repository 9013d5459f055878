#include "dice.hpp"
#include "refusal.hpp"
#include "unlike_circuits.hpp"
#include "within.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/margins/limits.hpp"

using heatmatch::Bank;
using heatmatch::bank_of;
using heatmatch::BankTree;
using heatmatch::Element;
using heatmatch::ElementResistance;
using heatmatch::Hookup;

namespace {

Bank alone(const Element& element) {
    return heatmatch::make_bank(starter(), element, {}, 1, 300.0);
}

/// That tree of rods, by their ids.
Bank tree_bank(const std::string& text, const std::vector<Element>& rods) {
    BankTree tree = BankTree::parse(text, "circuit", "elements");
    std::vector<Bank> elements;
    for (const std::string& id : tree.elements) {
        for (const Element& rod : rods) {
            if (rod.id == id) elements.push_back(alone(rod));
        }
    }
    return bank_of(std::move(tree), std::move(elements));
}

const std::vector<Element>& three_rods() {
    static const std::vector<Element> rods{bench_rod("a", 12.0), bench_rod("b", 18.0),
                                           bench_rod("c", 30.0)};
    return rods;
}

Bank rods_bank(const std::string& text) {
    return tree_bank(text, three_rods());
}

heatmatch::ArrayCurve bench_curve() {
    const heatmatch::Circuit circuit =
        bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    return heatmatch::bright_curve(circuit.panel, circuit.panels, cold_site);
}

}  // namespace

// Source: Ohm's law by hand, on the rods' own resistances.
TEST_CASE("an unlike bank has the resistance of its tree at every end of its band") {
    const Bank bank = rods_bank("[a + b] | c");
    REQUIRE(bank.unlike);
    const double a = alone(three_rods()[0]).each.typical_ohm;
    const double b = alone(three_rods()[1]).each.typical_ohm;
    const double c = alone(three_rods()[2]).each.typical_ohm;
    CHECK(within(bank.typical_ohm(), 1.0 / (1.0 / (a + b) + 1.0 / c), 1e-12));
    CHECK(bank.low_ohm() < bank.typical_ohm());
    CHECK(bank.high_ohm() > bank.typical_ohm());
    // With c open a + b are left, with a or b open c: the first is nearly the same as the second.
    CHECK(within(bank.with_one_branch_open(bank.typical_ohm()), std::max(a + b, c), 1e-12));
    CHECK(std::isinf(rods_bank("a + [b | c]").with_one_branch_open(20.0)));
    CHECK(bank.count() == 3);
    CHECK(bank.branches() == 2);
    CHECK(bank.owned == 3);
    CHECK(bank.label() == "[a + b] | c");
    CHECK(bank.fixed());
    CHECK(bank.kinds().size() == 3);
    CHECK(bank == rods_bank("[a + b] | c"));
    CHECK_FALSE(bank == rods_bank("[a + c] | b"));
    double sum = 0.0;
    for (const double share : bank.unlike->power_shares()) sum += share;
    CHECK(within(sum, 1.0, 1e-12));
}

TEST_CASE("equal elements in a plain hook-up are the same bank as before, to the bit") {
    const Element rod = three_rods().front();
    const std::vector<std::pair<std::string, Hookup>> plain{{"a", {1, 1}},
                                                            {"a + a", {2, 1}},
                                                            {"a x3", {3, 1}},
                                                            {"a | a", {1, 2}},
                                                            {"a x2 | a x2", {2, 2}},
                                                            {"[a + a] | a x2", {2, 2}},
                                                            {"[a | [a | a]]", {1, 3}},
                                                            {"[[a] + [a + a]]", {3, 1}}};
    for (const auto& [text, hookup] : plain) {
        CAPTURE(text);
        const Bank bank = rods_bank(text);
        CHECK_FALSE(bank.unlike);
        CHECK(bank == heatmatch::make_bank(starter(), rod, hookup, hookup.count(), 300.0));
    }
    for (const char* text : {"[a | a] + a", "[a | a] x2", "a + a | a", "a | b", "[a | b] x2"}) {
        CAPTURE(text);
        CHECK(rods_bank(text).unlike);
    }
}

// Source: the functions of equal elements; a tree of equal strings has the same numbers.
TEST_CASE("equal elements kept as a tree have the resistance and load of their hook-up") {
    const heatmatch::ArrayCurve curve = bench_curve();
    for (const auto& [text, hookup] : std::vector<std::pair<std::string, Hookup>>{
             {"a x2 | a x2", {2, 2}}, {"a | a | a", {1, 3}}, {"a x3", {3, 1}}}) {
        CAPTURE(text);
        const Element rod = three_rods().front();
        const Bank equal = heatmatch::make_bank(starter(), rod, hookup, hookup.count(), 300.0);
        heatmatch::UnlikeBank kept{.tree = BankTree::parse(text, "circuit", "elements")};
        kept.elements.assign(static_cast<std::size_t>(hookup.count()), alone(rod));
        for (Bank& each : kept.elements) each.place = heatmatch::PlaceInBank{};
        const Bank tree{.unlike = std::make_shared<const heatmatch::UnlikeBank>(kept)};
        CHECK(within(tree.low_ohm(), equal.low_ohm(), 1e-12));
        CHECK(within(tree.typical_ohm(), equal.typical_ohm(), 1e-12));
        CHECK(within(tree.high_ohm(), equal.high_ohm(), 1e-12));
        const auto as_tree = heatmatch::extremes(curve, tree, 0.3);
        const auto as_equal = heatmatch::extremes(curve, equal, 0.3);
        // Never kinder: mates and others are at all corners, equal ones at common ends.
        CHECK(as_tree.element_power_w >= as_equal.element_power_w * (1.0 - 1e-9));
        CHECK(as_tree.element_power_w <= as_equal.element_power_w * 1.01);
        CHECK(as_tree.element_voltage_v >= as_equal.element_voltage_v * (1.0 - 1e-9));
        CHECK(as_tree.element_voltage_v <= as_equal.element_voltage_v * 1.01);
        CHECK(as_tree.survivor_power_w >= as_equal.survivor_power_w * (1.0 - 1e-9));
        CHECK(as_tree.survivor_power_w <= as_equal.survivor_power_w * 1.03);
        CHECK(as_tree.current_a == doctest::Approx(as_equal.current_a).epsilon(1e-6));
    }
}

// Source: plain sampling of every resistance inside its band, at random.
TEST_CASE("no resistances inside their bands load an element of a random tree more") {
    Dice dice(77);
    const heatmatch::ArrayCurve curve = bench_curve();
    const std::vector<std::string> texts{"[a + b] | c", "a + [b | c]", "a | b | c", "a + b + c",
                                         "[a | b] + [b | c]"};
    for (const std::string& text : texts) {
        CAPTURE(text);
        std::vector<Element> rods = three_rods();
        for (Element& rod : rods) {  // a wide band: by rating, of an unknown alloy
            rod.measured_resistance_ohm.reset();
            rod.alloy.clear();
            rod.rated_w = dice.between(300.0, 2500.0);
            rod.rated_v = 120.0;
        }
        const Bank bank = tree_bank(text, rods);
        const double branch_ohm = dice.between(0.0, 0.5);
        const double wire_ohm = 0.2 + branch_ohm * bank.branch_wire_share();
        const auto worst = heatmatch::extremes(curve, bank, wire_ohm, branch_ohm);
        REQUIRE(worst.elements.size() == bank.unlike->elements.size());
        for (int i = 0; i < 300; ++i) {
            std::vector<double> ohm;
            for (const Bank& each : bank.unlike->elements) {
                ohm.push_back(dice.between(each.each.low_ohm, each.each.high_ohm));
            }
            const BankTree& tree = bank.unlike->tree;
            const double bank_ohm = tree.resistance_ohm(ohm, branch_ohm);
            const double current = curve.into_resistance(bank_ohm + 0.2).current_a;
            const auto points = tree.at_voltage(ohm, current * bank_ohm, branch_ohm);
            CHECK(current <= worst.current_a * (1.0 + 1e-9));
            for (std::size_t k = 0; k < points.size(); ++k) {
                CHECK(points[k].power_w <= worst.elements[k].power_w * (1.0 + 1e-3));
                CHECK(points[k].voltage_v <= worst.elements[k].voltage_v * (1.0 + 1e-3));
            }
        }
    }
}

TEST_CASE("what an element absorbs when another opens is 0 in one string, and more beside others") {
    const heatmatch::ArrayCurve curve = bench_curve();
    for (const auto& load : heatmatch::extremes(curve, rods_bank("a + b + c"), 0.2).elements) {
        CHECK(load.survivor_power_w() == 0.0);
    }
    const auto beside = heatmatch::extremes(curve, rods_bank("[a + b] | c"), 0.2);
    CHECK(beside.elements[0].with_open_w[1] == 0.0);  // in series with it
    CHECK(beside.elements[0].with_open_w[2] > beside.elements[0].power_w);
    CHECK(beside.elements[2].with_open_w[0] == doctest::Approx(beside.elements[2].with_open_w[1]));
    CHECK(beside.survivor_power_w >= beside.elements[2].survivor_power_w());
}

TEST_CASE("equal elements in equal places share a title, others have the number of their place") {
    const Bank bank = rods_bank("a + [a | a | b] + b");
    const heatmatch::UnlikeBank& unlike = *bank.unlike;
    CHECK(unlike.title_of(0) == "element \"a\" at place 1");
    CHECK(unlike.title_of(1) == unlike.title_of(2));
    CHECK(unlike.title_of(1) == "element \"a\" at place 2");
    CHECK(unlike.title_of(3) == "element \"b\" at place 4");
    CHECK(unlike.distinct() == std::vector<std::size_t>{0, 1, 3, 4});
    CHECK(rods_bank("[a + b] | c").unlike->title_of(2) == "element \"c\"");
    // The order of the text does not matter to a place.
    CHECK(rods_bank("[a | b] + [b | a]").unlike->distinct() == std::vector<std::size_t>{0, 1});
}

TEST_CASE("an element without a fixed resistance is refused, and named") {
    std::vector<Element> rods = three_rods();
    for (const Element& element : starter().elements) {
        if (alone(element).each.fixed) continue;
        rods.push_back(element);
        const std::string text = "a | " + element.id;
        CHECK(contains(
            refusal_of<heatmatch::InvalidInput>([&] { static_cast<void>(tree_bank(text, rods)); }),
            element.id));
        return;
    }
    FAIL("the starter has no element that varies");
}
