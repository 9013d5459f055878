#include "json_record.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

constexpr int deepest = 32;
constexpr std::size_t most_keys =
    1000;  // an object stores keys in a list, each searched from its start

/// Iterates over the text and counts its lines, so that the parser's events have a place.
class LineCounter {
  public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    LineCounter(const char* at, std::size_t* line) : at_(at), line_(line) {}
    reference operator*() const { return *at_; }
    LineCounter& operator++() {
        if (*at_ == '\n') ++*line_;
        ++at_;
        return *this;
    }
    LineCounter operator++(int) {
        LineCounter before = *this;
        ++*this;
        return before;
    }
    friend bool operator==(const LineCounter& a, const LineCounter& b) { return a.at_ == b.at_; }

  private:
    const char* at_;
    std::size_t* line_;
};

/// Message of the parser, with its place, in plain text of bounded length.
std::string parse_failure(std::string reason, std::size_t line) {
    constexpr std::size_t longest = 240;
    const std::size_t prefix = reason.find("] ");
    if (prefix != std::string::npos) reason.erase(0, prefix + 2);
    if (reason.find("at line") == std::string::npos) reason += " at line " + std::to_string(line);
    return clip(reason, longest);
}

/// The first three of many keys, for a message.
std::string few_of(const std::set<std::string>& keys) {
    std::string few;
    std::size_t named = 0;
    for (const std::string& key : keys) {
        if (named++ == 3) break;
        few += (few.empty() ? "" : ", ") + quote(key, 20);
    }
    return few;
}

/// Remedy for hand-written JSON: common errors in plain words.
Sentence parse_remedy(std::string_view reason) {
    struct Slip {
        const char* said = "";
        Sentence remedy{};
    };
    const Sentence no_value = say<"text.no_value">();
    const std::array slips{
        Slip{"unexpected end of input", say<"text.ends_early">()},
        Slip{"missing closing quote", say<"text.close_text">()},
        Slip{"invalid literal", say<"text.bare_word">()},
        Slip{"; expected '}'", say<"text.in_braces">()},
        Slip{"; expected ']'", say<"text.in_brackets">()},
        Slip{"unexpected '}'", no_value},
        Slip{"unexpected ']'", no_value},
    };
    const auto found = std::find_if(slips.begin(), slips.end(), [reason](const Slip& slip) {
        return reason.find(slip.said) != std::string_view::npos;
    });
    return found == slips.end() ? say<"text.correct_json">()
                                : say<"text.correct_slip">(with<"slip">(found->remedy));
}

}  // namespace

ParsedJson parse_json(std::string_view text, std::string_view origin) {
    ParsedJson parsed;
    std::size_t line = 1;
    std::vector<std::set<std::string>> keys;
    std::string top_key;
    const auto watch = [&](int depth, Json::parse_event_t event, Json& json) {
        using Event = Json::parse_event_t;
        if (depth > deepest) {
            throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                           .field = "nesting at line " + std::to_string(line),
                                           .allowed = "at most 32 levels deep",
                                           .remedy = say<"text.levels">()});
        }
        const bool begins =
            event == Event::object_start || event == Event::array_start || event == Event::value;
        if (begins && depth == 2) parsed.lines[top_key].push_back(line);
        if (event == Event::object_start) {
            keys.emplace_back();
        } else if (event == Event::object_end) {
            keys.pop_back();
        } else if (event == Event::key) {
            const auto& key = json.get_ref<const std::string&>();
            if (depth == 1) top_key = key;
            if (keys.back().size() == most_keys) {
                throw InvalidInput(
                    ErrorDetail{.part = std::string(origin),
                                .field = "keys of one object at line " + std::to_string(line),
                                .value = "more than 1000, such as " + few_of(keys.back()),
                                .allowed = "at most 1000",
                                .remedy = say<"text.too_many_keys">()});
            }
            if (!keys.back().insert(key).second) {
                throw InvalidInput(
                    ErrorDetail{.part = std::string(origin),
                                .field = clip(key),
                                .value = "a second value at line " + std::to_string(line),
                                .allowed = "given once",
                                .remedy = say<"text.remove_one">()});
            }
        }
        return true;
    };
    try {
        parsed.root = Json::parse(LineCounter(text.data(), &line),
                                  LineCounter(text.data() + text.size(), &line), watch);
    } catch (const nlohmann::json::exception& error) {
        throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                       .field = parse_failure(error.what(), line),
                                       .remedy = parse_remedy(error.what())});
    }
    return parsed;
}

}  // namespace heatmatch
