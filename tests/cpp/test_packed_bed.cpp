#include "quartz.hpp"
#include "within.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/heat/packed_bed.hpp"

using heatmatch::packed_bed_conductivity;
using heatmatch::PackedBed;

namespace {

PackedBed quartz_sand(double porosity, double grain_mm, double t_c) {
    return {.porosity = porosity, .grain_mm = grain_mm, .solid_w_mk = quartz_w_mk(t_c)};
}

}  // namespace

// Source: an independent program of the equations of VDI Heat Atlas D6.3 (from memory), its table
// of quartz sand in air, printed to 0.001 W/mK, with the crystal axes of Incropera table A.2 (from
// memory) for the grain. Within 1.2 % to 500 °C; within 4 % above, where table A.2 ends and each
// program goes on in its own way.
TEST_CASE("the packed bed law follows a table of quartz sand") {
    constexpr double columns_c[] = {20, 100, 200, 300, 400, 500, 600, 700, 800, 900};
    struct Row {
        double porosity;
        double grain_mm;
        double k_w_mk[10];
    };
    constexpr Row rows[] = {
        {.38, .5, {.391, .415, .442, .461, .487, .517, .552, .595, .642, .692}},
        {.40, .2, {.349, .366, .386, .398, .414, .431, .452, .476, .502, .528}},
        {.40, .5, {.365, .388, .414, .434, .460, .490, .526, .569, .616, .666}},
        {.40, 1., {.373, .400, .433, .462, .500, .545, .599, .665, .739, .820}},
        {.42, .5, {.341, .363, .389, .409, .435, .465, .501, .544, .591, .642}}};
    for (const Row& row : rows) {
        for (int i = 0; i < 10; ++i) {
            const double t_c = columns_c[i];
            CAPTURE(row.porosity);
            CAPTURE(row.grain_mm);
            CAPTURE(t_c);
            const double k =
                packed_bed_conductivity(quartz_sand(row.porosity, row.grain_mm, t_c), t_c + 273.15);
            CHECK(within(k, row.k_w_mk[i], t_c <= 500.0 ? 0.012 : 0.04));
        }
    }
}

// Source: Kiyohashi, Sasaki, Masuda, High Temperatures-High Pressures 35/36 (abstract): dry silica
// sand of porosity 0.45..0.55 and 0.074..1.68 mm conducts 0.17..0.46 W/mK at 25..85 °C.
TEST_CASE("the packed bed law stays among measurements of loose silica sand") {
    for (const double porosity : {0.45, 0.50, 0.55}) {
        for (const double grain_mm : {0.074, 0.5, 1.68}) {
            for (const double t_c : {25.0, 85.0}) {
                CAPTURE(porosity);
                CAPTURE(grain_mm);
                const double k =
                    packed_bed_conductivity(quartz_sand(porosity, grain_mm, t_c), t_c + 273.15);
                CHECK(k > 0.17);
                CHECK(k < 0.46);
            }
        }
    }
}

// Source: the same independent program, printed to 0.01 W/mK: basalt of 20 mm (1.7 W/mK, not
// falling with temperature), steel shot of 1 mm, gravel of 10 mm. The porosity of the first is
// taken as that of the gravel. The rows of shot and gravel do not give their grains: 50 W/mK (EN
// 12524), a worn surface of emissivity 0.6 and no flattened contact for the one, 3 W/mK for the
// other, which falls with temperature in the source; so 2 and 4 %.
TEST_CASE("the packed bed law follows its rows for coarse stone and steel shot") {
    const PackedBed basalt{.porosity = 0.4, .grain_mm = 20.0, .solid_w_mk = 1.7};
    const PackedBed shot{
        .porosity = 0.4, .grain_mm = 1.0, .solid_w_mk = 50.0, .emissivity = 0.6, .contact = 0.0};
    const PackedBed gravel{.porosity = 0.4, .grain_mm = 10.0, .solid_w_mk = 3.0};
    struct Row {
        const PackedBed& bed;
        double t_c;
        double k_w_mk;
        double share;
    };
    for (const Row& row :
         {Row{basalt, 20, .31, .02}, Row{basalt, 200, .60, .01}, Row{basalt, 400, 1.02, .01},
          Row{basalt, 600, 1.46, .01}, Row{basalt, 900, 2.08, .01}, Row{shot, 20, .46, .02},
          Row{shot, 200, .61, .02}, Row{shot, 400, .75, .02}, Row{shot, 600, .88, .02},
          Row{gravel, 20, .32, .04}, Row{gravel, 200, .53, .04}, Row{gravel, 400, .89, .04},
          Row{gravel, 600, 1.34, .04}, Row{gravel, 900, 2.07, .04}}) {
        CAPTURE(row.bed.grain_mm);
        CAPTURE(row.t_c);
        CHECK(within(packed_bed_conductivity(row.bed, row.t_c + 273.15), row.k_w_mk, row.share));
    }
}

// Source: the equations' own limits: the denser the bed, the coarser, the better its grains and the
// hotter, the more it conducts; without radiation and contact it lies between gas and grain.
TEST_CASE("a bed conducts more where it is denser, coarser or of better grains") {
    const PackedBed sand{};
    const auto k = [](PackedBed bed, double t_k = 600.0) {
        return packed_bed_conductivity(bed, t_k);
    };
    PackedBed denser = sand;
    denser.porosity = 0.35;
    CHECK(k(denser) > k(sand));
    PackedBed coarser = sand;
    coarser.grain_mm = 2.0;
    CHECK(k(coarser) > k(sand));
    PackedBed better = sand;
    better.solid_w_mk = 20.0;
    CHECK(k(better) > k(sand));
    CHECK(k(sand, 900.0) > k(sand, 600.0));
    const PackedBed plain{.emissivity = 1e-9, .contact = 0.0};
    CHECK(k(plain, 300.0) > 0.026);
    CHECK(k(plain, 300.0) < plain.solid_w_mk);
}
