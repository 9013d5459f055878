#include "demo.hpp"
#include "dice.hpp"
#include "long_run.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/plan/array_bound.hpp"
#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/mixed_energy.hpp"
#include "heatmatch/solar/monthly_sky.hpp"

using heatmatch::ArrayBound;
using heatmatch::ArrayFamily;
using heatmatch::BoundGroup;
using heatmatch::FamilyGroup;
using heatmatch::WeatherNodes;

namespace {

/// Panels of several kinds on one or two planes under one sky, and their family.
struct BoundYard {
    std::vector<WeatherNodes> planes{};
    std::vector<BoundGroup> groups{};
    ArrayFamily family{};
    ArrayBound bound{};

    BoundYard(Dice& dice, std::size_t plane_count) {
        static const heatmatch::MonthlySky sky(*demo().weather, demo().site);
        static const heatmatch::Weather south = sky.weather(60.0, 180.0);
        static const heatmatch::Weather east = sky.weather(35.0, 95.0);
        std::vector<const heatmatch::Weather*> weathers{&south};
        if (plane_count > 1) weathers.push_back(&east);
        planes = heatmatch::plane_nodes(
            weathers, {.months = {11, 12, 1, 2, 3}, .irradiance_bins = 12, .temperature_bins = 8});
        const std::vector<std::string> kinds{"silicon-60-cell-245", "silicon-36-cell-135",
                                             "cdte-100"};
        std::vector<FamilyGroup> counts;
        for (const std::string& kind : kinds) {
            BoundGroup group{.panel =
                                 heatmatch::string_panel(heatmatch::find_panel(starter(), kind))};
            group.panel.diode = group.panel.diode.scaled(dice.between(0.7, 1.0), 1.0);
            group.plane = static_cast<std::size_t>(dice.from(0, static_cast<int>(plane_count) - 1));
            groups.push_back(group);
            counts.push_back(
                {.count = dice.from(1, 3), .v_mp = *heatmatch::find_panel(starter(), kind).v_mp});
        }
        family = heatmatch::array_family(counts);
        bound = ArrayBound(planes, groups);
    }

    [[nodiscard]] heatmatch::PlacedArray placed(const heatmatch::FamilyArray& array) const {
        heatmatch::PlacedArray made{.planes = planes};
        for (const std::size_t string : array.strings) {
            heatmatch::PanelString& panels = made.array.strings.emplace_back();
            for (std::size_t g = 0; g < groups.size(); ++g) {
                for (int n = 0; n < family.strings[string].panels[g]; ++n) {
                    panels.panels.push_back(groups[g].panel);
                    made.places.push_back(
                        {.plane = groups[g].plane, .noct_c = groups[g].panel.noct_c});
                }
            }
        }
        return made;
    }
};

}  // namespace

// Source: the curves themselves and the sums over their nodes.
TEST_CASE("no array delivers more than its bound into any resistance") {
    const int yards = in_the_long_run() ? 60 : 6;
    Dice dice(5);
    double loosest = 0.0;
    double sum = 0.0;
    int arrays = 0;
    for (int yard = 0; yard < yards; ++yard) {
        const BoundYard at(dice, yard % 2 == 0 ? 1 : 2);
        for (int trial = 0; trial < 4; ++trial) {
            const heatmatch::FamilyArray& array = dice.one_of(at.family.arrays);
            const heatmatch::PlacedArray placed = at.placed(array);
            const double match = heatmatch::stc_match_ohm(placed.array);
            const heatmatch::EnergyCurve curve(placed, match);
            const heatmatch::ArrayLimits limits = at.bound.limits(at.family, array);
            for (double ratio = 0.02; ratio < 60.0; ratio *= 1.37) {
                const double ohm = ratio * match;
                const double most = at.bound.at_most_kwh(limits, ohm);
                CHECK(curve.delivered_kwh(ohm) <= most);
                CHECK(most <= at.bound.at_most_kwh(limits));
            }
            double node_kwh = 0.0;
            const double ohm = curve.best_resistance_ohm();
            for (std::size_t node = 0; node < at.planes.front().size(); ++node) {
                node_kwh += at.planes.front().hours[node] / 1000.0 *
                            placed.at(node).into_resistance(ohm).power_w;
            }
            const double most = at.bound.at_most_kwh(limits, ohm);
            CHECK(node_kwh * (1.0 + heatmatch::curve_allowance) <= most * (1.0 + 1e-12));
            loosest = std::max(loosest, most / node_kwh - 1.0);
            sum += most / node_kwh - 1.0;
            ++arrays;
        }
    }
    MESSAGE("above the exact energy: mean ", sum / arrays, ", at most ", loosest);
    CHECK(sum / arrays < 0.2);
}

// Source: the definition: one panel alone at its maximum power point all the time.
TEST_CASE("the bound of a panel is its energy at the maximum power point") {
    Dice dice(8);
    const BoundYard at(dice, 1);
    for (std::size_t g = 0; g < at.groups.size(); ++g) {
        const heatmatch::EnergyCurve curve(at.groups[g].panel.diode, at.groups[g].panel.noct_c,
                                           at.planes.front(), 5.0);
        CHECK(at.bound.largest_kwh(g) == doctest::Approx(curve.mpp_kwh()).epsilon(1e-9));
    }
}
