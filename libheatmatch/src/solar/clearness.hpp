#pragma once

namespace heatmatch {

/// How the hours of a month lie about their mean. The sky index is an hour's global light over that
/// of the month's clear air; a share of the hours is clear, (mean index)^2.6, evenly within 0.15
/// of 1, and the rest are cloudy, with an exponential density from 0 to 0.85 that keeps the mean.
/// So sun is either there or not, as in measured hours, where one hump about the mean is too
/// dim at the top. The square of the index is the published share of bright sunshine; exponent and
/// width are ours, with how clear the air is fitted on two places.
/// @cite suehrcke-2000 @cite bendt-1981 @cite ibanez-2002
class SkyIndices {
  public:
    /// `mean` is held between 0 and clearest_month.
    explicit SkyIndices(double mean);

    /// The index that a share of the hours stays below; rises with both share and mean.
    [[nodiscard]] double at(double share) const;

  private:
    double mean_;
    double clear_share_;
    double steepness_ = 0.0;  //!< of the exponential density of the cloudy hours
};

/// Largest mean index of a month: every hour as bright as any.
inline constexpr double clearest_month = 1.15;

/// Linke turbidity of the clear hours of a month by its mean daily low: cold air is dry and clean.
/// @cite ineichen-perez-2002
[[nodiscard]] double turbidity_of_clear_hours(double low_c);

}  // namespace heatmatch
