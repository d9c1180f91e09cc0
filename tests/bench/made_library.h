// Libraries with many jobs, all of them invented.
#pragma once

#include <string>

#include "app/records/library.h"

namespace carriageway::bench {

/// What the name and the press of a job are made of; the number tells it from all others.
struct JobWords {
    std::string customer, motif, number, press;
    std::string name() const { return customer + ' ' + motif + ' ' + number; }
};
JobWords job_words(int number);

/// Makes a library of so many jobs in a folder, in one transaction. Its first steps count as done, so
/// that a program that opens it shows a press and comes to rest.
Library made_library(const std::string& folder, int jobs);

} // namespace carriageway::bench
