#include "spot_form.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/expint.hpp>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

using Rule = boost::math::quadrature::gauss<double, 10>;
constexpr double nothing_comes = 3.5;  // erfc of it is 7e-7

/// Table of erfc from 0 to `nothing_comes` at equal steps: spots spend most of their time in erfc.
class ErfcTable {
  public:
    ErfcTable() {
        for (std::size_t i = 0; i < values_.size(); ++i) {
            values_[i] = std::erfc(static_cast<double>(i) / per_unit);
        }
    }
    [[nodiscard]] double at(double x) const {
        const double place = x * per_unit;
        if (!(place < last)) return 0.0;
        const auto i = static_cast<std::size_t>(place);
        return values_[i] + (place - static_cast<double>(i)) * (values_[i + 1] - values_[i]);
    }

  private:
    static constexpr double per_unit = 256.0;
    static constexpr std::size_t count = 897;  // nothing_comes times per_unit, and one
    static constexpr double last = static_cast<double>(count - 1);
    std::array<double, count> values_{};
};

const ErfcTable& erfc_table() {
    static const ErfcTable table;
    return table;
}

/// `x exp(x) E1(x)`: share of a spot's rise that remains with a metal skin; 1 without one.
double left_by_skin(double distance_m, double skin_m) {
    constexpr double no_skin = 40.0;
    if (distance_m > no_skin * skin_m) return 1.0;
    const double x = distance_m / skin_m;
    using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return x * std::exp(x) * boost::math::expint(1, x, Policy());
}

}  // namespace

SpotForm::SpotForm(std::span<const LegSegment> legs, const SurfaceSpot& spot, const SpotPath& path)
    : reach_m_(path.reach_m), sink_share_(path.sink_share) {
    const int images = path.mirror > 0.0 ? 3 : 1;
    points_.reserve(legs.size() * static_cast<std::size_t>(images) * 2 * Rule::abscissa().size());
    for (const LegSegment& leg : legs) {
        for (int image = 0; image < images; ++image) add_line(leg, spot, path, image);
    }
}

void SpotForm::add_line(const LegSegment& leg, const SurfaceSpot& spot, const SpotPath& path,
                        int image) {
    const double tall_m = leg.along_x ? 0.0 : leg.length_m;
    const double z_m = image == 0   ? leg.z_m
                       : image == 1 ? -leg.z_m - tall_m
                                    : 2.0 * path.height_m - leg.z_m - tall_m;
    const double dx = leg.x_m - spot.x_m;
    const double dy = leg.y_m - spot.y_m;
    const double dz = z_m - spot.z_m;
    const double across = leg.along_x ? dz : dx;
    const double beside = std::max(std::sqrt(across * across + dy * dy), leg.radius_m);
    const double reached = nothing_comes * path.reach_m;
    if (beside >= reached) return;
    const double reached_along = std::sqrt(reached * reached - beside * beside);
    const double first = leg.along_x ? dx : dz;
    const double from = std::max(first, -reached_along);
    const double to = std::min(first + leg.length_m, reached_along);
    if (to <= from) return;
    const double normal = leg.along_x ? spot.normal_x : spot.normal_z;
    const double depth =
        dx * spot.normal_x + dy * spot.normal_y + dz * spot.normal_z - first * normal;
    // s = d sinh(u): then ds/r = du, and the remaining integrand is smooth.
    const double u_from = std::asinh(from / beside);
    const double u_to = std::asinh(to / beside);
    const double half = 0.5 * (u_to - u_from);
    const double exp_middle = std::exp(0.5 * (u_to + u_from));
    const double share = leg.share * (image == 0 ? 1.0 : path.mirror) * half / (2.0 * pi);
    const ErfcTable& erfc = erfc_table();
    for (std::size_t i = 0; i < Rule::abscissa().size(); ++i) {
        const double step = std::exp(half * Rule::abscissa()[i]);
        for (const double exp_u : {exp_middle * step, exp_middle / step}) {
            const double r = 0.5 * beside * (exp_u + 1.0 / exp_u);
            const double along = 0.5 * beside * (exp_u - 1.0 / exp_u);
            points_.push_back({.weight = share * Rule::weights()[i],
                               .r_over_reach = r / path.reach_m,
                               .r_m = r,
                               .deep_m = std::clamp(std::fabs(depth + along * normal), 0.0, r),
                               .come = erfc.at(r / path.reach_m),
                               .image = image});
        }
    }
}

double SpotForm::at(const SpotLeaves& leaves) const {
    const ErfcTable& erfc = erfc_table();
    const double h = leaves.u_over_k_m;
    const double later = h > 0.0 ? sink_share_ / (h * reach_m_) : nothing_comes;
    const std::array<double, 3> mirror_h{0.0, leaves.floor_u_over_k_m, leaves.lid_u_over_k_m};
    std::array<double, 3> mirror_later{};
    for (std::size_t i = 1; i < mirror_h.size(); ++i) {
        mirror_later[i] =
            mirror_h[i] > 0.0 ? sink_share_ / (mirror_h[i] * reach_m_) : nothing_comes;
    }
    double sum = 0.0;
    for (const Point& point : points_) {
        const double to_air = 1.0 + h * point.r_m;
        const double taken = 1.0 - (1.0 + h * point.deep_m) / (to_air * to_air);
        double value = point.come - taken * erfc.at(point.r_over_reach + later);
        if (point.image > 0 && point.come > 0.0) {
            const auto image = static_cast<std::size_t>(point.image);
            const double each = mirror_h[image] * point.r_m;
            const double late = erfc.at(point.r_over_reach + mirror_later[image]);
            value *= 1.0 - 2.0 * each / (1.0 + each) * late / point.come;
        }
        if (leaves.skin_m > 0.0) value *= left_by_skin(point.r_m, leaves.skin_m);
        sum += point.weight * value;
    }
    return sum;
}

}  // namespace heatmatch
