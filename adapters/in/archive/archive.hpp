#pragma once
// Readings on disk: what the services said of each station, there when the network is not. One SQLite file in WAL mode,
// a row keyed by series and instant. One process writes at a time and another waits its turn; readers never wait.
// What store() has returned for stays, also when the program is killed or the power fails (synchronous=FULL).
// No order of clocks is trusted: what is stored last stands, whenever it says it was fetched.
// An Archive belongs to one thread.
#include <chrono>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"
#include "engine/readings/station_about.hpp"

namespace floatwright {

inline constexpr const char* kArchiveFile = "readings.sqlite3";            // in the directory that settings.json names
inline constexpr Period kSupersededForecastsKept = std::chrono::days{60};  // observed readings are kept for ever

struct Stored {
  std::size_t added = 0, changed = 0, same = 0;  // rows
};

// What a row was before its service changed it. Approval of the same number keeps none: nothing was known otherwise.
struct Revision {
  std::string series_id;
  Variable variable = Variable::Flow;
  bool daily = false;
  std::optional<Instant> issued = {};
  Reading was;
  Instant fetched_at{};  // when it was first fetched as it was
  Instant changed_at{};  // when the change was fetched
};

// From `from` to `to` a service has been asked for all that it has of a station, and that has been stored.
struct Asked {
  std::string station, service;
  Instant from{}, to{};
  Instant at{};  // when the end of the span was asked, by the clock of then
};

// What a service gave with an answer to ask later whether it has changed.
struct Validator {
  std::string etag, last_modified;
};

class Archive {
 public:
  // Makes the folder and the file where there are none and brings an older file to this version. A damaged file is
  // renamed, never deleted, and a new one begun; notes() says so. Failure 65: a newer version, or another program's
  // file; 73, 74: can't be written; 75, also later: another process is writing and does not end in `longest_wait`.
  [[nodiscard]] static Result<Archive> open_to_write(const std::filesystem::path& file, Instant now,
                                                     std::chrono::milliseconds longest_wait = std::chrono::seconds{30});
  // Works on a disk or in a folder that can't be written or is full. Failure 66: no file that may be read; 65: damaged,
  // or as above.
  [[nodiscard]] static Result<Archive> open_to_read(const std::filesystem::path& file);

  Archive(Archive&&) noexcept;
  Archive& operator=(Archive&&) noexcept;
  ~Archive();

  // All of it or nothing. Rows as they are held already are skipped.
  [[nodiscard]] Result<Stored> store(const std::vector<GaugeSeries>& series, Instant fetched_at);

  // The station's series that have rows from `from` to `to`, both included. Of forecasts the newest issue made at or
  // before `issued_until`.
  [[nodiscard]] Result<std::vector<GaugeSeries>> series_of(const std::string& station, Instant from, Instant to,
                                                           Instant issued_until = Instant::max()) const;
  // By series, instant and the order in which they were made.
  [[nodiscard]] Result<std::vector<Revision>> revisions_of(const std::string& station, Instant from, Instant to) const;

  // Spans of one station and service that meet become one.
  [[nodiscard]] Result<void> note_asked(const Asked& asked);
  [[nodiscard]] Result<std::vector<Asked>> asked(const std::string& station) const;

  // By the address as it was asked, without secrets. The newest thousand are kept.
  [[nodiscard]] Result<void> keep_validator(const std::string& url, const Validator& validator);
  [[nodiscard]] Result<Validator> validator(const std::string& url) const;  // empty where none is kept

  // What a service says of a station takes the place of what it said before.
  [[nodiscard]] Result<void> keep_about(const StationAbout& about);
  [[nodiscard]] Result<std::optional<StationAbout>> about(const std::string& station) const;  // none kept: none

  // Sentences; none: sound. Reads the whole file.
  [[nodiscard]] Result<std::vector<std::string>> integrity() const;

  // Sentences about what was met and mended while opening and storing: a damaged file that was put aside.
  [[nodiscard]] const std::vector<std::string>& notes() const;

 private:
  struct Connection;
  explicit Archive(std::unique_ptr<Connection> connection);

  std::unique_ptr<Connection> connection_;
};

}  // namespace floatwright
