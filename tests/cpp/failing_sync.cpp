#include "failing_sync.hpp"

#include <sqlite3.h>

namespace {

sqlite3_vfs* real_layer = nullptr;
sqlite3_vfs failing_layer{};
const sqlite3_io_methods* real_methods = nullptr;
sqlite3_io_methods failing_methods{};
bool sync_fails = false;

int sync_or_fail(sqlite3_file* file, int flags) {
    return sync_fails ? SQLITE_IOERR_FSYNC : real_methods->xSync(file, flags);
}

int open_file(sqlite3_vfs* /*layer*/, const char* name, sqlite3_file* file, int flags,
              int* given_flags) {
    const int code = real_layer->xOpen(real_layer, name, file, flags, given_flags);
    if (code == SQLITE_OK && (flags & SQLITE_OPEN_WAL) != 0) {
        real_methods = file->pMethods;
        failing_methods = *real_methods;
        failing_methods.xSync = sync_or_fail;
        file->pMethods = &failing_methods;
    }
    return code;
}

}  // namespace

FailingSync::FailingSync() {
    real_layer = sqlite3_vfs_find(nullptr);
    failing_layer = *real_layer;
    failing_layer.zName = "failing-sync";
    failing_layer.pNext = nullptr;
    failing_layer.xOpen = open_file;
    sqlite3_vfs_register(&failing_layer, 1);
}

FailingSync::~FailingSync() {
    sync_fails = false;
    sqlite3_vfs_unregister(&failing_layer);
    sqlite3_vfs_register(real_layer, 1);
}

void FailingSync::fail(bool failing) {
    sync_fails = failing;
}
