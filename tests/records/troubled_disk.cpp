#include "tests/records/troubled_disk.h"

#include <algorithm>
#include <filesystem>

#include <sqlite3.h>

#include "tests/records/disk_memory.h"
#include "tests/scratch_folder.h"

namespace carriageway {
namespace {

long long fails_at = -1;
long long count = 0;
bool came_to_it = false;
TroubledDisk::Trouble how = TroubledDisk::Trouble::once;
DiskMemory memory;

enum class Turn { good, fails, unsaid };

// Counts an operation.
Turn next(bool writes = false) {
    const long long number = count++;
    if (fails_at < 0 || number < fails_at) return Turn::good;
    if (how == TroubledDisk::Trouble::unsaid) {
        if (came_to_it || !writes) return Turn::good;
        came_to_it = true;
        return Turn::unsaid;
    }
    if (how == TroubledDisk::Trouble::once && number > fails_at) return Turn::good;
    came_to_it = true;
    return Turn::fails;
}

/// A file of ours, with the default VFS's file behind it.
struct Shim {
    sqlite3_file base;
    char path[512];
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
Shim* shim(sqlite3_file* file) { return reinterpret_cast<Shim*>(file); }
sqlite3_file* real(sqlite3_file* file) { return shim(file)->real(); }
const sqlite3_io_methods* of(sqlite3_file* file) { return real(file)->pMethods; }

int close(sqlite3_file* f) { return of(f)->xClose(real(f)); }

int read(sqlite3_file* f, void* data, int size, sqlite3_int64 at) {
    if (next() == Turn::fails) return SQLITE_IOERR_READ;
    return of(f)->xRead(real(f), data, size, at);
}

int write(sqlite3_file* f, const void* data, int size, sqlite3_int64 at) {
    const Turn turn = next(true);
    if (turn == Turn::fails) return SQLITE_IOERR_WRITE;
    if (turn == Turn::unsaid) return SQLITE_OK;
    memory.written(shim(f)->path, data, size, at);
    return of(f)->xWrite(real(f), data, size, at);
}

int cut(sqlite3_file* f, sqlite3_int64 size) {
    if (next() == Turn::fails) return SQLITE_IOERR_TRUNCATE;
    memory.cut_short(shim(f)->path, size);
    return of(f)->xTruncate(real(f), size);
}

int sync(sqlite3_file* f, int) {
    if (next() == Turn::fails) return SQLITE_IOERR_FSYNC;
    memory.synced(shim(f)->path);
    return SQLITE_OK;
}

int size(sqlite3_file* f, sqlite3_int64* bytes) {
    if (next() == Turn::fails) return SQLITE_IOERR_FSTAT;
    return of(f)->xFileSize(real(f), bytes);
}

int lock(sqlite3_file* f, int level) {
    if (next() == Turn::fails) return SQLITE_IOERR_LOCK;
    return of(f)->xLock(real(f), level);
}

int unlock(sqlite3_file* f, int level) { return of(f)->xUnlock(real(f), level); }
int reserved(sqlite3_file* f, int* is) { return of(f)->xCheckReservedLock(real(f), is); }

int control(sqlite3_file* f, int what, void* value) {
    // These would change the file behind our back.
    if (what == SQLITE_FCNTL_SIZE_HINT || what == SQLITE_FCNTL_CHUNK_SIZE) return SQLITE_NOTFOUND;
    return of(f)->xFileControl(real(f), what, value);
}

int sector(sqlite3_file* f) { return of(f)->xSectorSize(real(f)); }
int traits(sqlite3_file* f) { return of(f)->xDeviceCharacteristics(real(f)); }

int shm_map(sqlite3_file* f, int page, int bytes, int extend, void volatile** at) {
    if (next() == Turn::fails) return SQLITE_IOERR_SHMMAP;
    return of(f)->xShmMap(real(f), page, bytes, extend, at);
}

int shm_lock(sqlite3_file* f, int offset, int n, int flags) {
    const bool takes = (flags & SQLITE_SHM_LOCK) != 0;
    if (takes && next() == Turn::fails) return SQLITE_IOERR_SHMLOCK;
    return of(f)->xShmLock(real(f), offset, n, flags);
}

void shm_barrier(sqlite3_file* f) { of(f)->xShmBarrier(real(f)); }
int shm_unmap(sqlite3_file* f, int remove) { return of(f)->xShmUnmap(real(f), remove); }

const sqlite3_io_methods methods = {
    2,       close,  read,   write,   cut,      sync,        size,      lock,    unlock, reserved,
    control, sector, traits, shm_map, shm_lock, shm_barrier, shm_unmap, nullptr, nullptr};

sqlite3_vfs* under(sqlite3_vfs* vfs) { return static_cast<sqlite3_vfs*>(vfs->pAppData); }

int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* file, int flags, int* out_flags) {
    file->pMethods = nullptr;
    if (next() == Turn::fails) return SQLITE_CANTOPEN;
    const std::string name = path == nullptr ? std::string() : path;
    const bool was_there = !name.empty() && std::filesystem::exists(name);
    const int result = under(vfs)->xOpen(under(vfs), path, real(file), flags, out_flags);
    if (result != SQLITE_OK) return result;
    name.copy(shim(file)->path, sizeof(Shim::path) - 1);
    shim(file)->path[std::min(name.size(), sizeof(Shim::path) - 1)] = '\0';
    memory.opened(name, was_there);
    file->pMethods = &methods;
    return SQLITE_OK;
}

int remove(sqlite3_vfs* vfs, const char* path, int synced) {
    if (next() == Turn::fails) return SQLITE_IOERR_DELETE;
    memory.deleted(path, synced != 0);
    return under(vfs)->xDelete(under(vfs), path, 0);
}

int access(sqlite3_vfs* vfs, const char* path, int flags, int* is) {
    if (next() == Turn::fails) return SQLITE_IOERR_ACCESS;
    return under(vfs)->xAccess(under(vfs), path, flags, is);
}

sqlite3_vfs troubled;

} // namespace

void TroubledDisk::install() {
    if (sqlite3_vfs_find(name()) != nullptr) return;
    sqlite3_vfs* system = sqlite3_vfs_find(nullptr);
    troubled = *system;
    troubled.pNext = nullptr;
    troubled.zName = name();
    troubled.szOsFile = static_cast<int>(sizeof(Shim)) + system->szOsFile;
    troubled.pAppData = system;
    troubled.xOpen = open;
    troubled.xDelete = remove;
    troubled.xAccess = access;
    sqlite3_vfs_register(&troubled, 0);
}

void TroubledDisk::fail(long long number, Trouble trouble) {
    fails_at = number;
    how = trouble;
    count = 0;
    came_to_it = false;
}

long long TroubledDisk::operations() { return count; }
bool TroubledDisk::failed() { return came_to_it; }

void TroubledDisk::remember(bool lies) {
    memory = DiskMemory{};
    memory.on = true;
    memory.lies = lies;
}

void TroubledDisk::cut(const std::string& folder, Left left, std::mt19937& random) {
    for (const auto& [name, bytes] : memory.left(left == Left::some, random))
        write_bytes(folder + "/" + name, bytes);
    memory = DiskMemory{};
}

} // namespace carriageway
