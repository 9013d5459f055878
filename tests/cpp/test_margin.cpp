#include "demo.hpp"

#include <cmath>
#include <limits>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/margin.hpp"

using heatmatch::grade;
using heatmatch::grade_from_below;
using heatmatch::Margin;
using heatmatch::Severity;
using heatmatch::UnitSystem;

namespace {

constexpr auto margin_templates = std::to_array<heatmatch::Template>({
    {"test.all", "It is at {value} ({low} to {high}); {limit} is allowed, not {value}."},
    {"test.plain", "The joint is not known."},
    {"test.two", "{value} of {limit}"},
    {"test.part", "In \"{run}\" it is {part}."},
});

template <heatmatch::Word Id, heatmatch::Word... Called>
heatmatch::Sentence say_of_margin(heatmatch::NamedArgument<Called>... given) {
    return heatmatch::make_sentence<margin_templates, Id, "value", "limit", "low", "high">(
        std::move(given)...);
}

Margin graded(double value, double limit, double rest = 0.0,
              Severity consequence = Severity::danger) {
    Margin margin{.name = "test", .consequence = consequence, .value = value, .limit = limit};
    grade(margin, rest);
    return margin;
}

}  // namespace

// Source: the definition, (limit - value) / (limit - rest).
TEST_CASE("headroom is one at rest, nothing at the limit and negative beyond it") {
    CHECK(*graded(0.0, 600.0).headroom == 1.0);
    CHECK(*graded(600.0, 600.0).headroom == 0.0);
    CHECK(*graded(150.0, 600.0).headroom == 0.75);
    CHECK(*graded(900.0, 600.0).headroom == -0.5);
    CHECK(*graded(30.0, 105.0, 30.0).headroom == 1.0);
    CHECK(*graded(90.0, 105.0, 30.0).headroom == doctest::Approx(0.2));
    CHECK(*graded(120.0, 105.0, 30.0).headroom == doctest::Approx(-0.2));
}

TEST_CASE("a limit passed gets its consequence, one nearly reached is a caution") {
    CHECK(graded(601.0, 600.0).severity == Severity::danger);
    CHECK(graded(601.0, 600.0, 0.0, Severity::warning).severity == Severity::warning);
    CHECK(graded(601.0, 600.0, 0.0, Severity::caution).severity == Severity::caution);
    CHECK(graded(600.0, 600.0).severity == Severity::caution);
    CHECK(graded(541.0, 600.0).severity == Severity::caution);
    CHECK(graded(539.0, 600.0).severity == Severity::none);
    CHECK(graded(0.0, 600.0).severity == Severity::none);
}

TEST_CASE("a limit from below works the same with the rest above it") {
    // Insulation of 20 Mohm at rest that must not fall below 1 Mohm.
    const auto from_below = [](double value) {
        Margin margin{.name = "test", .value = value, .limit = 1.0};
        grade_from_below(margin, 20.0);
        return margin;
    };
    CHECK(*from_below(20.0).headroom == 1.0);
    CHECK(*from_below(1.0).headroom == 0.0);
    CHECK(from_below(0.5).severity == Severity::danger);
    CHECK(from_below(2.0).severity == Severity::caution);
    CHECK(from_below(10.0).severity == Severity::none);
    CHECK(from_below(std::nan("")).severity == Severity::danger);
}

// Source: the definition: where the limit does not lie above rest, the distance to it over its own
// size, at most 1, and -1 from the limit on.
TEST_CASE("a limit at or below rest has a finite headroom that falls with the value") {
    CHECK(*graded(20.0, 20.0, 20.0).headroom == -1.0);
    CHECK(graded(20.0, 20.0, 20.0).severity == Severity::danger);
    CHECK(*graded(21.0, 20.0, 20.0).headroom == -1.0);
    CHECK(*graded(15.0, 20.0, 20.0).headroom == 0.25);
    CHECK(*graded(-400.0, 20.0, 20.0).headroom == 1.0);
    CHECK(graded(19.0, 20.0, 30.0).severity == Severity::caution);
    CHECK(*graded(-0.5, 0.0).headroom == 0.5);
    CHECK(*graded(0.0, 0.0).headroom == -1.0);
    for (const double limit : {-40.0, -1.0, 0.0, 1e-300, 0.5, 20.0, 77.0}) {
        CAPTURE(limit);
        double before = std::numeric_limits<double>::infinity();
        for (const double value :
             {-1e300, -300.0, -40.0, -0.1, 0.0, 0.3, 20.0, 76.0, 90.0, 1e300}) {
            CAPTURE(value);
            const double headroom = heatmatch::headroom_of(value, limit, 20.0);
            CHECK(std::isfinite(headroom));
            CHECK(std::isfinite(heatmatch::headroom_of(value, limit)));
            CHECK(headroom <= before);
            CHECK((headroom < 0.0) == (value >= limit && (value > limit || limit <= 20.0)));
            before = headroom;
        }
    }
}

TEST_CASE("without a value or a limit nothing is judged") {
    Margin margin{.name = "test", .value = 5.0};
    grade(margin);
    CHECK(margin.severity == Severity::not_assessed);
    CHECK_FALSE(margin.headroom);
    margin = {.name = "test", .limit = 5.0};
    grade(margin);
    CHECK(margin.severity == Severity::not_assessed);
    CHECK_FALSE(margin.headroom);
}

TEST_CASE("a value that is not a number is never passed as good") {
    const Margin margin = graded(std::nan(""), 600.0);
    CHECK(margin.severity == Severity::danger);
    CHECK(*margin.headroom == -1.0);
    CHECK(*graded(std::numeric_limits<double>::infinity(), 600.0).headroom == -1.0);
}

// Source: 212 °F is 100 °C, 392 °F is 200 °C.
TEST_CASE("a sentence reads in either unit set") {
    Margin margin{.value = 100.0,
                  .value_low = 50.0,
                  .value_high = 150.0,
                  .limit = 200.0,
                  .unit = heatmatch::unit::celsius,
                  .said = say_of_margin<"test.all">()};
    CHECK(margin.sentence() == "It is at 100 °C (50 °C to 150 °C); 200 °C is allowed, not 100 °C.");
    CHECK(margin.sentence(UnitSystem::us) ==
          "It is at 212 °F (122 °F to 302 °F); 392 °F is allowed, not 212 °F.");
    margin.unit = heatmatch::unit::volt;
    margin.value = 89.906;
    margin.said = say_of_margin<"test.two">();
    CHECK(margin.sentence() == "89.9 V of 200 V");
    CHECK(margin.sentence(UnitSystem::us) == margin.sentence());
    margin.said = say_of_margin<"test.part">(heatmatch::with<"run">(std::string("feed of {value}")),
                                             heatmatch::with<"part">(say_of_margin<"test.two">()));
    CHECK(margin.sentence() == "In \"feed of {value}\" it is 89.9 V of 200 V.");
}

// Source: 99.96 and 99.98 are 100 with three digits, and tell each other apart with four.
TEST_CASE("a value and a limit that differ have enough digits to show it") {
    Margin margin{.value = 99.96,
                  .limit = 99.98,
                  .unit = heatmatch::unit::volt,
                  .said = say_of_margin<"test.two">()};
    CHECK(margin.sentence() == "99.96 V of 99.98 V");
    margin.limit = 99.96;
    CHECK(margin.sentence() == "100 V of 100 V");
}

TEST_CASE("severities have the signal words of the standards") {
    CHECK(heatmatch::severity_name(Severity::none) == "none");
    CHECK(heatmatch::severity_name(Severity::caution) == "caution");
    CHECK(heatmatch::severity_name(Severity::warning) == "warning");
    CHECK(heatmatch::severity_name(Severity::danger) == "danger");
    CHECK(heatmatch::severity_name(Severity::not_assessed) == "not assessed");
}

TEST_CASE("a margin that cannot be assessed has a reason and missing fields") {
    const Margin margin = heatmatch::not_assessed("joint", "run \"tail\"",
                                                  say_of_margin<"test.plain">(), {"connector"});
    check_not_assessed(margin, "connector");
    CHECK(margin.name == "joint");
    CHECK(margin.subject == "run \"tail\"");
    CHECK(margin.sentence() == "The joint is not known.");
}

TEST_CASE("a careful end just within the limit is a caution, as a likely one is") {
    for (const auto& [headroom, worst] :
         {std::pair{0.003, Severity::caution}, std::pair{0.3, Severity::none},
          std::pair{-0.1, Severity::danger}}) {
        CAPTURE(headroom);
        std::vector<Margin> likely{{.name = "a",
                                    .severity = Severity::none,
                                    .consequence = Severity::danger,
                                    .headroom = 0.8}};
        likely.front().careful_headroom = headroom;
        heatmatch::compare_with_careful(likely, {});
        CHECK(likely.front().worst_severity == worst);
        CHECK(*likely.front().careful_headroom == headroom);
    }
}
