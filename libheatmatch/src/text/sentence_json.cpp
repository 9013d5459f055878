#include "heatmatch/text/sentence_json.hpp"

#include "json_record.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

[[noreturn]] void refuse(const std::string& value, const char* allowed) {
    throw InvalidInput(ErrorDetail{.part = "sentence",
                                   .value = quote(value),
                                   .allowed = allowed,
                                   .remedy = say<"text.its_version">()});
}

constexpr std::array<const char*, 6> shown_words{"whole", "number", "change",
                                                 "unit",  "clock",  "other"};

/// Units without a symbol.
struct PlainUnit {
    std::string_view name{};
    Unit unit{};
};
constexpr auto plain_units =
    std::to_array<PlainUnit>({{"", unit::none}, {"count", unit::count}, {"money", unit::money}});

std::string name_of(const Unit& unit) {
    for (const PlainUnit& plain : plain_units) {
        if (plain.unit == unit) return std::string(plain.name);
    }
    return std::string(unit.symbol);
}

const Unit* unit_of(std::string_view name) {
    for (const PlainUnit& plain : plain_units) {
        if (plain.name == name) return &plain.unit;
    }
    return find_unit(name);
}

/// JSON has no number for an infinite resistance.
Json json_of(double value) {
    if (std::isfinite(value)) return value;
    return format_number(value);
}

std::optional<double> number_of(const Json& json) {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    if (json.is_number()) return json.get<double>();
    for (const double value : {infinite, -infinite, std::nan("")}) {
        if (json == format_number(value)) return value;
    }
    return std::nullopt;
}

Json json_of(const Sentence& sentence);

Json json_of(const Argument& argument) {
    if (const auto* amount = std::get_if<Amount>(&argument.value)) {
        Json json = {{"value", json_of(amount->value)}};
        if (!(amount->unit == unit::none)) json["unit"] = name_of(amount->unit);
        json["digits"] = amount->digits;
        if (amount->decimals != Amount::any_decimals) json["decimals"] = amount->decimals;
        if (amount->shown != Shown::whole) {
            json["shown"] = shown_words[static_cast<std::size_t>(amount->shown)];
        }
        return json;
    }
    if (const auto* name = std::get_if<Name>(&argument.value)) return name->text;
    Json list = Json::array();
    for (const Sentence& sentence : std::get<Sentences>(argument.value)) {
        list.push_back(json_of(sentence));
    }
    return list;
}

Json json_of(const Sentence& sentence) {
    Json json = Json::object();
    if (sentence.empty()) return json;
    json["id"] = sentence.id();
    for (const Argument& argument : sentence.arguments) {
        json["with"][std::string(argument.name)] = json_of(argument);
    }
    return json;
}

Sentence sentence_of(const Json& json, FindTemplate find);

Amount amount_of(const Json& json) {
    const auto value = number_of(json.value("value", Json()));
    if (!value) refuse(json.dump(), "an amount with its value");
    const std::string symbol = json.value("unit", std::string());
    const Unit* unit = unit_of(symbol);
    if (unit == nullptr) refuse(symbol, "a unit that is known");
    const std::string word = json.value("shown", std::string(shown_words.front()));
    const auto* const shown = std::find(shown_words.begin(), shown_words.end(), word);
    if (shown == shown_words.end()) refuse(word, "whole, number, change, unit, clock or other");
    return {*value, *unit, json.value("digits", 3), static_cast<Shown>(shown - shown_words.begin()),
            json.value("decimals", Amount::any_decimals)};
}

std::variant<Amount, Name, Sentences> value_of(const Json& json, FindTemplate find) {
    if (json.is_string()) return Name{json.get<std::string>()};
    if (json.is_object()) return amount_of(json);
    if (!json.is_array()) refuse(json.dump(), "a name, an amount or a list of sentences");
    Sentences list;
    for (const Json& each : json) list.push_back(sentence_of(each, find));
    return list;
}

Sentence sentence_of(const Json& json, FindTemplate find) {
    if (!json.is_object()) refuse(json.dump(), "an object with id and arguments");
    if (json.empty()) return {};
    const std::string id = json.value("id", std::string());
    const Template* line = find(id);
    if (line == nullptr) refuse(id, "the id of a sentence that is known");
    const Json given = json.value("with", Json::object());
    std::vector<Argument> arguments;
    for (const auto& [name, value] : given.items()) {
        const std::string_view place = place_of(*line, name);
        if (place.empty()) refuse(name, "an argument of that sentence");
        arguments.push_back({place, value_of(value, find)});
    }
    return {line, std::move(arguments)};
}

}  // namespace

std::string sentence_to_json(const Sentence& sentence) {
    return json_of(sentence).dump();
}

Sentence sentence_from_json(std::string_view text, FindTemplate find) {
    const Json root = parse_json(text, "sentence").root;
    try {
        return sentence_of(root, find);
    } catch (const Json::type_error&) {
        refuse(clip(root.dump()), "an object with id and arguments, each of its own kind");
    }
}

}  // namespace heatmatch
