// A job as a link: the whole of it stands in the address's fragment, which browsers send to no
// server.
//
//   ADDRESS#job=1.BASE64URL
//
// 1 is the version. What follows is base64url without padding (RFC 4648, section 5) of 4 bytes of
// CRC-32, most significant first, of the job's text, then that text as raw deflate (RFC 1951) with a
// preset dictionary that belongs to the version. The text is a job file's, written compactly.
//
// A link comes from anywhere: reading it is limited in size, and the job in it goes through the
// very checks of a file (exchange.h).
#pragma once

#include <string>
#include <string_view>

#include "app/records/exchange.h"

namespace carriageway {

/// Version of links that are made, and the newest that is read.
inline constexpr int job_link_version = 1;

/// Largest text of a job in a link, bytes: what would inflate to more is not inflated. Ours: many
/// times what a real job has.
inline constexpr std::size_t largest_linked_job = 1024u * 1024u;

/// Longest fragment that is made, and longest text that is read as a link, characters. Ours; the
/// second leaves room for an address, line breaks and percent-encoding.
inline constexpr std::size_t longest_job_fragment = 256u * 1024u;
inline constexpr std::size_t longest_job_link = 4u * longest_job_fragment;

/// "job=1.…" for a job; without '#'. Empty where the job is too large for a link.
std::string job_link_fragment(const Job& job);

/// Whether a text is meant as a link rather than as a file's name: it begins with "https://",
/// "http://", "#job=" or "job=".
bool looks_like_link(std::string_view text);

/// Reads the job in a whole address or in a fragment alone, with '#' or without. White space, line
/// breaks, signs beyond ASCII and one round of percent-encoding do no harm. Refused: Kind::not_a_link,
/// newer_link, damaged_link or link_too_large, or what read_job() has against the job.
ReadJob read_job_link(std::string_view text);

} // namespace carriageway
