#include "app/records/job_link.h"

#include "app/records/carried_text.h"

namespace carriageway {
namespace {

constexpr std::string_view marker = "job=";

} // namespace

bool looks_like_link(std::string_view text) {
    for (const std::string_view start : {"https://", "http://", "#job=", "job="})
        if (text.starts_with(start)) return true;
    return false;
}

std::string job_link_fragment(const Job& job) {
    return link_fragment(marker, write_job_compact(job));
}

ReadJob read_job_link(std::string_view text) {
    return read_from_link(text, marker, read_job);
}

} // namespace carriageway
