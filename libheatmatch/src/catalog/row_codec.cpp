#include "row_codec.hpp"

#include <set>

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch {

namespace {

std::string column_list(const PartKindInfo& info) {
    std::string list;
    for (const Field& field : info.fields) {
        list += (list.empty() ? "" : ", ") + std::string(field.name);
    }
    return list;
}

Value column_value(const SQLite::Column& column, const Field& field, const std::string& part) {
    if (column.isNull()) return {};
    switch (field.kind) {
        case FieldKind::number:
            return column.getDouble();
        case FieldKind::count:
            return static_cast<double>(column.getInt64());
        case FieldKind::flag:
            return column.getInt() != 0;
        case FieldKind::text:
        case FieldKind::choice:
        case FieldKind::slug:
        case FieldKind::reference:
            return column.getString();
        default:
            return value_from_json(field, column.getString(), part);
    }
}

Part part_from(SQLite::Statement& query, const PartKindInfo& info, const std::string& path) {
    Part part = make_part(info.kind);
    const std::string title = std::string(info.name) + " \"" + query.getColumn(0).getString() + '"';
    std::vector<Value> values;
    for (std::size_t k = 0; k < info.fields.size(); ++k) {
        values.push_back(column_value(query.getColumn(static_cast<int>(k)), info.fields[k], title));
    }
    try {
        for (std::size_t k = 0; k < info.fields.size(); ++k) {
            const Field& field = info.fields[k];
            // A word outside the choice would be lost in the record.
            if (field.kind == FieldKind::choice) check_value(field, values[k], title);
            field.set(part_record(part), values[k]);
        }
        check_part(part);
    } catch (const InvalidInput& error) {
        throw CatalogError(
            "the catalog file \"" + path + "\" holds a row that cannot be used: " + error.what(),
            error.detail());
    }
    return part;
}

struct Binder {
    SQLite::Statement& statement;
    int index;
    const Field& field;

    void operator()(std::monostate) const { statement.bind(index); }
    void operator()(bool flag) const { statement.bind(index, flag ? 1 : 0); }
    void operator()(double number) const {
        if (field.kind == FieldKind::count) {
            statement.bind(index, static_cast<std::int64_t>(number));
        } else {
            statement.bind(index, number);
        }
    }
    void operator()(const std::string& text) const { statement.bind(index, text); }
    template <class Compound>
    void operator()(const Compound& compound) const {
        statement.bind(index, value_to_json(field, compound));
    }
};

}  // namespace

void add_missing_columns(SQLite::Database& database) {
    for (const PartKindInfo& info : part_kinds()) {
        std::set<std::string> present;
        SQLite::Statement query(
            database, "SELECT name FROM pragma_table_info('" + std::string(info.plural) + "')");
        while (query.executeStep()) present.insert(query.getColumn(0).getString());
        for (const Field& field : info.fields) {
            if (present.contains(std::string(field.name))) continue;
            database.exec("ALTER TABLE " + std::string(info.plural) + " ADD COLUMN " +
                          column_definition(info, field));
        }
    }
}

std::vector<Part> read_rows(SQLite::Database& database, const PartKindInfo& info) {
    SQLite::Statement query(database, "SELECT " + column_list(info) + " FROM " +
                                          std::string(info.plural) + " ORDER BY id");
    std::vector<Part> parts;
    while (query.executeStep()) parts.push_back(part_from(query, info, database.getFilename()));
    return parts;
}

std::optional<Part> read_row(SQLite::Database& database, const PartKindInfo& info,
                             const std::string& id) {
    SQLite::Statement query(database, "SELECT " + column_list(info) + " FROM " +
                                          std::string(info.plural) + " WHERE id = ?");
    query.bind(1, id);
    if (!query.executeStep()) return std::nullopt;
    return part_from(query, info, database.getFilename());
}

void write_row(SQLite::Database& database, const Part& part) {
    const PartKindInfo& info = part_kind(part);
    std::string marks;
    for (std::size_t k = 0; k < info.fields.size(); ++k) marks += k == 0 ? "?" : ", ?";
    SQLite::Statement statement(database, "INSERT OR REPLACE INTO " + std::string(info.plural) +
                                              " (" + column_list(info) + ") VALUES (" + marks +
                                              ")");
    for (std::size_t k = 0; k < info.fields.size(); ++k) {
        const Field& field = info.fields[k];
        std::visit(Binder{statement, static_cast<int>(k) + 1, field}, field.get(part_record(part)));
    }
    statement.exec();
}

void delete_row(SQLite::Database& database, const PartKindInfo& info, const std::string& id) {
    SQLite::Statement statement(database,
                                "DELETE FROM " + std::string(info.plural) + " WHERE id = ?");
    statement.bind(1, id);
    statement.exec();
}

}  // namespace heatmatch
