#include "clear_powers.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/solar/group_weather.hpp"
#include "heatmatch/solar/plane_days.hpp"

namespace heatmatch {

using candidate_sentences::say;

namespace {

/// With more diffuse light where ground and air are not stated: fresh snow, humid or dusty air
/// (from memory). The sun then differs less between planes.
Site in_careful_light(Site site) {
    constexpr double fresh_snow = 0.85;
    constexpr double dusty = 6.0;
    if (site.albedo_by_month.empty()) site.albedo = site.albedo.value_or(fresh_snow);
    if (site.linke_turbidity.empty()) site.linke_turbidity.assign(12, dusty);
    return site;
}

/// The sites with the planes of a circuit, each plane once.
std::vector<Site> sites_of(const BegunCircuit& begun) {
    std::vector<Site> sites;
    const auto add = [&](const OwnedPanels& owned) {
        Site site = site_of_group(begun.judged.site, owned);
        const auto same = [&site](const Site& other) {
            return other.tilt_deg == site.tilt_deg && other.azimuth_deg == site.azimuth_deg;
        };
        if (std::none_of(sites.begin(), sites.end(), same)) sites.push_back(std::move(site));
    };
    const Circuit& circuit = begun.circuit;
    if (!circuit.unlike) {
        add(circuit.owned);
        return sites;
    }
    for (const GroupInArray& group : circuit.unlike->groups) add(group.owned);
    return sites;
}

std::vector<ClearPowers::Facing> facings_of(const std::vector<Site>& sites) {
    std::vector<ClearPowers::Facing> facings;
    facings.reserve(sites.size());
    for (const Site& site : sites) facings.emplace_back(site.tilt_deg, site.azimuth_deg);
    std::sort(facings.begin(), facings.end());
    return facings;
}

/// The first group that does not state its own plane, where that of the site could be kinder.
const OwnedPanels* without_plane(const BegunCircuit& begun) {
    const auto lacks = [](const OwnedPanels& owned) {
        return !owned.tilt_deg || (!owned.azimuth_deg && *owned.tilt_deg > 0.0);
    };
    const Circuit& circuit = begun.circuit;
    if (!circuit.unlike) return lacks(circuit.owned) ? &circuit.owned : nullptr;
    for (const GroupInArray& group : circuit.unlike->groups) {
        if (lacks(group.owned)) return &group.owned;
    }
    return nullptr;
}

/// The brightest of its planes at each hour; empty where one is not known.
std::optional<PlaneDays> brightest_of(const std::vector<Site>& sites) {
    std::optional<PlaneDays> all = PlaneDays{};
    for (const Site& site : sites) {
        const auto days = plane_days(in_careful_light(site));
        if (!days) return std::nullopt;
        for (std::size_t month = 0; month < days->size(); ++month) {
            for (std::size_t hour = 0; hour < (*days)[month].size(); ++hour) {
                double& most = (*all)[month][hour];
                most = std::max(most, (*days)[month][hour]);
            }
        }
    }
    return all;
}

double brightest_hour(const std::array<double, 24>& day) {
    return *std::max_element(day.begin(), day.end());
}

/// Power of the elements of a circuit over the sun on its panels, as a share of that in its
/// brightest; of the likely and the careful case the larger one.
class PowerShare {
  public:
    explicit PowerShare(const BegunCircuit& begun) {
        const Site& site = begun.judged.site;
        add(begun.circuit, site);
        const CarefulCase careful = careful_case(begun.circuit, site);
        if (!careful.facts.empty()) add(careful.circuit, careful.site);
    }

    [[nodiscard]] double at(double sun_share) const {
        // At the next brighter sample: between two of them a straight line may be too low.
        return share_[static_cast<std::size_t>(std::ceil(std::clamp(sun_share, 0.0, 1.0) * steps))];
    }

  private:
    static constexpr double steps = 32.0;

    void add(const Circuit& circuit, const Site& site) {
        const Extremes full = bright_extremes(circuit, site);
        Site dim = site;
        for (std::size_t step = 1; step < share_.size(); ++step) {
            dim.bright_irradiance_w_m2 =
                site.bright_irradiance_w_m2 * static_cast<double>(step) / steps;
            const Extremes at = bright_extremes(circuit, dim);
            keep(share_[step], at.element_power_w, full.element_power_w);
            for (std::size_t i = 0; i < at.elements.size(); ++i) {
                keep(share_[step], at.elements[i].power_w, full.elements[i].power_w);
            }
        }
    }

    static void keep(double& share, double power_w, double full_w) {
        if (full_w > 0.0) share = std::max(share, std::min(1.0, power_w / full_w));
    }

    std::array<double, 33> share_{};
};

HeatDay heat_day(const std::array<double, 24>& sun_w_m2, double scale, double judged_w_m2,
                 const PowerShare& power) {
    HeatDay day;
    for (std::size_t hour = 0; hour < day.share.size(); ++hour) {
        day.share[hour] = power.at(scale * sun_w_m2[hour] / judged_w_m2);
    }
    return day;
}

bool in_season(const std::vector<int>& months, std::size_t month) {
    return months.empty() ||
           std::find(months.begin(), months.end(), static_cast<int>(month) + 1) != months.end();
}

}  // namespace

ClearPowers::ClearPowers(const std::vector<BegunCircuit>& all) : days_(all.size()) {
    std::vector<std::vector<Site>> sites;
    for (const BegunCircuit& begun : all) {
        sites.push_back(sites_of(begun));
        facings_.push_back(facings_of(sites.back()));
    }
    const auto differs = [this](const std::vector<Facing>& facings) {
        return facings != facings_.front();
    };
    if (std::none_of(facings_.begin(), facings_.end(), differs)) return;
    const auto assume = [this](std::string part, const char* field) {
        assumed_.push_back({std::move(part), field, say<"assess.full_sun_at_once">(),
                            say<"assess.careful_end">()});
    };
    std::vector<PlaneDays> suns;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (const OwnedPanels* group = without_plane(all[i])) {
            assume("panels " + quote(group->group), "tilt_deg, azimuth_deg");
            return;
        }
        const auto sun = brightest_of(sites[i]);
        if (!sun) {
            assume("site", "latitude_deg");
            return;
        }
        suns.push_back(*sun);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        const PowerShare power(all[i]);
        const double judged_w_m2 = all[i].judged.site.bright_irradiance_w_m2;
        for (std::size_t month = 0; month < suns[i].size(); ++month) {
            double scale = 0.0;
            double brightest_w_m2 = 0.0;
            for (std::size_t k = 0; k < all.size(); ++k) {
                const double most_w_m2 = brightest_hour(suns[k][month]);
                if (most_w_m2 <= brightest_w_m2) continue;
                brightest_w_m2 = most_w_m2;
                scale = all[k].judged.site.bright_irradiance_w_m2 / most_w_m2;
            }
            const HeatDay day = heat_day(suns[i][month], scale, judged_w_m2, power);
            days_[i].year.push_back(day);
            if (in_season(all[i].judged.goals.months, month)) days_[i].season.push_back(day);
        }
    }
}

bool ClearPowers::same_planes(std::size_t a, std::size_t b) const {
    return facings_[a] == facings_[b];
}

}  // namespace heatmatch
