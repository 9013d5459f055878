#pragma once

namespace SQLite {
class Database;
}

namespace heatmatch {

/// A file may be from a stranger: nothing in it may run, and no statement on it goes on for ever.
void protect(SQLite::Database& database);

/// Lets SQLite copy a file whose tables were checked: for that it takes its own json_valid(), which
/// it does not trust otherwise.
class TrustForCopy {
  public:
    explicit TrustForCopy(SQLite::Database& database);
    TrustForCopy(const TrustForCopy&) = delete;
    TrustForCopy& operator=(const TrustForCopy&) = delete;
    ~TrustForCopy();

  private:
    SQLite::Database& database_;
};

}  // namespace heatmatch
