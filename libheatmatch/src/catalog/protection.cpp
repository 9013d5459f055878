#include "protection.hpp"

#include <memory>

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

namespace heatmatch {

namespace {

int stop_endless_work(void* /*unused*/) {
    return 1;
}

/// Checks by SQLite itself, in a separate database, whether a text is JSON.
class JsonJudge {
  public:
    JsonJudge() {
        sqlite3_open(":memory:", &memory_);
        sqlite3_prepare_v2(memory_, "SELECT json_valid(?)", -1, &question_, nullptr);
    }
    JsonJudge(const JsonJudge&) = delete;
    JsonJudge& operator=(const JsonJudge&) = delete;
    ~JsonJudge() {
        sqlite3_finalize(question_);
        sqlite3_close(memory_);
    }

    bool is_json(sqlite3_value* value) {
        sqlite3_bind_value(question_, 1, value);
        const bool valid =
            sqlite3_step(question_) == SQLITE_ROW && sqlite3_column_int(question_, 0) == 1;
        sqlite3_reset(question_);
        return valid;
    }

  private:
    sqlite3* memory_ = nullptr;
    sqlite3_stmt* question_ = nullptr;
};

void judge_json(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    if (sqlite3_value_type(values[0]) == SQLITE_NULL) return sqlite3_result_null(context);
    auto* judge = static_cast<JsonJudge*>(sqlite3_user_data(context));
    sqlite3_result_int(context, judge->is_json(values[0]) ? 1 : 0);
}

void forget_judge(void* judge) {
    const std::unique_ptr<JsonJudge> owned(static_cast<JsonJudge*>(judge));
}

/// Some releases of SQLite reject their own json_valid() in the CHECKs of an untrusted file, and
/// the tables of a catalog use it. This registers the same check as a trusted function.
void trust_json_valid(sqlite3* handle) {
    constexpr int traits = SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS;
    auto judge = std::make_unique<JsonJudge>();
    // On failure SQLite releases the function's data itself.
    sqlite3_create_function_v2(handle, "json_valid", 1, traits, judge.release(), judge_json,
                               nullptr, nullptr, forget_judge);
}

}  // namespace

void protect(SQLite::Database& database) {
    sqlite3* handle = database.getHandle();
    for (const int forbidden : {SQLITE_DBCONFIG_ENABLE_TRIGGER, SQLITE_DBCONFIG_ENABLE_VIEW,
                                SQLITE_DBCONFIG_TRUSTED_SCHEMA}) {
        sqlite3_db_config(handle, forbidden, 0, nullptr);
    }
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    trust_json_valid(handle);
    constexpr int mebibyte = 1 << 20;
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, 16 * mebibyte);  // for one row or text
    sqlite3_limit(handle, SQLITE_LIMIT_SQL_LENGTH, mebibyte);
    sqlite3_limit(handle, SQLITE_LIMIT_COLUMN, 200);
    sqlite3_limit(handle, SQLITE_LIMIT_EXPR_DEPTH, 100);
    // For one statement; reading a list of 20,000 panels needs a few million.
    constexpr int most_steps = 200'000'000;
    sqlite3_progress_handler(handle, most_steps, stop_endless_work, nullptr);
}

TrustForCopy::TrustForCopy(SQLite::Database& database) : database_(database) {
    sqlite3_db_config(database_.getHandle(), SQLITE_DBCONFIG_TRUSTED_SCHEMA, 1, nullptr);
}

TrustForCopy::~TrustForCopy() {
    sqlite3_db_config(database_.getHandle(), SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
}

}  // namespace heatmatch
