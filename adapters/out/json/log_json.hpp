#pragma once
// Lines of log.jsonl as they are added to it, and what the log taught as one document (SI, UTC).
#include <string>

#include "engine/wording/log_page.hpp"

namespace floatwright {

// The same for the same thing met at the same place and time, before anything believed is put into it: 12 hexadecimal digits.
[[nodiscard]] std::string id_of(const LogEntry& entry);

// Each with its line end.
[[nodiscard]] std::string entry_line(const LogEntry& entry, Instant logged_at);
[[nodiscard]] std::string retract_line(const std::string& id, Instant logged_at);
[[nodiscard]] std::string flow_line(const LogEntry& entry, Instant logged_at);

[[nodiscard]] std::string log_document(const LogTold& told);

}  // namespace floatwright
