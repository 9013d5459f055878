#include "mixed_cases.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/solar/mixed_array_curve.hpp"

using heatmatch::MixedArrayCurve;
using heatmatch::OperatingPoint;
using nlohmann::json;

TEST_CASE("all maxima of power are found where a fine scan of the curve has them") {
    const std::vector<json> lines = reference_lines();
    const json& kinds = lines.front().at("panels_at_stc");
    int several = 0;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const MixedCase made = mixed_case(lines[i], kinds);
        const MixedArrayCurve curve = made.curve();
        const std::vector<OperatingPoint> maxima = curve.power_maxima();
        const double largest_w = curve.maximum_power().power_w;
        constexpr int steps = 1000;
        const double open_v = curve.open_circuit_voltage_v();
        std::vector<double> power;
        for (int step = 0; step <= steps; ++step) {
            const double volts = open_v * step / steps;
            power.push_back(volts * curve.current_a(volts));
        }
        std::size_t peaks = 0;
        for (std::size_t k = 1; k + 1 < power.size(); ++k) {
            if (power[k] > power[k - 1] && power[k] >= power[k + 1]) ++peaks;
            CHECK(power[k] <= largest_w * (1.0 + 1e-12));
        }
        // A peak narrower than the scan's step is one that only the kinks find.
        CHECK(maxima.size() >= peaks);
        CHECK(maxima.size() <= peaks + 1);
        several += peaks > 1;
    }
    CHECK(several > 10);
}
