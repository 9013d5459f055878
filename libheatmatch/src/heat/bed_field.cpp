#include "heatmatch/heat/bed_field.hpp"

#include "bed_checks.hpp"
#include "bed_field_grid.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

constexpr BedChecks field_input{"field of a bed"};

void check_loss(const char* field, double value) {
    if (std::isfinite(value) && value >= 0.0) return;
    field_input.refuse(field, format_number(value), ">= 0",
                       say<"heat.none_is">(with<"nothing">(0.0)));
}

void check_mesh(const BedFieldMesh& mesh) {
    constexpr std::size_t fewest = 3;
    constexpr std::size_t most = 200;
    const auto check = [](const char* field, std::size_t count) {
        if (count >= fewest && count <= most) return;
        field_input.refuse(field, std::to_string(count), "3 to 200",
                           say<"heat.mesh_serves">(with<"across">(12.0), with<"high">(18.0)));
    };
    check("across", mesh.across);
    check("high", mesh.high);
    constexpr double longest_s = 3600.0;  // in longer steps a strong fan may cause overshoot
    if (mesh.longest_step_s > 0.0 && mesh.longest_step_s <= longest_s) return;
    field_input.refuse("longest_step_s", format_number(mesh.longest_step_s) + " s",
                       "above 0, up to 3600 s", say<"heat.step_serves">(with<"step">(600.0)));
}

void check_parts(const BedFill& fill, const StoreShell& shell, const LegLayout& legs) {
    field_input.size("density_kg_m3", fill.density_kg_m3);
    field_input.size("heat_capacity_j_kgk", fill.heat_capacity.at(zero_celsius_k));
    field_input.size("volume_m3", shell.volume_m3);
    field_input.size("height_m", shell.height_m);
    check_loss("side_m2", shell.side_m2);
    check_loss("top_m2", shell.top_m2);
    check_loss("bottom_m2", shell.bottom_m2);
    check_loss("side_u_w_m2k", shell.side_u_w_m2k);
    check_loss("top_u_w_m2k", shell.top_u_w_m2k);
    check_loss("bottom_u_w_m2k", shell.bottom_u_w_m2k);
    field_input.size("legs", static_cast<double>(legs.legs.size()));
    field_input.size("leg_length_m", legs.leg_length_m);
    field_input.size("radius_m of the legs", legs.radius_m);
}

}  // namespace

BedField::BedField(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c,
                   BedFieldMesh mesh, double rod_j_m_k)
    : BedField(std::move(fill), std::move(shell), std::vector<LegLayout>{std::move(legs)}, air_c,
               start_c, mesh, rod_j_m_k) {}

BedField::BedField(BedFill fill, StoreShell shell, std::vector<LegLayout> banks, double air_c,
                   double start_c, BedFieldMesh mesh, double rod_j_m_k)
    : fill_(std::move(fill)), shell_(std::move(shell)), mesh_(mesh) {
    field_input.temperature("air_c", air_c);
    field_input.temperature("start_c", start_c);
    field_input.size("banks", static_cast<double>(banks.size()));
    for (const LegLayout& legs : banks) check_parts(fill_, shell_, legs);
    check_mesh(mesh_);
    check_loss("rod_j_m_k", rod_j_m_k);
    grid_ = std::make_shared<const BedFieldGrid>(fill_, shell_, banks, mesh_, rod_j_m_k);
    following_w_.assign(banks.size(), std::vector<double>(LegModes::state_size, 0.0));
    power_w_.assign(banks.size(), 0.0);
    const double start = grid_->table.theta(start_c + zero_celsius_k);
    const std::size_t cells = grid_->cells();
    theta_.assign(cells, start);
    wall_theta_.assign(grid_->high, start);
    lid_theta_.assign(grid_->across, start);
    floor_theta_.assign(grid_->across, start);
    heat_j_.assign(cells, 0.0);
    heat_w_.assign(cells, 0.0);
    base_j_.assign(cells, 0.0);
    holds_j_.assign(cells, 0.0);
    t_slope_.assign(cells, 0.0);
    residual_.assign(cells, 0.0);
    diagonal_.assign(cells, 0.0);
    start_ = start;
    set_air_c(air_c);
}

void BedField::step(double power_w, double seconds) {
    step(std::span<const double>(&power_w, 1), seconds);
}

void BedField::step(std::span<const double> power_w, double seconds) {
    if (power_w.size() != power_w_.size()) {
        field_input.refuse("power_w", std::to_string(power_w.size()) + " powers",
                           std::to_string(power_w_.size()), say<"heat.what_legs_take">());
    }
    for (const double each_w : power_w) {
        if (std::isfinite(each_w) && each_w >= 0.0) continue;
        field_input.refuse("power_w", format_number(each_w) + " W", ">= 0 W",
                           say<"heat.what_legs_take">());
    }
    constexpr double longest_s = 1e10;
    if (!(seconds >= 0.0 && seconds <= longest_s)) {
        field_input.refuse("seconds", format_number(seconds) + " s", "0 to 1e10 s",
                           say<"heat.how_long_it_lasts">());
    }
    constexpr int most_halvings = 10;
    power_w_.assign(power_w.begin(), power_w.end());
    heat_w_.assign(grid_->cells(), 0.0);
    for (std::size_t bank = 0; bank < power_w_.size(); ++bank) {
        const std::vector<double>& share = grid_->banks[bank].heat_share;
        for (std::size_t c = 0; c < share.size(); ++c) heat_w_[c] += power_w_[bank] * share[c];
    }
    const auto steps = static_cast<long>(std::ceil(seconds / mesh_.longest_step_s));
    for (long i = 0; i < steps; ++i) {
        advance(seconds / static_cast<double>(steps), most_halvings);
    }
}

double BedField::all_w() const {
    double sum = 0.0;
    for (const double each_w : power_w_) sum += each_w;
    return sum;
}

/// Surfaces and flows at the present moment.
void BedField::look() {
    constexpr double any_s = 1.0;
    balance(any_s);
}

void BedField::set_air_c(double air_c) {
    field_input.temperature("air_c", air_c);
    const double air_k = air_c + zero_celsius_k;
    if (air_k == air_k_) return;
    air_k_ = air_k;
    wall_w_m2_.clear();
    look();
}

void BedField::set_extraction_w_k(double w_k) {
    check_loss("extraction_w_k", w_k);
    extraction_w_k_ = w_k;
    look();
}

double BedField::stored_kwh() const {
    double sum = 0.0;
    for (const double j : heat_j_) sum += j;
    return sum / joules_per_kwh;
}

double BedField::lost_kwh() const {
    return lost_j_ / joules_per_kwh;
}

double BedField::taken_kwh() const {
    return taken_j_ / joules_per_kwh;
}

double BedField::supplied_kwh() const {
    return supplied_j_ / joules_per_kwh;
}

}  // namespace heatmatch
