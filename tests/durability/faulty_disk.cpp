// The shim: each file holds the system's own file behind it; what does not last (reads, locks, shared memory) is handed
// on.
#include "durability/faulty_disk.h"

#include <sqlite3.h>
#include <unistd.h>

#include <cstring>

namespace tapbook::disk {
namespace {

struct Disk {
    Fault fault = Fault::none;
    std::int64_t at = 0, count = 0;
    bool record = false, struck = false;
    std::vector<Event> events;
};

Disk& the_disk() {
    static Disk disk;
    return disk;
}

struct File {
    sqlite3_file base;
    const char* name;  // of the open call; SQLite keeps it while the file is open
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File& file_of(sqlite3_file* file) {
    return *reinterpret_cast<File*>(file);
}

sqlite3_vfs* real_vfs = nullptr;

enum class Verdict { go_on, fail };

// Counts the operation and says whether the real one is to happen.
Verdict meet(Event event) {
    Disk& disk = the_disk();
    const std::int64_t number = disk.count++;
    const bool strikes_once = number == disk.at;
    const bool strikes_ever = number >= disk.at;
    bool fails = false;
    switch (disk.fault) {
        case Fault::none:
            break;
        case Fault::end_process:
            fails = strikes_once;
            break;
        case Fault::error_once:
        case Fault::full_once:
            fails = strikes_once;
            break;
        case Fault::error_for_ever:
        case Fault::full_for_ever:
            fails = strikes_ever;
            break;
    }
    disk.struck = disk.struck || fails;
    if (!disk.record) event.bytes.clear();
    if (!fails) disk.events.push_back(std::move(event));
    return fails ? Verdict::fail : Verdict::go_on;
}

int failure(int plain) {
    const Fault fault = the_disk().fault;
    return fault == Fault::full_once || fault == Fault::full_for_ever ? SQLITE_FULL : plain;
}

[[noreturn]] void end_process() {
    ::_exit(137);
}

int write_to(sqlite3_file* file, const void* data, int size, sqlite3_int64 offset) {
    File& own = file_of(file);
    const auto* bytes = static_cast<const char*>(data);
    if (meet({Operation::write, own.name, offset, std::string(bytes, static_cast<std::size_t>(size))}) ==
        Verdict::fail) {
        const bool ends = the_disk().fault == Fault::end_process;
        if (ends && size > 1) own.real()->pMethods->xWrite(own.real(), data, size / 2, offset);
        if (ends) end_process();
        return failure(SQLITE_IOERR_WRITE);
    }
    return own.real()->pMethods->xWrite(own.real(), data, size, offset);
}

int truncate_to(sqlite3_file* file, sqlite3_int64 size) {
    File& own = file_of(file);
    if (meet({Operation::truncate, own.name, size, {}}) == Verdict::fail) {
        if (the_disk().fault == Fault::end_process) end_process();
        return SQLITE_IOERR_TRUNCATE;
    }
    return own.real()->pMethods->xTruncate(own.real(), size);
}

int sync_file(sqlite3_file* file, int flags) {
    File& own = file_of(file);
    if (meet({Operation::sync, own.name, 0, {}}) == Verdict::fail) {
        if (the_disk().fault == Fault::end_process) end_process();
        return SQLITE_IOERR_FSYNC;
    }
    return own.real()->pMethods->xSync(own.real(), flags);
}

int close_file(sqlite3_file* file) {
    return file_of(file).real()->pMethods->xClose(file_of(file).real());
}
int read_from(sqlite3_file* file, void* data, int size, sqlite3_int64 offset) {
    return file_of(file).real()->pMethods->xRead(file_of(file).real(), data, size, offset);
}
int size_of(sqlite3_file* file, sqlite3_int64* size) {
    return file_of(file).real()->pMethods->xFileSize(file_of(file).real(), size);
}
int lock(sqlite3_file* file, int kind) {
    return file_of(file).real()->pMethods->xLock(file_of(file).real(), kind);
}
int unlock(sqlite3_file* file, int kind) {
    return file_of(file).real()->pMethods->xUnlock(file_of(file).real(), kind);
}
int is_reserved(sqlite3_file* file, int* answer) {
    return file_of(file).real()->pMethods->xCheckReservedLock(file_of(file).real(), answer);
}
int control(sqlite3_file* file, int operation, void* argument) {
    return file_of(file).real()->pMethods->xFileControl(file_of(file).real(), operation, argument);
}
int sector_size(sqlite3_file* file) {
    return file_of(file).real()->pMethods->xSectorSize(file_of(file).real());
}
// None: the shim promises nothing of the real disk (no atomic writes, no ordering).
int characteristics(sqlite3_file*) {
    return 0;
}
int map_shared(sqlite3_file* file, int page, int size, int extend, void volatile** where) {
    return file_of(file).real()->pMethods->xShmMap(file_of(file).real(), page, size, extend, where);
}
int lock_shared(sqlite3_file* file, int offset, int count, int flags) {
    return file_of(file).real()->pMethods->xShmLock(file_of(file).real(), offset, count, flags);
}
void barrier_shared(sqlite3_file* file) {
    file_of(file).real()->pMethods->xShmBarrier(file_of(file).real());
}
int unmap_shared(sqlite3_file* file, int remove) {
    return file_of(file).real()->pMethods->xShmUnmap(file_of(file).real(), remove);
}

const sqlite3_io_methods methods = {
    2,           close_file,     read_from,    write_to, truncate_to, sync_file,       size_of,
    lock,        unlock,         is_reserved,  control,  sector_size, characteristics, map_shared,
    lock_shared, barrier_shared, unmap_shared, nullptr,  nullptr};

int open_file(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out_flags) {
    File& own = file_of(file);
    own.base.pMethods = nullptr;
    own.name = name == nullptr ? "temporary" : name;
    const int result = real_vfs->xOpen(real_vfs, name, own.real(), flags, out_flags);
    if (result == SQLITE_OK) own.base.pMethods = &methods;
    return result;
}

int delete_file(sqlite3_vfs*, const char* name, int sync_folder) {
    if (meet({Operation::remove, name, 0, {}}) == Verdict::fail) {
        if (the_disk().fault == Fault::end_process) end_process();
        return SQLITE_IOERR_DELETE;
    }
    return real_vfs->xDelete(real_vfs, name, sync_folder);
}

}  // namespace

void install() {
    static sqlite3_vfs shim{};
    if (real_vfs != nullptr) return;
    real_vfs = sqlite3_vfs_find(nullptr);
    shim = *real_vfs;
    shim.szOsFile = static_cast<int>(sizeof(File)) + real_vfs->szOsFile;
    shim.pNext = nullptr;
    shim.zName = "faulty";
    shim.xOpen = open_file;
    shim.xDelete = delete_file;
    sqlite3_vfs_register(&shim, 1);
}

void begin(Fault fault, std::int64_t at, bool record) {
    the_disk() = Disk{fault, at, 0, record, false, {}};
}

std::int64_t count() {
    return the_disk().count;
}

bool has_struck() {
    return the_disk().struck;
}

const std::vector<Event>& events() {
    return the_disk().events;
}

}  // namespace tapbook::disk
