// What only another process can show: a person without root's rights, and a program that is killed.
#pragma once

#include <functional>

/// Runs `body` in a child without root's rights, because root ignores file permissions, and returns
/// what it returned (0 to 90); 99 when the rights could not be given up, 98 when it died.
int as_nobody(const std::function<int()>& body);

/// Runs `body` in a child, where it calls cut_off(): the child ends there without closing or
/// destroying anything, as a program does that is killed. Returns the outcome (0 to 90), 97 when
/// `body` returned, 98 when it died.
int then_cut_off(const std::function<void()>& body);
[[noreturn]] void cut_off(int outcome);

/// Runs `body` in a child and kills it after `microseconds`, or as soon as it returns if that is
/// earlier.
void killed_after(int microseconds, const std::function<void()>& body);

/// The same, counted from the moment when `body` calls what it is given: that it has begun. However
/// slow the machine is, it is then killed at its work.
void killed_at_work(int microseconds,
                    const std::function<void(const std::function<void()>& begun)>& body);

/// Runs `there` in a child and `here` in this process at once; what `there` returned (0 to 90), 98
/// when it died.
int beside(const std::function<int()>& there, const std::function<void()>& here);

/// Tells one process from another that something has happened. Made before either is begun.
class Signal {
  public:
    Signal();
    ~Signal();
    Signal(const Signal&) = delete;
    Signal& operator=(const Signal&) = delete;
    void give();
    bool wait(); ///< for one give(); false: it can't come any more

  private:
    int ends_[2] = {-1, -1};
};
