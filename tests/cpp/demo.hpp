#pragma once

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/rank/rank.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"

/// The parts of the starter catalog.
inline const heatmatch::Parts& starter() {
    static const heatmatch::Parts parts = heatmatch::Catalog::starter().parts();
    return parts;
}

/// The demo installation, a fresh copy to change.
inline heatmatch::Installation demo() {
    static const heatmatch::Installation installation =
        heatmatch::installation_from_json(heatmatch::demo_installation_json());
    return installation;
}

/// Its record low is the one that the circuits of a bench are made for.
inline const heatmatch::Site cold_site{.record_low_c = -20.0};

/// One group, two elements of one kind: quick to rank.
inline heatmatch::Installation small() {
    heatmatch::Installation installation = demo();
    installation.panels.resize(1);
    installation.elements = {{.element = "tubular-1000-120", .count = 2}};
    return installation;
}

/// Options that keep every pairing.
inline heatmatch::RankOptions keep_all() {
    return {.top = 100000, .keep_rejected = 100000};
}

/// The demo with everything kept, ranked once.
inline const heatmatch::Ranking& demo_ranking() {
    static const heatmatch::Ranking ranking = heatmatch::rank(starter(), demo(), keep_all());
    return ranking;
}

/// Panels and elements of the starter with no wire and no device; all elements are owned.
inline heatmatch::Circuit bench_circuit(std::string_view panel, heatmatch::Hookup panels,
                                        std::string_view element, heatmatch::Hookup bank,
                                        double record_low_c = -20.0) {
    heatmatch::Circuit circuit{.panels = panels};
    circuit.owned = {.group = "bench", .panel = std::string(panel), .count = panels.count()};
    circuit.panel = heatmatch::panel_in_service(
        circuit.owned, heatmatch::find_panel(starter(), panel), record_low_c);
    circuit.bank = heatmatch::make_bank(starter(), heatmatch::find_element(starter(), element),
                                        bank, bank.count(), 300.0);
    return circuit;
}

/// A run of that wire of the starter, 1 m in open air of that temperature.
inline heatmatch::RunParts bench_run(std::string_view wire, std::optional<double> air_c,
                                     std::string_view kind = "open air") {
    heatmatch::RunParts parts;
    parts.run = {.name = "bench", .length_m = 1.0, .wire = std::string(wire)};
    parts.run.surroundings = {
        .kind = heatmatch::find_choice<heatmatch::SurroundingsKind>(kind).value(), .air_c = air_c};
    parts.wire = heatmatch::find_wire(starter(), wire);
    parts.insulation = heatmatch::find_insulation(starter(), parts.wire->insulation);
    return parts;
}

/// A device of the starter in that run.
inline heatmatch::PlacedDevice bench_device(std::string_view control, std::string_view duty,
                                            int poles_used = 1, std::string_view run = "bench") {
    heatmatch::PlacedDevice placed;
    placed.device = {.part = std::string(control),
                     .run = std::string(run),
                     .duty = heatmatch::find_choice<heatmatch::Duty>(duty),
                     .poles_used = poles_used};
    placed.control = heatmatch::find_control(starter(), control);
    return placed;
}

/// How many margins have that name and a subject with that text in it.
inline std::ptrdiff_t count_margins(const std::vector<heatmatch::Margin>& margins,
                                    std::string_view name, std::string_view subject = "") {
    return std::count_if(margins.begin(), margins.end(), [&](const heatmatch::Margin& margin) {
        return margin.name == name && margin.subject.find(subject) != std::string::npos;
    });
}

/// The first margin of that name and a subject with that text in it; the test stops without one.
inline heatmatch::Margin margin_of(const std::vector<heatmatch::Margin>& margins,
                                   std::string_view name, std::string_view subject = "") {
    const auto found =
        std::find_if(margins.begin(), margins.end(), [&](const heatmatch::Margin& margin) {
            return margin.name == name && margin.subject.find(subject) != std::string::npos;
        });
    CAPTURE(std::string(name));
    REQUIRE(found != margins.end());
    return *found;
}

inline bool contains(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

inline bool contains(const heatmatch::Sentence& sentence, std::string_view part) {
    return contains(sentence.text(), part);
}

/// The sentence is one that can be printed: something in it, every place filled, a full stop.
inline void check_sentence(const heatmatch::Margin& margin) {
    for (const auto system : {heatmatch::UnitSystem::si, heatmatch::UnitSystem::us}) {
        const std::string sentence = margin.sentence(system);
        CAPTURE(sentence);
        REQUIRE(!sentence.empty());
        CHECK(sentence.find_first_of("{}") == std::string::npos);
        CHECK(sentence.back() == '.');
    }
}

/// A margin that was judged: severity, limit, a headroom by its rule, numbers in the sentence and
/// a source.
inline void check_judged(const heatmatch::Margin& margin, heatmatch::Severity severity,
                         double value, double limit, double rest = 0.0) {
    CAPTURE(margin.name);
    CAPTURE(margin.sentence());
    CHECK(heatmatch::severity_name(margin.severity) == heatmatch::severity_name(severity));
    REQUIRE(margin.value);
    REQUIRE(margin.limit);
    REQUIRE(margin.headroom);
    CHECK(*margin.value == doctest::Approx(value).epsilon(1e-6));
    CHECK(*margin.limit == doctest::Approx(limit).epsilon(1e-9));
    CHECK(*margin.headroom == doctest::Approx((limit - value) / (limit - rest)).epsilon(1e-5));
    const auto shown = [&](double number) {
        return heatmatch::format_quantity(number, margin.unit, heatmatch::UnitSystem::si, 3);
    };
    CHECK(contains(margin.sentence(), shown(*margin.value)));
    CHECK(contains(margin.sentence(), shown(*margin.limit)));
    CHECK(!margin.source.empty());
    check_sentence(margin);
}

/// A margin that could not be assessed, with its missing fields.
inline void check_not_assessed(const heatmatch::Margin& margin, std::string_view missing) {
    CAPTURE(margin.name);
    CAPTURE(margin.sentence());
    CHECK(margin.severity == heatmatch::Severity::not_assessed);
    CHECK(!margin.headroom);
    CHECK(std::find(margin.missing.begin(), margin.missing.end(), missing) != margin.missing.end());
    check_sentence(margin);
}

/// The numbers of a text in their order: `(240 V)² / 1000 W` has 240 and 1000.
inline std::vector<double> numbers_in(const std::string& text) {
    std::vector<double> numbers;
    for (std::size_t i = 0; i < text.size();) {
        const bool digit = std::isdigit(static_cast<unsigned char>(text[i])) != 0;
        const bool sign = text[i] == '-' && i + 1 < text.size() &&
                          std::isdigit(static_cast<unsigned char>(text[i + 1])) != 0;
        if (!digit && !sign) {
            ++i;
            continue;
        }
        char* end = nullptr;
        numbers.push_back(std::strtod(text.c_str() + i, &end));
        i = static_cast<std::size_t>(end - text.c_str());
    }
    return numbers;
}
