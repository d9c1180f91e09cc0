// A job as a link: read back exactly as it was written, and never a job that is not the one sent.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <zlib.h>

#include <fstream>
#include <iterator>
#include <random>
#include <string>

#include "app/records/job_link.h"
#include "app/text/words.h"
#include "tests/records/random_job.h"

using namespace carriageway;
using Kind = ReadFault::Kind;

namespace {

std::string why(const ReadFault& fault) { return fault_sentence(Language::english, fault); }

Job demonstration() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json", std::ios::binary);
    const ReadJob read = read_job(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read);
    return *read.job;
}

constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// base64url of a test's own, so that bytes other than a job's can be sent.
std::string encoded(const std::string& bytes) {
    std::string out;
    for (std::size_t bit = 0; bit < 8 * bytes.size(); bit += 6) {
        unsigned value = 0;
        for (std::size_t i = bit; i < bit + 6; ++i) {
            const unsigned byte = i / 8 < bytes.size() ? static_cast<unsigned char>(bytes[i / 8]) : 0u;
            value = value << 1 | (byte >> (7 - i % 8) & 1u);
        }
        out += alphabet[value];
    }
    return out;
}

/// A link of version 1 to any text, deflated without the dictionary, with its right checksum.
std::string link_to(const std::string& text) {
    z_stream stream{};
    REQUIRE(deflateInit2(&stream, 9, Z_DEFLATED, -MAX_WBITS, 9, Z_DEFAULT_STRATEGY) == Z_OK);
    std::string bytes(deflateBound(&stream, static_cast<uLong>(text.size())), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = reinterpret_cast<Bytef*>(bytes.data());
    stream.avail_out = static_cast<uInt>(bytes.size());
    REQUIRE(deflate(&stream, Z_FINISH) == Z_STREAM_END);
    bytes.resize(stream.total_out);
    deflateEnd(&stream);
    const uLong sum = crc32(0, reinterpret_cast<const Bytef*>(text.data()), static_cast<uInt>(text.size()));
    std::string head;
    for (int shift = 24; shift >= 0; shift -= 8) head += static_cast<char>(sum >> shift & 0xFFu);
    return "job=1." + encoded(head + bytes);
}

Job small_job() {
    Job job = demonstration();
    job.heads.clear();
    job.name = "Small";
    return job;
}

/// Made by the first program that made links. It must stay readable for as long as there are links.
const char* const golden =
    "job=1.8AXWCO1YvUoEMRB-lX2ATNj8Z9vlzhewtljwCkFsLMROrxI74eDeQPAJBNt7Ew_BxzAZdTcTuAM1Vwjp9iOTmW_Ymd"
    "1vZq9A2zwMF6ebl-b1ZtW8Pz1ub9dvd8_b5X0VblW4VeFWhVsVblW4VeFWTrjt2sf1w-WiuaJLufnRvJ_N_uFSThjBHbOG67"
    "iT0x0TreUWnxW3TCj5iVSwYNEYkVQ8WIZbLqLWxzNnuA_IOy6Y8BIdGhVPvMFbQBExBOoEaASg4YFyg5Q2kIS-EIwwWMJkim"
    "5g8oNRYAqDJGBigRxhJIkZwJgCpgff-VFETTNHWZyMRsaSpJCmd1JwM5op78NsRv-mvEtvRmPHy6TjTdLxx8PZeXO9iP_apO"
    "W7Xsm2cMtbSVo-zlRlpzatyfdZdj4rG7BZ3Uj9g8KJf7a9r39H2eSj3uEGtvZXA1voY1o2wnVxYPsA";

} // namespace

TEST_CASE("a link gives back the job that it was made of") {
    const Job job = demonstration();
    const std::string fragment = job_link_fragment(job);
    INFO(fragment);
    CHECK(fragment.find_first_not_of(std::string(alphabet) + "=.") == std::string::npos);
    CHECK(fragment.size() < 1100); // a code to photograph at 2 dp a module on a phone of 320 dp holds 1400
    for (const std::string& text :
         {fragment, "#" + fragment, "https://example.org/place/#" + fragment, "http://localhost:8000/#x=1&" + fragment,
          "https://example.org/#" + fragment + "&x=1"}) {
        const ReadJob read = read_job_link(text);
        INFO(why(read.fault));
        REQUIRE(read);
        CHECK(*read.job == job);
    }
}

TEST_CASE("random jobs, names of many alphabets among them, come back from their links") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 30);
    int made = 0;
    std::size_t longest = 0;
    for (int i = 0; i < 400; ++i) {
        const Job job = random.job();
        const std::string fragment = job_link_fragment(job);
        if (fragment.empty()) {
            CHECK(write_job_compact(job).size() > longest_job_fragment);
            continue;
        }
        ++made;
        longest = std::max(longest, fragment.size());
        const ReadJob read = read_job_link(fragment);
        INFO("job " << i << ": " << why(read.fault));
        REQUIRE(read);
        REQUIRE(*read.job == job);
    }
    CHECK(made > 300);
    CHECK(longest > 2'000);
}

TEST_CASE("the largest link that is made is read, and a job beyond it gets none") {
    INFO("seed " << Catch::getSeed());
    RandomJobs random(Catch::getSeed() + 31);
    Job job = small_job();
    job.press.stations = most_stations;
    job.uses.assign(static_cast<std::size_t>(most_stations), StationUse::open);
    std::size_t longest = 0;
    bool refused = false;
    for (int station = 1; station <= most_stations && !refused; ++station) {
        Head head = random.head(static_cast<HeadId>(station), station);
        head.image.outline = random.outline(static_cast<std::size_t>(most_outline_corners));
        job.heads.push_back(head);
        const std::string fragment = job_link_fragment(job);
        refused = fragment.empty();
        if (refused) break;
        longest = fragment.size();
        const ReadJob read = read_job_link("https://example.org/#" + fragment);
        INFO(station << " heads: " << why(read.fault));
        REQUIRE(read);
        REQUIRE(*read.job == job);
    }
    CHECK(refused);
    CHECK(longest > longest_job_fragment / 2);
}

TEST_CASE("a link that a message broke, coded or put into a sentence is read all the same") {
    const Job job = demonstration();
    const std::string link = "https://example.org/#" + job_link_fragment(job);
    std::string broken, coded, invisible;
    for (std::size_t i = 0; i < link.size(); ++i) {
        broken += link[i];
        if (i % 72 == 71) broken += "\r\n  ";
        invisible += link[i];
        if (i % 30 == 29) invisible += "\u200B";
        const std::string_view signs = "#=.:/_";
        if (signs.find(link[i]) == std::string_view::npos) {
            coded += link[i];
        } else {
            static constexpr char digits[] = "0123456789ABCDEF";
            coded += '%';
            coded += digits[link[i] >> 4];
            coded += digits[link[i] & 15];
        }
    }
    for (const std::string& text : {broken, coded, invisible, "<" + link + ">", "See " + link + ".", " " + link + "\n",
                                    "https://elsewhere.example/?url=" + coded + "&more=1"}) {
        const ReadJob read = read_job_link(text);
        INFO(text << "\n" << why(read.fault));
        REQUIRE(read);
        CHECK(*read.job == job);
    }
}

TEST_CASE("a link cut anywhere is refused") {
    const std::string fragment = job_link_fragment(demonstration());
    for (std::size_t length = 0; length < fragment.size(); ++length) {
        const ReadJob read = read_job_link(fragment.substr(0, length));
        INFO(length);
        REQUIRE_FALSE(read);
        CHECK(read.fault.kind == (length < 4 ? Kind::not_a_link : Kind::damaged_link));
        if (length > 8) REQUIRE_FALSE(read_job_link("job=1." + fragment.substr(length)));
    }
}

TEST_CASE("a link with one character changed, lost, doubled or exchanged never gives another job") {
    const Job job = demonstration();
    const std::string fragment = job_link_fragment(job);
    const std::string tried = std::string(alphabet) + "=.%+/ #&\n~\x80";
    std::size_t refused = 0, equal = 0;
    const auto look = [&](const std::string& text) {
        const ReadJob read = read_job_link(text);
        read ? ++equal : ++refused;
        if (read && !(*read.job == job)) FAIL("another job from " << text);
    };
    for (std::size_t at = 0; at < fragment.size(); ++at) {
        for (const char c : tried) {
            if (c == fragment[at]) continue;
            std::string changed = fragment;
            changed[at] = c;
            look(changed);
        }
        look(fragment.substr(0, at) + fragment.substr(at + 1));
        look(fragment.substr(0, at) + fragment[at] + fragment.substr(at));
        if (at > 0 && fragment[at] != fragment[at - 1]) {
            std::string exchanged = fragment;
            std::swap(exchanged[at], exchanged[at - 1]);
            look(exchanged);
        }
    }
    CHECK(refused > 60 * fragment.size());
    // Nothing but the bits that deflate leaves unused in its last byte may stand otherwise.
    CHECK(equal < 200);
}

TEST_CASE("texts that are no links, or not of this program, are refused with what to do") {
    const auto kind = [](const std::string& text) { return read_job_link(text).fault.kind; };
    CHECK(kind("") == Kind::not_a_link);
    CHECK(kind("  \n") == Kind::not_a_link);
    CHECK(kind("#") == Kind::not_a_link);
    CHECK(kind("https://example.org/") == Kind::not_a_link);
    CHECK(kind("https://example.org/?job=1.abc") == Kind::not_a_link); // a server would have seen it
    CHECK(kind("#work=1.abc") == Kind::not_a_link);
    CHECK(kind("job=") == Kind::damaged_link);
    CHECK(kind("job=1") == Kind::damaged_link);
    CHECK(kind("job=1.") == Kind::damaged_link);
    CHECK(kind("job=.abc") == Kind::damaged_link);
    CHECK(kind("job=x1.abc") == Kind::damaged_link);
    CHECK(kind("job=0.abc") == Kind::damaged_link);
    CHECK(kind("job=01.abc") == Kind::damaged_link);
    CHECK(kind("job=-1.abc") == Kind::damaged_link);
    CHECK(kind("job=1.%%%") == Kind::damaged_link);
    // Base64 of another alphabet, with padding, and with bits left over.
    const std::string fragment = job_link_fragment(small_job());
    CHECK(kind(fragment + "=") == Kind::damaged_link);
    CHECK(kind(fragment + "A") == Kind::damaged_link);
    CHECK(kind("job=1.ab+/cd") == Kind::damaged_link);
    CHECK(kind("job=1." + encoded("abcd")) == Kind::damaged_link);
    CHECK(kind("job=1." + encoded(std::string(500, '\xFF'))) == Kind::damaged_link);
    for (const Kind fault : {Kind::not_a_link, Kind::newer_link, Kind::damaged_link, Kind::link_too_large})
        for (const Language language : {Language::english, Language::spanish}) {
            ReadFault made;
            made.kind = fault;
            CHECK(fault_sentence(language, made).size() > 40);
        }
}

TEST_CASE("a link of a newer version says so") {
    std::string fragment = job_link_fragment(small_job());
    fragment[4] = '2';
    const ReadJob read = read_job_link(fragment);
    REQUIRE_FALSE(read);
    CHECK(read.fault.kind == Kind::newer_link);
    CHECK(why(read.fault).find("its version is 2, this one reads up to 1") != std::string::npos);
    CHECK(read_job_link("job=12345678901234567890.abc").fault.kind == Kind::newer_link);
}

TEST_CASE("what a link holds goes through the checks of a file") {
    Job job = small_job();
    const std::string text = write_job_compact(job);
    const ReadJob plain = read_job_link(link_to(text));
    REQUIRE(plain);
    CHECK(*plain.job == job);
    const auto with = [&](const std::string& from, const std::string& to) {
        std::string changed = text;
        const std::size_t at = changed.find(from);
        REQUIRE(at != std::string::npos);
        return read_job_link(link_to(changed.replace(at, from.size(), to))).fault;
    };
    CHECK(with("\"stations\":10", "\"stations\":1000").kind == Kind::out_of_range);
    CHECK(with("\"name\":\"Small\"", "\"name\":\"Small\",\"script\":\"x\"").kind == Kind::unknown_field);
    CHECK(with("\"carriageway_job\":1", "\"carriageway_job\":2").kind == Kind::newer_version);
    const ReadFault fault = with("\"range_lo_mm\":-380", "\"range_lo_mm\":true");
    CHECK(fault.kind == Kind::wrong_type);
    CHECK(why(fault).find("press.carriage.range_lo_mm: found true") == 0);
    CHECK(read_job_link(link_to("")).fault.kind == Kind::empty);
    CHECK(read_job_link(link_to("[]")).fault.kind == Kind::wrong_type);
    CHECK(read_job_link(link_to("{\"a\":\xFF}")).fault.kind == Kind::wrong_encoding);
}

TEST_CASE("a link that would inflate to hundreds of megabytes is refused before it does") {
    const std::string bomb = link_to(std::string(200'000'000, ' '));
    REQUIRE(bomb.size() < longest_job_link);
    const ReadJob read = read_job_link(bomb);
    CHECK(read.fault.kind == Kind::link_too_large);
    CHECK(why(read.fault).find("1048576") != std::string::npos);
    // The limit itself: white space around a job is a job, one byte more is refused.
    const std::string text = write_job_compact(small_job());
    CHECK(read_job_link(link_to(text + std::string(largest_linked_job - text.size(), ' '))));
    CHECK(read_job_link(link_to(text + std::string(largest_linked_job + 1 - text.size(), ' '))).fault.kind ==
          Kind::link_too_large);
    CHECK(read_job_link("job=1." + std::string(longest_job_link, 'A')).fault.kind == Kind::link_too_large);
}

TEST_CASE("random bytes behind the right beginning are refused") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 engine(Catch::getSeed() + 32);
    for (int i = 0; i < 20'000; ++i) {
        std::string bytes(engine() % 300, '\0');
        for (char& byte : bytes) byte = static_cast<char>(engine() & 0xFF);
        REQUIRE_FALSE(read_job_link("#job=1." + encoded(bytes)));
    }
}

TEST_CASE("a link of the first version stays readable") {
    const ReadJob read = read_job_link(golden);
    INFO(why(read.fault));
    REQUIRE(read);
    CHECK(read.job->name == "Ñandú — 試し刷り");
    CHECK(read.job->heads.size() == 2);
    Job expected = demonstration();
    expected.name = "Ñandú — 試し刷り";
    expected.heads.resize(2);
    // As the demonstration stood when the link was made.
    expected.heads.front().screen.tension_along = 28.0;
    expected.heads.front().screen.tension_across = 28.0;
    for (Head& head : expected.heads) {
        head.squeegee.hardness = 0.0;
        head.wish = {};
    }
    CHECK(*read.job == expected);
}
