// Why can the program load nothing? SQLite refers to dlopen for extensions, which every connection refuses. In a
// statically linked program that would need the same libc at run time, and the linker warns of it: the reference is
// turned to this function (GNU ld: --wrap=dlopen), which says no.
extern "C" void* __wrap_dlopen(const char*, int) noexcept;

extern "C" void* __wrap_dlopen(const char*, int) noexcept {
    return nullptr;
}
