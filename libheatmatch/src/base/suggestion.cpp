#include "heatmatch/base/suggestion.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

namespace heatmatch {

using base_sentences::say;

namespace {

constexpr std::size_t longest_read = 80;
constexpr std::size_t most_edits = 2;
constexpr std::size_t letters_per_edit = 4;
constexpr std::size_t few = 12;
constexpr std::size_t shortest_start = 3;  // shortest word that counts as the beginning of another

/// Letters inserted, omitted or replaced; two neighbors swapped count once.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::vector<std::size_t> above;
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        const std::vector<std::size_t> last = row;
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t kept = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({kept, row[j] + 1, row[j - 1] + 1});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) row[j] = std::min(row[j], above[j - 2] + 1);
        }
        above = last;
    }
    return row[b.size()];
}

bool is_of_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

/// Words of lowercase letters and digits, such as `dry` and `sand` of `Dry sand`.
std::vector<std::string> words_in(std::string_view text) {
    std::vector<std::string> words;
    bool inside = false;
    for (char c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        if (is_of_word(c)) {
            if (!inside) words.emplace_back();
            words.back() += c;
        }
        inside = is_of_word(c);
    }
    return words;
}

/// Equal, or one begins with the other: `record` and `recordlow`. Numbers do not count.
bool is_akin(std::string_view a, std::string_view b) {
    const auto is_letter = [](char c) { return c >= 'a' && c <= 'z'; };
    if (std::none_of(a.begin(), a.end(), is_letter)) return false;
    if (a == b) return true;
    const bool long_enough = std::min(a.size(), b.size()) >= shortest_start;
    return long_enough && (a.starts_with(b) || b.starts_with(a));
}

std::size_t shared_words(const std::vector<std::string>& wrong, const KnownName& known) {
    std::vector<std::string> words = words_in(known.name);
    const std::vector<std::string> label = words_in(known.label);
    if (!label.empty()) words.push_back(label.front());
    return static_cast<std::size_t>(
        std::count_if(wrong.begin(), wrong.end(), [&words](const std::string& one) {
            return std::any_of(words.begin(), words.end(),
                               [&one](const std::string& other) { return is_akin(one, other); });
        }));
}

std::vector<KnownName> without_labels(std::span<const std::string_view> known) {
    std::vector<KnownName> names;
    names.reserve(known.size());
    for (const std::string_view name : known) names.push_back({.name = name});
    return names;
}

Sentences plain(const std::vector<std::string_view>& names) {
    Sentences sentences;
    for (const std::string_view name : names) {
        sentences.push_back(sentence_of(Name{std::string(name)}));
    }
    return sentences;
}

Sentences quoted(const std::vector<std::string_view>& names) {
    Sentences sentences;
    for (const std::string_view name : names) {
        sentences.push_back(say<"base.quoted">(with<"name">(name)));
    }
    return sentences;
}

bool same_but_for_case(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char one, char other) {
        return std::tolower(static_cast<unsigned char>(one)) ==
               std::tolower(static_cast<unsigned char>(other));
    });
}

}  // namespace

std::vector<std::string_view> near_names(std::string_view wrong,
                                         std::span<const std::string_view> known) {
    const std::string_view read = wrong.substr(0, longest_read);
    std::vector<std::pair<std::size_t, std::string_view>> found;
    for (const std::string_view name : known) {
        const std::size_t distance = edit_distance(read, name);
        const std::size_t letters = std::max(read.size(), name.size());
        const bool near = distance <= most_edits && letters_per_edit * distance <= letters;
        if (!near && !same_but_for_case(read, name)) continue;
        found.emplace_back(distance, name);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string_view> names;
    names.reserve(found.size());
    for (const auto& [distance, name] : found) names.push_back(name);
    return names;
}

std::vector<std::string_view> akin_names(std::string_view wrong, std::span<const KnownName> known) {
    const std::vector<std::string> words = words_in(wrong.substr(0, longest_read));
    std::size_t most = 1;
    std::vector<std::string_view> found;
    for (const KnownName& one : known) {
        const std::size_t shared = shared_words(words, one);
        if (shared < most) continue;
        if (shared > most) found.clear();
        most = shared;
        found.push_back(one.name);
    }
    return found;
}

Sentence suggestion(std::string_view wrong, std::span<const KnownName> known) {
    if (known.empty()) return {};
    const std::string_view read = wrong.substr(0, longest_read);
    std::vector<std::string_view> names;
    std::vector<std::string_view> families;
    for (const KnownName& one : known) {
        names.push_back(one.name);
        const bool told = std::find(families.begin(), families.end(), one.family) != families.end();
        if (!one.family.empty() && !told) families.push_back(one.family);
    }
    if (const auto near = near_names(read, names); !near.empty()) {
        return say<"base.did_you_mean">(with<"names">(quoted(near)));
    }
    if (const auto akin = akin_names(read, known); !akin.empty()) {
        return say<"base.choices">(with<"names">(plain(akin)));
    }
    if (names.size() > few && !families.empty()) {
        return say<"base.families">(with<"names">(plain(families)));
    }
    return say<"base.choices">(with<"names">(plain(names)));
}

Sentence suggestion(std::string_view wrong, std::span<const std::string_view> known) {
    return suggestion(wrong, std::span<const KnownName>(without_labels(known)));
}

Sentence suggestion_of_likely(std::string_view wrong, std::span<const std::string_view> known) {
    const bool likely =
        !near_names(wrong, known).empty() || !akin_names(wrong, without_labels(known)).empty();
    return likely ? suggestion(wrong, known) : say<"base.choose_one">();
}

Sentence suggestion(std::string_view wrong, std::span<const Field> fields) {
    std::vector<KnownName> names;
    names.reserve(fields.size());
    for (const Field& field : fields) names.push_back({.name = field.name});
    return suggestion(wrong, std::span<const KnownName>(names));
}

}  // namespace heatmatch
