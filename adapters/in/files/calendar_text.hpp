#pragma once
// Dates and times as a person types them: "2027-05-14", "05-14", "07:30". Instants: adapters/in/calendar/written_time.hpp.
#include <optional>
#include <string_view>

#include "adapters/in/files/typed_object.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

// Each takes all of the text and a day that exists, or nothing.
[[nodiscard]] std::optional<std::chrono::year_month_day> date_in(std::string_view text);  // YYYY-MM-DD
[[nodiscard]] std::optional<MonthDay> month_day_in(std::string_view text);                // MM-DD, 02-29 too
[[nodiscard]] std::optional<Duration> time_of_day_in(std::string_view text);              // HH:MM, 00:00 to 24:00

[[nodiscard]] std::optional<std::chrono::year_month_day> read_date(TypedObject& in, std::string_view key, Need need);
[[nodiscard]] std::optional<MonthDay> read_month_day(TypedObject& in, std::string_view key, Need need);
[[nodiscard]] std::optional<Duration> read_time_of_day(TypedObject& in, std::string_view key, Need need);

}  // namespace floatwright
