#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// The hourly skies of a year that give one plane its twelve monthly sums, for use on that plane or
/// another. `sun_hours` is the mean daily sum on the plane before its glass [kWh/m2]. Each month
/// has a mean sky index, global irradiance over that of clear air, for which its hours sum to that
/// value. A share of its days is clear, the rest are cloudy (Suehrcke; Bendt, Collares-Pereira and
/// Rabl), in a fixed order and at one index all day. Clear air is that of Ineichen and Perez,
/// cleaner at colder lows; the split is that of Erbs, the air is between low and high, wind is as
/// for NOCT. Clouds at regular hours (morning fog) are not represented. Where the plane receives
/// little of a month's sun, its sky is poorly determined. @cite suehrcke-2000 @cite bendt-1981
/// @cite ineichen-perez-2002 @cite erbs-1982
class MonthlySky {
  public:
    /// Throws InvalidInput naming the month and the largest possible value where no sky gives a
    /// sum.
    MonthlySky(const MonthlyNormals& normals, const Site& site);

    /// The year of hours on a plane of this tilt and azimuth; default: those of the site. Throws
    /// InvalidInput where they are out of range.
    [[nodiscard]] Weather weather(std::optional<double> tilt_deg = {},
                                  std::optional<double> azimuth_deg = {}) const;
    /// Mean daily sums on such a plane before its glass, January first [kWh/m2].
    [[nodiscard]] std::vector<double> sun_hours(std::optional<double> tilt_deg = {},
                                                std::optional<double> azimuth_deg = {}) const;

    [[nodiscard]] const MonthlyNormals& normals() const { return normals_; }
    [[nodiscard]] const Site& site() const { return site_; }

  private:
    struct Months;
    [[nodiscard]] Site turned(std::optional<double> tilt_deg,
                              std::optional<double> azimuth_deg) const;

    MonthlyNormals normals_;
    Site site_;
    std::shared_ptr<const Months> months_;
};

}  // namespace heatmatch
