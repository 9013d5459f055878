#include "demo.hpp"
#include "judged_candidate.hpp"

#include <set>

#include "heatmatch/answer/verdict.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

using namespace heatmatch;

namespace {

Margin margin_graded(std::string name, Severity severity) {
    const bool assessed = severity != Severity::not_assessed;
    return {.name = std::move(name),
            .subject = "rod",
            .severity = severity,
            .consequence = Severity::warning,
            .worst_severity = assessed ? severity : Severity::warning};
}

Candidate of_a_winter() {
    Candidate candidate;
    candidate.season =
        Season{.months = {12, 1}, .days = 62.0, .kwh = 62.0 * 1.2, .mpp_kwh = 62.0 * 2.4};
    candidate.season->kwh_per_day[11] = 1.62;
    candidate.season->kwh_per_day[0] = 0.72;
    return candidate;
}

}  // namespace

// Source: 1.2 kWh a day are 50 W, 0.72 are 30 W.
TEST_CASE("heat is given per day, with a comparison, and for the darkest month") {
    CHECK(heat_sentence(of_a_winter()).text() ==
          "About 1.20 kWh of heat on an average day of the season, equal to a heater of 50 W left "
          "on; "
          "0.72 kWh a day in Jan, the darkest month, equal to 30 W. Utilization over the "
          "season is 50 %.");
    Candidate yearless = of_a_winter();
    yearless.season->months.clear();
    CHECK(heat_sentence(yearless).text() ==
          "About 1.20 kWh of heat on an average day of the season, equal to a heater of 50 W left "
          "on. "
          "Utilization over the season is 50 %.");
    const Candidate bare{.delivered = {{.power_w = 300.4}, {.power_w = 100.0}}};
    CHECK(heat_sentence(bare).text() == "About 200 W averaged over the conditions.");
}

// Source: 50 W over 25 W/K are 2 K, 3.6 °F.
TEST_CASE("the effect of heat on a space is given by the loss of the space") {
    Candidate candidate = of_a_winter();
    CHECK(contains(space_sentence(candidate), "No space is described"));
    candidate.space = SpaceBalance{.cover_w_k = 20.0, .air_w_k = 5.0};
    CHECK(space_sentence(candidate).text() ==
          "The space loses 250 W when it is 10 K warmer than outside; on average over the season "
          "this heat raises it by 2 K.");
    CHECK(space_sentence(candidate).text(UnitSystem::us) ==
          "The space loses 250 W when it is 18 °F warmer than outside; on average over the season "
          "this heat raises it by 3.6 °F.");
    candidate.season.reset();
    candidate.delivered = {{.power_w = 25.0}};
    CHECK(contains(space_sentence(candidate), "at that power this heat raises it by 1 K."));
}

TEST_CASE("margins are counted, warnings and dangers named, a danger first") {
    CHECK(margin_sentence(with_margins({})).text() ==
          "Checks made 0, not made 0: dangers 0, warnings 0, cautions 0, no finding 0.");
    std::vector<Margin> margins{
        margin_graded("touch", Severity::warning),     margin_graded("arc", Severity::warning),
        margin_graded("touch", Severity::warning),     margin_graded("drop", Severity::caution),
        margin_graded("coil", Severity::not_assessed), margin_graded("fit", Severity::none)};
    const Candidate warned = with_margins(margins);
    CHECK(
        margin_sentence(warned).text() ==
        "Checks made 5, not made 1: dangers 0, warnings 3 (touch, arc), cautions 1, no finding 1.");
    CHECK(verdict(warned).front() == heat_sentence(warned));
    margins.push_back(margin_graded("sheath", Severity::danger));
    margins.push_back(margin_graded("cold", Severity::danger));
    const Candidate rejected = with_margins(margins);
    CHECK(margin_sentence(rejected).text() ==
          "DANGER: cold, sheath. Do not build it this way. Checks made 7, not made 1: dangers 2, "
          "warnings "
          "3 (touch, arc), cautions 1, no finding 1.");
    CHECK(verdict(rejected).front() == margin_sentence(rejected));
    CHECK(verdict(rejected).size() == 2);
}

// Source: 100 °C are 212 °F.
TEST_CASE("the nearest limit is given with its numbers, and with missing checks") {
    CHECK(nearest_sentence(with_margins({})).empty());
    Margin margin{.name = "terminal temperature",
                  .subject = "terminals",
                  .value = 75.0,
                  .limit = 100.0,
                  .unit = unit::celsius};
    grade(margin);
    const Candidate candidate = with_margins({margin});
    CHECK(
        nearest_sentence(candidate).text() ==
        "Nearest limit that is dangerous to exceed: terminal temperature of terminals, 75 °C with "
        "a limit of 100 °C (headroom 0.25).");
    CHECK(contains(nearest_sentence(candidate).text(UnitSystem::us), "with a limit of 212 °F"));
}

// Source: the definition of the careful end; the names are those of the margins.
TEST_CASE("every margin that may be a danger is named beside the fact that decides") {
    Candidate candidate = assess(starter(), demo());
    std::set<std::string> named;
    const std::string said = margin_sentence(candidate).text();
    for (const Margin& margin : candidate.margins()) {
        if (margin.severity == Severity::danger || margin.worst_severity != Severity::danger) {
            continue;
        }
        CAPTURE(margin.name);
        CHECK(
            said.substr(said.find("these may be a danger")).find(shown_margin_name(margin.name)) !=
            std::string::npos);
        named.insert(margin.name);
    }
    CHECK(named.size() > 1);
}

// Source: the definition: the worse end of a band is beyond the limit, though the judged end is
// not.
TEST_CASE("a band that ends beyond its limit may be a danger") {
    const Margin sheath{.name = "sheath temperature",
                        .severity = Severity::warning,
                        .worst_severity = Severity::warning,
                        .value = 500.0,
                        .value_high = 854.0,
                        .limit = 760.0,
                        .headroom = 0.35};
    Margin below = sheath;
    below.value_high = 700.0;
    Margin from_below = sheath;  // at least 760, which 854 exceeds as it should
    from_below.value = 800.0;
    Margin of_no_danger = sheath;
    of_no_danger.consequence = Severity::warning;
    const Candidate candidate = with_margins({sheath, below, from_below, of_no_danger});
    REQUIRE(possible_dangers(candidate).size() == 1);
    CHECK(*possible_dangers(candidate).front()->value_high == 854.0);
}
