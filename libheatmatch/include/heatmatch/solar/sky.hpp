#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Sun and air of a place, row by row, independent of any plane. All lists have one length.
struct SkyRows {
    Site site{};                         //!< with longitude; its plane is that of the weather
    std::vector<double> unix_time_s{};   //!< middle of each step [s]
    std::vector<double> ghi_w_m2{};      //!< global horizontal [W/m2]
    std::vector<double> dni_w_m2{};      //!< direct normal [W/m2]
    std::vector<double> dhi_w_m2{};      //!< diffuse horizontal [W/m2]
    std::vector<double> air_c{};         //!< [°C]
    std::vector<double> wind_factor{};   //!< warming of the cells relative to that in 1 m/s
    std::vector<double> hours{};         //!< duration of a row [h]
    std::array<double, 12> days{};       //!< as in the weather
    double step_hours = 1.0;             //!< as in the weather [h]
    std::optional<double> first_hour{};  //!< as in the weather [h]
    Sentences remarks{};                 //!< as in the weather
    std::vector<Assumption> assumed{};   //!< of the rows, not of the plane

    [[nodiscard]] std::size_t size() const { return unix_time_s.size(); }
    /// Hour of the day by mean solar time in the middle of a row, 0 to 23.
    [[nodiscard]] std::size_t hour_of_day(std::size_t row) const;

    friend bool operator==(const SkyRows&, const SkyRows&) = default;
};

/// One sky over several planes: it makes the weather of each once. Several threads may use it.
class Sky {
  public:
    explicit Sky(SkyRows rows) : rows_(std::move(rows)) {}

    [[nodiscard]] const SkyRows& rows() const { return rows_; }
    /// The weather of a plane, in the same rows; on that of the site it has the same bits as the
    /// weather from which the sky was kept. It holds no sky itself. Throws InvalidInput where the
    /// plane is out of range, or brighter than a plane can be.
    [[nodiscard]] std::shared_ptr<const Weather> on_plane(double tilt_deg,
                                                          double azimuth_deg) const;

  private:
    SkyRows rows_;
    mutable std::mutex guard_{};
    mutable std::map<std::pair<double, double>, std::shared_ptr<const Weather>> planes_{};
};

/// The weather on another plane under its sky, which it holds too. Throws InvalidInput where the
/// weather was made without a sky.
[[nodiscard]] Weather on_plane(const Weather& weather, double tilt_deg, double azimuth_deg);

}  // namespace heatmatch
