#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/plane_irradiance.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Layout of rows without an end over level ground.
struct RowLayout {
    double tilt_deg = 0.0;               //!< 0 flat, 90 upright [deg]
    double height_m = 1.0;               //!< of the lower edge above the ground [m]
    double slant_m = usual_row_slant_m;  //!< from lower to upper edge [m]
    std::optional<double> pitch_m{};     //!< from row to row along the ground; none: one row [m]
};

/// The sun seen from the back of a row at a moment.
struct SunBehind {
    double ground = 0.0;  //!< share of direct light on level ground that the back sees, at albedo 1
    double direct = 0.0;  //!< cosine of incidence on the back, times its share without shade
    double glass = 1.0;   //!< share of that which passes the glass
};

/// What the back of a row sees: rays from it, each a strip of ground, the sky or the row behind,
/// with the shadow of the rows on the ground and the sky that they leave to it. View factors of two
/// dimensions: long rows, ground that reflects the same into all directions, sky without its bright
/// horizon, backs and fronts that reflect nothing. In the sum over moments of 20
/// layouts within 4 % of pvlib's ANTS-2D and 9 % of solarfactors; too little at the ends of rows.
/// @cite marion-2017 @cite anderson-2024
class RearView {
  public:
    RearView() = default;
    explicit RearView(const RowLayout& layout);

    [[nodiscard]] SunBehind sun_behind(const Plane& plane, const SunPosition& sun) const;
    /// What falls on the back [W/m2], the mean over its height, with the albedo of the plane.
    [[nodiscard]] PlaneIrradiance on_back(const SunBehind& behind, const Plane& plane,
                                          const SunPosition& sun, const SkyIrradiance& sky,
                                          double extraterrestrial_w_m2,
                                          SkyModel model = SkyModel::hay_davies) const;
    /// What the glass of the back lets through of it.
    [[nodiscard]] PlaneIrradiance behind_glass(const PlaneIrradiance& on_back,
                                               const SunBehind& behind) const;

    [[nodiscard]] double sky_share() const { return sky_; }
    [[nodiscard]] double ground_share() const { return seen_.empty() ? 0.0 : seen_.back(); }
    /// Of the ground that is seen, weighed with the sky that it has itself.
    [[nodiscard]] double lit_by_sky_share() const { return ground_sky_; }

  private:
    [[nodiscard]] double seen_up_to(double place_m) const;
    [[nodiscard]] double seen_in_shadow(double from_m, double to_m) const;
    [[nodiscard]] double unshaded_back(double tangent) const;

    RowLayout layout_{};
    double sky_ = 0.0;
    double ground_sky_ = 0.0;
    double sky_glass_ = 1.0;
    double ground_glass_ = 1.0;
    std::vector<double> place_m_{};  //!< of ground that rays meet, rising; folded into one pitch
    std::vector<double> seen_{};     //!< share of all rays up to there
};

/// Weather for panels that convert `share` of the light on their back into current as that on
/// the front: it adds to the sun on the cells and warms them. The same weather where the light on
/// the back is not known.
[[nodiscard]] Weather with_light_behind(const Weather& weather, double share);

}  // namespace heatmatch
