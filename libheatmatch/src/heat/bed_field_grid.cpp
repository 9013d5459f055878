#include "bed_field_grid.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

// Range of the Theta table: from the coldest air to temperatures that no bed reaches.
constexpr double table_from_k = 150.0;
constexpr double table_to_k = 3300.0;
constexpr std::size_t table_steps = 4096;

/// A place with small cells around it, and their size.
struct Fine {
    double at_m = 0.0;
    double cell_m = 0.0;
};

/// Faces of so many cells from 0 to a length, with sizes that grow in proportion to the distance
/// from the fine places.
std::vector<double> faces_of(double length_m, std::size_t cells, const std::vector<Fine>& fines) {
    constexpr double growth = 0.5;  // growth of a cell's size with the distance
    constexpr std::size_t slices = 4000;
    const double slice_m = length_m / static_cast<double>(slices);
    const auto density = [&](double x) {
        double cell_m = length_m;
        for (const Fine& fine : fines) {
            cell_m = std::min(cell_m, fine.cell_m + growth * std::fabs(x - fine.at_m));
        }
        return 1.0 / cell_m;
    };
    std::vector<double> sum(slices + 1, 0.0);
    for (std::size_t i = 0; i < slices; ++i) {
        sum[i + 1] = sum[i] + slice_m * density((static_cast<double>(i) + 0.5) * slice_m);
    }
    std::vector<double> faces{0.0};
    std::size_t i = 0;
    for (std::size_t cell = 1; cell < cells; ++cell) {
        const double wanted = sum.back() * static_cast<double>(cell) / static_cast<double>(cells);
        while (sum[i + 1] < wanted) ++i;
        const double within = (wanted - sum[i]) / (sum[i + 1] - sum[i]);
        faces.push_back((static_cast<double>(i) + within) * slice_m);
    }
    faces.push_back(length_m);
    return faces;
}

/// Overlap of two spans.
double overlap(double from_a, double to_a, double from_b, double to_b) {
    return std::max(0.0, std::min(to_a, to_b) - std::max(from_a, from_b));
}

/// The leg to which its neighbors contribute most.
LegLayout::Leg hottest_of(const LegLayout& layout) {
    LegLayout::Leg hottest = layout.legs.front();
    double most = -1.0;
    for (const LegLayout::Leg& leg : layout.legs) {
        double sum = 0.0;
        for (const LegLayout::Leg& other : layout.legs) {
            const double d = std::hypot(leg.x_m - other.x_m, leg.y_m - other.y_m);
            sum += std::asinh(0.5 * layout.leg_length_m / std::max(d, layout.radius_m));
        }
        constexpr double same = 1.0 + 1e-9;
        if (sum <= most * same) continue;
        most = sum;
        hottest = leg;
    }
    return hottest;
}

Between between(const std::vector<double>& nodes, double at, bool by_logarithm) {
    if (at <= nodes.front()) return {.first = 0, .share = 1.0};
    if (at >= nodes.back()) return {.first = nodes.size() - 2, .share = 0.0};
    std::size_t i = 0;
    while (nodes[i + 1] < at) ++i;
    const double share = by_logarithm
                             ? std::log(nodes[i + 1] / at) / std::log(nodes[i + 1] / nodes[i])
                             : (nodes[i + 1] - at) / (nodes[i + 1] - nodes[i]);
    return {.first = i, .share = share};
}

}  // namespace

double finite_share(const LegLayout& legs, double x_m, double y_m) {
    constexpr int spots = 180;
    const double r = std::hypot(x_m, y_m);
    double endless = 0.0;
    double finite = 0.0;
    for (const LegLayout::Leg& leg : legs.legs) {
        const auto apart_m = [&](double x, double y) {
            return std::max(std::hypot(leg.x_m - x, leg.y_m - y), legs.radius_m);
        };
        const auto over = [&](double d) { return std::asinh(0.5 * legs.leg_length_m / d); };
        double mean = 0.0;
        for (int i = 0; i < spots; ++i) {
            const double angle = 2.0 * pi * (i + 0.5) / spots;
            mean += over(apart_m(r * std::cos(angle), r * std::sin(angle))) / spots;
        }
        const double d = apart_m(x_m, y_m);
        finite += over(d) - mean;
        endless += std::log(std::max({r, std::hypot(leg.x_m, leg.y_m), legs.radius_m}) / d);
    }
    constexpr double nothing = 1e-6;
    if (std::fabs(endless) < nothing) return 1.0;
    return std::clamp(finite / endless, 0.0, 1.0);
}

double LegsInGrid::per_watt() const {
    return 1.0 / (2.0 * pi * legs.heated_length_m());
}

BedFieldGrid::BedFieldGrid(const BedFill& fill, const StoreShell& shell,
                           std::span<const LegLayout> all, const BedFieldMesh& mesh,
                           double rod_j_m_k)
    : across(mesh.across),
      high(mesh.high),
      table(fill, table_from_k, table_to_k, table_steps),
      height_m(shell.height_m) {
    for (const LegLayout& legs : all) {
        const LegLayout::Leg hottest = hottest_of(legs);
        banks.push_back(
            {.legs = legs, .modes = LegModes(legs, hottest, shell), .views = {{.leg = hottest}}});
    }
    radius_m = std::sqrt(shell.volume_m3 / (pi * height_m));
    const double base_m2 = pi * radius_m * radius_m;
    side_m2_m = shell.side_m2 / height_m;
    lid_scale = shell.top_m2 / base_m2;
    floor_scale = shell.bottom_m2 / base_m2;
    if (!shell.round) turn_box(shell);
    lay_rings();
    lay_levels();
    wall_deep_m = side_m2_m * std::log(radius_m / r_m.back()) / (2.0 * pi);
    lid_deep_m = 0.5 * lid_scale * level_m.back();
    floor_deep_m = 0.5 * floor_scale * level_m.front();
    for (std::size_t k = 0; k < high; ++k) {
        for (std::size_t i = 0; i < across; ++i) {
            const double m3 = ring_m2[i] * level_m[k];
            mass_kg.push_back(fill.density_kg_m3 * m3);
            volume_share.push_back(m3 / shell.volume_m3);
        }
    }
    rod_j_k.assign(cells(), 0.0);
    for (LegsInGrid& bank : banks) place_legs(bank, rod_j_m_k);
    look_from_legs();
}

/// Along the side that gives the legs more room.
void BedFieldGrid::turn_box(const StoreShell& shell) {
    half_x_m = 0.5 * shell.length_m;
    half_y_m = shell.radius_m;
    const auto reach = [&](double x_m, double y_m) {
        double most = 0.0;
        for (const LegsInGrid& bank : banks) {
            for (const LegLayout::Leg& leg : bank.legs.legs) {
                most = std::max({most, std::fabs(leg.x_m) / x_m, std::fabs(leg.y_m) / y_m});
            }
        }
        return most;
    };
    if (reach(half_y_m, half_x_m) < reach(half_x_m, half_y_m)) std::swap(half_x_m, half_y_m);
}

/// Contributions of all banks at the legs, and at the spots of the wall. Which leg of a bank is the
/// hottest depends on the power of the others: with several banks each is looked at.
void BedFieldGrid::look_from_legs() {
    for (LegsInGrid& bank : banks) {
        if (banks.size() > 1) {
            bank.views.clear();
            for (const LegLayout::Leg& leg : bank.legs.legs) bank.views.push_back({.leg = leg});
        }
        for (const LegsInGrid& other : banks) {
            for (LegView& view : bank.views) {
                const auto [x_m, y_m] = view.leg;
                const double share = &other == &bank ? 1.0 : finite_share(other.legs, x_m, y_m);
                view.superposition.push_back(share * over_rings(other.legs, x_m, y_m));
                view.waves.push_back(other.modes.at(x_m, y_m));
                for (double& wave : view.waves.back()) wave *= share;
            }
            bank.at_wall_spot.push_back(other.modes.at_wall(bank.modes.wall_spot()));
        }
    }
}

void BedFieldGrid::lay_rings() {
    constexpr double leg_cell = 0.06;  // of the radius
    constexpr double wall_cell = 0.10;
    std::vector<Fine> fines{{.at_m = radius_m, .cell_m = wall_cell * radius_m}};
    for (const LegsInGrid& bank : banks) {
        for (const LegLayout::Leg& leg : bank.legs.legs) {
            const double at_m = from_axis(leg.x_m, leg.y_m);
            if (at_m < radius_m) fines.push_back({.at_m = at_m, .cell_m = leg_cell * radius_m});
        }
    }
    const std::vector<double> faces = faces_of(radius_m, across, fines);
    for (std::size_t i = 0; i < across; ++i) {
        const double a2 = faces[i] * faces[i];
        const double b2 = faces[i + 1] * faces[i + 1];
        const double inner = i > 0 ? a2 * std::log(faces[i]) : 0.0;
        r_m.push_back(std::exp((b2 * std::log(faces[i + 1]) - inner) / (b2 - a2) - 0.5));
        ring_m2.push_back(pi * (b2 - a2));
    }
    for (std::size_t i = 0; i + 1 < across; ++i) {
        outwards.push_back(2.0 * pi / std::log(r_m[i + 1] / r_m[i]));
    }
}

void BedFieldGrid::lay_levels() {
    constexpr double end_cell = 0.04;  // of the height
    constexpr double lid_cell = 0.05;
    std::vector<Fine> fines{{.at_m = 0.0, .cell_m = lid_cell * height_m},
                            {.at_m = height_m, .cell_m = lid_cell * height_m}};
    for (const LegsInGrid& bank : banks) {
        const double over_m = 0.5 * (height_m - std::min(bank.legs.leg_length_m, height_m));
        fines.push_back({.at_m = over_m, .cell_m = end_cell * height_m});
        fines.push_back({.at_m = height_m - over_m, .cell_m = end_cell * height_m});
    }
    const std::vector<double> faces = faces_of(height_m, high, fines);
    for (std::size_t k = 0; k < high; ++k) {
        z_m.push_back(0.5 * (faces[k] + faces[k + 1]));
        level_m.push_back(faces[k + 1] - faces[k]);
    }
    for (std::size_t k = 0; k + 1 < high; ++k) upwards.push_back(1.0 / (z_m[k + 1] - z_m[k]));
}

void BedFieldGrid::place_legs(LegsInGrid& bank, double rod_j_m_k) {
    bank.heat_share.assign(cells(), 0.0);
    const LegLayout& legs = bank.legs;
    const double heated_m = std::min(legs.leg_length_m, height_m);
    const double low_m = 0.5 * (height_m - heated_m);
    const double rods_j_k = rod_j_m_k * legs.heated_length_m();
    double floor_m = 0.0;
    for (std::size_t k = 0; k < high; ++k) {
        const double upright =
            overlap(floor_m, floor_m + level_m[k], low_m, low_m + heated_m) / heated_m;
        floor_m += level_m[k];
        for (const LegLayout::Leg& leg : legs.legs) {
            const Between place = ring_at(from_axis(leg.x_m, leg.y_m));
            const double part = upright / static_cast<double>(legs.legs.size());
            bank.heat_share[k * across + place.first] += part * place.share;
            bank.heat_share[k * across + place.first + 1] += part * (1.0 - place.share);
        }
        for (std::size_t i = 0; i < across; ++i) {
            rod_j_k[k * across + i] += rods_j_k * bank.heat_share[k * across + i];
        }
    }
}

double BedFieldGrid::from_axis(double x_m, double y_m) const {
    if (half_x_m <= 0.0) return std::hypot(x_m, y_m);
    return radius_m * std::max(std::fabs(x_m) / half_x_m, std::fabs(y_m) / half_y_m);
}

Between BedFieldGrid::ring_at(double r) const {
    return between(r_m, r, true);
}

Between BedFieldGrid::level_at(double z) const {
    return between(z_m, z, false);
}

double BedFieldGrid::over_rings(const LegLayout& legs, double x_m, double y_m) const {
    const double r = from_axis(x_m, y_m);
    const Between here = ring_at(r);
    const auto ln = [this](std::size_t a, std::size_t b) {
        return std::log(std::max(r_m[a], r_m[b]));
    };
    double sum = 0.0;
    for (const LegLayout::Leg& leg : legs.legs) {
        const double d = std::hypot(leg.x_m - x_m, leg.y_m - y_m);
        sum -= std::log(std::max(d, legs.radius_m));
        const double b_m = from_axis(leg.x_m, leg.y_m);
        if (r > r_m.back()) {  // beyond the nodes: mean at the surface
            sum += std::log(std::max(r, b_m));
            continue;
        }
        const Between there = ring_at(b_m);
        const std::size_t a = here.first;
        const std::size_t b = there.first;
        sum += here.share * (there.share * ln(a, b) + (1.0 - there.share) * ln(a, b + 1)) +
               (1.0 - here.share) *
                   (there.share * ln(a + 1, b) + (1.0 - there.share) * ln(a + 1, b + 1));
    }
    return sum;
}

}  // namespace heatmatch
