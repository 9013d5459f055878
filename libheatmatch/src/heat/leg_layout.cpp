#include "heatmatch/heat/leg_layout.hpp"

#include "base/sentences.hpp"
#include "heat_input.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double default_leg_spacing_mm = 50.0;
constexpr double default_element_spacing_mm = 60.0;
constexpr int most_elements = 10000;
constexpr std::size_t most_legs = 1000;  // time for the layout grows with the square
constexpr std::size_t most_pairs = 16;   // pairs of legs between which the wall is evaluated
constexpr double clearance_m = 0.02;     // below and above legs of unknown number, from memory

/// Bundles of `row` legs each, `columns` of them side by side, centered.
std::vector<LegLayout::Leg> laid_out(int bundles, int row, double leg_m, double bundle_m,
                                     int columns) {
    std::vector<LegLayout::Leg> legs;
    const double pitch_m = (row - 1) * leg_m + bundle_m;
    const int lines = (bundles + columns - 1) / columns;
    for (int i = 0; i < bundles; ++i) {
        const int line = i / columns;
        const int in_line = std::min(columns, bundles - line * columns);
        const double left_m = -0.5 * ((in_line - 1) * pitch_m + (row - 1) * leg_m);
        const double y_m = (line - 0.5 * (lines - 1)) * bundle_m;
        for (int j = 0; j < row; ++j) {
            legs.push_back({.x_m = left_m + (i % columns) * pitch_m + j * leg_m, .y_m = y_m});
        }
    }
    return legs;
}

double outer_radius_of(const std::vector<LegLayout::Leg>& legs) {
    double outer = 0.0;
    for (const LegLayout::Leg& leg : legs) outer = std::max(outer, std::hypot(leg.x_m, leg.y_m));
    return outer;
}

Amount in_mm(double metres) {
    return {1000.0 * metres, unit::millimetre, 4};
}

Sentence overlap_of(const LegLayout& layout, double nearest_m) {
    if (nearest_m >= 2.0 * layout.radius_m) return {};
    return say<"heat.legs_overlap">(with<"apart">(in_mm(nearest_m)),
                                    with<"thick">(in_mm(2.0 * layout.radius_m)));
}

/// Half of the width of the legs, sheaths included [m].
LegLayout::Leg half_across(const LegLayout& layout) {
    LegLayout::Leg half;
    for (const LegLayout::Leg& leg : layout.legs) {
        half.x_m = std::max(half.x_m, std::fabs(leg.x_m));
        half.y_m = std::max(half.y_m, std::fabs(leg.y_m));
    }
    return {half.x_m + layout.radius_m, half.y_m + layout.radius_m};
}

/// Whether a bundle, in either orientation, is within two half sides.
bool is_within(const LegLayout::Leg& half, double most_a, double most_b) {
    const auto [a, b] = half;
    return (a <= most_a && b <= most_b) || (b <= most_a && a <= most_b);
}

bool fits(const LegLayout& layout, const StoreShell& shell) {
    return layout.may_stand(shell) || layout.may_lie(shell);
}

Sentence misfit_of(const LegLayout& layout, const StoreShell& shell) {
    if (fits(layout, shell)) return {};
    const double length = layout.leg_length_m;
    if (length > shell.height_m && length > shell.length_m) {
        return say<"heat.legs_too_long">(with<"length">(in_mm(length)),
                                         with<"height">(in_mm(shell.height_m)),
                                         with<"width">(in_mm(shell.length_m)));
    }
    const auto [x, y] = half_across(layout);
    const Amount width = in_mm(shell.length_m);
    return say<"heat.legs_do_not_fit">(
        with<"count">(static_cast<double>(layout.legs.size())), with<"length">(in_mm(length)),
        with<"across">(in_mm(2.0 * x)), with<"deep">(in_mm(2.0 * y)),
        with<"inside">(shell.round
                           ? say<"heat.round_inside">(with<"width">(width))
                           : say<"heat.box_inside">(with<"width">(width),
                                                    with<"depth">(in_mm(2.0 * shell.radius_m)))),
        with<"height">(in_mm(shell.height_m)));
}

}  // namespace

std::vector<double> LegLayout::distances_m() const {
    if (!from_hottest_m.empty()) return from_hottest_m;
    std::vector<double> best;
    double largest = 0.0;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        std::vector<double> distances{radius_m};
        double sum = 0.0;
        for (std::size_t j = 0; j < legs.size(); ++j) {
            if (i == j) continue;
            const double d = std::hypot(legs[i].x_m - legs[j].x_m, legs[i].y_m - legs[j].y_m);
            distances.push_back(std::max(d, radius_m));
            sum += std::asinh(0.5 * leg_length_m / distances.back());
        }
        if (best.empty() || sum > largest) {
            best = std::move(distances);
            largest = sum;
        }
    }
    return best;
}

bool LegLayout::may_stand(const StoreShell& shell) const {
    if (leg_length_m > shell.height_m) return false;
    if (shell.round) return outer_radius_of(legs) + radius_m <= shell.radius_m;
    return is_within(half_across(*this), 0.5 * shell.length_m, shell.radius_m);
}

// With either side of the bundle up; in a box along either of its sides.
bool LegLayout::may_lie(const StoreShell& shell) const {
    const Leg half = half_across(*this);
    const double half_height = 0.5 * shell.height_m;
    if (shell.round) {
        const auto lie = [&](double flat, double up) {
            return up <= half_height && std::hypot(0.5 * leg_length_m, flat) <= shell.radius_m;
        };
        return lie(half.x_m, half.y_m) || lie(half.y_m, half.x_m);
    }
    return (leg_length_m <= shell.length_m && is_within(half, shell.radius_m, half_height)) ||
           (leg_length_m <= 2.0 * shell.radius_m &&
            is_within(half, 0.5 * shell.length_m, half_height));
}

double LegLayout::room_aside_m(const StoreShell& shell, double clear_m) const {
    const double most_m = shell.radius_m - radius_m - clear_m;
    double room_m = most_m;
    for (const Leg& leg : legs) {
        const double off_m = !shell.round ? 0.0 : (lies ? 0.5 * leg_length_m : leg.y_m);
        const double reach_m = std::sqrt(std::max(0.0, most_m * most_m - off_m * off_m));
        room_m = std::min(room_m, reach_m - leg.x_m);
    }
    return std::max(0.0, room_m);
}

double LegLayout::farthest_aside_m(const StoreShell& shell) const {
    const double room_m = room_aside_m(shell, UnstatedPlaces::clear_m);
    return room_m > 0.0 ? room_m : room_aside_m(shell, 0.0);
}

double LegLayout::outer_radius_m() const {
    return outer_radius_of(legs);
}

double LegLayout::wall_concentration(const StoreShell& shell) const {
    // A leg at the wall has no finite concentration: this is the nearest distance evaluated.
    constexpr double nearest_share = 0.95;
    const double r = shell.radius_m;
    double around = 1.0;
    // Between two legs the wall may be hotter than beside either.
    std::vector<Leg> spots = legs;
    if (legs.size() <= most_pairs) {
        for (std::size_t i = 0; i < legs.size(); ++i) {
            for (std::size_t j = i + 1; j < legs.size(); ++j) {
                spots.push_back(
                    {.x_m = legs[i].x_m + legs[j].x_m, .y_m = legs[i].y_m + legs[j].y_m});
            }
        }
    }
    for (const Leg& spot : spots) {
        const double distance = std::hypot(spot.x_m, spot.y_m);
        if (distance <= 1e-9) continue;
        double sum = 0.0;
        for (const Leg& leg : legs) {
            const double b = std::min(std::hypot(leg.x_m, leg.y_m), nearest_share * r);
            const double cosine = b > 0.0 ? (leg.x_m * spot.x_m + leg.y_m * spot.y_m) /
                                                (std::hypot(leg.x_m, leg.y_m) * distance)
                                          : 0.0;
            sum += (r * r - b * b) / (r * r - 2.0 * r * b * cosine + b * b);
        }
        around = std::max(around, sum / static_cast<double>(legs.size()));
    }
    const double all_m2 = shell.side_m2 + shell.top_m2 + shell.bottom_m2;
    const double mid_plane_m2 =
        2.0 * pi * r * leg_length_m * std::sqrt(1.0 + 4.0 * r * r / (leg_length_m * leg_length_m));
    return around * std::max(1.0, all_m2 / mid_plane_m2);
}

std::vector<std::string> missing_lengths(const Element& element) {
    std::vector<std::string> missing;
    if (element.heated_length_mm.value_or(0.0) <= 0.0) missing.emplace_back("heated_length_mm");
    if (element.sheath_diameter_mm.value_or(0.0) <= 0.0) missing.emplace_back("sheath_diameter_mm");
    return missing;
}

LegLayout leg_layout(const Element& element, int elements, const Store& store) {
    const std::string title = "element \"" + element.id + '"';
    const std::vector<std::string> missing = missing_lengths(element);
    if (!missing.empty()) {
        throw InvalidInput({.part = title,
                            .field = missing.front(),
                            .value = "not given",
                            .allowed = "> 0 mm",
                            .remedy = say<"heat.measure_element">()});
    }
    constexpr auto used = std::to_array<std::string_view>(
        {"sheath_diameter_mm", "heated_length_mm", "legs", "leg_spacing_mm"});
    require_fields(element_fields(), &element, title, used);
    if (elements < 1 || elements > most_elements) {
        throw InvalidInput(
            {.part = title,
             .field = "elements",
             .value = std::to_string(elements),
             .allowed = elements < 1 ? "at least 1" : "at most " + std::to_string(most_elements),
             .remedy = say<"heat.how_many">()});
    }
    const StoreShell shell = store_shell(store);
    constexpr auto spacings = std::to_array<std::string_view>(
        {"element_spacing_mm", "spreader_diameter_mm", "element_height_mm", "from_axis_mm"});
    require_fields(store_fields(), &store, "store", spacings);
    LegLayout layout;
    layout.sheath_radius_m = *element.sheath_diameter_mm / 2000.0;
    layout.radius_m =
        std::max(layout.sheath_radius_m, store.spreader_diameter_mm.value_or(0.0) / 2000.0);
    const double heated_m = *element.heated_length_mm / 1000.0;
    int row = element.legs.value_or(1);
    if (!element.legs) {
        const double longest_m = std::max(shell.height_m, shell.length_m) - 2.0 * clearance_m;
        row = std::max(1, static_cast<int>(std::ceil(heated_m / std::max(longest_m, clearance_m))));
        layout.assumed.push_back({title, "legs", sentence_of(Amount{static_cast<double>(row)}),
                                  say<"heat.as_store_needs">()});
    }
    layout.leg_length_m = heated_m / row;
    double leg_mm = element.leg_spacing_mm.value_or(default_leg_spacing_mm);
    if (row > 1 && !element.leg_spacing_mm) {
        layout.assumed.push_back({title, "leg_spacing_mm",
                                  sentence_of(Amount{leg_mm, unit::millimetre, 6}), from_memory()});
    }
    double bundle_mm = store.element_spacing_mm.value_or(default_element_spacing_mm);
    if (elements > 1 && !store.element_spacing_mm) {
        layout.assumed.push_back({"store", "element_spacing_mm",
                                  sentence_of(Amount{bundle_mm, unit::millimetre, 6}),
                                  from_memory()});
    }
    int bundles = elements;
    if (!element.legs) {  // legs may be bent freely: single legs on a grid
        bundles = elements * row;
        bundle_mm = std::min(leg_mm, bundle_mm);
        row = 1;
    }
    if (static_cast<std::size_t>(bundles) * static_cast<std::size_t>(row) > most_legs) {
        layout.misfit = say<"heat.too_many_legs">(with<"bundles">(bundles), with<"row">(row),
                                                  with<"most">(static_cast<double>(most_legs)));
        return layout;
    }
    bool any_fits = false;  // the narrowest that fits, else the narrowest
    for (int columns = 1; columns <= bundles; ++columns) {
        LegLayout tried = layout;
        tried.legs = laid_out(bundles, row, leg_mm / 1000.0, bundle_mm / 1000.0, columns);
        const bool now_fits = fits(tried, shell);
        if (any_fits && !now_fits) continue;
        if (layout.legs.empty() || now_fits != any_fits ||
            tried.outer_radius_m() < layout.outer_radius_m() - 1e-9) {
            layout.legs = std::move(tried.legs);
            any_fits = now_fits;
        }
    }
    const double aside_m = store.from_axis_mm.value_or(0.0) / 1000.0;
    layout.aside_m = aside_m;
    const bool may_stand = layout.may_stand(shell);
    layout.lies = layout.may_lie(shell) && store.element_lies.value_or(!may_stand);
    // Horizontal legs may be nearer to an end by this distance.
    const double sideways_m =
        layout.lies ? std::min(aside_m, layout.room_aside_m(shell, 0.0)) : aside_m;
    for (LegLayout::Leg& leg : layout.legs) leg.x_m += sideways_m;
    if (store.element_height_mm) layout.low_m = *store.element_height_mm / 1000.0;
    const bool several_rows = bundles > 1;
    if (row > 1) layout.misfit = overlap_of(layout, leg_mm / 1000.0);
    if (several_rows && layout.misfit.empty()) {
        layout.misfit = overlap_of(layout, bundle_mm / 1000.0);
    }
    if (layout.misfit.empty()) layout.misfit = misfit_of(layout, shell);
    layout.from_hottest_m = layout.distances_m();
    return layout;
}

}  // namespace heatmatch
