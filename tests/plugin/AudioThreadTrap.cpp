#include "AudioThreadTrap.h"

#include <cerrno>
#include <cstddef>
#include <cstdlib>
#include <cstring>
#include <dlfcn.h>
#include <pthread.h>

namespace
{
thread_local bool armed = false;
thread_local trap::Counts counts;

void sawAllocation()
{
    if (armed)
        ++counts.allocations;
}
}

namespace trap
{
void arm()
{
    counts = {};
    armed = true;
}

Counts disarm()
{
    armed = false;
    return counts;
}
}

// glibc's own names of what is stood in for here.
extern "C"
{
    void* __libc_malloc (size_t);
    void* __libc_calloc (size_t, size_t);
    void* __libc_realloc (void*, size_t);
    void* __libc_memalign (size_t, size_t);
    void __libc_free (void*);

    void* malloc (size_t size)
    {
        sawAllocation();
        return __libc_malloc (size);
    }

    void* calloc (size_t count, size_t size)
    {
        sawAllocation();
        return __libc_calloc (count, size);
    }

    void* realloc (void* old, size_t size)
    {
        sawAllocation();
        return __libc_realloc (old, size);
    }

    void* aligned_alloc (size_t alignment, size_t size)
    {
        sawAllocation();
        return __libc_memalign (alignment, size);
    }

    int posix_memalign (void** result, size_t alignment, size_t size)
    {
        sawAllocation();
        *result = __libc_memalign (alignment, size);
        return *result != nullptr ? 0 : ENOMEM;
    }

    void free (void* memory)
    {
        if (armed && memory != nullptr)
            ++counts.frees;
        __libc_free (memory);
    }

    int pthread_mutex_lock (pthread_mutex_t* mutex)
    {
        using Lock = int (*) (pthread_mutex_t*);
        static Lock next = nullptr; // looked up before any trap is armed: many mutexes are locked before main
        if (next == nullptr)
            next = reinterpret_cast<Lock> (dlsym (RTLD_NEXT, "pthread_mutex_lock"));
        if (armed)
            ++counts.locks;
        return next (mutex);
    }
}
