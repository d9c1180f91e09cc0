#include "app/records/utc_text.h"

#include <chrono>
#include <cstdint>

namespace carriageway {

std::string utc_text(Timestamp time) {
    const std::chrono::sys_seconds seconds = std::chrono::floor<std::chrono::seconds>(
        std::chrono::sys_time<std::chrono::milliseconds>(std::chrono::milliseconds(time)));
    const std::chrono::sys_days day = std::chrono::floor<std::chrono::days>(seconds);
    const std::chrono::year_month_day date(day);
    const std::chrono::hh_mm_ss clock(seconds - day);
    const auto two = [](std::int64_t number) {
        return (number < 10 ? "0" : "") + std::to_string(number);
    };
    return std::to_string(static_cast<int>(date.year())) + "-" +
           two(static_cast<unsigned>(date.month())) + "-" + two(static_cast<unsigned>(date.day())) +
           "T" + two(clock.hours().count()) + ":" + two(clock.minutes().count()) + ":" +
           two(clock.seconds().count()) + "Z";
}

} // namespace carriageway
