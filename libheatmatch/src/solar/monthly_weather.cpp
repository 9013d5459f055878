#include "heatmatch/solar/monthly_weather.hpp"

#include "heatmatch/solar/monthly_sky.hpp"

namespace heatmatch {

Weather weather_from_months(const MonthlyNormals& normals, const Site& site) {
    return MonthlySky(normals, site).weather();
}

}  // namespace heatmatch
