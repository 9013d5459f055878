#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// The hourly skies of a year that give one plane its twelve monthly sums, to be looked at from
/// that plane or from another. `sun_hours` is the mean daily sum on the plane before its glass
/// [kWh/m2]; each month's mean clearness is found so that its hours sum to it. Within the day the
/// clearness follows Collares-Pereira and Rabl, among the days it is spread after Hollands and
/// Huget, each hour at its own mean, in a fixed order; direct and diffuse by Erbs, the air between
/// low and high, wind as for NOCT. Hours of a month that is clouded by the clock (fog in the
/// morning) are not known to it. Where the plane sees little of a month's sun, its sky is poorly
/// known.
/// @cite collares-pereira-rabl-1979 @cite hollands-huget-1983 @cite erbs-1982
class MonthlySky {
  public:
    /// Throws InvalidInput naming the month and the largest possible value where no sky gives a
    /// sum.
    MonthlySky(const MonthlyNormals& normals, const Site& site);

    /// The year of hours on a plane of this tilt and azimuth; the site's own where not given.
    /// Throws InvalidInput where they are out of range.
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
