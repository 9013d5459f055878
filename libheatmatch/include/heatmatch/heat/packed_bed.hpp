#pragma once

namespace heatmatch {

/// Conductivity of a packed bed by Zehner, Bauer and Schluender [W/mK].
struct PackedBed {
    double porosity = 0.4;
    double grain_mm = 0.5;
    double solid_w_mk = 7.5;  //!< of the grain material at that temperature [W/mK]
    double emissivity = 0.9;  //!< of their surface
    double shape = 1.4;       //!< 1.25 spheres, 1.4 broken grains
    double contact = 0.0077;  //!< flattened share; 0.0077 for sand
};
/// In air of `temperature_k`. Zehner and Schluender's cell with Bauer's radiation and contact, and
/// with the rarefied gas of narrow gaps. Accurate to about 10..30 % from 300 to 1300 K, high at low
/// temperatures. @cite vdi-heat-atlas @cite zbs-asme-1994
[[nodiscard]] double packed_bed_conductivity(const PackedBed& bed, double temperature_k);

}  // namespace heatmatch
