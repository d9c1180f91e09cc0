#include "app/records/job_link.h"

#include "app/records/link_text.h"

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
    const LinkText link = read_link_text(text, marker);
    ReadJob read;
    if (link.fault.kind != ReadFault::Kind::none) read.fault = link.fault;
    else read = read_job(link.text);
    if (read.fault.column == 0) read.fault.line = 0; // it is all one line
    return read;
}

} // namespace carriageway
