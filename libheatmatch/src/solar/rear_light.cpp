#include "heatmatch/solar/rear_light.hpp"

#include "degrees.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>

namespace heatmatch {

namespace {

constexpr int points_of_back = 12;
constexpr int rays_of_point = 48;  // of equal weight: equal steps of the sine to the normal
constexpr int rows_seen = 12;      // further rows are within a few degrees of the horizon
constexpr double lowest_cosine = 0.01745;

/// Along the ground in the direction that the panels face, and up [m].
struct Spot {
    double x = 0.0;
    double y = 0.0;
};

/// From the lower edge of a row at x = 0, y = height.
struct Section {
    double cosine = 1.0;  //!< of the tilt
    double sine = 0.0;
    RowLayout layout{};

    [[nodiscard]] Spot up_slope(double metres) const {
        return {-metres * cosine, layout.height_m + metres * sine};
    }
    /// Whether a ray meets the row behind.
    [[nodiscard]] bool meets_next_row(Spot from, Spot along) const {
        if (!layout.pitch_m) return false;
        const double across = -along.x * sine - along.y * cosine;
        if (std::fabs(across) < 1e-12) return false;
        const double dx = -*layout.pitch_m - from.x;
        const double dy = layout.height_m - from.y;
        const double distance = (-dx * sine - dy * cosine) / across;
        const double place = (along.x * dy - along.y * dx) / across;
        return distance > 0.0 && place >= 0.0 && place <= layout.slant_m;
    }
    /// Share of the sky visible between rows from a spot of the ground: half the sine of the free
    /// angle.
    [[nodiscard]] double sky_over(double x) const {
        const auto sine_to = [x](Spot spot) {
            return (spot.x - x) / std::hypot(spot.x - x, spot.y);
        };
        const int rows = layout.pitch_m ? rows_seen : 0;
        double hidden = 0.0;
        double end = -1.0;
        for (int row = rows; row >= -rows; --row) {
            const double shift = layout.pitch_m ? -row * *layout.pitch_m : 0.0;
            Spot lower = up_slope(0.0);
            Spot upper = up_slope(layout.slant_m);
            lower.x += shift;
            upper.x += shift;
            auto [low, high] = std::minmax({sine_to(lower), sine_to(upper)});
            low = std::max(low, end);
            if (high <= low) continue;
            hidden += high - low;
            end = high;
        }
        return 1.0 - 0.5 * hidden;
    }
};

struct Ray {
    double place_m;
    double sky;
};

/// The sun's direction in the plane of the section: in the direction that the panels face, over its
/// height.
double tangent_of(const Plane& plane, const SunPosition& sun, double upright) {
    return std::sin(radians(sun.apparent_zenith_deg)) *
           std::cos(radians(sun.azimuth_deg - plane.azimuth_deg)) /
           std::max(upright, lowest_cosine);
}

}  // namespace

RearView::RearView(const RowLayout& layout) : layout_(layout) {
    const double tilt = radians(layout.tilt_deg);
    const Section section{.cosine = std::cos(tilt), .sine = std::sin(tilt), .layout = layout};
    constexpr double weight = 1.0 / (points_of_back * rays_of_point);
    std::vector<Ray> ground;
    ground.reserve(static_cast<std::size_t>(points_of_back) * rays_of_point);
    for (int point = 0; point < points_of_back; ++point) {
        const Spot from = section.up_slope(layout.slant_m * (point + 0.5) / points_of_back);
        for (int i = 0; i < rays_of_point; ++i) {
            const double sine = (2.0 * i + 1.0) / rays_of_point - 1.0;
            const double cosine = std::sqrt(1.0 - sine * sine);
            // The normal of the back points down and away from the direction that the panels face.
            const Spot along{-section.sine * cosine - section.cosine * sine,
                             -section.cosine * cosine + section.sine * sine};
            if (section.meets_next_row(from, along)) continue;
            if (along.y > -1e-9) {
                sky_ += weight;
                continue;
            }
            const double x = from.x - from.y / along.y * along.x;
            const double sky = section.sky_over(x);
            ground_sky_ += weight * sky;
            const double fold =
                layout.pitch_m ? std::floor(x / *layout.pitch_m) * *layout.pitch_m : 0.0;
            ground.push_back({x - fold, sky});
        }
    }
    std::sort(ground.begin(), ground.end(),
              [](const Ray& a, const Ray& b) { return a.place_m < b.place_m; });
    for (const Ray& ray : ground) {
        place_m_.push_back(ray.place_m);
        seen_.push_back(weight * static_cast<double>(place_m_.size()));
    }
    // The back faces down: the ground is before it as the sky is before a front of that tilt.
    const Plane front{.tilt_deg = layout.tilt_deg};
    const PlaneIrradiance through =
        heatmatch::behind_glass({.sky_w_m2 = 1.0, .ground_w_m2 = 1.0}, front, 0.0);
    ground_glass_ = through.sky_w_m2;
    sky_glass_ = through.ground_w_m2;
}

double RearView::seen_up_to(double place_m) const {
    const auto next = std::upper_bound(place_m_.begin(), place_m_.end(), place_m);
    if (next == place_m_.begin()) return 0.0;
    const auto i = static_cast<std::size_t>(next - place_m_.begin());
    if (next == place_m_.end()) return seen_.back();
    const double gap = place_m_[i] - place_m_[i - 1];
    const double share = gap > 0.0 ? (place_m - place_m_[i - 1]) / gap : 0.0;
    return seen_[i - 1] + share * (seen_[i] - seen_[i - 1]);
}

double RearView::seen_in_shadow(double from_m, double to_m) const {
    if (!layout_.pitch_m) return seen_up_to(to_m) - seen_up_to(from_m);
    const double pitch = *layout_.pitch_m;
    const double width = to_m - from_m;
    if (width >= pitch) return ground_share();
    const double from = from_m - std::floor(from_m / pitch) * pitch;
    const double beyond = from + width - pitch;
    if (beyond <= 0.0) return seen_up_to(from + width) - seen_up_to(from);
    return ground_share() - seen_up_to(from) + seen_up_to(beyond);
}

/// Share of the back that is not shaded by the row behind, for a sun behind the row.
double RearView::unshaded_back(double tangent) const {
    if (!layout_.pitch_m) return 1.0;
    const double tilt = radians(layout_.tilt_deg);
    // Along the sun's direction the edges of the row behind project onto the line of this one.
    const double across = std::cos(tilt) + std::sin(tilt) * tangent;
    if (std::fabs(across) < 1e-12) return 1.0;
    const double shift = *layout_.pitch_m / across;
    const double low = std::min(shift, shift + layout_.slant_m);
    const double high = std::max(shift, shift + layout_.slant_m);
    const double shaded = std::min(high, layout_.slant_m) - std::max(low, 0.0);
    return 1.0 - std::clamp(shaded / layout_.slant_m, 0.0, 1.0);
}

SunBehind RearView::sun_behind(const Plane& plane, const SunPosition& sun) const {
    const double upright = std::cos(radians(sun.apparent_zenith_deg));
    if (!(upright > 0.0) || place_m_.empty()) return {};
    const double tangent = tangent_of(plane, sun, upright);
    const double tilt = radians(layout_.tilt_deg);
    const double lower = -layout_.height_m * tangent;
    const double upper = -layout_.slant_m * std::cos(tilt) -
                         (layout_.height_m + layout_.slant_m * std::sin(tilt)) * tangent;
    SunBehind behind{.ground = ground_share() -
                               seen_in_shadow(std::min(lower, upper), std::max(lower, upper))};
    const double incidence = 180.0 - incidence_angle_deg(plane, sun);
    if (incidence >= 90.0) return behind;
    behind.direct = std::cos(radians(incidence)) * unshaded_back(tangent);
    behind.glass = glass_transmission(incidence);
    return behind;
}

PlaneIrradiance RearView::on_back(const SunBehind& behind, const Plane& plane,
                                  const SunPosition& sun, const SkyIrradiance& sky,
                                  double extraterrestrial_w_m2, SkyModel model) const {
    const double upright = std::cos(radians(sun.apparent_zenith_deg));
    const bool up = upright > 0.0;
    const double around_sun = model == SkyModel::hay_davies && up && extraterrestrial_w_m2 > 0.0
                                  ? std::clamp(sky.dni_w_m2 / extraterrestrial_w_m2, 0.0, 1.0)
                                  : 0.0;
    const double level = up ? sky.dni_w_m2 * upright + sky.dhi_w_m2 * around_sun : 0.0;
    const double diffuse = sky.dhi_w_m2 * (1.0 - around_sun);
    return {.beam_w_m2 = sky.dni_w_m2 * behind.direct,
            .circumsolar_w_m2 =
                sky.dhi_w_m2 * around_sun * behind.direct / std::max(upright, lowest_cosine),
            .sky_w_m2 = diffuse * sky_,
            .ground_w_m2 = plane.albedo * (level * behind.ground + diffuse * ground_sky_)};
}

PlaneIrradiance RearView::behind_glass(const PlaneIrradiance& on_back,
                                       const SunBehind& behind) const {
    return {.beam_w_m2 = on_back.beam_w_m2 * behind.glass,
            .circumsolar_w_m2 = on_back.circumsolar_w_m2 * behind.glass,
            .sky_w_m2 = on_back.sky_w_m2 * sky_glass_,
            .ground_w_m2 = on_back.ground_w_m2 * ground_glass_};
}

Weather with_rear_irradiance(const Weather& weather, double share) {
    Weather both = weather;
    both.sky = {};  // it gives no other plane its rear light
    if (weather.rear_w_m2.size() != weather.size() || share <= 0.0) return both;
    const auto add = [share](std::vector<double>& to, const std::vector<double>& more) {
        if (to.size() != more.size()) return;
        for (std::size_t row = 0; row < to.size(); ++row) to[row] += share * more[row];
    };
    for (std::size_t row = 0; row < weather.size(); ++row) {
        both.heating_irradiance_w_m2[row] = weather.warming_with(row, share);
    }
    add(both.irradiance_w_m2, weather.rear_w_m2);
    add(both.clear_w_m2, weather.rear_clear_w_m2);
    add(both.overcast_w_m2, weather.rear_overcast_w_m2);
    return both;
}

}  // namespace heatmatch
