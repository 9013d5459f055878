#include "answer/start_names.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace heatmatch {

namespace {

constexpr std::size_t most_names = 5;  // that are listed

constexpr auto amount_words = std::to_array<std::string_view>(
    {"panel", "panels", "pcs",  "pieces", "element", "elements", "of",    "a",   "an",
     "the",   "each",   "with", "and",    "old",     "heater",   "at",    "own", "i",
     "voc",   "isc",    "vmp",  "imp",    "max",     "maximum",  "system"});

}  // namespace

std::vector<std::string> naming_words(const PlainAnswer& answer) {
    std::vector<std::string> words;
    for (const std::string& word : answer.words) {
        const bool amount =
            std::find(amount_words.begin(), amount_words.end(), word) != amount_words.end();
        if (!amount) words.push_back(word);
    }
    return words;
}

std::string in_lower_case(std::string text) {
    for (char& c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return text;
}

bool has_all(const std::string& text, const std::vector<std::string>& words) {
    return std::all_of(words.begin(), words.end(), [&text](std::string word) {
        if (word.size() > 3 && word.back() == 's') word.pop_back();
        return text.find(word) != std::string::npos;
    });
}

Sentences listed_names(const std::vector<std::string>& ids) {
    Sentences names;
    for (std::size_t i = 0; i < std::min(ids.size(), most_names); ++i) {
        names.push_back(sentence_of(Name{ids[i]}));
    }
    return names;
}

std::string joined_words(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
    return text;
}

AnsweredNumber pieces_of_answer(const PlainAnswer& answer, const Field& field) {
    const double count = answer.pieces().value_or(1.0);
    AnsweredNumber read{.value = count};
    if (count != std::floor(count)) read.value = -1.0;
    read.refused = out_of_range(field, read.value, start_sentences::say<"start.what_count">());
    return read;
}

}  // namespace heatmatch
