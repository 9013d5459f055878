#include "dice.hpp"

#include <algorithm>
#include <set>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/plan/array_family.hpp"

using heatmatch::ArrayFamily;
using heatmatch::FamilyExtent;
using heatmatch::FamilyGroup;
using heatmatch::PanelCounts;

namespace {

/// An array as the sorted list of its strings.
using PlainArray = std::vector<PanelCounts>;

/// Puts each panel, one by one, into a string that is begun, into a new one, or nowhere.
void put_panels(const std::vector<std::size_t>& panels, std::size_t at, std::size_t groups,
                PlainArray& strings, std::set<PlainArray>& found) {
    if (at == panels.size()) {
        PlainArray sorted = strings;
        std::sort(sorted.begin(), sorted.end());
        if (!sorted.empty()) found.insert(std::move(sorted));
        return;
    }
    put_panels(panels, at + 1, groups, strings, found);
    for (std::size_t s = 0; s < strings.size(); ++s) {
        ++strings[s][panels[at]];
        put_panels(panels, at + 1, groups, strings, found);
        --strings[s][panels[at]];
    }
    strings.emplace_back(groups, 0);
    ++strings.back()[panels[at]];
    put_panels(panels, at + 1, groups, strings, found);
    strings.pop_back();
}

/// All arrays of the stated family, by trying every place of every panel.
std::set<PlainArray> all_by_trial(const std::vector<FamilyGroup>& groups) {
    std::vector<std::size_t> panels;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        panels.insert(panels.end(), static_cast<std::size_t>(groups[g].count), g);
    }
    PlainArray strings;
    std::set<PlainArray> found;
    put_panels(panels, 0, groups.size(), strings, found);
    std::erase_if(found, [&](const PlainArray& array) {
        double low = 1e9;
        double high = 0.0;
        for (const PanelCounts& string : array) {
            double volts = 0.0;
            for (std::size_t g = 0; g < groups.size(); ++g) volts += string[g] * groups[g].v_mp;
            low = std::min(low, volts);
            high = std::max(high, volts);
        }
        return high > 1.25 * low + 1e-6;
    });
    return found;
}

PlainArray strings_of(const ArrayFamily& family, const heatmatch::FamilyArray& array) {
    PlainArray strings;
    for (const std::size_t string : array.strings) {
        strings.push_back(family.strings[string].panels);
    }
    std::sort(strings.begin(), strings.end());
    return strings;
}

}  // namespace

// Source: every way to put each panel into a string, tried one by one.
TEST_CASE("a family has every array of strings of like voltage once") {
    Dice dice(11);
    for (int yard = 0; yard < 25; ++yard) {
        std::vector<FamilyGroup> groups;
        int left = 6;
        for (int g = 0; g < 3 && left > 0; ++g) {
            const int count = dice.from(1, left > 3 ? 3 : left);
            groups.push_back({.count = count, .v_mp = dice.from(14, 70) + 0.3 * g});
            left -= count;
        }
        const ArrayFamily family = heatmatch::array_family(groups);
        std::set<PlainArray> made;
        for (const auto& array : family.arrays) {
            const PlainArray strings = strings_of(family, array);
            CHECK(made.insert(strings).second);
            PanelCounts sum(groups.size(), 0);
            for (const PanelCounts& string : strings) {
                for (std::size_t g = 0; g < groups.size(); ++g) sum[g] += string[g];
            }
            CHECK(sum == array.panels);
        }
        CHECK(made == all_by_trial(groups));
        CHECK(family.extent == FamilyExtent::unlike_strings);
    }
}

// Source: arithmetic: n panels in series, m strings, n m <= 5.
TEST_CASE("equal panels have no more arrays than hook-ups where lengths differ by a quarter") {
    const std::vector<FamilyGroup> five{{.count = 5, .v_mp = 30.0}};
    const ArrayFamily family =
        heatmatch::array_family(five, heatmatch::most_arrays, FamilyExtent::equal_panels);
    CHECK(family.arrays.size() == 10);
    // Strings of 4 and 5 are of like voltage, but need nine panels.
    CHECK(heatmatch::array_family(five).arrays.size() == 10);
    const std::vector<FamilyGroup> nine{{.count = 9, .v_mp = 30.0}};
    const ArrayFamily of_nine = heatmatch::array_family(nine);
    const ArrayFamily equal =
        heatmatch::array_family(nine, heatmatch::most_arrays, FamilyExtent::equal_panels);
    CHECK(equal.arrays.size() == 23);
    CHECK(of_nine.arrays.size() == equal.arrays.size() + 1);
}

TEST_CASE("twelve panels of eight groups have some 26,000 arrays") {
    std::vector<FamilyGroup> groups;
    const std::vector<double> volts{29.8, 17.6, 36.1, 24.2, 30.5, 46.0, 18.3, 68.0};
    for (std::size_t g = 0; g < volts.size(); ++g) {
        groups.push_back({.count = g < 4 ? 2 : 1, .v_mp = volts[g]});
    }
    const ArrayFamily family = heatmatch::array_family(groups);
    MESSAGE("arrays: ", family.arrays.size());
    CHECK(family.strings.size() == 3 * 3 * 3 * 3 * 2 * 2 * 2 * 2 - 1);
    CHECK(family.arrays.size() > 20000);
    CHECK(family.arrays.size() < 35000);
}

TEST_CASE("a yard with too many arrays has those of equal strings") {
    const std::vector<FamilyGroup> many(4, {.count = 10, .v_mp = 30.0});
    const ArrayFamily family = heatmatch::array_family(many, 20000);
    CHECK(family.extent == FamilyExtent::equal_strings);
    CHECK(family.arrays.size() <= 20000);
    for (const auto& array : family.arrays) {
        CHECK(array.strings.front() == array.strings.back());
        if (array.strings.front() != array.strings.back()) break;
    }
    CHECK(heatmatch::array_family(many, 10).extent == FamilyExtent::equal_panels);
    CHECK(heatmatch::array_family({}).arrays.empty());
}

TEST_CASE("counts fit where no group has more") {
    CHECK(heatmatch::fits_in({1, 0, 2}, {1, 0, 2}));
    CHECK(heatmatch::fits_in({}, {}));
    CHECK(!heatmatch::fits_in({1, 1, 2}, {2, 0, 2}));
}
