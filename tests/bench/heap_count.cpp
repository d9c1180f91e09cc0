#include "tests/bench/heap_count.h"

#include <atomic>
#include <cerrno>
#include <cstddef>

// What glibc's own allocation is called beside its usual names, which are taken over here.
extern "C" {
void* __libc_malloc(std::size_t);
void* __libc_calloc(std::size_t, std::size_t);
void* __libc_realloc(void*, std::size_t);
void* __libc_memalign(std::size_t, std::size_t);
}

namespace {

std::atomic<long> count{0};

void one_more() { count.fetch_add(1, std::memory_order_relaxed); }

} // namespace

extern "C" {

void* malloc(std::size_t size) noexcept {
    one_more();
    return __libc_malloc(size);
}

void* calloc(std::size_t members, std::size_t size) noexcept {
    one_more();
    return __libc_calloc(members, size);
}

void* realloc(void* memory, std::size_t size) noexcept {
    one_more();
    return __libc_realloc(memory, size);
}

void* memalign(std::size_t alignment, std::size_t size) noexcept {
    one_more();
    return __libc_memalign(alignment, size);
}

void* aligned_alloc(std::size_t alignment, std::size_t size) noexcept {
    return memalign(alignment, size);
}

int posix_memalign(void** memory, std::size_t alignment, std::size_t size) noexcept {
    *memory = memalign(alignment, size);
    return *memory ? 0 : ENOMEM;
}

} // extern "C"

long carriageway::bench::heap_count() { return count.load(std::memory_order_relaxed); }
