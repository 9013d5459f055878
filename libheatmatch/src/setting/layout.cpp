#include "heatmatch/setting/layout.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <charconv>
#include <optional>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

namespace {

using setting_sentences::say;

constexpr std::string_view signs = "+|[]\"\\";
constexpr int deepest = 20;

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
    return text;
}

/// Where ` x12` begins at the end of a name, if it ends so.
std::optional<std::size_t> repetition_at(std::string_view text) {
    std::size_t digits = text.size();
    while (digits > 0 && text[digits - 1] >= '0' && text[digits - 1] <= '9') --digits;
    if (digits == text.size() || digits == 0 || text[digits - 1] != 'x') return std::nullopt;
    if (digits == 1) return 0;
    return is_space(text[digits - 2]) ? std::optional(digits - 1) : std::nullopt;
}

class LayoutReader {
  public:
    LayoutReader(std::string_view text, std::string_view part, std::string_view field)
        : text_(text), part_(part), field_(field) {}

    Layout whole() {
        Layout layout = strings(0);
        if (at_ < text_.size()) refuse(say<"layout.join">());
        if (layout.count() > most_in_layout) {
            refuse(say<"layout.too_many">(with<"most">(static_cast<double>(most_in_layout))));
        }
        return layout;
    }

  private:
    [[noreturn]] void refuse(Sentence remedy) const {
        throw InvalidInput(
            ErrorDetail{.part = std::string(part_),
                        .field = std::string(field_),
                        .value = quote(text_),
                        .allowed = "like barn pair x2 + porch four x4 | shed two",
                        .remedy = say<"layout.at">(with<"what">(std::move(remedy)),
                                                   with<"place">(static_cast<double>(at_ + 1)))});
    }

    void skip_spaces() {
        while (at_ < text_.size() && is_space(text_[at_])) ++at_;
    }

    bool take(char sign) {
        skip_spaces();
        if (at_ >= text_.size() || text_[at_] != sign) return false;
        ++at_;
        return true;
    }

    Layout strings(int depth) {
        if (depth > deepest) {
            refuse(say<"layout.too_deep">(with<"most">(static_cast<double>(deepest))));
        }
        Layout layout;
        do {
            Layout::Series series;
            do series.push_back(item(depth));
            while (take('+'));
            layout.strings.push_back(std::move(series));
        } while (take('|'));
        return layout;
    }

    Layout::Item item(int depth) {
        skip_spaces();
        Layout::Item found;
        if (take('[')) {
            found.bracketed.push_back(strings(depth + 1));
            if (!take(']')) refuse(say<"layout.bracket_open">());
            found.count = repetition(rest());
        } else if (take('"')) {
            found.name = quoted_name();
            found.count = repetition(rest());
        } else {
            const std::string_view bare = rest();
            const auto cut = repetition_at(bare);
            found.name = trimmed(bare.substr(0, cut.value_or(bare.size())));
            if (cut) found.count = repetition(bare.substr(*cut));
        }
        if (found.name.empty() && found.bracketed.empty()) refuse(say<"layout.no_name">());
        return found;
    }

    /// The text up to the next sign.
    std::string_view rest() {
        const std::size_t begin = at_;
        while (at_ < text_.size() && signs.find(text_[at_]) == std::string_view::npos) ++at_;
        return trimmed(text_.substr(begin, at_ - begin));
    }

    std::string quoted_name() {
        std::string name;
        for (; at_ < text_.size(); ++at_) {
            if (text_[at_] == '"') {
                ++at_;
                return name;
            }
            if (text_[at_] == '\\' && ++at_ == text_.size()) break;
            name += text_[at_];
        }
        refuse(say<"layout.quote_open">());
    }

    int repetition(std::string_view text) const {
        if (text.empty()) return 1;
        int count = 0;
        const char* end = text.data() + text.size();
        const bool marked = text.front() == 'x';
        const auto read = std::from_chars(text.data() + (marked ? 1 : 0), end, count);
        if (!marked || read.ec != std::errc() || read.ptr != end || count < 1 ||
            count > most_in_layout) {
            refuse(say<"layout.repetition">(with<"most">(static_cast<double>(most_in_layout))));
        }
        return count;
    }

    std::string_view text_;
    std::string_view part_;
    std::string_view field_;
    std::size_t at_ = 0;
};

std::string name_text(const std::string& name) {
    const bool plain = name.find_first_of(signs) == std::string::npos && trimmed(name) == name &&
                       !repetition_at(name);
    if (plain) return name;
    std::string text = "\"";
    for (const char c : name) {
        if (c == '"' || c == '\\') text += '\\';
        text += c;
    }
    return text + '"';
}

std::string item_text(const Layout::Item& item) {
    std::string text =
        item.bracketed.empty() ? name_text(item.name) : "[" + item.bracketed.front().text() + "]";
    if (item.count > 1) text += " x" + std::to_string(item.count);
    return text;
}

}  // namespace

Layout Layout::parse(std::string_view text, std::string_view part, std::string_view field) {
    return LayoutReader(text, part, field).whole();
}

std::string Layout::text() const {
    std::string text;
    for (const Series& series : strings) {
        if (!text.empty()) text += " | ";
        for (std::size_t i = 0; i < series.size(); ++i) {
            text += (i > 0 ? " + " : "") + item_text(series[i]);
        }
    }
    return text;
}

std::vector<std::string> Layout::names() const {
    std::vector<std::string> found;
    const auto add = [&found](const std::string& name) {
        if (std::find(found.begin(), found.end(), name) == found.end()) found.push_back(name);
    };
    for (const Series& series : strings) {
        for (const Item& item : series) {
            if (item.bracketed.empty()) {
                add(item.name);
                continue;
            }
            for (const std::string& name : item.bracketed.front().names()) add(name);
        }
    }
    return found;
}

int Layout::count() const {
    int sum = 0;
    for (const Series& series : strings) {
        for (const Item& item : series) {
            const int inside = item.bracketed.empty() ? 1 : item.bracketed.front().count();
            // Past the most allowed the exact number does not matter, and must not overflow.
            sum = std::min(sum + std::min(inside * std::min(item.count, most_in_layout + 1),
                                          most_in_layout + 1),
                           most_in_layout + 1);
        }
    }
    return sum;
}

std::vector<std::vector<std::string>> plain_strings(const Layout& layout, std::string_view part,
                                                    std::string_view field) {
    std::vector<std::vector<std::string>> strings;
    for (const Layout::Series& series : layout.strings) {
        std::vector<std::string>& names = strings.emplace_back();
        for (const Layout::Item& item : series) {
            if (!item.bracketed.empty()) {
                throw InvalidInput(ErrorDetail{.part = std::string(part),
                                               .field = std::string(field),
                                               .value = quote(layout.text()),
                                               .allowed = "strings in parallel",
                                               .remedy = say<"layout.no_brackets">()});
            }
            names.insert(names.end(), static_cast<std::size_t>(item.count), item.name);
        }
    }
    return strings;
}

}  // namespace heatmatch
