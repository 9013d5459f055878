#include "operation/calibration/model_error.hpp"

#include <random>
#include <vector>

#include <doctest/doctest.h>

using namespace heatmatch;

namespace {

/// `a' W C W b` by the whole matrix C.
double by_matrix(const std::vector<ErrorShapes>& shapes, const std::vector<std::size_t>& probe_of,
                 double noise_k2, const std::vector<double>& a, const std::vector<double>& b) {
    const auto dot = [](const ErrorShapes& one, const ErrorShapes& other) {
        double sum = 0.0;
        for (std::size_t i = 0; i < error_shapes; ++i) sum += one[i] * other[i];
        return sum;
    };
    double sum = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            double c = probe_of[i] == probe_of[j] ? dot(shapes[i], shapes[j]) : 0.0;
            if (i == j) c += noise_k2;
            sum += a[i] / (noise_k2 + dot(shapes[i], shapes[i])) * c * b[j] /
                   (noise_k2 + dot(shapes[j], shapes[j]));
        }
    }
    return sum;
}

}  // namespace

TEST_CASE("the covariance of sums equals that of the whole matrix of errors") {
    const std::vector<std::size_t> probe_of{0, 0, 0, 0, 1, 1, 1};
    std::vector<ErrorShapes> shapes;
    std::vector<double> a;
    std::vector<double> b;
    for (std::size_t k = 0; k < probe_of.size(); ++k) {
        const auto at = static_cast<double>(k);
        shapes.push_back({0.3 + 0.1 * at, k % 2 == 0 ? 0.5 : 0.0, 0.2 * at});
        a.push_back(1.0 - 0.4 * at);
        b.push_back(0.5 * at * at - 2.0);
    }
    // Noise is one kelvin until residuals determine it.
    const ModelError error(shapes, {4, 3});
    CHECK(error.spread(a, b) == doctest::Approx(by_matrix(shapes, probe_of, 1.0, a, b)));
    CHECK(error.spread(a, a) == doctest::Approx(by_matrix(shapes, probe_of, 1.0, a, a)));
    double weighed = 0.0;
    for (std::size_t k = 0; k < a.size(); ++k) {
        double own = 1.0;
        for (const double each : shapes[k]) own += each * each;
        weighed += a[k] * b[k] / own;
    }
    CHECK(error.weighed(a, b) == doctest::Approx(weighed));
}

TEST_CASE("noise is separated from the error of the model, which changes slowly") {
    std::mt19937 random(5);
    std::normal_distribution<double> noise(0.0, 0.5);
    std::vector<double> left;
    for (int k = 0; k < 2000; ++k) left.push_back(noise(random) + 20.0 - 1e-5 * k * k);
    // Without errors of the model a reading weighs one over the square of its noise.
    ModelError error(std::vector<ErrorShapes>(left.size()), {left.size()});
    error.take_noise_of(left);
    std::vector<double> one(left.size(), 0.0);
    one[7] = 1.0;
    CHECK(error.weighed(one, one) == doctest::Approx(1.0 / 0.25).epsilon(0.15));
}

TEST_CASE("an error of place does not vanish with a fill that conducts without end") {
    ModelError found({{1.0, 2.0, 0.1}}, {1});
    found.widen_place(ModelError({{9.0, 9.0, 3.0}}, {1}));
    const std::vector<double> one{1.0};
    CHECK(found.weighed(one, one) == doctest::Approx(1.0 / (1.0 + 1.0 + 4.0 + 9.0)));
}

TEST_CASE("every kind of probe errs by a share of its rise") {
    for (const ProbePlace place :
         {ProbePlace::bed, ProbePlace::wall, ProbePlace::lid, ProbePlace::sheath}) {
        const ErrorShapes small = model_error_k(place, {.rise_k = 10.0, .place_k = 1.0});
        const ErrorShapes large = model_error_k(place, {.rise_k = 20.0, .place_k = 2.0});
        CHECK(small[0] > 0.0);
        for (std::size_t i = 0; i < error_shapes; ++i) {
            CHECK(large[i] == doctest::Approx(2.0 * small[i]));
        }
    }
}
