#include "tests/reference/tally.h"

#include <catch2/catch_get_random_seed.hpp>
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <sstream>
#include <utility>

#include "tests/reference/seeded.h"

namespace carriageway::reference {

namespace {

constexpr std::size_t most_described = 10;

} // namespace

std::uint64_t run_seed() {
    const char* given = std::getenv("CARRIAGEWAY_SEED");
    if (given != nullptr && *given != '\0') return std::strtoull(given, nullptr, 10);
    return Catch::getSeed();
}

Tally::Tally(std::string name, std::uint64_t test) : name_(std::move(name)), test_(test) {}

void Tally::count(const std::string& kind, bool of_this_kind) {
    kinds_[kind] += of_this_kind ? 1 : 0;
}

void Tally::disagree(std::uint64_t number, const std::string& what) {
    ++disagreements_;
    if (first_.size() < most_described)
        first_.push_back("case " + std::to_string(number) + ": " + what);
}

void Tally::close(std::uint64_t number, const char* what, double ours, double reference,
                  double tolerance) {
    if (std::abs(ours - reference) <= tolerance) return;
    std::ostringstream text;
    text.precision(17);
    text << what << ' ' << ours << ", reference " << reference << ", off by " << ours - reference;
    disagree(number, text.str());
}

long Tally::of(const std::string& kind) const {
    const auto found = kinds_.find(kind);
    return found == kinds_.end() ? 0 : found->second;
}

void Tally::print() const {
    std::cout << name_ << ": CARRIAGEWAY_SEED=" << run_seed() << " test " << test_ << '\n';
    for (const auto& [kind, cases] : kinds_) std::cout << "  " << cases << ' ' << kind << '\n';
    std::cout << "  " << disagreements_ << " disagreements\n";
    for (const std::string& what : first_) std::cout << "    " << what << '\n';
    std::cout.flush();
}

} // namespace carriageway::reference
