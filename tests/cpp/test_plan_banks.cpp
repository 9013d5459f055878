#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/bank_tree.hpp"
#include "heatmatch/match/plan/plan_banks.hpp"

using heatmatch::Layout;
using heatmatch::OwnedElements;
using heatmatch::unlike_banks;

// Source: series-parallel networks of n unlike resistors: 1, 2, 8, 52 (MacMahon 1892; OEIS
// A006351).
TEST_CASE("unlike elements have as many banks as there are networks of unlike resistors") {
    const std::vector<OwnedElements> four{{"a", 1}, {"b", 1}, {"c", 1}, {"d", 1}};
    const std::vector<Layout> banks = unlike_banks(four);
    std::vector<int> by_count(5, 0);
    for (const Layout& bank : banks) ++by_count[static_cast<std::size_t>(bank.count())];
    CHECK(by_count[1] == 0);
    CHECK(by_count[2] == 6 * 2);
    CHECK(by_count[3] == 4 * 8);
    CHECK(by_count[4] == 52);
}

// Source: by hand: a pair and one other in every series and parallel connection.
TEST_CASE("two equal elements and another one have six banks of three") {
    const std::vector<OwnedElements> owned{{"a", 2}, {"b", 1}};
    std::set<std::string> texts;
    for (const Layout& bank : unlike_banks(owned)) texts.insert(bank.text());
    CHECK(texts == std::set<std::string>{"a + b", "a | b", "a x2 + b", "a | a | b", "[a | a] + b",
                                         "a + [a | b]", "a x2 | b", "a | a + b"});
    for (const std::string& text : texts) {
        CAPTURE(text);
        const auto tree = heatmatch::BankTree::parse(text, "bank", "elements");
        CHECK(tree.layout.text() == text);
        CHECK(tree.elements.size() <= 3);
    }
}

// Source: networks that differ have different resistances where those of the parts are unrelated.
TEST_CASE("every bank of four unlike elements has a resistance of its own") {
    const std::vector<OwnedElements> owned{{"a", 2}, {"b", 1}, {"c", 1}};
    const std::vector<Layout> banks = unlike_banks(owned);
    std::vector<double> ohms;
    for (const Layout& bank : banks) {
        const auto tree = heatmatch::BankTree::parse(bank.text(), "bank", "elements");
        std::vector<double> each;
        for (const std::string& id : tree.elements) {
            each.push_back(id == "a" ? 10.0 : id == "b" ? 17.3205 : 31.4159);
        }
        ohms.push_back(tree.resistance_ohm(each));
    }
    std::sort(ohms.begin(), ohms.end());
    for (std::size_t i = 1; i < ohms.size(); ++i) CHECK(ohms[i] - ohms[i - 1] > 1e-6);
    CHECK(unlike_banks(owned, 2).size() == 6);
    CHECK(unlike_banks({}).empty());
    const std::vector<OwnedElements> alike{{"a", 4}};
    CHECK(unlike_banks(alike).empty());
}
