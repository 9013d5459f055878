#include "hot_spots.hpp"

#include "spot_places.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double clear_m = UnstatedPlaces::clear_m;

/// Free height beside the legs, or above and below them [m].
double free_height_m(const LegLayout& legs, const StoreShell& shell) {
    double tall_m = legs.leg_length_m;
    if (legs.lies) {
        const auto [low, high] = std::minmax_element(
            legs.legs.begin(), legs.legs.end(),
            [](const LegLayout::Leg& a, const LegLayout::Leg& b) { return a.y_m < b.y_m; });
        tall_m = high->y_m - low->y_m;
    }
    return std::max(0.0, shell.height_m - tall_m);
}

/// Height of legs that are as near to the lid as is plausible [m].
double under_lid_m(const LegLayout& legs, const StoreShell& shell) {
    const double room_m = free_height_m(legs, shell);
    return std::max(room_m - clear_m, 0.5 * room_m);
}

}  // namespace

std::vector<LegSegment> leg_segments(const LegLayout& legs, const StoreShell& shell,
                                     const std::optional<double>& low_m, double share) {
    double lowest_m = 0.0;
    for (const LegLayout::Leg& leg : legs.legs) lowest_m = std::min(lowest_m, leg.y_m);
    const double room_m = free_height_m(legs, shell);
    double from_m = low_m.value_or(0.5 * room_m);
    if (from_m > room_m) from_m = under_lid_m(legs, shell);
    std::vector<LegSegment> segments;
    segments.reserve(legs.legs.size());
    for (const LegLayout::Leg& leg : legs.legs) {
        LegSegment segment{.x_m = leg.x_m,
                           .y_m = leg.y_m,
                           .z_m = from_m,
                           .length_m = legs.leg_length_m,
                           .radius_m = legs.radius_m,
                           .share = share};
        if (legs.lies) {
            segment.x_m = -0.5 * legs.leg_length_m;
            segment.y_m = leg.x_m;
            segment.z_m = from_m + leg.y_m - lowest_m;
            segment.along_x = true;
        }
        segments.push_back(segment);
    }
    return segments;
}

namespace {

/// Fitted parameters of a face.
struct FaceFit {
    double base_share = 0.0;   //!< share of the edge's rise
    double hot_share = 0.0;    //!< share of the sheath's rise that approximates the fill on the way
    double reach_radii = 0.0;  //!< reach after a long time, in radii of a cylinder as wide as it is
                               //!< high
    double sink_share = 0.0;
    double factor = 0.0;  //!< `factor form^(1 - less)`
    double less = 0.0;
    double left = 0.0;  //!< share of the remainder of days before at the edge: lower for floor and
                        //!< lid
    double mirror = 0.0;
};
constexpr FaceFit level_fit{.base_share = 0.092,
                            .hot_share = 0.66,
                            .reach_radii = 2.53,
                            .sink_share = 0.60,
                            .factor = 0.913,
                            .less = 0.06,
                            .left = 1.8};
constexpr FaceFit wall_fit{.base_share = 0.062,
                           .hot_share = 0.71,
                           .reach_radii = 3.17,
                           .sink_share = 0.49,
                           .factor = 0.975,
                           .less = 0.084,
                           .left = 1.3,
                           .mirror = 0.605};

/// A charge and the heat of its legs.
struct SpotCase {
    const BedCharge& charge;
    const SpotBase& base;
    double w_per_m = 0.0;  //!< the most of any leg
};

/// The banks of a charge, this circuit's first.
std::vector<HeatedLegs> banks_of(const BedCharge& charge, double power_w) {
    std::vector<HeatedLegs> banks{{.legs = charge.legs, .power_w = power_w}};
    banks.insert(banks.end(), charge.others.begin(), charge.others.end());
    return banks;
}

double most_w_per_m(std::span<const HeatedLegs> banks) {
    double most = 0.0;
    for (const HeatedLegs& bank : banks) most = std::max(most, bank.w_per_m());
    return most;
}

/// Which of the plausible heights of legs.
enum class Height { low, high };

/// Fixed point of a spot's temperature [K]. Heat loss rises with temperature, so that plain
/// iteration oscillates; the secant through two points converges in three or four steps.
template <class Next>
double settled_k(const Next& next_k, double base_k) {
    constexpr int most_steps = 12;
    constexpr double close_enough_k = 0.01;
    double before_k = base_k;
    double moved_before = next_k(before_k) - before_k;
    double spot_k = before_k + moved_before;
    for (int step = 0; step < most_steps && std::fabs(spot_k - before_k) > close_enough_k; ++step) {
        const double moved = next_k(spot_k) - spot_k;
        const double slope = (moved - moved_before) / (spot_k - before_k);
        before_k = spot_k;
        moved_before = moved;
        // A slope of zero or above does not oscillate: one plain step.
        spot_k = std::max(base_k, spot_k + (slope < -0.05 ? -moved / slope : moved));
    }
    return spot_k;
}

/// Hottest of the spots [K]; `u_at` gives the heat transfer of a face at a temperature [W/m2K].
template <class HeatLoss>
double hottest_spot_k(const SpotCase& at, std::span<const LegSegment> legs,
                      std::span<const SurfaceSpot> spots, const FaceFit& fit,
                      const HeatLoss& u_at) {
    const BedCharge& charge = at.charge;
    const StoreShell& shell = charge.shell;
    const Conductivity& conductivity = charge.fill.conductivity;
    const double air_k = charge.air_c + zero_celsius_k;
    const double base_k =
        air_k + fit.base_share * (at.base.edge_k - air_k) + fit.left * at.base.before_k;
    const double hot_k = std::max(base_k, air_k + fit.hot_share * (at.base.sheath_k - air_k));
    const double diffusivity =
        conductivity.mean(base_k, hot_k) / charge.fill.mean_capacity_j_m3k(base_k, hot_k);
    const double long_m = fit.reach_radii * std::cbrt(shell.volume_m3 / (2.0 * pi));
    const double seconds = 3600.0 * charge.hours;
    const double reach_m =
        1.0 / std::sqrt(1.0 / (4.0 * diffusivity * seconds) + 1.0 / (long_m * long_m));
    const double base_theta = conductivity.theta(base_k);
    const auto next_k = [&](const SpotForm& form, double spot_k) {
        constexpr double melts_k = 3500.0;
        const double k = conductivity.mean(base_k, spot_k);
        const double shape = form.at({.u_over_k_m = u_at(spot_k) / k,
                                      .skin_m = shell.skin_w_k / k,
                                      .floor_u_over_k_m = shell.floor_u_w_m2k() / k,
                                      .lid_u_over_k_m = shell.top_u_w_m2k / k});
        const double theta =
            base_theta + at.w_per_m * fit.factor * std::pow(std::max(shape, 0.0), 1.0 - fit.less);
        return std::min(conductivity.temperature_k(theta), melts_k);
    };
    double hottest = base_k;
    for (const SurfaceSpot& spot : spots) {
        const SpotForm form(legs, spot,
                            {.reach_m = reach_m,
                             .sink_share = fit.sink_share,
                             .mirror = fit.mirror,
                             .height_m = shell.height_m});
        hottest = std::max(hottest, settled_k([&](double k) { return next_k(form, k); }, base_k));
    }
    return std::min(hottest, std::max(at.base.sheath_k, air_k));
}

/// Legs moved together to one side, as near to the faces as stated, or as is plausible.
std::vector<HeatedLegs> aside(std::vector<HeatedLegs> banks, const StoreShell& shell) {
    if (!banks.front().legs.unstated.aside) return banks;
    double sideways_m = banks.front().legs.farthest_aside_m(shell);
    for (const HeatedLegs& bank : banks) {
        sideways_m = std::min(sideways_m, bank.legs.farthest_aside_m(shell));
    }
    const double half_m = shell.round ? shell.radius_m : 0.5 * shell.length_m;
    for (HeatedLegs& bank : banks) {
        LegLayout& legs = bank.legs;
        for (LegLayout::Leg& leg : legs.legs) leg.x_m += sideways_m;
        legs.aside_m =
            std::max({legs.aside_m, sideways_m, half_m - 0.5 * legs.leg_length_m - clear_m});
    }
    return banks;
}

/// Lowest or highest plausible position, or the stated one.
std::optional<double> height_of(const LegLayout& legs, const StoreShell& shell, Height height) {
    if (!legs.unstated.height) return legs.low_m;
    return height == Height::low ? std::min(clear_m, 0.5 * free_height_m(legs, shell))
                                 : under_lid_m(legs, shell);
}

/// Legs of all banks; those without power count as fill.
std::vector<LegSegment> segments_of(const SpotCase& at, std::span<const HeatedLegs> banks,
                                    Height height) {
    const StoreShell& shell = at.charge.shell;
    std::vector<LegSegment> segments;
    for (const HeatedLegs& bank : banks) {
        const double share = at.w_per_m > 0.0 ? bank.w_per_m() / at.w_per_m : 1.0;
        if (share <= 0.0) continue;
        const std::vector<LegSegment> more =
            leg_segments(bank.legs, shell, height_of(bank.legs, shell, height), share);
        segments.insert(segments.end(), more.begin(), more.end());
    }
    return segments;
}

double wall_spot_k(const SpotCase& at, std::span<const HeatedLegs> banks, Height height) {
    const StoreShell& shell = at.charge.shell;
    const double air_k = at.charge.air_c + zero_celsius_k;
    const std::vector<LegSegment> segments = segments_of(at, banks, height);
    const auto u_at = [&](double k) { return shell.side_w_m2k(k, air_k); };
    if (banks.front().legs.lies) {
        double aside_m = 0.0;
        for (const HeatedLegs& bank : banks) aside_m = std::max(aside_m, bank.legs.aside_m);
        const std::vector<SurfaceSpot> beside = lying_wall_spots(segments, shell, aside_m);
        return hottest_spot_k(at, segments, beside, wall_fit, u_at);
    }
    const SurfaceSpot beside = upright_wall_spot(segments, shell.radius_m);
    return hottest_spot_k(at, segments, {&beside, 1}, wall_fit, u_at);
}

StoreSpots spots_one_way(const SpotCase& at, const std::vector<HeatedLegs>& banks) {
    const StoreShell& shell = at.charge.shell;
    const std::vector<HeatedLegs> by_wall = aside(banks, shell);
    StoreSpots spots{.wall_k = wall_spot_k(at, by_wall, Height::low)};
    if (at.charge.legs.unstated.height) {
        spots.wall_k = std::max(spots.wall_k, wall_spot_k(at, by_wall, Height::high));
    }
    const auto level_k = [&](Height height, double z_m, double u_w_m2k) {
        const std::vector<LegSegment> segments = segments_of(at, banks, height);
        const SurfaceSpot spot = level_spot(segments, z_m);
        return hottest_spot_k(at, segments, {&spot, 1}, level_fit,
                              [u_w_m2k](double) { return u_w_m2k; });
    };
    spots.floor_k = level_k(Height::low, 0.0, shell.floor_u_w_m2k());
    spots.lid_k = level_k(Height::high, shell.height_m, shell.top_u_w_m2k);
    return spots;
}

}  // namespace

StoreSpots store_spots(const BedCharge& charge, const SpotBase& base, double power_w) {
    std::vector<HeatedLegs> banks = banks_of(charge, power_w);
    const SpotCase at{charge, base, most_w_per_m(banks)};
    StoreSpots spots = spots_one_way(at, banks);
    if (!charge.legs.unstated.way) return spots;
    const bool lies = !charge.legs.lies;
    for (HeatedLegs& bank : banks) {
        bank.legs.lies = lies;
        const bool may = lies ? bank.legs.may_lie(charge.shell) : bank.legs.may_stand(charge.shell);
        if (!may) return spots;
    }
    const StoreSpots more = spots_one_way(at, banks);
    return {.wall_k = std::max(spots.wall_k, more.wall_k),
            .lid_k = std::max(spots.lid_k, more.lid_k),
            .floor_k = std::max(spots.floor_k, more.floor_k)};
}

double sensed_lid_k(const BedCharge& charge, const SpotBase& base, double power_w) {
    const std::vector<HeatedLegs> banks = banks_of(charge, power_w);
    const SpotCase at{charge, base, most_w_per_m(banks)};
    const StoreShell& shell = charge.shell;
    const std::vector<LegSegment> segments = segments_of(at, banks, Height::low);
    constexpr double aside_share = 0.75;
    const double r = aside_share * shell.radius_m;
    double coldest_k = std::max(base.sheath_k, base.edge_k);
    for (const auto& [x, y] : {std::pair{r, 0.0}, {-r, 0.0}, {0.0, r}, {0.0, -r}}) {
        const SurfaceSpot spot{.x_m = x, .y_m = y, .z_m = shell.height_m, .normal_z = -1.0};
        coldest_k = std::min(coldest_k, hottest_spot_k(at, segments, {&spot, 1}, level_fit,
                                                       [&](double) { return shell.top_u_w_m2k; }));
    }
    return coldest_k;
}

}  // namespace heatmatch
