#include "heatmatch/answer/plain_answer.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace heatmatch {

namespace {

constexpr auto unknown_words = std::to_array<std::string_view>(
    {"?", "unknown", "don't know", "do not know", "not known", "no idea", "skip"});

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}
bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool separates(char c) {
    return is_blank(c) || c == ',' || c == ';' || c == '(' || c == ')';
}

std::string lowered(std::string_view text) {
    std::string made(text);
    for (char& c : made) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return made;
}

std::string_view stripped(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return text;
}

/// Signs of word processors as plain ones.
std::string with_plain_signs(std::string_view text) {
    constexpr auto signs = std::to_array<std::pair<std::string_view, std::string_view>>(
        {{"\u2212", "-"}, {"\u00d7", "x"}, {"\u00a0", " "}, {"\u202f", " "}, {"\u201d", "\""}});
    std::string made(text);
    for (const auto& [from, to] : signs) {
        for (std::size_t at = made.find(from); at != std::string::npos; at = made.find(from, at)) {
            made.replace(at, from.size(), to);
            at += to.size();
        }
    }
    return made;
}

/// Takes an answer apart from left to right.
class Scanner {
  public:
    Scanner(std::string_view rest, PlainAnswer& answer) : rest_(rest), answer_(answer) {}

    void run() {
        while (true) {
            while (!rest_.empty() && separates(rest_.front())) rest_.remove_prefix(1);
            if (rest_.empty()) return;
            if (begins_number()) {
                number();
            } else {
                word(token());
            }
        }
    }

  private:
    [[nodiscard]] bool begins_number() const {
        std::string_view at = rest_;
        if (at.front() == '-' || at.front() == '+') at.remove_prefix(1);
        return !at.empty() &&
               (is_digit(at.front()) || (at.size() > 1 && at[0] == '.' && is_digit(at[1])));
    }

    [[nodiscard]] std::string_view token() const {
        std::size_t end = 0;
        while (end < rest_.size() && !separates(rest_[end])) ++end;
        return rest_.substr(0, end);
    }

    void number() {
        const std::string_view whole = token();
        std::string_view digits = rest_;
        if (digits.front() == '+') digits.remove_prefix(1);
        double value = 0.0;
        const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(),
                                                  value, std::chars_format::fixed);
        if (error != std::errc{} || !std::isfinite(value)) return word(whole);
        // `60-cell` is a word, not a number.
        const std::string_view behind(end,
                                      static_cast<std::size_t>(whole.data() + whole.size() - end));
        if (behind.size() > 1 && behind[0] == '-' && is_letter(behind[1])) return word(whole);
        rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
        if (rest_.size() > 1 && rest_[0] == ',' && is_digit(rest_[1])) {
            if (answer_.unclear.empty()) answer_.unclear = std::string(whole) + ',';
        }
        if (rest_.size() > 1 && rest_[0] == '/' && is_digit(rest_[1])) fraction(value);
        Quantity amount{.value = value};
        const std::string_view before = rest_;
        while (!rest_.empty() && is_blank(rest_.front())) rest_.remove_prefix(1);
        const std::string_view after = token();
        const Unit* const unit = after.empty() ? nullptr : find_unit(after);
        if (unit != nullptr) {
            amount.unit = *unit;
            amount.has_unit = true;
            rest_.remove_prefix(after.size());
        } else if (after.starts_with('x') && (after.size() == 1 || is_digit(after[1]))) {
            answer_.times = answer_.times || answer_.amounts.empty();
            rest_.remove_prefix(1);
        } else {
            rest_ = before;
        }
        answer_.amounts.push_back(amount);
    }

    void fraction(double& value) {
        rest_.remove_prefix(1);
        double below = 0.0;
        const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), below,
                                                  std::chars_format::fixed);
        if (error != std::errc{} || below == 0.0) return;
        rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
        value /= below;
    }

    void word(std::string_view found) {
        rest_.remove_prefix(found.size());
        while (!found.empty() && (found.back() == '.' || found.back() == ':')) {
            found.remove_suffix(1);
        }
        if (!found.empty() && found != "x") answer_.words.push_back(lowered(found));
    }

    std::string_view rest_;
    PlainAnswer& answer_;
};

}  // namespace

bool PlainAnswer::unknown() const {
    const std::string all = lowered(text);
    return all.empty() ||
           std::find(unknown_words.begin(), unknown_words.end(), all) != unknown_words.end();
}

bool PlainAnswer::has_word(std::string_view word) const {
    return std::find(words.begin(), words.end(), word) != words.end();
}

std::vector<double> PlainAnswer::of(const Unit& unit) const {
    std::vector<double> found;
    for (const Quantity& amount : amounts) {
        if (amount.has_unit && amount.unit.dimension == unit.dimension) {
            found.push_back(convert(amount.value, amount.unit, unit));
        }
    }
    return found;
}

std::vector<double> PlainAnswer::bare() const {
    std::vector<double> found;
    for (const Quantity& amount : amounts) {
        if (!amount.has_unit) found.push_back(amount.value);
    }
    return found;
}

std::optional<double> PlainAnswer::pieces() const {
    if (amounts.empty() || amounts.front().has_unit) return std::nullopt;
    return amounts.front().value;
}

PlainAnswer read_plain_answer(std::string_view text) {
    PlainAnswer answer;
    const std::size_t sign = text.find('#');
    answer.text = with_plain_signs(stripped(text.substr(0, sign)));
    if (sign != std::string_view::npos) answer.note = std::string(stripped(text.substr(sign + 1)));
    if (!answer.unknown()) Scanner(answer.text, answer).run();
    return answer;
}

}  // namespace heatmatch
