#include "odd_numbers.hpp"
#include "reference_csv.hpp"
#include "refusal.hpp"

#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/heat/fin_chain.hpp"

using heatmatch::FinChain;
using heatmatch::FinEnds;
using heatmatch::FinSegment;

namespace {

/// The terminal of the reference row: heated end, cold section, a stretch in air, the wire.
std::vector<FinSegment> terminal_chain() {
    return {{endless, 3.9e-4, 0.66, 150.0, 462.0},
            {0.05, 5.8e-4, 0.66, 150.0},
            {0.03, 5.8e-4, 0.35, 25.0},
            {endless, 8.1e-4, 0.137, 25.0}};
}

/// Central differences on a fine mesh, written without any of the exact elements: cells of equal
/// width, endless ends cut after ten decay lengths, solved by the tridiagonal elimination.
std::vector<double> differences(const std::vector<FinSegment>& segments,
                                const std::vector<double>& joint_heat, double cell_m) {
    std::vector<double> ka, loss, environment, heat;
    std::vector<std::size_t> joints;
    for (std::size_t s = 0; s < segments.size(); ++s) {
        const FinSegment& each = segments[s];
        const double length = std::isinf(each.length_m)
                                  ? 10.0 * std::sqrt(each.ka_w_m_k / each.loss_w_mk)
                                  : each.length_m;
        const auto cells = static_cast<std::size_t>(std::lround(length / cell_m));
        for (std::size_t i = 0; i < cells; ++i) {
            ka.push_back(each.ka_w_m_k);
            loss.push_back(each.loss_w_mk);
            environment.push_back(each.environment_c);
            heat.push_back(each.heat_w_m * cell_m);
        }
        if (s + 1 < segments.size()) joints.push_back(ka.size());
    }
    for (std::size_t j = 0; j < joint_heat.size(); ++j) {
        heat[joints[j] - 1] += 0.5 * joint_heat[j];
        heat[joints[j]] += 0.5 * joint_heat[j];
    }
    const std::size_t n = ka.size();
    std::vector<double> link(n), diagonal(n), right(n), at(n);
    for (std::size_t i = 0; i + 1 < n; ++i) {
        link[i] = 2.0 / (cell_m / ka[i] + cell_m / ka[i + 1]);
    }
    for (std::size_t i = 0; i < n; ++i) {
        diagonal[i] = loss[i] * cell_m + link[i] + (i > 0 ? link[i - 1] : 0.0);
        right[i] = loss[i] * cell_m * environment[i] + heat[i];
    }
    for (std::size_t i = 1; i < n; ++i) {
        const double factor = link[i - 1] / diagonal[i - 1];
        diagonal[i] -= factor * link[i - 1];
        right[i] += factor * right[i - 1];
    }
    for (std::size_t i = n; i-- > 0;) {
        at[i] = (right[i] + (i + 1 < n ? link[i] * at[i + 1] : 0.0)) / diagonal[i];
    }
    std::vector<double> found;
    for (const std::size_t joint : joints) found.push_back(0.5 * (at[joint - 1] + at[joint]));
    return found;
}

}  // namespace

// Source: Incropera, example 3.9, see tests/reference/tail_open.csv.
TEST_CASE("an infinite rod loses the heat given in a textbook") {
    int compared = 0;
    for (const ReferenceRow& row : read_reference("tail_open.csv")) {
        if (row.at("quantity") != "rod heat") continue;
        CAPTURE(row.at("case"));
        const double diameter = number(row, "diameter_mm") / 1000.0;
        const FinSegment rod{.ka_w_m_k = number(row, "conductivity_w_mk") * 0.25 *
                                         std::numbers::pi * diameter * diameter,
                             .loss_w_mk = number(row, "h_w_m2k") * std::numbers::pi * diameter,
                             .environment_c = number(row, "air_c")};
        const FinChain chain({&rod, 1}, {}, {.left_c = number(row, "hot_c")});
        CHECK(chain.flow_w(0, 0.0) ==
              doctest::Approx(number(row, "expected")).epsilon(number(row, "tolerance")));
        CHECK(chain.temperature_c(0, 0.0) == doctest::Approx(number(row, "hot_c")));
        ++compared;
    }
    CHECK(compared == 3);
}

// Source: the row tail_chain of tests/reference/tail_open.csv, by finite differences elsewhere.
TEST_CASE("a terminal outside the bed is as hot as finite differences found") {
    for (const ReferenceRow& row : read_reference("tail_open.csv")) {
        if (row.at("quantity") != "chain") continue;
        const std::vector<double> contact{0.0, 0.0, 0.5};
        const FinChain chain(terminal_chain(), contact);
        CHECK(std::fabs(chain.joint_c()[2] - number(row, "expected")) <= number(row, "tolerance"));
    }
}

// Source: second-order differences of the same equation in this file, 20 um cells.
TEST_CASE("every joint agrees with finite differences") {
    for (const std::vector<double>& heat :
         {std::vector<double>{}, {0.0, 0.0, 0.5}, {1.0, -0.5, 2.0}}) {
        const FinChain chain(terminal_chain(), heat);
        const std::vector<double> found = differences(terminal_chain(), heat, 2e-5);
        REQUIRE(found.size() == 3);
        for (std::size_t i = 0; i < found.size(); ++i) {
            CAPTURE(i);
            CHECK(chain.joint_c()[i] == doctest::Approx(found[i]).epsilon(2e-4));
        }
    }
}

// Source: the textbook's profile of a fin with an insulated tip, cosh(m(L - x))/cosh(mL).
TEST_CASE("a closed end carries no heat") {
    const FinSegment fin{0.08, 8e-4, 0.3, 20.0};
    const FinChain chain({&fin, 1}, {}, {.left_c = 120.0});
    const double m = std::sqrt(0.3 / 8e-4);
    for (const double x : {0.0, 0.01, 0.05, 0.08}) {
        CHECK(chain.temperature_c(0, x) ==
              doctest::Approx(20.0 + 100.0 * std::cosh(m * (0.08 - x)) / std::cosh(m * 0.08)));
    }
    CHECK(chain.flow_w(0, 0.0) ==
          doctest::Approx(100.0 * std::sqrt(0.3 * 8e-4) * std::tanh(m * 0.08)));
    CHECK(std::fabs(chain.flow_w(0, 0.08)) < 1e-9);
}

// Source: plain conduction between two held ends, T = T0 + (T1 - T0) x/L + q' x (L - x)/(2 kA).
TEST_CASE("a stretch that loses nothing is a straight line, or a parabola where it is heated") {
    for (const double loss : {0.0, 1e-15, 1e-9, 1e-7}) {
        CAPTURE(loss);
        const FinSegment bar{0.1, 5e-4, loss, 20.0, 30.0};
        const FinChain chain({&bar, 1}, {}, {.left_c = 200.0, .right_c = 100.0});
        for (const double x : {0.0, 0.02, 0.05, 0.1}) {
            CHECK(chain.temperature_c(0, x) ==
                  doctest::Approx(200.0 - 1000.0 * x + 30.0 * x * (0.1 - x) / 1e-3).epsilon(1e-5));
            CHECK(chain.flow_w(0, x) ==
                  doctest::Approx(5e-4 * 1000.0 - 30.0 * (0.05 - x)).epsilon(1e-5));
        }
    }
}

// Source: arithmetic: without loss the two fins at the ends are reached through R = L/kA.
TEST_CASE("a wall between two fins is a resistance") {
    const std::vector<FinSegment> chain_of{
        {endless, 4e-4, 0.6, 300.0}, {0.04, 5e-4, 0.0, 0.0}, {endless, 8e-4, 0.1, 20.0}};
    const FinChain chain(chain_of);
    const double hot = 1.0 / std::sqrt(4e-4 * 0.6);
    const double cold = 1.0 / std::sqrt(8e-4 * 0.1);
    const double flow = 280.0 / (hot + 0.04 / 5e-4 + cold);
    CHECK(chain.joint_c()[0] == doctest::Approx(300.0 - flow * hot));
    CHECK(chain.joint_c()[1] == doctest::Approx(20.0 + flow * cold));
    for (std::size_t i = 0; i < 3; ++i) CHECK(chain.flow_w(i, 0.0) == doctest::Approx(flow));
}

TEST_CASE("temperature is continuous and heat is conserved at every joint") {
    const std::vector<double> contact{0.0, 1.5, 0.7};
    const FinChain chain(terminal_chain(), contact);
    CHECK(chain.temperature_c(0, 0.0) == doctest::Approx(chain.joint_c()[0]));
    CHECK(chain.temperature_c(1, 0.0) == doctest::Approx(chain.joint_c()[0]));
    CHECK(chain.temperature_c(1, 0.05) == doctest::Approx(chain.joint_c()[1]));
    CHECK(chain.temperature_c(2, 0.03) == doctest::Approx(chain.joint_c()[2]));
    CHECK(chain.temperature_c(3, 0.0) == doctest::Approx(chain.joint_c()[2]));
    CHECK(chain.flow_w(0, 0.0) == doctest::Approx(chain.flow_w(1, 0.0)));
    CHECK(chain.flow_w(1, 0.05) + 1.5 == doctest::Approx(chain.flow_w(2, 0.0)));
    CHECK(chain.flow_w(2, 0.03) + 0.7 == doctest::Approx(chain.flow_w(3, 0.0)));
    // The slope is that of the temperature.
    const double step = 1e-6;
    const double slope =
        (chain.temperature_c(2, 0.02 + step) - chain.temperature_c(2, 0.02)) / step;
    CHECK(chain.flow_w(2, 0.02) == doctest::Approx(-5.8e-4 * slope).epsilon(1e-3));
}

TEST_CASE("far away an endless segment is at its own temperature, however long a neighbour is") {
    std::vector<FinSegment> segments = terminal_chain();
    segments[1].length_m = 200.0;
    const FinChain chain(segments);
    CHECK(chain.temperature_c(0, 5.0) == doctest::Approx(150.0 + 462.0 / 0.66));
    CHECK(chain.temperature_c(1, 100.0) == doctest::Approx(150.0));
    CHECK(chain.temperature_c(3, 10.0) == doctest::Approx(25.0));
    CHECK(std::isfinite(chain.flow_w(1, 1.0)));
}

TEST_CASE("an infinite end may be to the left of a fixed one") {
    const FinSegment rod{endless, 4e-4, 0.5, 20.0};
    const FinChain left({&rod, 1}, {}, {.right_c = 100.0});
    const FinChain right({&rod, 1}, {}, {.left_c = 100.0});
    CHECK(left.temperature_c(0, 0.03) == doctest::Approx(right.temperature_c(0, 0.03)));
    CHECK(left.flow_w(0, 0.0) == doctest::Approx(-right.flow_w(0, 0.0)));
}

TEST_CASE("a chain without meaning is refused") {
    const auto refusal = [](std::vector<FinSegment> segments, const FinEnds& ends = {}) {
        return refusal_of([&] { FinChain(segments, {}, ends); });
    };
    const FinSegment good{0.1, 5e-4, 0.3, 20.0};
    const FinSegment open{endless, 5e-4, 0.3, 20.0};
    CHECK(holds(refusal({}), "segments = (none) must be one or more"));
    CHECK(holds(refusal({{0.0, 5e-4, 0.3, 20.0}}), "fin segment 1: length_m = 0 must be > 0"));
    CHECK(holds(refusal({good, open, good}), "fin segment 2: length_m = infinite must be finite"));
    CHECK(holds(refusal({open}), "must be finite"));
    CHECK(holds(refusal({good, open}, {.right_c = 20.0}), "must be finite"));
    CHECK(holds(refusal({{0.1, 0.0, 0.3, 20.0}}), "ka_w_m_k = 0 must be > 0"));
    CHECK(holds(refusal({good, {endless, 5e-4, 0.0, 20.0}}), "loss_w_mk = 0 must be > 0"));
    CHECK(holds(refusal({{0.1, 5e-4, -0.3, 20.0}}), "loss_w_mk = -0.3 must be >= 0"));
    CHECK(holds(refusal({{0.1, 5e-4, 0.3, NAN}}), "environment_c = nan must be finite"));
    CHECK(holds(refusal({{0.1, 5e-4, 0.3, 20.0, endless}}), "heat_w_m = infinite must be finite"));
    CHECK(holds(refusal({{0.1, 5e-4, 0.0, 20.0}}), "fix the temperature of an end"));
    CHECK(refusal({good, open}) == "(accepted)");
}
