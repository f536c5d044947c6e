#pragma once
// log.jsonl: what was met on the water, one JSON object a line, only ever added to. A line is an entry, takes one back
// ("retract": its id), or says what the flow was there once it is known ("flow_of": its id). Every problem is a warning:
// a line that can't be read is told and left out, and the rest counts.
#include <filesystem>
#include <string_view>
#include <vector>

#include "adapters/in/files/typed_object.hpp"
#include "engine/learning/log_entry.hpp"

namespace floatwright {

inline constexpr const char* kLogFile = "log.jsonl";  // beside river.json

struct LogFile {
  std::vector<LogEntry> entries;    // that stand, in the order of the file
  std::vector<LogEntry> retracted;  // taken back
  Problems problems;
  bool ends_open = false;  // the last line has no line end: cut while it was written, or so left by an editor
};

// Of the configuration in that directory; where there is no such file nothing.
[[nodiscard]] LogFile read_log(const std::filesystem::path& directory);
[[nodiscard]] LogFile read_log_text(const std::string& file, std::string_view text);

// The keys of what was met in one water, as a person may type them too.
void read_water_met(TypedObject& in, LogEntry& entry);

}  // namespace floatwright
