#pragma once
// The subject of the morning mail, at most 78 characters (RFC 5322, section 2.1.1, says lines SHOULD be no more). A list
// of mails shows some 40 of them, so what would stop the day stands first, then the day, the river and the line; flow,
// water and the hour of the dry fly as far as they fit.
#include <string>

#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

inline constexpr std::size_t kMostSubject = 78;

// "Fri 14 May Lantern: 12 1/2 ft tip 5 in/s; 1,850 cfs, 47-52 F, dry from 11:30"
// "OLD READINGS (14 h): Fri 14 May Lantern: ..."   "TOO WARM after 13:30: ..."   "NO PLAN: Lantern, gauge silent since Tue"
[[nodiscard]] std::string mail_subject(const Told& told);

}  // namespace floatwright
