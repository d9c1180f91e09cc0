// without_internet PROGRAM ARGUMENT...: runs a program that is killed where it turns to a network.
#include <cstdio>

#include <unistd.h>

#include "tests/no_internet.h"

int main(int count, char** words) {
    if (count < 2) {
        std::fprintf(stderr, "usage: %s PROGRAM ARGUMENT...\n", words[0]);
        return 2;
    }
    if (!forbid_internet()) {
        std::fprintf(stderr, "%s: this system can't forbid it\n", words[0]);
        return 2;
    }
    execvp(words[1], words + 1);
    std::perror(words[1]);
    return 2;
}
