#include "schema_check.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <vector>

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/schema.hpp"
#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

namespace {

using Tokens = std::vector<std::string>;

bool is_word_character(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

/// Words, numbers, texts in quotes and single signs; `>=` and `<=` are one.
Tokens tokens_of(const std::string& sql) {
    Tokens tokens;
    for (std::size_t at = 0; at < sql.size();) {
        const char c = sql[at];
        std::size_t end = at + 1;
        if (std::isspace(static_cast<unsigned char>(c)) != 0) {
            at = end;
            continue;
        }
        if (c == '\'') {
            while (end < sql.size() && sql[end] != '\'') ++end;
            end = std::min(end + 1, sql.size());
        } else if (is_word_character(c) || c == '-' || c == '.') {
            // The sign of an exponent belongs to its number: 1e-05, 1e+05.
            while (end < sql.size() &&
                   (is_word_character(sql[end]) || sql[end] == '.' ||
                    ((sql[end] == '-' || sql[end] == '+') && sql[end - 1] == 'e' &&
                     std::isdigit(static_cast<unsigned char>(c == '-' ? sql[at + 1] : c)) != 0))) {
                ++end;
            }
        } else if ((c == '>' || c == '<') && end < sql.size() && sql[end] == '=') {
            ++end;
        }
        tokens.push_back(sql.substr(at, end - at));
        at = end;
    }
    return tokens;
}

bool is_numeral(const std::string& token) {
    const std::size_t first = token.starts_with('-') ? 1 : 0;
    return first < token.size() && std::isdigit(static_cast<unsigned char>(token[first])) != 0;
}

/// Reads the tokens of a statement in order.
class Reader {
  public:
    explicit Reader(Tokens tokens) : tokens_(std::move(tokens)) {}

    [[nodiscard]] bool at_end() const { return at_ == tokens_.size(); }
    [[nodiscard]] std::string peek() const { return at_end() ? std::string() : tokens_[at_]; }
    std::string next() { return at_end() ? std::string() : tokens_[at_++]; }
    /// Consumes those words if they are next; otherwise nothing.
    bool take(const std::string& words) {
        const std::size_t before = at_;
        for (const std::string& word : tokens_of(words)) {
            if (next() != word) {
                at_ = before;
                return false;
            }
        }
        return true;
    }

  private:
    Tokens tokens_;
    std::size_t at_ = 0;
};

bool takes_bound(Reader& reader, const std::string& name) {
    if (!reader.take(name)) return false;
    const std::string sign = reader.next();
    return (sign == ">" || sign == ">=" || sign == "<=") && is_numeral(reader.next());
}

/// A condition as written by this or an older version, up to its closing parenthesis. Numbers and
/// words may differ, because ranges and choices change between versions.
bool takes_condition(Reader& reader, const std::string& name) {
    if (reader.take(name + " IS NULL OR json_valid(" + name + ")")) return true;
    if (reader.take("json_valid(" + name + ")")) return true;
    if (reader.take("length(" + name + ") BETWEEN 1 AND 80 AND " + name +
                    " NOT GLOB '*[^a-z0-9._-]*'")) {
        return true;
    }
    if (reader.take(name + " IN (")) {
        while (!reader.at_end()) {
            const std::string value = reader.next();
            if (!value.starts_with('\'') && !is_numeral(value)) return false;
            if (reader.take(")")) return true;
            if (!reader.take(",")) return false;
        }
        return false;
    }
    if (!takes_bound(reader, name)) return false;
    return !reader.take("AND") || takes_bound(reader, name);
}

bool takes_column(Reader& reader, const PartKindInfo& info, const std::string& name) {
    if (!reader.take("REAL") && !reader.take("INTEGER") && !reader.take("TEXT")) return false;
    if (name == "id" ? !reader.take("PRIMARY KEY NOT NULL") : reader.take("PRIMARY")) return false;
    reader.take("NOT NULL");
    const std::string constraint = "CONSTRAINT " + std::string(info.name) + '_' + name + '_';
    for (const char* rule : {"range", "words", "form"}) {
        if (!reader.take(constraint + rule + " CHECK (")) continue;
        return takes_condition(reader, name) && reader.take(")");
    }
    return true;
}

/// Empty, or the column whose definition differs from ours.
std::string foreign_column(const PartKindInfo& info, const std::string& sql) {
    Reader reader(tokens_of(sql));
    if (!reader.take("CREATE TABLE " + std::string(info.plural) + " (")) return "(its name)";
    while (true) {
        const std::string name = reader.next();
        if (find_field(info.fields, name) == nullptr || !takes_column(reader, info, name)) {
            return name.empty() ? "(its end)" : name;
        }
        if (reader.take(",")) continue;
        const bool whole = reader.take(") STRICT, WITHOUT ROWID") && reader.at_end();
        return whole ? std::string() : name;
    }
}

[[noreturn]] void refuse_object(const std::string& path, const std::string& object) {
    throw CatalogError("\"" + path + "\" holds " + object +
                           ", which heatmatch does not write and which could change or hide rows; "
                           "use another file, or "
                           "ask for the parts as JSON (heatmatch catalog export) and import those",
                       ErrorDetail{.part = path, .value = object});
}

}  // namespace

void check_schema(SQLite::Database& database, const std::string& path) {
    std::map<std::string, const PartKindInfo*> kinds;
    for (const PartKindInfo& info : part_kinds()) kinds[std::string(info.plural)] = &info;
    std::map<std::string, Tokens> ours;
    for (const std::string& sql : schema_statements()) {
        const Tokens tokens = tokens_of(sql);
        ours[tokens[2]] = tokens;
    }
    SQLite::Statement query(database, "SELECT type, name, tbl_name, sql FROM sqlite_master");
    while (query.executeStep()) {
        const std::string type = query.getColumn(0).getString();
        const std::string name = query.getColumn(1).getString();
        const std::string sql = query.getColumn(3).getString();
        const std::string title = type + ' ' + quote(name);
        const auto expected = ours.find(name);
        if (type != "table" || expected == ours.end() || name != query.getColumn(2).getString()) {
            refuse_object(path, "the " + title);
        }
        const auto kind = kinds.find(name);
        if (kind == kinds.end()) {
            if (tokens_of(sql) != expected->second) refuse_object(path, "an altered " + title);
        } else if (const std::string column = foreign_column(*kind->second, sql); !column.empty()) {
            refuse_object(path, "an altered " + title + " (at " + quote(column) + ")");
        }
        ours.erase(expected);
    }
    if (ours.empty()) return;
    throw CatalogError("\"" + path + "\" lacks its table \"" + ours.begin()->first +
                           "\" and cannot be used; restore a copy of it",
                       ErrorDetail{.part = path});
}

}  // namespace heatmatch
