#include "tests/records/full_disk.h"

#include <atomic>
#include <cstring>

#include <sqlite3.h>

namespace carriageway {
namespace {

std::atomic<long long> room{-1};

/// A file of ours, with the default VFS's file behind it.
struct Shim {
    sqlite3_file base;
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
sqlite3_file* real(sqlite3_file* file) { return reinterpret_cast<Shim*>(file)->real(); }

int write(sqlite3_file* file, const void* data, int count, sqlite3_int64 offset) {
    const long long left = room.load();
    if (left >= 0) {
        if (left < count) return SQLITE_FULL;
        room.store(left - count);
    }
    return real(file)->pMethods->xWrite(real(file), data, count, offset);
}

int close(sqlite3_file* f) { return real(f)->pMethods->xClose(real(f)); }
int read(sqlite3_file* f, void* d, int n, sqlite3_int64 o) { return real(f)->pMethods->xRead(real(f), d, n, o); }
int cut(sqlite3_file* f, sqlite3_int64 n) { return real(f)->pMethods->xTruncate(real(f), n); }
int sync(sqlite3_file* f, int how) { return real(f)->pMethods->xSync(real(f), how); }
int size(sqlite3_file* f, sqlite3_int64* n) { return real(f)->pMethods->xFileSize(real(f), n); }
int lock(sqlite3_file* f, int l) { return real(f)->pMethods->xLock(real(f), l); }
int unlock(sqlite3_file* f, int l) { return real(f)->pMethods->xUnlock(real(f), l); }
int reserved(sqlite3_file* f, int* r) { return real(f)->pMethods->xCheckReservedLock(real(f), r); }
int control(sqlite3_file* f, int op, void* a) { return real(f)->pMethods->xFileControl(real(f), op, a); }
int sector(sqlite3_file* f) { return real(f)->pMethods->xSectorSize(real(f)); }
int traits(sqlite3_file* f) { return real(f)->pMethods->xDeviceCharacteristics(real(f)); }
int shm_map(sqlite3_file* f, int p, int n, int e, void volatile** d) {
    // The shared index of the log is a file too, and SQLite says so when it can't grow.
    if (e != 0 && room.load() == 0) return SQLITE_IOERR_SHMSIZE;
    return real(f)->pMethods->xShmMap(real(f), p, n, e, d);
}
int shm_lock(sqlite3_file* f, int o, int n, int g) { return real(f)->pMethods->xShmLock(real(f), o, n, g); }
void shm_barrier(sqlite3_file* f) { real(f)->pMethods->xShmBarrier(real(f)); }
int shm_unmap(sqlite3_file* f, int d) { return real(f)->pMethods->xShmUnmap(real(f), d); }

const sqlite3_io_methods methods = {2,    close,  read,     write,   cut,    sync,   size,    lock,        unlock,
                                    reserved, control, sector, traits, shm_map, shm_lock, shm_barrier, shm_unmap,
                                    nullptr, nullptr};

int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* file, int flags, int* out_flags) {
    sqlite3_vfs* under = static_cast<sqlite3_vfs*>(vfs->pAppData);
    file->pMethods = nullptr;
    const int result = under->xOpen(under, path, real(file), flags, out_flags);
    if (result == SQLITE_OK) file->pMethods = &methods;
    return result;
}

sqlite3_vfs full_disk;

} // namespace

void FullDisk::install() {
    if (sqlite3_vfs_find(name())) return;
    sqlite3_vfs* under = sqlite3_vfs_find(nullptr);
    full_disk = *under; // everything but opening a file is the default one's
    full_disk.pNext = nullptr;
    full_disk.zName = name();
    full_disk.szOsFile = static_cast<int>(sizeof(Shim)) + under->szOsFile;
    full_disk.pAppData = under;
    full_disk.xOpen = open;
    sqlite3_vfs_register(&full_disk, 0);
}

void FullDisk::leave(long long bytes) { room.store(bytes); }

} // namespace carriageway
