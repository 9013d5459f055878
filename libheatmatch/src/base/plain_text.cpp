#include "heatmatch/base/plain_text.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>

namespace heatmatch {

namespace {

/// Continuation bytes after a lead byte of UTF-8 (RFC 3629), and the range of the first: this
/// excludes overlong forms, surrogates and code points above U+10FFFF.
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

/// Code point of a well-formed character.
std::uint32_t code_of(std::string_view character) {
    const auto lead = static_cast<unsigned char>(character.front());
    if (character.size() == 1) return lead;
    std::uint32_t code = lead & (0x7FU >> character.size());
    for (const char c : character.substr(1)) {
        code = (code << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
    }
    return code;
}

/// Whether a character controls a terminal or a page without being visible: controls, line
/// separators, marks that change the writing direction.
bool is_command(std::uint32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x061C || code == 0x200E ||
           code == 0x200F || (code >= 0x2028 && code <= 0x202E) ||
           (code >= 0x2066 && code <= 0x2069) || code == 0xFEFF;
}

/// In programming notation: `\x1b`, `\u202e`.
std::string escape_of(std::uint32_t code) {
    constexpr std::string_view digits = "0123456789abcdef";
    const int places = code < 0x100 ? 2 : 4;
    std::string text = places == 2 ? "\\x" : "\\u";
    for (int place = places - 1; place >= 0; --place) {
        text += digits[(code >> (4U * static_cast<unsigned>(place))) & 0xFU];
    }
    return text;
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
        const std::string_view first = text.substr(0, std::max<std::size_t>(1, length));
        const std::uint32_t code =
            length == 0 ? static_cast<unsigned char>(first.front()) : code_of(first);
        plain += length == 0 || is_command(code) ? escape_of(code) : std::string(first);
        text.remove_prefix(first.size());
    }
    return plain;
}

}  // namespace heatmatch
