#include "demo.hpp"
#include "long_run.hpp"

#include <functional>
#include <memory>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"

using namespace heatmatch;

namespace {

/// The demo with one group and one kind of element, every wire named, and all parts that they use
/// given inline, so that each of their fields can be changed.
Installation whole() {
    Installation installation = small();
    Parts& parts = installation.parts;
    for (WireRun& run : installation.runs) {
        if (run.chooses()) run.wire = "silicone-14-awg";
        run.connector = "ring-terminal-nickel";
    }
    parts.panels = {find_panel(starter(), installation.panels.front().panel)};
    parts.elements = {find_element(starter(), installation.elements.front().element)};
    parts.wires = {find_wire(starter(), "silicone-14-awg")};
    parts.insulations = {find_insulation(starter(), parts.wires.front().insulation)};
    parts.connectors = {find_connector(starter(), "ring-terminal-nickel")};
    parts.controls = {find_control(starter(), installation.devices.front().part)};
    parts.media = {find_medium(starter(), installation.store->medium)};
    for (const Sheath& sheath : starter().sheaths) {
        if (sheath.id == parts.elements.front().sheath) parts.sheaths = {sheath};
    }
    parts.alloys = {find_alloy(starter(), "nicr-80-20")};
    parts.elements.front().alloy = parts.alloys.front().id;
    return installation;
}

/// A record of the installation with its fields.
struct FieldedRecord {
    std::string name{};
    std::span<const Field> fields{};
    std::function<void*(Installation&)> record{};
};

std::vector<FieldedRecord> fielded_records() {
    std::vector<FieldedRecord> all{
        {"site", site_fields(), [](Installation& i) { return &i.site; }},
        {"weather", monthly_normals_fields(), [](Installation& i) { return &*i.weather; }},
        {"panels", owned_panels_fields(), [](Installation& i) { return &i.panels[0]; }},
        {"elements", allowed_elements_fields(), [](Installation& i) { return &i.elements[0]; }},
        {"store", store_fields(), [](Installation& i) { return &*i.store; }},
        {"space", space_fields(), [](Installation& i) { return &*i.space; }},
        {"goals", goals_fields(), [](Installation& i) { return &i.goals; }},
        {"panel", panel_fields(), [](Installation& i) { return &i.parts.panels[0]; }},
        {"element", element_fields(), [](Installation& i) { return &i.parts.elements[0]; }},
        {"wire", wire_fields(), [](Installation& i) { return &i.parts.wires[0]; }},
        {"insulation", insulation_fields(),
         [](Installation& i) { return &i.parts.insulations[0]; }},
        {"connector", connector_fields(), [](Installation& i) { return &i.parts.connectors[0]; }},
        {"control", control_fields(), [](Installation& i) { return &i.parts.controls[0]; }},
        {"medium", medium_fields(), [](Installation& i) { return &i.parts.media[0]; }},
        {"sheath", sheath_fields(), [](Installation& i) { return &i.parts.sheaths[0]; }},
        {"alloy", alloy_fields(), [](Installation& i) { return &i.parts.alloys[0]; }}};
    const Installation installation = whole();
    for (std::size_t r = 0; r < installation.runs.size(); ++r) {
        all.push_back({"run", wire_run_fields(), [r](Installation& i) { return &i.runs[r]; }});
        all.push_back({"surroundings", surroundings_fields(),
                       [r](Installation& i) { return &i.runs[r].surroundings; }});
    }
    for (std::size_t d = 0; d < installation.devices.size(); ++d) {
        all.push_back({"device", device_fields(), [d](Installation& i) { return &i.devices[d]; }});
    }
    return all;
}

bool allowed(const Field& field, const Value& value) {
    try {
        check_value(field, value, "");
        return true;
    } catch (const Error&) {
        return false;
    }
}

/// Another value that the field allows, unknown included; nothing where there is none.
std::optional<Value> another(const Field& field, const Value& value) {
    std::vector<Value> tried;
    if (const auto* number = std::get_if<double>(&value)) {
        tried = {1.07 * *number, 0.93 * *number, *number + 1.0, *number - 1.0};
    } else if (const auto* flag = std::get_if<bool>(&value)) {
        tried = {!*flag};
    } else if (const auto* list = std::get_if<std::vector<double>>(&value)) {
        std::vector<double> other = *list;
        if (!other.empty()) other[other.size() / 2] *= 0.97;
        tried = {other};
    } else if (const auto* rows = std::get_if<Rows>(&value)) {
        Rows other = *rows;
        if (!other.empty() && !other.back().empty()) other.back().back() *= 0.97;
        tried = {other};
    }
    for (const std::string_view word : field.words) tried.emplace_back(std::string(word));
    if (std::holds_alternative<std::monostate>(value)) {
        for (const double number : {0.5, 1.0, 5.0, 20.0, 80.0}) tried.emplace_back(number);
        tried.emplace_back(true);
    }
    tried.emplace_back(std::monostate{});
    for (const Value& other : tried) {
        if (other != value && allowed(field, other)) return other;
    }
    return std::nullopt;
}

/// All that a ranking says of what it keeps, or why it refuses.
std::string told(const Installation& installation, const std::shared_ptr<RankMemory>& memory,
                 const std::shared_ptr<const Weather>& weather = nullptr) {
    std::string text;
    const auto put = [&text](double number) { text += format_number(number, 17) + ' '; };
    try {
        const Ranking ranking =
            rank(starter(), installation,
                 {.weather = weather, .top = 3, .keep_rejected = 3, .memory = memory});
        for (const auto* list : {&ranking.candidates, &ranking.rejected}) {
            for (const Candidate& candidate : *list) {
                text += candidate.circuit.title() + ' ';
                put(candidate.objective());
                for (const Margin& margin : candidate.margins()) {
                    text += margin.sentence() + ' ';
                    put(margin.headroom.value_or(-9.0));
                }
            }
        }
        for (const auto& [name, count] : ranking.reasons) {
            text += name + ' ' + std::to_string(count) + ' ';
        }
        text += text_of(ranking.remarks);
    } catch (const Error& error) {
        text += error.what();
    }
    return text;
}

}  // namespace

TEST_CASE("after a change of any field, results kept from the last ranking do not affect the next" *
          doctest::test_suite("numerical")) {
    const auto memory = std::make_shared<RankMemory>();
    const Installation start = whole();
    const std::string before = told(start, memory);
    CHECK(before == told(start, nullptr));
    // Only site and months make a year of hours; making it for every other field takes long.
    Sentences remarks;
    const auto year = own_weather(start, remarks);
    const int every = in_the_long_run() ? 1 : 3;
    int tried = 0;
    int seen = 0;
    for (const FieldedRecord& place : fielded_records()) {
        for (const Field& field : place.fields) {
            if (field.kind == FieldKind::slug) continue;
            Installation installation = start;
            void* record = place.record(installation);
            const auto other = another(field, field.get(record));
            if (!other || ++tried % every != 0) continue;
            field.set(record, *other);
            CAPTURE(place.name);
            CAPTURE(field.name);
            const auto weather = place.name == "site" || place.name == "weather" ? nullptr : year;
            const std::string fresh = told(installation, nullptr, weather);
            if (fresh != before) ++seen;
            CHECK(told(installation, memory, weather) == fresh);
        }
    }
    CHECK(told(start, memory) == before);
    CHECK(tried > 150);
    CHECK(seen > 60 / every);  // else the changes prove little
}

TEST_CASE("kept results are used: the same store computes its banks' heat once") {
    const auto memory = std::make_shared<RankMemory>();
    const Installation start = whole();
    const auto first = rank(starter(), start, {.top = 1, .memory = memory});
    const auto again = rank(starter(), start, {.top = 1, .memory = memory});
    REQUIRE_FALSE(first.candidates.empty());
    // The same object, not an equal one.
    CHECK(first.candidates.front().circuit.heat == again.candidates.front().circuit.heat);
    const auto apart = rank(starter(), start, {.top = 1});
    CHECK(first.candidates.front().circuit.heat != apart.candidates.front().circuit.heat);
}
