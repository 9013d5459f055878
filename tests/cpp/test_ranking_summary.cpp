#include "demo.hpp"

#include "heatmatch/answer/ranking_summary.hpp"

using namespace heatmatch;

namespace {

constexpr auto seeing_templates =
    std::to_array<Template>({{"test.sees", "It sees {value} and stands {limit}."}});

}  // namespace

TEST_CASE("the reasons of a ranking are listed, the most frequent first") {
    CHECK(reasons_sentence({.evaluated = 1}).text() == "1 pairing evaluated, none rejected.");
    const Ranking ranking{.reasons = {{"budget", 2}, {"cold voltage", 2}, {"fit in store", 31}},
                          .evaluated = 12345678};
    CHECK(reasons_sentence(ranking).text() ==
          "12345678 pairings evaluated, 35 rejected: element size for the store 31, above the "
          "budget 2, voltage at record low 2.");
}

TEST_CASE("the reason that no pairing is left is given: dangers, money, or both") {
    const auto told = [](std::map<std::string, std::size_t> reasons) {
        return nothing_left({.reasons = std::move(reasons), .evaluated = 3}).text();
    };
    CHECK(told({{"sheath voltage", 3}}) == "No pairing is without danger.");
    CHECK(told({{"budget", 3}}) == "No pairing is within the budget.");
    CHECK(
        told({{"budget", 2}, {"sheath voltage", 1}}) ==
        "No pairing fits: each has a danger or is over the budget. Relax panels, element or bank.");
    CHECK(told({{"sheath voltage", 2}}) == "No pairing was requested: top is 0.");
}

TEST_CASE("titles state whether the best or the best rejected ones are shown") {
    Ranking ranking{.reasons = {{"sheath voltage", 1}}, .evaluated = 1};
    CHECK(best_title(ranking).text() == "No pairing is without danger. The best of the rejected");
    CHECK(shown_title(ranking).text() ==
          "No pairing is without danger. Shown are the best of the rejected. 1 pairing evaluated, "
          "1 rejected: coil-to-sheath voltage 1.");
    ranking.candidates.resize(1);
    ranking.pareto.resize(3);
    CHECK(best_title(ranking).text() == "the best of the ranking");
    CHECK(shown_title(ranking) == reasons_sentence(ranking));
    CHECK(contains(front_letters_title(ranking, 2), "2 of 3 circuits that no other beats"));
    CHECK(contains(front_letters_title(ranking, 3), "3 circuits that no other beats"));
}

TEST_CASE("the strongest rejected pairing is shown with its heat and its worst margin") {
    CHECK(strongest_rejected({}).empty());
    Candidate candidate{
        .circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 2})};
    candidate.delivered = {{.power_w = 411.6}};
    candidate.made = LazyMargins(std::vector<Margin>{});
    Ranking ranking{.rejected = {candidate}};
    CHECK(strongest_rejected(ranking).empty());
    Margin margin{.name = "cold voltage",
                  .subject = "switch",
                  .value = 101.0,
                  .limit = 100.0,
                  .unit = unit::volt,
                  .said = make_sentence<seeing_templates, "test.sees", "value", "limit">()};
    grade(margin);
    ranking.rejected.front().made = LazyMargins({margin});
    CHECK(strongest_rejected(ranking).text() ==
          "The strongest rejected pairing: bench 2S1P into storage-rod-1000-240 1S2P (412 W): It "
          "sees "
          "101 V and stands 100 V.");
}
