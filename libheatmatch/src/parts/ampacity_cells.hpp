#pragma once

#include <array>

/// Cells of published tables of current [A], for copper, with their sizes: AWG number (0 for 1/0,
/// -1 for 2/0) or mm2. sources.json states for each key how it was seen.
namespace heatmatch::ampacity_cells {

constexpr auto awg_14_up =
    std::to_array<double>({14.0, 12.0, 10.0, 8.0, 6.0, 4.0, 3.0, 2.0, 1.0, 0.0, -1.0, -2.0, -3.0});
constexpr auto awg_18_up = std::to_array<double>(
    {18.0, 16.0, 14.0, 12.0, 10.0, 8.0, 6.0, 4.0, 3.0, 2.0, 1.0, 0.0, -1.0, -2.0, -3.0});
constexpr auto awg_18_up_nec_400_5 = std::to_array<double>(
    {18.0, 17.0, 16.0, 15.0, 14.0, 13.0, 12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0, 5.0, 4.0, 3.0, 2.0});
constexpr auto mm2_1_5_up =
    std::to_array<double>({1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0});

constexpr auto nec_310_16_60 = std::to_array<double>(
    {15.0, 20.0, 30.0, 40.0, 55.0, 70.0, 85.0, 95.0, 110.0, 125.0, 145.0, 165.0, 195.0});
constexpr auto nec_310_16_75 = std::to_array<double>(
    {20.0, 25.0, 35.0, 50.0, 65.0, 85.0, 100.0, 115.0, 130.0, 150.0, 175.0, 200.0, 230.0});
constexpr auto nec_310_16_90 =
    std::to_array<double>({14.0, 18.0, 25.0, 30.0, 40.0, 55.0, 75.0, 95.0, 115.0, 130.0, 145.0,
                           170.0, 195.0, 225.0, 260.0});
constexpr auto nec_310_17_60 = std::to_array<double>(
    {25.0, 30.0, 40.0, 60.0, 80.0, 105.0, 120.0, 140.0, 165.0, 195.0, 225.0, 260.0, 300.0});
constexpr auto nec_310_17_75 = std::to_array<double>(
    {30.0, 35.0, 50.0, 70.0, 95.0, 125.0, 145.0, 170.0, 195.0, 230.0, 265.0, 310.0, 360.0});
constexpr auto nec_310_17_90 =
    std::to_array<double>({18.0, 24.0, 35.0, 40.0, 55.0, 80.0, 105.0, 140.0, 165.0, 190.0, 220.0,
                           260.0, 300.0, 350.0, 405.0});
constexpr auto nec_310_18_150 = std::to_array<double>(
    {34.0, 43.0, 55.0, 76.0, 96.0, 120.0, 143.0, 160.0, 186.0, 215.0, 251.0, 288.0, 332.0});
constexpr auto nec_310_18_200 = std::to_array<double>(
    {36.0, 45.0, 60.0, 83.0, 110.0, 125.0, 152.0, 171.0, 197.0, 229.0, 260.0, 297.0, 346.0});
constexpr auto nec_310_18_250 = std::to_array<double>(
    {39.0, 54.0, 73.0, 93.0, 117.0, 148.0, 166.0, 191.0, 215.0, 244.0, 273.0, 308.0, 361.0});
constexpr auto nec_310_19_150 = std::to_array<double>(
    {46.0, 60.0, 80.0, 106.0, 155.0, 190.0, 214.0, 255.0, 293.0, 339.0, 390.0, 451.0, 529.0});
constexpr auto nec_310_19_200 = std::to_array<double>(
    {54.0, 68.0, 90.0, 124.0, 165.0, 220.0, 252.0, 293.0, 344.0, 399.0, 467.0, 546.0, 629.0});
constexpr auto nec_310_19_250 = std::to_array<double>(
    {59.0, 78.0, 107.0, 142.0, 205.0, 278.0, 327.0, 381.0, 440.0, 532.0, 591.0, 708.0, 830.0});
constexpr auto nec_690_31_105 =
    std::to_array<double>({15.0, 19.0, 29.0, 36.0, 46.0, 64.0, 81.0, 109.0, 129.0, 143.0, 168.0,
                           193.0, 229.0, 263.0, 301.0});
constexpr auto nec_690_31_125 =
    std::to_array<double>({16.0, 20.0, 31.0, 39.0, 50.0, 69.0, 87.0, 118.0, 139.0, 154.0, 181.0,
                           208.0, 247.0, 284.0, 325.0});
constexpr auto nec_400_5 =
    std::to_array<double>({10.0, 12.0, 13.0, 16.0, 18.0, 21.0, 25.0, 27.0, 30.0, 34.0, 40.0, 47.0,
                           55.0, 62.0, 70.0, 82.0, 95.0});
constexpr auto iec_a1_70 =
    std::to_array<double>({14.5, 19.5, 26.0, 34.0, 46.0, 61.0, 80.0, 99.0, 119.0});
constexpr auto iec_a2_70 =
    std::to_array<double>({14.0, 18.5, 25.0, 32.0, 43.0, 57.0, 75.0, 92.0, 110.0});
constexpr auto iec_b1_70 =
    std::to_array<double>({17.5, 24.0, 32.0, 41.0, 57.0, 76.0, 101.0, 125.0, 151.0});
constexpr auto iec_b2_70 =
    std::to_array<double>({16.5, 23.0, 30.0, 38.0, 52.0, 69.0, 90.0, 111.0, 133.0});
constexpr auto iec_c_70 =
    std::to_array<double>({19.5, 27.0, 36.0, 46.0, 63.0, 85.0, 112.0, 138.0, 168.0});
constexpr auto iec_d1_70 =
    std::to_array<double>({22.0, 29.0, 37.0, 46.0, 60.0, 78.0, 99.0, 119.0, 140.0});
constexpr auto iec_e_70 =
    std::to_array<double>({22.0, 30.0, 40.0, 51.0, 70.0, 94.0, 119.0, 148.0, 180.0});
constexpr auto iec_a1_90 =
    std::to_array<double>({19.0, 26.0, 35.0, 45.0, 61.0, 81.0, 106.0, 131.0, 158.0});
constexpr auto iec_a2_90 =
    std::to_array<double>({18.5, 25.0, 33.0, 42.0, 57.0, 76.0, 99.0, 121.0, 145.0});
constexpr auto iec_b1_90 =
    std::to_array<double>({23.0, 31.0, 42.0, 54.0, 75.0, 100.0, 133.0, 164.0, 198.0});
constexpr auto iec_b2_90 =
    std::to_array<double>({22.0, 30.0, 40.0, 51.0, 69.0, 91.0, 119.0, 146.0, 175.0});
constexpr auto iec_c_90 =
    std::to_array<double>({24.0, 33.0, 45.0, 58.0, 80.0, 107.0, 138.0, 171.0, 209.0});
constexpr auto iec_d1_90 =
    std::to_array<double>({25.0, 33.0, 43.0, 53.0, 71.0, 91.0, 116.0, 139.0, 164.0});
constexpr auto iec_e_90 =
    std::to_array<double>({26.0, 36.0, 49.0, 63.0, 86.0, 115.0, 149.0, 185.0, 225.0});
constexpr auto en_50618_single =
    std::to_array<double>({30.0, 41.0, 55.0, 70.0, 98.0, 132.0, 176.0, 218.0, 276.0});
constexpr auto en_50618_pair =
    std::to_array<double>({24.0, 33.0, 44.0, 57.0, 79.0, 107.0, 142.0, 176.0, 221.0});

}  // namespace heatmatch::ampacity_cells
