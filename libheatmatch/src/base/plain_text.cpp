#include "heatmatch/base/plain_text.hpp"

#include <optional>

namespace heatmatch {

namespace {

/// Bytes that follow a lead byte of UTF-8 (RFC 3629), and the range of the first of them: it leaves
/// out overlong forms, surrogates and what lies above U+10FFFF.
struct Sequence {
    std::size_t more = 0;
    unsigned char low = 0x80;
    unsigned char high = 0xBF;
};

std::optional<Sequence> sequence_of(unsigned char lead) {
    if (lead < 0x80) return Sequence{};
    if (lead >= 0xC2 && lead <= 0xDF) return Sequence{.more = 1};
    if (lead == 0xE0) return Sequence{.more = 2, .low = 0xA0};
    if (lead == 0xED) return Sequence{.more = 2, .high = 0x9F};
    if (lead >= 0xE1 && lead <= 0xEF) return Sequence{.more = 2};
    if (lead == 0xF0) return Sequence{.more = 3, .low = 0x90};
    if (lead == 0xF4) return Sequence{.more = 3, .high = 0x8F};
    if (lead >= 0xF1 && lead <= 0xF3) return Sequence{.more = 3};
    return std::nullopt;
}

/// Length of the well-formed character at the front of a text; 0 if there is none.
std::size_t character_length(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text.front());
    const auto sequence = sequence_of(lead);
    if (!sequence || lead == 0x7F || sequence->more >= text.size()) return 0;
    for (std::size_t k = 1; k <= sequence->more; ++k) {
        const auto byte = static_cast<unsigned char>(text[k]);
        const bool first = k == 1;
        if (byte < (first ? sequence->low : 0x80) || byte > (first ? sequence->high : 0xBF))
            return 0;
    }
    return sequence->more + 1;
}

bool is_control(char c) {
    return static_cast<unsigned char>(c) < 0x20;
}

bool is_white(char c) {
    return c == '\t' || c == '\n' || c == '\r';
}

}  // namespace

bool is_plain_text(std::string_view text) {
    while (!text.empty()) {
        const std::size_t length = character_length(text);
        if (length == 0 || (is_control(text.front()) && !is_white(text.front()))) return false;
        text.remove_prefix(length);
    }
    return true;
}

std::string plain_line(std::string_view text) {
    std::string plain;
    while (!text.empty()) {
        const std::size_t length = character_length(text);
        if (length == 0 || is_control(text.front())) {
            plain += '?';
            text.remove_prefix(1);
        } else {
            plain += text.substr(0, length);
            text.remove_prefix(length);
        }
    }
    return plain;
}

}  // namespace heatmatch
