#include "pybind.hpp"
#include "state.hpp"

#include "heatmatch/match/candidate/season.hpp"

namespace heatmatch::python {

namespace {

py::array_t<double> twelve(const std::array<double, 12>& values) {
    return py::array_t<double>(12, values.data());
}

}  // namespace

py::tuple state_of(const Season& season) {
    return py::make_tuple(season.months, season.days, season.kwh_low, season.kwh, season.kwh_high,
                          season.mpp_kwh, season.kwh_per_day, season.mpp_kwh_per_day,
                          season.best_ohm, season.stc_match_ohm, season.near_short_circuit_share,
                          season.element_power_w, season.cloud_band, season.price_per_kwh,
                          season.remarks, assumption_states(season.assumed), season.best_ohm_cloud,
                          season.best_kwh, season.stc_match_kwh, season.stc_match_loss_cloud,
                          season.rear_kwh);
}

Season season_from(const py::tuple& state) {
    const auto number = [&state](std::size_t i) { return state[i].cast<double>(); };
    using Twelve = std::array<double, 12>;
    return {.months = state[0].cast<std::vector<int>>(),
            .days = number(1),
            .kwh_low = number(2),
            .kwh = number(3),
            .kwh_high = number(4),
            .rear_kwh = number(20),
            .mpp_kwh = number(5),
            .kwh_per_day = state[6].cast<Twelve>(),
            .mpp_kwh_per_day = state[7].cast<Twelve>(),
            .best_ohm = number(8),
            .best_ohm_cloud = state[16].cast<std::optional<double>>(),
            .stc_match_ohm = number(9),
            .best_kwh = number(17),
            .stc_match_kwh = number(18),
            .stc_match_loss_cloud = state[19].cast<std::optional<double>>(),
            .near_short_circuit_share = number(10),
            .element_power_w = number(11),
            .cloud_band = state[12].cast<bool>(),
            .price_per_kwh = state[13].cast<std::optional<double>>(),
            .remarks = state[14].cast<Sentences>(),
            .assumed = assumptions_from(state[15])};
}

void register_season(py::module_& module) {
    py::class_<Season>(module, "Season",
                       "Energy of a circuit over the season to its bank, after wire losses.")
        .def_readonly("months", &Season::months, "of the season; empty if the weather has none")
        .def_readonly("days", &Season::days, "of the season")
        .def_readonly("kwh_low", &Season::kwh_low, "low end of the band [kWh]")
        .def_readonly("kwh", &Season::kwh, "typical [kWh]")
        .def_readonly("kwh_high", &Season::kwh_high, "high end of the band [kWh]")
        .def_readonly("rear_kwh", &Season::rear_kwh,
                      "of the typical by light on the backs of the panels [kWh]")
        .def_readonly("mpp_kwh", &Season::mpp_kwh, "at the maximum power point all the time [kWh]")
        .def_property_readonly(
            "kwh_per_day", [](const Season& season) { return twelve(season.kwh_per_day); },
            "of each month, January first; 0 where the weather lacks it; shape (12,) [kWh]")
        .def_property_readonly(
            "mpp_kwh_per_day", [](const Season& season) { return twelve(season.mpp_kwh_per_day); },
            "the same at the maximum power point; shape (12,) [kWh]")
        .def_property_readonly("mean_kwh_per_day", &Season::mean_kwh_per_day,
                               "over the days of the season [kWh]")
        .def_property_readonly("harvest_fraction", &Season::harvest_fraction,
                               "energy delivered over energy at the maximum power point")
        .def_readonly("best_ohm", &Season::best_ohm, "of a bank for this array and season [ohm]")
        .def_readonly("best_ohm_cloud", &Season::best_ohm_cloud,
                      "the same with cloud within the step at its worst, or None [ohm]")
        .def_readonly("stc_match_ohm", &Season::stc_match_ohm,
                      "Vmp/Imp of the array, less its wire [ohm]")
        .def_readonly("best_kwh", &Season::best_kwh, "into a bank of best_ohm [kWh]")
        .def_readonly("stc_match_kwh", &Season::stc_match_kwh,
                      "into a bank of stc_match_ohm, matched in full sun [kWh]")
        .def_property_readonly("stc_match_loss", &Season::stc_match_loss,
                               "share of heat lost against the best resistance")
        .def_readonly("stc_match_loss_cloud", &Season::stc_match_loss_cloud,
                      "the same with cloud within the step at its worst, or None")
        .def_property_readonly("stc_match_loss_sentence", &Season::stc_match_loss_sentence,
                               "share of heat lost with Vmp/Imp; empty where the wire alone has "
                               "a higher resistance")
        .def_property_readonly("best_ohm_sentence", &Season::best_ohm_sentence,
                               "why the best resistance of the season differs from Vmp/Imp")
        .def_readonly("near_short_circuit_share", &Season::near_short_circuit_share,
                      "of the sunlit hours in which the panels' voltage is below half of their "
                      "open-circuit voltage")
        .def_readonly("element_power_w", &Season::element_power_w,
                      "largest of one element in the season [W]")
        .def_readonly("cloud_band", &Season::cloud_band,
                      "whether the band includes cloud within the step of the weather")
        .def_readonly("price_per_kwh", &Season::price_per_kwh,
                      "price to buy over the heat of one season, or None")
        .def_readonly("remarks", &Season::remarks, "gaps and repairs of the weather")
        .def_property_readonly(
            "assumed", [](const Season& season) { return texts_of(season.assumed); },
            "assumptions for the weather")
        .def("__repr__",
             [](const Season& season) {
                 return "Season(kwh=" + format_number(season.kwh, 4) +
                        ", harvest_fraction=" + format_number(season.harvest_fraction(), 3) + ')';
             })
        .def(py::pickle([](const Season& season) { return state_of(season); }, &season_from));
}

}  // namespace heatmatch::python
