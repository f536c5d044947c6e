#pragma once
// What a run has to say beside its answer, on standard error: a sentence each. In a log or a mail of cron's it stands
// behind the time in UTC (RFC 3339); on a terminal nobody needs that.
#include <string>

#include "adapters/result.hpp"

namespace floatwright {

void say_beside(const std::string& sentence);

// Says a failure and gives its exit code back.
int tell(const Failure& failure);

}  // namespace floatwright
