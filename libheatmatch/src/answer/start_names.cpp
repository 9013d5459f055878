#include "answer/start_names.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace heatmatch {

namespace {

constexpr std::size_t most_names = 6;  // that are listed

constexpr auto amount_words = std::to_array<std::string_view>(
    {"panel", "panels", "pcs",  "pieces", "element", "elements", "of",      "a",     "an",
     "the",   "each",   "with", "and",    "heater",  "at",       "own",     "i",     "from",
     "label", "voc",    "isc",  "vmp",    "imp",     "max",      "maximum", "system"});

/// `60 cells` as the word `60-cell` of names in the catalog.
std::string with_cell_words(std::string text) {
    for (const std::string_view mark : {" cells", " cell"}) {
        for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark, at)) {
            const bool counted = at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9';
            if (counted) text.replace(at, mark.size(), "-cell");
            ++at;
        }
    }
    return text;
}

/// Whether a text begins with pieces of something: `2 x 180 W`, `3 panels 250 W`; not `12 years`.
bool begins_group(std::string_view text) {
    const PlainAnswer answer = read_plain_answer(text);
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    if (text.empty() || text.front() < '0' || text.front() > '9' || !answer.pieces()) return false;
    if (answer.times) return true;
    const std::size_t end = text.find_first_not_of("0123456789 ");
    if (end == std::string_view::npos) return false;
    const char next = text[end];
    const bool letter = (next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z');
    return letter && !text.substr(end).starts_with("cell");
}

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

Sentences listed_names(const std::vector<std::string>& ids,
                       const std::vector<std::string>& labels) {
    Sentences names;
    for (std::size_t i = 0; i < std::min(ids.size(), most_names); ++i) {
        const std::string label = i < labels.size() ? " (" + labels[i] + ")" : std::string();
        names.push_back(sentence_of(Name{ids[i] + label}));
    }
    return names;
}

std::vector<std::string> groups_in(std::string_view text) {
    std::vector<std::string> groups;
    std::size_t from = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const std::string_view rest = text.substr(at);
        std::size_t skipped = 0;
        for (const std::string_view mark : {";", ",", "+", " and "}) {
            if (rest.starts_with(mark)) skipped = mark.size();
        }
        if (skipped == 0 || !begins_group(rest.substr(skipped))) continue;
        groups.emplace_back(text.substr(from, at - from));
        from = at + skipped;
        at = from;
    }
    groups.emplace_back(text.substr(from));
    return groups;
}

Understanding answer_in_groups(StartDraft& draft, const PlainAnswer& answer,
                               Understanding (*read)(StartDraft&, const PlainAnswer&)) {
    Sentences said;
    for (const std::string& text : groups_in(answer.text)) {
        PlainAnswer one = read_plain_answer(with_cell_words(text));
        if (one.text.empty()) continue;
        one.note = answer.note;
        Understanding understood = read(draft, one);
        if (!understood.accepted) return understood;
        said.push_back(std::move(understood.said));
    }
    return {.said = sentence_of(said)};
}

Sentence leftover(const PlainAnswer& answer, const std::string& words) {
    return start_sentences::say<"start.leftover">(with<"text">(clip(answer.text)),
                                                  with<"words">(quote(words)));
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
