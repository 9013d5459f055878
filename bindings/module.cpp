#include "pybind.hpp"

PYBIND11_MODULE(_core, module) {
    using namespace heatmatch::python;
    module.doc() = "The C++ core of heatmatch; use it through the package heatmatch.";
    register_errors(module);
    register_files(module);
    register_sentence(module);
    register_choices(module);
    register_diode(module);
    register_parts(module);
    register_fits(module);
    register_setting(module);
    register_array(module);
    register_mixed_array(module);
    register_heat(module);
    register_sheath_heat(module);
    register_bed(module);
    register_bank_heat(module);
    register_sun(module);
    register_plane(module);
    register_weather(module);
    register_monthly_sky(module);
    register_energy(module);
    register_parts_view(module);
    register_catalog(module);
    register_glossary(module);
    register_margin(module);
    register_circuit(module);
    register_tail(module);
    register_wire_check(module);
    register_season(module);
    register_rear(module);
    register_space(module);
    register_duties(module);
    register_bill(module);
    register_candidate(module);
    register_ranking(module);
    register_answer(module);
    register_comparison(module);
    register_day_answer(module);
    register_day(module);
    register_stagnation(module);
    register_store_log(module);
    register_calibration(module);
    register_meter(module);
    register_diagnosis(module);
    register_answer_days(module);
}
