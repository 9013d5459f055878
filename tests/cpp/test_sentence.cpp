#include "refusal.hpp"

#include <doctest/doctest.h>

#include "heatmatch/base/sentence.hpp"

using namespace heatmatch;

namespace {

constexpr auto sentence_templates = std::to_array<Template>({
    {"test.run", "In \"{run}\" it is {value} over {length}."},
    {"test.list", "{parts: + } is {value}; {parts}"},
    {"test.plain", "Nothing to put in."},
    {"test.left", "{what}: {value} of {limit}"},
    {"test.outer", "It is {value}{rest}."},
    {"test.inner", ", {limit} at most, not {value}"},
});

template <Word Id, Word... Called>
Sentence say(NamedArgument<Called>... given) {
    return make_sentence<sentence_templates, Id>(std::move(given)...);
}

Sentence of_run(double value_c) {
    return say<"test.run">(with<"run">(std::string("feed of 10 m")),
                           with<"value">(value_c, unit::celsius), with<"length">(2.0, unit::metre));
}

}  // namespace

// Source: 100 °C is 212 °F; 2 m is 6.56168 ft.
TEST_CASE("a sentence shows its amounts in either unit set and its names letter for letter") {
    CHECK(of_run(100.0).text() == "In \"feed of 10 m\" it is 100 °C over 2 m.");
    CHECK(of_run(100.0).text(UnitSystem::us) == "In \"feed of 10 m\" it is 212 °F over 6.56 ft.");
}

TEST_CASE("sentences are equal by id and arguments") {
    CHECK(of_run(100.0) == of_run(100.0));
    CHECK_FALSE(of_run(100.0) == of_run(100.1));
    CHECK(of_run(100.0).id() == "test.run");
    CHECK_FALSE(say<"test.plain">() == Sentence{});
}

TEST_CASE("a list has its separator between sentences, and empty ones are omitted") {
    const Sentences parts{say<"test.plain">(), Sentence{}, say<"test.plain">()};
    const Sentence sentence = say<"test.list">(with<"parts">(parts), with<"value">(3.0));
    CHECK(sentence.text() ==
          "Nothing to put in. + Nothing to put in. is 3; Nothing to put in., Nothing to put in.");
    CHECK(text_of(parts) == "Nothing to put in. Nothing to put in.");
}

TEST_CASE("open arguments of a sentence are filled later") {
    const Sentence left = make_sentence<sentence_templates, "test.left", "value", "limit">(
        with<"what">(std::string("rod")));
    const std::array<Argument, 2> more{
        {{"value", Amount{1.0, unit::volt}}, {"limit", Amount{2.0, unit::volt}}}};
    CHECK(left.text(UnitSystem::si, more) == "rod: 1 V of 2 V");
    CHECK(say<"test.list">(with<"parts">(Sentences{left, left}), with<"value">(3.0))
              .text(UnitSystem::si, more) ==
          "rod: 1 V of 2 V + rod: 1 V of 2 V is 3; rod: 1 V of 2 V, rod: 1 V of 2 V");
    CHECK(sentence_of(Sentences{left, Sentence{}, left}).text(UnitSystem::si, more) ==
          "rod: 1 V of 2 V rod: 1 V of 2 V");
}

TEST_CASE("a line without an argument, an empty part and an empty sentence have a text") {
    CHECK(say<"test.plain">().text() == "Nothing to put in.");
    CHECK(Sentence{}.text().empty());
    CHECK(Sentence{}.id().empty());
    CHECK(say<"test.list">(with<"parts">(Sentence{}), with<"value">(1.0, unit::percent)).text() ==
          " is 1%; ");
}

// Source: 25.4 mm are an inch, 0 °C are 32 °F; 26.5 hours after midnight it is half past two.
TEST_CASE("of an amount the number, its sign, its unit, or the time of day can be shown alone") {
    const auto shown = [](Amount amount, UnitSystem system = UnitSystem::us) {
        return text_of(amount, system);
    };
    const Amount rod{127.0, unit::millimetre};
    CHECK(shown(rod) == "5 in");
    CHECK(shown({127.0, unit::millimetre, 3, Shown::number}) == "5");
    CHECK(shown({127.0, unit::millimetre, 3, Shown::unit}) == "in");
    CHECK(shown({127.0, unit::millimetre, 3, Shown::change}, UnitSystem::si) == "+127");
    CHECK(shown({-1.0, unit::volt, 3, Shown::change}) == "-1");
    CHECK(shown({26.5, unit::hour, 3, Shown::clock}) == "2:30");
    CHECK(shown({23.999, unit::hour, 3, Shown::clock}) == "0:00");
    CHECK(shown({0.0, unit::celsius, 3, Shown::whole, 1}) == "32.0 °F");
    CHECK(shown({-0.001, unit::kilowatt_hour, 3, Shown::number, 2}) == "0.00");
}

// Source: ASTM B258: 14 AWG is 2.08 mm2; an inch is 2.54 cm.
TEST_CASE("an amount can be in the other unit set, and with as many decimals as its size needs") {
    const Amount wire{2.0809, unit::square_millimetre, 3, Shown::other};
    CHECK(text_of(wire) == "14 AWG");
    CHECK(text_of(wire, UnitSystem::us) == "2.08 mm2");
    const auto fitted = [](double w_per_cm, UnitSystem system = UnitSystem::si) {
        return text_of({w_per_cm, unit::watt_per_cm, 3, Shown::whole, Amount::fit_decimals},
                       system);
    };
    CHECK(fitted(0.5) == "0.50 W/cm");
    CHECK(fitted(9.99) == "9.99 W/cm");
    CHECK(fitted(9.99, UnitSystem::us) == "25.4 W/in");
    CHECK(fitted(120.4) == "120 W/cm");
    const Sentence alone = sentence_of({0.5, unit::none, 3, Shown::number, 2});
    CHECK(alone.text() == "0.50");
}

TEST_CASE("a verbatim text is the same in either unit set; an empty one is an empty sentence") {
    const Sentence kept = verbatim("a rod of 8 mm");
    CHECK(kept.text(UnitSystem::us) == "a rod of 8 mm");
    CHECK(kept.id() == "base.verbatim");
    CHECK(kept == verbatim("a rod of 8 mm"));
    CHECK(verbatim("").empty());
}

TEST_CASE("an amount alone keeps its shown part") {
    CHECK(sentence_of(Amount{5.0, unit::percent, 3, Shown::change}).text() == "+5");
    CHECK(sentence_of(Amount{5.0, unit::volt, 3, Shown::whole, 1}).text() == "5.0 V");
}

TEST_CASE(
    "a sentence is filled with its open arguments and those of its parts, and with no "
    "others") {
    const Sentence inner =
        make_sentence<sentence_templates, "test.inner", "limit">(with<"value">(1.0));
    const Sentence outer =
        make_sentence<sentence_templates, "test.outer", "value">(with<"rest">(inner));
    const std::vector<Argument> more{{"value", Amount{200.0, unit::celsius}},
                                     {"limit", Amount{100.0, unit::celsius}}};
    const Sentence whole = filled(outer, more);
    CHECK(whole.text() == "It is 200 °C, 100 °C at most, not 1.");
    CHECK(whole.text(UnitSystem::us) == "It is 392 °F, 212 °F at most, not 1.");
    CHECK(whole.text() == outer.text(UnitSystem::si, more));
    CHECK(filled(Sentence{}, more).empty());
}
