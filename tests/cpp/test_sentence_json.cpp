#include "refusal.hpp"

#include <limits>

#include <doctest/doctest.h>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/text/sentence_json.hpp"

using namespace heatmatch;

namespace {

constexpr auto json_templates = std::to_array<Template>({
    {"test.run", "In \"{run}\" it is {value}{then: and }."},
    {"test.hot", ", hot beyond {limit}"},
});

const Template* template_of(std::string_view id) {
    for (const Template& line : json_templates) {
        if (line.id == id) return &line;
    }
    return nullptr;
}

Sentence sample_sentence() {
    const Sentence hot = make_sentence<json_templates, "test.hot">(
        with<"limit">(Amount{1.0 / 3.0, unit::celsius, 7, Shown::number, 2}));
    return make_sentence<json_templates, "test.run">(with<"run">(std::string("a \"b\" \u00b0")),
                                                     with<"value">(-0.1, unit::none),
                                                     with<"then">(Sentences{hot, hot}));
}

}  // namespace

TEST_CASE("a sentence returns unchanged from JSON, to the last bit of its numbers") {
    const Sentence back = sentence_from_json(sentence_to_json(sample_sentence()), &template_of);
    CHECK(back == sample_sentence());
    CHECK(back.text(UnitSystem::us) == sample_sentence().text(UnitSystem::us));
    CHECK(sentence_from_json(sentence_to_json(Sentence{}), &template_of).empty());
}

TEST_CASE("infinite resistance, counts and prices return unchanged from JSON") {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    for (const Amount& amount : {Amount{infinite, unit::ohm}, Amount{-infinite, unit::none},
                                 Amount{3.0, unit::count}, Amount{12.5, unit::money}}) {
        const Sentence limit = make_sentence<json_templates, "test.hot">(with<"limit">(amount));
        CAPTURE(limit.text());
        CHECK(sentence_from_json(sentence_to_json(limit), &template_of) == limit);
    }
}

TEST_CASE("JSON that is not a sentence is refused, naming the error") {
    const auto refused = [](const std::string& text) {
        return refusal_of<InvalidInput>(
            [&] { static_cast<void>(sentence_from_json(text, &template_of)); });
    };
    CHECK(holds(refused(R"({"id": "test.cold"})"), "test.cold"));
    CHECK(holds(refused(R"({"id": "test.run", "with": {"name": "x"}})"), "name"));
    CHECK(
        holds(refused(R"({"id": "test.hot", "with": {"limit": {"value": 1, "unit": "furlong"}}})"),
              "furlong"));
    CHECK(holds(refused(R"({"id": "test.hot", "with": {"limit": 7}})"), "7"));
    CHECK(holds(refused(R"({"id": "test.hot", "with": {"limit": {"unit": "V"}}})"), "amount"));
    CHECK(holds(refused(R"({"id": "test.hot", "with": {"limit": {"value": 1, "shown": "word"}}})"),
                "clock"));
    CHECK(holds(refused(R"({"id": 7})"), "of its own kind"));
    CHECK(holds(refused(R"({"id": "test.hot", "with": {"limit": {"value": 1, "digits": "many"}}})"),
                "of its own kind"));
    CHECK(holds(refused("[1]"), "object"));
}
