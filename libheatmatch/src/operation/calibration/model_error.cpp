#include "model_error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace heatmatch {

namespace {

// Standard errors of the field against a solution in three dimensions, over the rise: from 40 logs
// with hairpins (tests check others). They do not include a lid: its value is from memory.
struct Shares {
    double of_rise = 0.0;
    double of_power = 0.0;  //!< over the rise at full power
    double of_place = 0.0;  //!< over the spread around the axis
};
constexpr Shares sheath_shares{.of_rise = 0.007, .of_power = 0.011};
constexpr Shares bed_shares{.of_rise = 0.04, .of_power = 0.02, .of_place = 1.0};
constexpr Shares wall_shares{.of_rise = 0.04, .of_power = 0.01, .of_place = 0.7};
constexpr Shares lid_shares{.of_rise = 0.3};

const Shares& shares_of(ProbePlace place) {
    if (place == ProbePlace::sheath) return sheath_shares;
    if (place == ProbePlace::bed) return bed_shares;
    return place == ProbePlace::wall ? wall_shares : lid_shares;
}

double dot(const ErrorShapes& a, const ErrorShapes& b) {
    double sum = 0.0;
    for (std::size_t i = 0; i < error_shapes; ++i) sum += a[i] * b[i];
    return sum;
}

}  // namespace

double place_error_k(const BedField& bed, const Probe& probe) {
    if (probe.place == ProbePlace::wall) return bed.wall_c() - bed.wall_mean_c();
    if (probe.place != ProbePlace::bed) return 0.0;
    const BedField::Around around = bed.around_k(*probe.radius_m);
    constexpr double both = 0.7071;  // two equally probable spots, root mean square
    return both * std::hypot(around.below_k, around.above_k);
}

ErrorShapes model_error_k(ProbePlace place, const ErrorSizes& sizes) {
    const Shares& shares = shares_of(place);
    return {shares.of_rise * sizes.rise_k, shares.of_power * sizes.power_k,
            shares.of_place * sizes.place_k};
}

ModelError::ModelError(std::vector<ErrorShapes> shapes, std::vector<std::size_t> counts)
    : shapes_(std::move(shapes)), counts_(std::move(counts)) {}

void ModelError::widen_place(const ModelError& other) {
    constexpr std::size_t place = 2;
    for (std::size_t k = 0; k < shapes_.size(); ++k) {
        shapes_[k][place] = std::max(shapes_[k][place], other.shapes_[k][place]);
    }
}

void ModelError::take_noise_of(std::span<const double> residuals) {
    constexpr double least_k = 0.1;          // lower bound for the error of a reading
    constexpr double median_square = 0.455;  // of a normal number of variance 1
    constexpr double of_difference = 6.0;    // 1 + 4 + 1
    std::vector<double> squares;
    std::size_t from = 0;
    for (const std::size_t count : counts_) {
        for (std::size_t k = from + 1; k + 1 < from + count; ++k) {
            const double bend = residuals[k - 1] - 2.0 * residuals[k] + residuals[k + 1];
            squares.push_back(bend * bend);
        }
        from += count;
    }
    noise_k2_ = least_k * least_k;
    if (squares.empty()) return;
    const auto middle = squares.begin() + static_cast<std::ptrdiff_t>(squares.size() / 2);
    std::nth_element(squares.begin(), middle, squares.end());
    noise_k2_ = std::max(noise_k2_, *middle / (of_difference * median_square));
}

double ModelError::weight(std::size_t reading) const {
    return 1.0 / (noise_k2_ + dot(shapes_[reading], shapes_[reading]));
}

double ModelError::weighed(std::span<const double> a, std::span<const double> b) const {
    double sum = 0.0;
    for (std::size_t k = 0; k < shapes_.size(); ++k) sum += weight(k) * a[k] * b[k];
    return sum;
}

double ModelError::spread(std::span<const double> a, std::span<const double> b) const {
    double sum = 0.0;
    std::size_t from = 0;
    for (const std::size_t count : counts_) {
        ErrorShapes along_a{};
        ErrorShapes along_b{};
        for (std::size_t k = from; k < from + count; ++k) {
            const double w = weight(k);
            sum += noise_k2_ * w * w * a[k] * b[k];
            for (std::size_t i = 0; i < error_shapes; ++i) {
                along_a[i] += w * shapes_[k][i] * a[k];
                along_b[i] += w * shapes_[k][i] * b[k];
            }
        }
        sum += dot(along_a, along_b);
        from += count;
    }
    return sum;
}

}  // namespace heatmatch
