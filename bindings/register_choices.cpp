#include "pybind.hpp"

#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"
#include "heatmatch/match/rank/alternative.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/solar/plane_irradiance.hpp"
#include "heatmatch/solar/vector_width.hpp"

namespace heatmatch::python {

namespace {

struct ChoiceClass {
    const char* name;
    const char* meaning;
    std::span<const std::string_view> words;
};

std::span<const ChoiceClass> choice_classes() {
    static const auto classes = std::to_array<ChoiceClass>({
        {"Technology", "Kind of photovoltaic cell.", technology_words},
        {"ConductorMetal", "Metal of a conductor.", conductor_metal_words},
        {"Plating", "Skin of the strands of a conductor.", plating_words},
        {"ResetKind", "How a control closes again.", reset_kind_words},
        {"FailureKind", "The state a control usually fails in.", failure_kind_words},
        {"OperatedKind", "What makes a control open.", operated_kind_words},
        {"DetectedFault", "A fault that a control finds.", detected_fault_words},
        {"ConnectorPlace", "Place for which a joint is made.", connector_place_words},
        {"MediumForm", "Form of a fill.", medium_form_words},
        {"SourceKind", "Origin of a source's numbers.", source_kind_words},
        {"StoreShape", "Shape of a store.", store_shape_words},
        {"StorePlace", "Whether a store is in the heated space.", store_place_words},
        {"StandsOn", "Base under a store.", stands_on_words},
        {"StoreTerminals", "Position of the elements' terminals.", store_terminals_words},
        {"ArrayPlace", "Mounting place of the panels.", array_place_words},
        {"Earthing", "Whether a pole of the array is earthed.", earthing_words},
        {"StoreMaterial", "Material of the vessel, liner or insulation jacket of a store.",
         store_material_words},
        {"Carried", "Whose current flows in a run.", carried_words},
        {"SurroundingsKind", "Kind of surroundings of a wire.", surroundings_kind_words},
        {"WiringCode", "Which code of wiring decides.", wiring_code_words},
        {"LayingMethod", "Installation method of a wire, by the tables of current.",
         laying_method_words},
        {"Duty", "Duty of a device.", duty_words},
        {"SensedPlace", "Place where a device senses.", sensed_place_words},
        {"Answer", "Whether something is so.", answer_words},
        {"BillState", "What is known of the price of a line of a bill.", bill_state_words},
        {"AlternativeKind", "What another circuit of a ranking is first in.", alternative_words},
        {"DutyMeans", "How a duty of a code is met.", duty_means_words},
        {"Severity", "How bad it is to pass a margin.", severity_words},
        {"WirePart", "Part of a run of wire with a temperature limit.", wire_part_words},
        {"FitMode", "How a label could be met by a single diode.", fit_mode_words},
        {"ResistanceBasis", "Data from which an element's resistance is determined.",
         resistance_basis_words},
        {"ConductivityEnd", "Which end of a fill's conductivity.", conductivity_end_words},
        {"VectorWidth", "Which build of the inner loops.", vector_width_words},
        {"SwitchCase", "How the controls behave.", switch_case_words},
        {"SwitchAction", "Action of a control.", switch_action_words},
        {"BedModel", "How the heat of the fill was followed.", bed_model_words},
        {"ProbePlace", "Position of a thermometer of a store.", probe_place_words},
        {"UnitSystem", "The two unit sets of every printed result.", unit_system_words},
        {"SkyModel", "Which sky the diffuse light comes from.", sky_model_words},
        {"FaultKind", "Possible cause of readings.", fault_words},
    });
    return classes;
}

}  // namespace

py::object choice_object(std::span<const std::string_view> words, std::string_view word) {
    if (word.empty()) return py::none();
    for (const ChoiceClass& each : choice_classes()) {
        if (each.words.data() != words.data()) continue;
        return py::module_::import("heatmatch.choices").attr(each.name)(std::string(word));
    }
    return py::str(std::string(word));
}

void register_choices(py::module_& module) {
    module.def(
        "choices",
        [] {
            py::dict all;
            for (const ChoiceClass& each : choice_classes()) {
                py::list words;
                for (const std::string_view word : each.words) words.append(std::string(word));
                all[each.name] = py::make_tuple(each.meaning, words);
            }
            return all;
        },
        "The closed choices: class in heatmatch.choices -> (meaning, words).");
}

}  // namespace heatmatch::python
