#include "demo.hpp"
#include "judged_candidate.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/check_counts.hpp"

using namespace heatmatch;

namespace {

Margin check(std::string name, std::string subject, Severity severity,
             std::vector<std::string> missing = {}) {
    return {.name = std::move(name),
            .subject = std::move(subject),
            .severity = severity,
            .missing = std::move(missing)};
}

Candidate of_many() {
    return with_margins({
        check("touch voltage", "live parts", Severity::warning, {"site.wet"}),
        check("bonding", "metal parts", Severity::warning, {"site.frames_bonded", "store.bonded"}),
        check("joint", "run \"a\"", Severity::not_assessed, {"connector"}),
        check("joint current", "run \"a\"", Severity::not_assessed, {"connector"}),
        check("joint", "run \"b\"", Severity::not_assessed, {"connector"}),
        check("coil", "rod", Severity::not_assessed, {"alloy"}),
        check("mismatch", "group", Severity::not_assessed),
        check("plating", "run \"a\"", Severity::caution),
        check("drop", "runs", Severity::none),
        check("sheath", "rod", Severity::danger),
    });
}

Texts texts_of_lines(const Candidate& candidate) {
    Texts texts;
    for (const Sentence& line : not_checked_lines(candidate)) texts.push_back(line.text());
    return texts;
}

}  // namespace

TEST_CASE("checks are counted by finding, and those not made separately") {
    const CheckCounts expected{
        .made = 5, .not_made = 5, .dangers = 1, .warnings = 2, .cautions = 1, .no_finding = 1};
    CHECK(check_counts(of_many()) == expected);
    CHECK(counts_sentence(of_many()).text() ==
          "Checks made 5, not made 5: dangers 1, warnings 2 (touch voltage, bonding), cautions 1, "
          "no finding 1.");
}

TEST_CASE("checks not made are grouped by the missing fact, most checks first") {
    const auto groups = not_checked(of_many());
    REQUIRE(groups.size() == 5);
    CHECK(groups[0].missing == std::vector<std::string>{"connector"});
    CHECK(groups[0].checks.size() == 3);
    CHECK_FALSE(groups[0].judged);
    CHECK(groups[2].missing.empty());
    CHECK(groups[3].judged);
    CHECK(groups[4].missing == std::vector<std::string>{"site.frames_bonded", "store.bonded"});
}

TEST_CASE("each line names the field to state, then the checks it permits") {
    Candidate candidate = of_many();
    candidate.circuit = bench_circuit("silicon-60-cell-245", {1, 1}, "tubular-1000-120", {1, 1});
    const Texts lines = texts_of_lines(candidate);
    REQUIRE(lines.size() == 7);
    CHECK(lines[0] ==
          "State connector to check joint temperature, joint current (run \"a\"); joint "
          "temperature (run \"b\").");
    CHECK(lines[1] == "State alloy to check coil (rod).");
    CHECK(lines[2] == "Not checked, and no field can supply what is missing: mismatch (group).");
    CHECK(lines[3] == "State site.wet. Judged without that: touch voltage (live parts).");
    CHECK(lines[4] ==
          "State site.frames_bonded, store.bonded. Judged without that: bonding (metal parts).");
    CHECK(contains(lines[5], "listing, labels"));
    CHECK(contains(lines[6], "Never checked here: permits"));
}

TEST_CASE("every check of the demo that was not made is in the list") {
    const Candidate& candidate = demo_ranking().candidates.front();
    const auto groups = not_checked(candidate);
    std::size_t named = 0;
    for (const Margin& margin : candidate.margins()) {
        if (margin.severity != Severity::not_assessed) continue;
        ++named;
        CAPTURE(margin.name);
        const CheckName wanted{margin.name, margin.subject};
        CHECK(std::any_of(groups.begin(), groups.end(), [&wanted](const NotChecked& group) {
            return !group.judged && std::find(group.checks.begin(), group.checks.end(), wanted) !=
                                        group.checks.end();
        }));
    }
    CHECK(static_cast<int>(named) == check_counts(candidate).not_made);
    CHECK(check_counts(candidate).made + check_counts(candidate).not_made ==
          static_cast<int>(candidate.margins().size()));
}
