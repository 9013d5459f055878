#include "pybind.hpp"

#include "heatmatch/answer/ranking_comparison.hpp"

namespace heatmatch::python {

namespace {

template <class Value>
Value attribute(const py::handle& object, const std::string& name) {
    return object.attr(name.c_str()).cast<Value>();
}

RankedPairing ranked_from(const py::handle& move, const std::string& when) {
    using Maybe = std::optional<double>;
    using Text = std::optional<std::string>;
    return {
        .place = attribute<std::optional<int>>(move, when),
        .heat = attribute<Maybe>(move, "heat_" + when),
        .headroom = attribute<Maybe>(move, "headroom_" + when),
        .price = attribute<Maybe>(move, "price_" + when),
        .severity = find_choice<Severity>(attribute<Text>(move, "severity_" + when).value_or("")),
        .worst = attribute<Text>(move, "worst_" + when).value_or("")};
}

/// A heatmatch.RankingComparison as the library has it.
RankingComparison comparison_from(const py::handle& object) {
    using Reasons = std::map<std::string, std::size_t>;
    RankingComparison comparison{.before = attribute<std::string>(object, "before"),
                                 .after = attribute<std::string>(object, "after"),
                                 .by_season = attribute<std::string>(object, "unit") == "kWh",
                                 .reasons_before = attribute<Reasons>(object, "reasons_before"),
                                 .reasons_after = attribute<Reasons>(object, "reasons_after"),
                                 .currency = attribute<std::string>(object, "currency"),
                                 .remarks = attribute<Sentences>(object, "remarks")};
    for (const py::handle& move : object.attr("moves")) {
        comparison.moves.push_back({.group = attribute<std::string>(move, "group"),
                                    .panels = attribute<std::string>(move, "panels"),
                                    .element = attribute<std::string>(move, "element"),
                                    .bank = attribute<std::string>(move, "bank"),
                                    .before = ranked_from(move, "before"),
                                    .after = ranked_from(move, "after")});
    }
    return comparison;
}

}  // namespace

void register_comparison(py::module_& module) {
    module.def(
        "comparison_table",
        [](const py::object& comparison, bool margins) {
            return comparison_table(comparison_from(comparison), margins);
        },
        py::arg("comparison"), py::kw_only(), py::arg("margins") = true,
        "The best of two rankings, a row for each pairing; `margins`: beside each danger its "
        "name.");
    module.def(
        "comparison_dangers",
        [](const py::object& comparison) {
            return comparison_dangers(comparison_from(comparison));
        },
        py::arg("comparison"), "Which of them became, or were, a danger.");
    module.def("unlike_rankings_remark", &unlike_rankings_remark,
               "Remark for two rankings of which only one has a season.");
}

}  // namespace heatmatch::python
