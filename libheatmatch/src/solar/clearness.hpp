#pragma once

namespace heatmatch {

/// Distribution of the hours of a month around their mean. The sky index is an hour's global
/// irradiance over that of the month's clear air. A share of the hours, (mean index)^2.6, is clear,
/// uniform within 0.15 of 1; the rest are cloudy, with an exponential density from 0 to 0.85 that
/// preserves the mean. So the sun is either present or not, as in measured hours; a single peak
/// around the mean would be too dim at the top. The square of the index is the published share of
/// bright sunshine; exponent and width are our own, fitted together with the clearness of the air
/// at two places. @cite suehrcke-2000 @cite bendt-1981 @cite ibanez-2002
class SkyIndices {
  public:
    /// `mean` is limited to 0 .. clearest_month.
    explicit SkyIndices(double mean);

    /// The index below which a share of the hours lies; increases with both share and mean.
    [[nodiscard]] double at(double share) const;

  private:
    double mean_;
    double clear_share_;
    double steepness_ = 0.0;  //!< of the exponential density of the cloudy hours
};

/// Largest mean index of a month: every hour at the maximum.
inline constexpr double clearest_month = 1.15;

/// Linke turbidity of the clear hours of a month by its mean daily low: cold air is dry and clean.
/// @cite ineichen-perez-2002
[[nodiscard]] double turbidity_of_clear_hours(double low_c);

}  // namespace heatmatch
