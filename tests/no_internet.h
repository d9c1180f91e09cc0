// A process that can't reach a network, and ends where it tries.
#pragma once

/// From now on this process, and whatever it starts, is killed by the system (signal SIGSYS) when it
/// makes a socket of any kind but those that stay on this machine: UNIX sockets, by which it
/// reaches a display, and netlink ones, by which the kernel tells of devices. There is no way back.
/// False where the system can't do that (Linux with seccomp can).
bool forbid_internet();
