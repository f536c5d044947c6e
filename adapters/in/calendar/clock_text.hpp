#pragma once
// Times written in a form of one's own, as loggers and spreadsheets write them. The form is that of strptime(3):
// "%d.%m.%Y %H:%M" for 13.05.2026 19:30; %p with %I for AM and PM, %z for an offset.
#include <optional>
#include <string>
#include <string_view>

#include "adapters/in/calendar/written_time.hpp"

namespace floatwright {

// All of the text is used; none where it does not fit or the date can't be. Years 1800 to 2200.
[[nodiscard]] std::optional<WrittenTime> written_time_by(const std::string& form, std::string_view text);

// False: its texts are dates. A form that does not even give back the date that it wrote is of no use.
[[nodiscard]] bool has_hours(std::string_view form);
[[nodiscard]] bool gives_back_its_times(const std::string& form);

}  // namespace floatwright
