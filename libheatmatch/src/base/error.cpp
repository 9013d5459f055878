#include "heatmatch/base/error.hpp"

#include <utility>

#include "heatmatch/base/plain_text.hpp"

namespace heatmatch {

Error::Error(const std::string& message, ErrorDetail detail)
    : std::runtime_error(message), detail_(std::move(detail)) {}

InvalidInput::InvalidInput(const ErrorDetail& detail) : Error(compose_message(detail), detail) {}

std::string compose_message(const ErrorDetail& detail) {
    std::string text;
    if (!detail.part.empty()) text += detail.part + ": ";
    text += detail.field;
    if (!detail.value.empty()) text += (detail.field.empty() ? "" : " = ") + detail.value;
    if (!detail.allowed.empty()) text += " must be " + detail.allowed;
    if (!detail.remedy.empty()) text += "; " + detail.remedy.text();
    return text;
}

std::string clip(std::string_view text, std::size_t longest) {
    if (text.size() <= longest) return plain_line(text);
    const auto continues = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; };
    std::size_t end = longest;
    while (end > 0 && continues(text[end])) --end;
    return plain_line(text.substr(0, end)) + "...";
}

std::string quote(std::string_view text, std::size_t longest) {
    return '"' + clip(text, longest) + '"';
}

}  // namespace heatmatch
