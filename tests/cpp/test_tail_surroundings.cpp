#include "bench_wires.hpp"
#include "demo.hpp"
#include "figure.hpp"
#include "fine_tail.hpp"
#include "within.hpp"

#include <cstdio>

#include <doctest/doctest.h>

#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/heat/wire_temperature.hpp"

using heatmatch::HotTail;
using heatmatch::Surroundings;
using heatmatch::SurroundingsKind;
using heatmatch::TailTemperatures;
using heatmatch::TerminalPlace;
using heatmatch::Wire;

namespace {

struct TailPlace {
    const char* name = "";
    HotTail tail{};
    double share = 1.0;  //!< of current, by hand from the code's table and 0.7
};

/// Stainless rod of 8 mm at 500 °C in a bed of 150 °C, 60 mm cold and 30 mm beyond the wall.
HotTail tail_in(const Surroundings& around, double current_a = 8.0) {
    return {.sheath_c = 500.0,
            .bed_c = 150.0,
            .air_c = around.air_c.value_or(30.0),
            .cold_length_m = 0.06,
            .contact_ohm = 0.005,
            .current_a = current_a,
            .around = around};
}

Surroundings of(SurroundingsKind kind, double air_c) {
    return {.kind = kind, .air_c = air_c};
}

/// Shares: 0.7 of an enclosed wire and of a bundle; the code's adjustment of six conductors 0.8.
std::vector<TailPlace> places() {
    std::vector<TailPlace> all;
    all.push_back({"open air", tail_in(Surroundings::open_air(30.0))});
    all.push_back({"conduit", tail_in(Surroundings::conduit(30.0)), 0.7});
    all.push_back({"cavity", tail_in(of(SurroundingsKind::cavity, 30.0))});
    Surroundings six = Surroundings::open_air(30.0);
    six.loaded_conductors = 6;
    all.push_back({"bundle of six", tail_in(six), 0.7 * 0.8});
    all.push_back({"sun", tail_in(Surroundings::sunlit(30.0))});
    Surroundings windy = Surroundings::sunlit(30.0);
    windy.wind_m_s = 1.0;
    all.push_back({"sun and wind", tail_in(windy)});
    all.push_back({"ground", tail_in(of(SurroundingsKind::buried, 20.0)), 0.7});
    all.push_back({"lagging of 80 mm", tail_in(Surroundings::open_air(30.0))});
    all.back().tail.lagging_m = 0.08;
    all.back().tail.lagging_hot_c = 110.0;
    all.push_back({"bed", tail_in(of(SurroundingsKind::bed, 150.0))});
    all.back().tail.place = TerminalPlace::buried;
    all.push_back({"open air, 16 A", tail_in(Surroundings::open_air(30.0), 16.0)});
    all.push_back({"conduit, 16 A", tail_in(Surroundings::conduit(30.0), 16.0), 0.7});
    return all;
}

const heatmatch::Insulation& cover() {
    return heatmatch::find_insulation(starter(), silicone().insulation);
}

TailTemperatures solve(const HotTail& tail) {
    return tail_temperatures(tail, silicone(), &cover());
}

/// The same end and wire by cells.
FineTail fine(const TailPlace& place) {
    using fine_tail::Wrap;
    const HotTail& tail = place.tail;
    const Wire& wire = silicone();
    const double rod_m = tail.sheath_diameter_mm / 1000.0;
    const double bed = fine_tail::shell(rod_m, tail.bed_conductivity_w_mk);
    const double cold = heatmatch::sheath_ka_w_m_k(8.0, tail.sheath_conductivity_w_mk, true);
    const double heated = heatmatch::sheath_ka_w_m_k(8.0, tail.sheath_conductivity_w_mk, false);
    const double pin_mm2 = 0.25 * fine_tail::pi * 2.3 * 2.3;
    const double pin = tail.current_a * tail.current_a * 0.3 / pin_mm2;
    const SurroundingsKind kind = tail.around.kind;
    const double wool = 0.04;
    std::vector<fine_tail::Cell> cells;
    fine_tail::add(cells, 0.6, heated, [=](double c) { return bed * (c - tail.sheath_c); });
    fine_tail::add(cells, tail.cold_length_m, cold,
                   [=](double c) { return bed * (c - tail.bed_c) - pin; });
    const bool buried = tail.place == TerminalPlace::buried;
    const bool enclosed = kind == SurroundingsKind::conduit || kind == SurroundingsKind::buried;
    Wrap sheath{.diameter_m = rod_m,
                .around_c = tail.air_c,
                .share = enclosed ? place.share : 1.0,
                .emissivity = tail.sheath_emissivity,
                .sun_w_m2 = kind == SurroundingsKind::sunlit ? 1000.0 : 0.0};
    if (kind == SurroundingsKind::cavity) sheath.shell_w_mk = fine_tail::shell(rod_m, wool);
    Wrap out{.diameter_m = *wire.outer_diameter_mm / 1000.0,
             .around_c = buried ? tail.bed_c : tail.air_c,
             .share = place.share,
             .sun_w_m2 = sheath.sun_w_m2,
             .wind_m_s = tail.around.wind_m_s.value_or(0.0)};
    out.inside_k_m_per_w =
        std::log(*wire.outer_diameter_mm / heatmatch::conductor_diameter_mm(wire)) /
        (2.0 * fine_tail::pi * cover().conductivity_w_mk.value_or(0.2));
    if (kind == SurroundingsKind::cavity) {
        out.shell_w_mk = fine_tail::shell(out.diameter_m, wool);
    }
    if (buried) out.shell_w_mk = fine_tail::shell(out.diameter_m, tail.bed_conductivity_w_mk);
    const auto lagged = [&](Wrap wrap, double from_wall_m) {
        wrap.shell_w_mk = fine_tail::shell(wrap.diameter_m, wool);
        wrap.share = 1.0;
        wrap.around_c =
            *tail.lagging_hot_c + from_wall_m / tail.lagging_m * (tail.air_c - *tail.lagging_hot_c);
        return wrap;
    };
    const auto wrap_at = [&](const Wrap& wrap, double from_wall_m) {
        return from_wall_m < tail.lagging_m ? lagged(wrap, from_wall_m) : wrap;
    };
    const double beyond_m = buried ? 0.0 : tail.beyond_m;
    for (double at = 0.0005; at < beyond_m; at += FineTail::cell_m) {
        const Wrap wrap = wrap_at(sheath, at);
        fine_tail::add(cells, FineTail::cell_m, cold,
                       [=](double c) { return wrap.lost_w_m(c) - pin; });
    }
    const std::size_t terminal = cells.size();
    const double square = tail.current_a * tail.current_a;
    for (double at = 0.0005; at < 1.2; at += FineTail::cell_m) {
        const Wrap wrap = wrap_at(out, beyond_m + at);
        fine_tail::add(cells, FineTail::cell_m, 390.0 * wire.area_mm2 * 1e-6, [=, &wire](double c) {
            return wrap.lost_w_m(c) - square * heatmatch::resistance_ohm_per_m(wire, c);
        });
    }
    const std::vector<double> at =
        fine_tail::solve(cells, terminal, square * tail.contact_ohm, tail.bed_c);
    FineTail result{.wire_c = {at.begin() + static_cast<std::ptrdiff_t>(terminal), at.end()}};
    // Half of the contact's heat is left in each cell beside the joint.
    const double left = cells[terminal - 1].ka_w_m_k;
    const double right = cells[terminal].ka_w_m_k;
    result.terminal_c = (left * at[terminal - 1] + right * at[terminal]) / (left + right);
    return result;
}

double within_share(double found, double expected, double rest_c) {
    return (found - expected) / (expected - rest_c);
}

}  // namespace

// Source: the same equations in cells of a millimetre, made here (fine_tail.hpp), each losing at
// its own temperature what conductor_temperature() takes for that kind.
TEST_CASE(
    "terminal and wire are within five percent of the rise of a fine chain in their "
    "surroundings") {
    std::string table;
    for (const TailPlace& place : places()) {
        CAPTURE(place.name);
        const TailTemperatures found = solve(place.tail);
        const FineTail exact = fine(place);
        HotTail in_air = place.tail;
        in_air.around = {};
        in_air.lagging_m = 0.0;
        const TailTemperatures before = solve(in_air);
        const bool buried = place.tail.place == TerminalPlace::buried;
        const double rest_c = buried ? 20.0 : place.tail.air_c;
        for (const double at : {0.0, 0.02, 0.05, 0.1, 0.2, 0.4}) {
            CAPTURE(at);
            CAPTURE(found.wire_c(at));
            CAPTURE(exact.wire_at(at));
            CHECK(std::fabs(within_share(found.wire_c(at), exact.wire_at(at), rest_c)) <= 0.05);
        }
        constexpr std::size_t longest = 160;
        std::array<char, longest> line{};
        std::snprintf(line.data(), line.size(),
                      "\n| %s | %.0f | %.0f | %.0f | %.0f | %.0f | %.0f |", place.name,
                      before.terminal_c, found.terminal_c, exact.terminal_c, before.wire_c(0.1),
                      found.wire_c(0.1), exact.wire_at(0.1));
        table += line.data();
    }
    figure("terminal, then wire at 10 cm [C]: as in open air, where it lies, fine chain", table);
}

// Source: the balance of conductor_temperature(), a check by other code.
TEST_CASE("far along the wire each kind of surroundings leaves it as hot as one that runs alone") {
    for (const double current_a : {0.0, 1.0, 8.0, 20.0}) {
        for (TailPlace place : places()) {
            CAPTURE(place.name);
            CAPTURE(current_a);
            HotTail tail = place.tail;
            tail.current_a = current_a;
            Surroundings around = tail.around;
            around.air_c = tail.place == TerminalPlace::buried ? tail.bed_c : tail.air_c;
            const auto alone = conductor_temperature(silicone(), &cover(), current_a, around);
            const TailTemperatures found = solve(tail);
            CHECK(found.runaway == alone->runaway);
            if (alone->runaway) continue;
            CHECK(within_abs(found.far_wire_c, alone->conductor_c, 1e-6));
            CHECK(within_abs(found.wire_c(6.0), alone->conductor_c, 1e-3));
            tail.place = TerminalPlace::in_box;
            if (place.tail.place != TerminalPlace::buried) {
                CHECK(within_abs(solve(tail).far_wire_c, alone->conductor_c, 1e-6));
            }
        }
    }
}

// Source: what keeps heat in: an enclosed, bundled, lagged or sunlit wire is hotter than one in
// open air of the same temperature.
TEST_CASE("nothing around a tail but wind leaves it cooler than open air, and reach follows") {
    const TailTemperatures open = solve(tail_in(Surroundings::open_air(30.0)));
    for (const TailPlace& place : places()) {
        CAPTURE(place.name);
        HotTail tail = place.tail;
        if (tail.place == TerminalPlace::buried || tail.around.wind_m_s) continue;
        tail.air_c = 30.0;
        const TailTemperatures found = solve(tail);
        CHECK(found.terminal_c >= open.terminal_c - 1e-3);
        CHECK(found.wire_c(0.1) >= open.wire_c(0.1) - 1e-3);
        const double limit_c = found.far_wire_c + 15.0;
        CHECK(found.distance_for_limit_m(limit_c).value_or(9.0) >=
              open.distance_for_limit_m(limit_c).value_or(9.0) - 1e-3);
        const auto reach_m = found.distance_for_limit_m(limit_c);
        REQUIRE(reach_m);
        CHECK(within_abs(found.wire_c(*reach_m + 1e-9), std::min(limit_c, found.terminal_c), 0.01));
    }
}

TEST_CASE("more lagging, more wires together and hotter lagging never cool a tail") {
    double last = 0.0;
    for (double thick_m = 0.0; thick_m < 0.3; thick_m += 0.007) {
        HotTail tail = tail_in(Surroundings::open_air(30.0));
        tail.lagging_m = thick_m;
        tail.lagging_hot_c = 110.0;
        const double at = solve(tail).terminal_c;
        CHECK(at > last - 1e-6);
        last = at;
    }
    for (const SurroundingsKind kind : {SurroundingsKind::open_air, SurroundingsKind::conduit,
                                        SurroundingsKind::cavity, SurroundingsKind::bed}) {
        last = 0.0;
        for (int loaded = 1; loaded < 12; ++loaded) {
            Surroundings around = of(kind, 60.0);
            around.loaded_conductors = loaded;
            HotTail tail = tail_in(around, 4.0);
            if (kind == SurroundingsKind::bed) tail.place = TerminalPlace::buried;
            const double at = solve(tail).wire_c(0.1);
            CHECK(at > last - 1e-6);
            last = at;
        }
    }
    last = 0.0;
    for (double hot_c = 20.0; hot_c < 400.0; hot_c += 20.0) {
        HotTail tail = tail_in(Surroundings::open_air(30.0));
        tail.lagging_m = 0.05;
        tail.lagging_hot_c = hot_c;
        const double at = solve(tail).terminal_c;
        CHECK(at >= last);
        last = at;
    }
}
