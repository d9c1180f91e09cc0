// Loaded before a program (LD_PRELOAD) that draws with SDL and OpenGL: takes note of every frame
// that it shows, so that the program itself needs nothing to be timed.
//
// BENCH_FRAMES_FD: a descriptor; gets, for each frame once it is on the screen, 8 bytes: the time in
// nanoseconds on the clock that only goes forward.
// BENCH_LAST_FRAME: the program ends after so many; unset: it goes on.
#include <dlfcn.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>
#include <ctime>

struct SDL_Window;

namespace {

int number(const char* name, int otherwise) {
    const char* text = std::getenv(name);
    return text ? std::atoi(text) : otherwise;
}

void note_frame() {
    static const int to = number("BENCH_FRAMES_FD", -1);
    static const int last = number("BENCH_LAST_FRAME", 0);
    static int frames = 0;
    timespec now{};
    clock_gettime(CLOCK_MONOTONIC, &now);
    const std::int64_t time = 1'000'000'000 * static_cast<std::int64_t>(now.tv_sec) + now.tv_nsec;
    if (to >= 0 && write(to, &time, sizeof time) != sizeof time) _exit(3);
    if (++frames == last) _exit(0);
}

template <typename Function> Function* next(const char* name) {
    return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}

} // namespace

extern "C" __attribute__((visibility("default"))) void SDL_GL_SwapWindow(SDL_Window* window) {
    static const auto swap = next<void(SDL_Window*)>("SDL_GL_SwapWindow");
    static const auto finish = next<void()>("glFinish");
    if (!swap || !finish) _exit(4);
    swap(window);
    finish(); // a driver may put off the drawing
    note_frame();
}
