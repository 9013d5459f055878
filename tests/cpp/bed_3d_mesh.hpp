#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <stdexcept>
#include <vector>

/// One axis of a quarter store: cells from the plane of symmetry to the wall. The first cell may be
/// half of one that lies across the plane.
struct QuarterAxis {
    std::vector<double> faces_m{};  //!< one more than cells, from 0 to the wall
    bool across = false;            //!< the first cell lies across the plane: its centre is at 0
    double near_m = 0.0;            //!< width of the equal cells around the legs

    [[nodiscard]] std::size_t size() const { return faces_m.size() - 1; }
    [[nodiscard]] double centre_m(std::size_t i) const {
        return i == 0 && across ? 0.0 : 0.5 * (faces_m[i] + faces_m[i + 1]);
    }
    /// The cell with its center there; throws without one.
    [[nodiscard]] std::size_t cell_of(double at_m) const {
        for (std::size_t i = 0; i < size(); ++i) {
            if (std::fabs(centre_m(i) - at_m) < 1e-6) return i;
        }
        throw std::invalid_argument("no cell is centered on a leg");
    }
};

/// Cells of about `mesh_m`, with one centered on every leg at `legs_m` (>= 0), as a line source
/// needs. They are equal up to a few cells beyond the outermost leg, then grow by up to `growth`
/// each, so that few cells are spent where temperature varies little; the last face is the wall.
inline QuarterAxis quarter_axis(const std::vector<double>& legs_m, double wall_m, double mesh_m,
                                double growth) {
    constexpr int equal_beyond = 4;
    double first_m = 0.0;  // the leg nearest to the plane, but not on it
    double last_m = 0.0;
    bool on_plane = false;
    for (const double leg_m : legs_m) {
        on_plane = on_plane || leg_m < 1e-9;
        last_m = std::max(last_m, leg_m);
        if (leg_m > 1e-9 && (first_m <= 0.0 || leg_m < first_m)) first_m = leg_m;
    }
    QuarterAxis axis;
    axis.across = true;
    axis.near_m = mesh_m;
    if (first_m > 0.0) {
        // Centres at whole multiples of the width, or half a width off if none is on the plane.
        const double whole = std::max(1.0, std::round(first_m / mesh_m));
        const double half = std::max(0.5, std::round(first_m / mesh_m - 0.5) + 0.5);
        const bool take_half =
            !on_plane && std::fabs(first_m / half - mesh_m) < std::fabs(first_m / whole - mesh_m);
        axis.across = !take_half;
        axis.near_m = first_m / (take_half ? half : whole);
    }
    const double width = axis.near_m;
    axis.faces_m = {0.0, axis.across ? 0.5 * width : width};
    while (axis.faces_m.back() < last_m + (equal_beyond + 0.5) * width - 1e-9 &&
           axis.faces_m.back() + 1.5 * width < wall_m) {
        axis.faces_m.push_back(axis.faces_m.back() + width);
    }
    // The rest has as few cells as `growth` allows; bisection finds the even growth that fits.
    const double rest = wall_m - axis.faces_m.back();
    const auto reach = [width](double by, int cells) {
        double sum = 0.0;
        double cell = width;
        for (int i = 0; i < cells; ++i) sum += (cell *= by);
        return sum;
    };
    int cells = 1;
    while (reach(growth, cells) < rest) ++cells;
    double low = 0.2;
    double high = growth;
    for (int halving = 0; halving < 60; ++halving) {
        const double middle = 0.5 * (low + high);
        (reach(middle, cells) < rest ? low : high) = middle;
    }
    double cell = width;
    for (int i = 0; i < cells; ++i) axis.faces_m.push_back(axis.faces_m.back() + (cell *= high));
    axis.faces_m.back() = wall_m;
    return axis;
}

/// Cross-section of a quarter cylinder in square cells. The circle cuts cells at the wall, so that
/// area and wall length are exact on a coarse mesh.
struct QuarterDisc {
    struct Column {
        std::size_t i = 0;
        std::size_t j = 0;
        double area_m2 = 0.0;
        double x_m = 0.0;  //!< center
        double y_m = 0.0;
        double arc_m = 0.0;   //!< length of wall in it
        double deep_m = 0.0;  //!< distance from its center to the wall
    };
    struct Link {
        std::size_t a = 0;
        std::size_t b = 0;
        double form = 0.0;  //!< shared width over the distance between centers
    };
    std::vector<Column> columns{};
    std::vector<Link> links{};
};

namespace quarter_disc {

/// Area under the circle.
inline double under(double x, double r) {
    return 0.5 * (x * std::sqrt(std::max(0.0, r * r - x * x)) + r * r * std::asin(x / r));
}

/// Length of `[from, to]` inside the circle at a distance `at` from the axis.
inline double open_m(double from, double to, double at, double r) {
    return std::clamp(std::sqrt(std::max(0.0, r * r - at * at)), from, to) - from;
}

inline QuarterDisc::Column column_of(const QuarterAxis& x, const QuarterAxis& y, std::size_t i,
                                     std::size_t j, double r) {
    const double x0 = x.faces_m[i];
    const double x1 = x.faces_m[i + 1];
    const double y0 = y.faces_m[j];
    const double y1 = y.faces_m[j + 1];
    QuarterDisc::Column column{.i = i, .j = j, .x_m = x.centre_m(i), .y_m = y.centre_m(j)};
    if (x1 * x1 + y1 * y1 <= r * r) {
        column.area_m2 = (x1 - x0) * (y1 - y0);
        return column;
    }
    // Uncut up to xa, below the circle from xa to xb.
    const double xa = std::clamp(std::sqrt(std::max(0.0, r * r - y1 * y1)), x0, x1);
    const double xb = std::clamp(std::sqrt(std::max(0.0, r * r - y0 * y0)), x0, x1);
    column.area_m2 = (y1 - y0) * (xa - x0) + under(xb, r) - under(xa, r) - y0 * (xb - xa);
    column.arc_m = r * (std::acos(std::min(1.0, xa / r)) - std::acos(std::min(1.0, xb / r)));
    constexpr int slices = 200;
    double area = 0.0;
    double moment_x = 0.0;
    double moment_y = 0.0;
    for (int s = 0; s < slices; ++s) {
        const double at = x0 + (xb - x0) * (s + 0.5) / slices;
        const double high = open_m(y0, y1, at, r);
        area += high;
        moment_x += high * at;
        moment_y += high * (y0 + 0.5 * high);
    }
    if (area > 0.0) {
        if (!(i == 0 && x.across)) column.x_m = moment_x / area;
        if (!(j == 0 && y.across)) column.y_m = moment_y / area;
    }
    column.deep_m = std::max(0.0, r - std::hypot(column.x_m, column.y_m));
    return column;
}

}  // namespace quarter_disc

inline QuarterDisc quarter_disc_of(const QuarterAxis& x, const QuarterAxis& y, double r) {
    QuarterDisc disc;
    constexpr double least_m2 = 1e-12;
    std::vector<std::vector<std::size_t>> index(x.size(), std::vector<std::size_t>(y.size(), 0));
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t j = 0; j < y.size(); ++j) {
            const QuarterDisc::Column column = quarter_disc::column_of(x, y, i, j, r);
            if (column.area_m2 <= least_m2) continue;
            disc.columns.push_back(column);
            index[i][j] = disc.columns.size();  // 0 stands for no column, so the index is one more
        }
    }
    const auto link = [&disc](std::size_t a, std::size_t b, double open, double apart) {
        if (a == 0 || b == 0 || open <= 0.0) return;
        disc.links.push_back({.a = a - 1, .b = b - 1, .form = open / apart});
    };
    for (const QuarterDisc::Column& column : disc.columns) {
        const std::size_t i = column.i;
        const std::size_t j = column.j;
        const std::size_t here = index[i][j];
        if (i + 1 < x.size() && index[i + 1][j] != 0) {
            link(here, index[i + 1][j],
                 quarter_disc::open_m(y.faces_m[j], y.faces_m[j + 1], x.faces_m[i + 1], r),
                 disc.columns[index[i + 1][j] - 1].x_m - column.x_m);
        }
        if (j + 1 < y.size() && index[i][j + 1] != 0) {
            link(here, index[i][j + 1],
                 quarter_disc::open_m(x.faces_m[i], x.faces_m[i + 1], y.faces_m[j + 1], r),
                 disc.columns[index[i][j + 1] - 1].y_m - column.y_m);
        }
    }
    return disc;
}
