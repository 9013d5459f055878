#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/parts/ampacity_correction.hpp"

using heatmatch::ambient_factor;
using heatmatch::grouping_factor;
using heatmatch::WiringCode;

// Source: NEC 2023, Table 310.15(B)(1)(1), base 30 °C (nec-310-15-ambient).
TEST_CASE("the air corrects a current as the code's rows have it") {
    const auto nec = [](double conductor_c, double ambient_c) {
        return ambient_factor(WiringCode::nec, 30.0, conductor_c, ambient_c);
    };
    CHECK(nec(90.0, 30.0) == 1.00);
    CHECK(nec(90.0, 30.1) == 0.96);
    CHECK(nec(90.0, 35.0) == 0.96);
    CHECK(nec(90.0, 50.0) == 0.82);
    CHECK(nec(75.0, 45.0) == 0.82);
    CHECK(nec(60.0, 55.0) == 0.41);
    CHECK(nec(60.0, 56.0) == 0.0);
    CHECK(nec(90.0, 85.0) == 0.29);
    CHECK(nec(90.0, 86.0) == 0.0);
    CHECK(nec(90.0, -20.0) == 1.15);
    // Table 690.31(A)(3)(2), PV wire of 105 °C.
    CHECK(nec(105.0, 60.0) == 0.77);
    CHECK(nec(125.0, 60.0) == 0.83);
}

// Source: NEC 2023, Table 310.15(B)(1)(2), base 40 °C (nec-310-15-ambient).
TEST_CASE("hot wires are corrected from 40 °C") {
    const auto nec = [](double conductor_c, double ambient_c) {
        return ambient_factor(WiringCode::nec, 40.0, conductor_c, ambient_c);
    };
    CHECK(nec(150.0, 120.0) == 0.52);
    CHECK(nec(200.0, 150.0) == 0.50);
    CHECK(nec(250.0, 220.0) == 0.35);
    CHECK(nec(150.0, 141.0) == 0.0);
    // A maker's column for 450 °C has no rows: the code's equation holds.
    CHECK(nec(450.0, 245.0) == doctest::Approx(std::sqrt(205.0 / 410.0)));
    CHECK(nec(450.0, 460.0) == 0.0);
}

// Source: IEC 60364-5-52, B.52.14 and B.52.15 (iec-60364-5-52); EN 50618, A.4 (en-50618).
TEST_CASE("IEC corrects air from 30 °C, the ground from 20 °C and PV cable from 60 °C") {
    const auto iec = [](double base_c, double conductor_c, double ambient_c) {
        return ambient_factor(WiringCode::iec, base_c, conductor_c, ambient_c);
    };
    CHECK(iec(30.0, 70.0, 40.0) == 0.87);
    CHECK(iec(30.0, 90.0, 60.0) == 0.71);
    CHECK(iec(30.0, 70.0, 61.0) == 0.0);
    CHECK(iec(20.0, 70.0, 25.0) == 0.95);
    CHECK(iec(20.0, 90.0, 30.0) == 0.93);
    CHECK(iec(60.0, 120.0, 70.0) == 0.92);
    CHECK(iec(60.0, 120.0, 20.0) == 1.00);
}

// Source: the published rows are the code's equation, rounded (NEC 310.15(B)).
TEST_CASE("the rows of the tables are their equation, to rounding") {
    for (double conductor_c : {60.0, 75.0, 90.0}) {
        for (double to_c = 10.0; to_c < conductor_c; to_c += 5.0) {
            const double row = ambient_factor(WiringCode::nec, 30.0, conductor_c, to_c);
            const double equation = std::sqrt((conductor_c - to_c) / (conductor_c - 30.0));
            CHECK(row == doctest::Approx(equation).epsilon(0.02));
        }
    }
}

TEST_CASE("an insulation limit below the column's conductor temperature reduces the current") {
    const heatmatch::TabulatedAmpacity cable{
        .current_a = 44.0, .ambient_c = 60.0, .conductor_c = 120.0, .source = "en-50618"};
    const auto at = [&cable](double limit_c, double ambient_c) {
        return ambient_factor(WiringCode::iec, cable, limit_c, ambient_c);
    };
    CHECK(at(120.0, 50.0) == 1.0);
    CHECK(at(90.0, 50.0) == doctest::Approx(std::sqrt(40.0 / 60.0)));
    CHECK(at(90.0, 10.0) == 1.0);
    CHECK(at(90.0, 95.0) == 0.0);
}

// Source: NEC 2023, Table 310.15(C)(1) (nec-310-reproduction); IEC 60364-5-52, B.52.17 item 1.
TEST_CASE("wires that lie together have a lower current each") {
    const auto nec = [](int loaded) { return *grouping_factor(WiringCode::nec, loaded); };
    CHECK(nec(3) == 1.0);
    CHECK(nec(4) == 0.8);
    CHECK(nec(9) == 0.7);
    CHECK(nec(20) == 0.5);
    CHECK(nec(30) == 0.45);
    CHECK(nec(36) == 0.40);
    CHECK(nec(41) == 0.35);
    const auto iec = [](int loaded) { return grouping_factor(WiringCode::iec, loaded); };
    CHECK(*iec(2) == 1.0);
    CHECK(*iec(3) == 0.80);
    CHECK(*iec(4) == 0.80);
    CHECK(*iec(18) == 0.50);
    CHECK(*iec(20) == 0.45);
    CHECK(*iec(40) == 0.38);
    CHECK_FALSE(iec(41));
}

// Source: NEC 2023, 310.15(B)(2): 33 °C; 23 mm from memory of the editions before
// (nec-310-15-roof).
TEST_CASE("a raceway close above a sunlit roof counts as in hotter air") {
    CHECK(heatmatch::roof_rise_k(0.0) == 33.0);
    CHECK(heatmatch::roof_rise_k(19.0) == 33.0);
    CHECK(heatmatch::roof_rise_k(23.0) == 0.0);
    CHECK(heatmatch::roof_rise_k(300.0) == 0.0);
}
