#include "demo.hpp"
#include "judged_candidate.hpp"
#include "long_run.hpp"

#include <set>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/candidate.hpp"

using heatmatch::Candidate;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

std::vector<const Candidate*> all_of_demo() {
    std::vector<const Candidate*> all;
    for (const Candidate& candidate : demo_ranking().candidates) all.push_back(&candidate);
    for (const Candidate& candidate : demo_ranking().rejected) all.push_back(&candidate);
    return all;
}

/// Names of the margins that do not belong to a run or a device.
std::multiset<std::string> names_of(const Candidate& candidate) {
    std::multiset<std::string> names;
    for (const Margin& margin : candidate.margins()) {
        const bool per_part =
            margin.subject.rfind("run \"", 0) == 0 || margin.subject.rfind("device \"", 0) == 0;
        if (!per_part) names.insert(margin.name);
    }
    return names;
}

}  // namespace

TEST_CASE("the worst margin is the most severe, of equals the one with least headroom") {
    const Candidate candidate =
        with_margins({{.name = "fine", .severity = Severity::none, .headroom = 0.1},
                      {.name = "far", .severity = Severity::warning, .headroom = -0.2},
                      {.name = "farther", .severity = Severity::warning, .headroom = -0.9},
                      {.name = "unknown", .severity = Severity::not_assessed},
                      {.name = "near", .severity = Severity::caution, .headroom = 0.01}});
    REQUIRE(candidate.worst() != nullptr);
    CHECK(candidate.worst()->name == "farther");
    CHECK(candidate.severity() == Severity::warning);
    CHECK(candidate.not_assessed() == 1);
    CHECK(with_margins({}).worst() == nullptr);
    CHECK(with_margins({}).severity() == Severity::not_assessed);
    CHECK(with_margins({}).smallest_headroom() == 1.0);
    CHECK(with_margins({}).nearest_limit() == nullptr);
    CHECK_FALSE(with_margins({}).heat_unknown());
}

// Source: arithmetic mean.
TEST_CASE("power is averaged over the conditions") {
    Candidate candidate;
    CHECK(candidate.mean_power_w() == 0.0);
    candidate.delivered = {{.power_low_w = 90, .power_w = 100, .power_high_w = 120},
                           {.power_low_w = 20, .power_w = 40, .power_high_w = 60}};
    CHECK(candidate.mean_power_w() == 70.0);
    CHECK(candidate.mean_power_low_w() == 55.0);
    CHECK(candidate.mean_power_high_w() == 90.0);
}

TEST_CASE("each assumption is listed once") {
    const heatmatch::Assumption same{.part = "p",
                                     .field = "f",
                                     .value = heatmatch::verbatim("1"),
                                     .source = heatmatch::verbatim("s")};
    heatmatch::Assumption other = same;
    other.field = "g";
    Candidate candidate = with_margins({{.assumed = {same, other}}, {.assumed = {same}}});
    candidate.circuit.panel.assumed = {same};
    CHECK(candidate.assumed().size() == 2);
}

TEST_CASE("every candidate of the demo has the same margins, none silently missing") {
    const auto all = all_of_demo();
    REQUIRE(all.size() > 100);
    const auto expected = names_of(*all.front());
    for (const char* name : {"element power",    "element voltage",      "sheath voltage",
                             "survivor power",   "survivor sheath",      "earth fault",
                             "built-in control", "terminal temperature", "shade stress",
                             "voltage drop",     "cold voltage",         "touch voltage",
                             "series arc",       "reverse current",      "string mismatch",
                             "disconnect",       "independent limit",    "limit acts in time",
                             "limit supply",     "sheath temperature",   "coil temperature",
                             "end seal",         "wall and lid",         "touch temperature",
                             "store ceiling",    "stagnation",           "dry-out",
                             "pressure",         "vessel material",      "liner material",
                             "lagging material", "element covered",      "floor"}) {
        CAPTURE(std::string(name));
        CHECK(expected.count(name) == 1);
    }
    int silent = 0;
    const std::size_t step = in_a_slow_build() ? 8 : 1;
    for (std::size_t i = 0; i < all.size(); i += step) {
        const Candidate* candidate = all[i];
        CAPTURE(candidate->circuit.title());
        CHECK(names_of(*candidate) == expected);
        for (const auto& run : candidate->circuit.runs) {
            const std::string subject = "run \"" + run.run.name + '"';
            for (const char* name :
                 {"wire", "cold voltage", "joint voltage", "joint current", "run current",
                  "insulation", "plating", "joint", "sunlight", "wet place", "placing"}) {
                silent += count_margins(candidate->margins(), name, subject) == 0 ? 1 : 0;
            }
        }
        for (const char* name : {"dc breaking", "polarity", "device temperature"}) {
            CHECK(count_margins(candidate->margins(), name, "pv-isolator-2-pole") == 1);
        }
    }
    CHECK_MESSAGE(silent == 0, "margins of runs that are not even listed");
}

TEST_CASE("heat in the store is assessed where the element fits, and never omitted") {
    int judged = 0;
    for (const Candidate& candidate : demo_ranking().candidates) {
        for (const char* name :
             {"fit in store", "sheath temperature", "settled sand", "store ceiling", "wall and lid",
              "touch temperature", "stagnation"}) {
            const Margin margin = margin_of(candidate.margins(), name);
            CAPTURE(margin.sentence());
            CHECK(margin.severity != Severity::danger);
            judged += margin.severity == Severity::not_assessed ? 0 : 1;
        }
    }
    CHECK(judged > 0);
}

TEST_CASE("every margin of the demo can be printed, and every assessed one has a source") {
    for (const Candidate* candidate : all_of_demo()) {
        for (const Margin& margin : candidate->margins()) {
            CAPTURE(margin.name);
            CHECK(!margin.name.empty());
            CHECK(!margin.subject.empty());
            check_sentence(margin);
            if (margin.severity == Severity::not_assessed) {
                CHECK(!margin.missing.empty());
                CHECK(!margin.headroom);
            } else {
                CHECK(!margin.source.empty());
            }
            // Past the limit and danger, or warning, or caution, are the same thing.
            if (!margin.headroom || *margin.headroom >= 0.0) continue;
            CHECK(margin.severity == margin.consequence);
        }
    }
}

TEST_CASE("a sentence in one unit set has no temperature of the other") {
    for (const Candidate* candidate :
         {&demo_ranking().candidates.front(), &demo_ranking().rejected.front()}) {
        for (const Margin& margin : candidate->margins()) {
            CAPTURE(margin.name);
            CHECK_FALSE(contains(margin.sentence(heatmatch::UnitSystem::us), "°C"));
            CHECK_FALSE(contains(margin.sentence(heatmatch::UnitSystem::si), "°F"));
        }
    }
}

TEST_CASE("no sentence promises that something is safe") {
    for (const Candidate* candidate : all_of_demo()) {
        for (const Margin& margin : candidate->margins()) {
            CHECK_FALSE(contains(margin.sentence(), "safe"));
        }
    }
}
