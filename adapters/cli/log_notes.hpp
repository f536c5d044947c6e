#pragma once
// A day's notes as entries of the log: from a text file of pencil notes, one a line, a JSON file, prompts, or options.
#include <filesystem>
#include <iosfwd>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/words/pencil_note.hpp"
#include "engine/learning/log_entry.hpp"

namespace floatwright {

struct NotesRead {
  std::vector<LogEntry> entries;  // without an id, and without what was believed
  Problems problems;              // of lines that could not be read, which are left out; the rest counts
};

struct NotesAsked {
  const Configuration& configuration;
  std::chrono::year_month_day day;  // of notes that name none
};

// A name that ends in .json is read as JSON: {"schema_version": 1, "date": "2027-05-14", "notes": [{"where": "Mill run",
// "water": "bank", "hour": "10:10", "depth_ft": 3.5}, {"put_in": "mill", "hour": "07:30", "take_out": "ferry",
// "take_out_hour": "14:40", "stopped_h": 2}]}.
[[nodiscard]] Result<NotesRead> notes_in(const std::filesystem::path& file, const NotesAsked& asked);
[[nodiscard]] NotesRead notes_in_lines(const std::string& name, std::string_view text, const NotesAsked& asked);

// Asks in the words of the pencil row until the place is left empty.
[[nodiscard]] NotesRead notes_asked_for(std::istream& answers, std::ostream& questions, const NotesAsked& asked);

}  // namespace floatwright
