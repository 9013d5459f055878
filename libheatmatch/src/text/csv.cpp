#include "csv.hpp"

#include "sentences.hpp"

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using text_sentences::say;

std::vector<CsvRecord> read_csv(std::string_view text, std::string_view origin) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    std::vector<CsvRecord> records;
    std::size_t line = 1;
    std::size_t quote_line = 0;
    bool quoted = false;
    CsvRecord record{.line = 1, .cells = {""}};
    const auto finish = [&] {
        const bool empty = record.cells.size() == 1 && record.cells[0].empty();
        if (!empty) records.push_back(record);
        record = {.line = line, .cells = {""}};
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\n') ++line;
        if (quoted) {
            if (c != '"') {
                record.cells.back() += c;
            } else if (i + 1 < text.size() && text[i + 1] == '"') {
                record.cells.back() += '"';
                ++i;
            } else {
                quoted = false;
            }
        } else if (c == '"') {
            quoted = true;
            quote_line = line;
        } else if (c == ',') {
            record.cells.emplace_back();
        } else if (c == '\n') {
            finish();
        } else if (c != '\r') {
            record.cells.back() += c;
        }
    }
    if (quoted) {
        throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                       .field = "line " + std::to_string(quote_line),
                                       .value = "an opening quote",
                                       .allowed = "closed",
                                       .remedy = say<"text.write_quote_twice">()});
    }
    finish();
    return records;
}

}  // namespace heatmatch
