// What a property test ran: how many cases, of which classes, and what disagreed.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace carriageway::reference {

/// Counts the cases of a property test by class and keeps the first disagreements.
class Tally {
  public:
    /// `test` is the number that the cases' generators are made with.
    Tally(std::string name, std::uint64_t test);

    /// Counts a case of this class.
    void count(const std::string& kind, bool of_this_kind = true);

    /// Notes that something of case `number` disagrees.
    void disagree(std::uint64_t number, const std::string& what);

    /// Notes a disagreement when two numbers differ by more than `tolerance` (or one is NaN).
    void close(std::uint64_t number, const char* what, double ours, double reference,
               double tolerance);

    long of(const std::string& kind) const;
    long disagreements() const { return disagreements_; }

    /// Prints seed, classes and the first disagreements.
    void print() const;

  private:
    std::string name_;
    std::uint64_t test_;
    std::map<std::string, long> kinds_;
    std::vector<std::string> first_;
    long disagreements_ = 0;
};

} // namespace carriageway::reference
