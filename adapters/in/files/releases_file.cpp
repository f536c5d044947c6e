#include "adapters/in/files/releases_file.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/files/csv_rows.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

constexpr double kLargestFlow = 300000.0;  // m3/s, more than any river carries

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

std::optional<double> number_in(std::string_view text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::string joined(const std::vector<std::string>& fields) {
  std::string out;
  for (const std::string& field : fields) out += (&field == &fields.front() ? "" : ",") + std::string{trimmed(field)};
  return out;
}

class ReleasesReader {
 public:
  explicit ReleasesReader(std::string file) : file_(std::move(file)) {}

  void take(int line, const std::vector<std::string>& fields, const std::string& fault) {
    line_ = line;
    const std::string text = joined(fields);
    if (text.empty() || text.front() == '#') return;
    if (!fault.empty()) return tell(line_, quoted(text) + ", where " + fault, "a time, a comma and a flow", row_mend());
    const bool is_header = make_ == nullptr;
    is_header ? take_header(text) : take_row(text, fields);
  }
  ReadReleases finish() && {
    if (!unreadable_ && make_ == nullptr)
      tell(1, "an empty file", "a header line and one change a line", header_mend());
    return std::move(read_);
  }
  // Without a header no row means anything.
  [[nodiscard]] bool unreadable() const { return unreadable_; }

 private:
  static std::string row_mend() { return "Write it as 2027-05-14T09:00-06:00,1750."; }
  static std::string header_mend() { return "Make the first line time,flow_cfs or time,flow_m3_s."; }

  void take_header(std::string_view line) {
    if (line == "time,flow_cfs") {
      make_ = cubic_feet_per_second;
    } else if (line == "time,flow_m3_s") {
      make_ = cubic_metres_per_second;
    } else {
      unreadable_ = true;
      tell(line_, quoted(line), "the header time,flow_cfs or time,flow_m3_s", header_mend());
    }
  }

  void take_row(std::string_view line, const std::vector<std::string>& fields) {
    if (fields.size() != 2) return tell(line_, quoted(line), "a time, a comma and a flow", row_mend());
    const auto time = time_in(trimmed(fields[0]));
    const auto flow = flow_in(trimmed(fields[1]));
    if (time && flow) read_.schedule.push_back({*time, *flow});
  }

  std::optional<Instant> time_in(std::string_view text) {
    const auto time = instant_in(text);
    if (!time) {
      tell(line_, quoted(text), "an instant with its offset as 2027-05-14T09:00-06:00, or with Z",
           "Write the time with its offset from UTC.");
      return std::nullopt;
    }
    if (last_ && *time <= *last_) {
      tell(line_, fmt::format("{}, which is not after the time before it (line {})", printable(text), last_line_),
           "times that rise down the file", "Sort the lines by time, and keep one line for each.");
    }
    last_ = time;
    last_line_ = line_;
    return time;
  }

  std::optional<Discharge> flow_in(std::string_view text) {
    const auto number = number_in(text);
    const Discharge flow = make_(number.value_or(-1.0));
    if (number && *number >= 0.0 && in_cubic_metres_per_second(flow) <= kLargestFlow) return flow;
    tell(line_, quoted(text), "a flow of 0 or more, in digits", "Write the flow as a plain number.");
    return std::nullopt;
  }

  static std::string quoted(std::string_view text) { return fmt::format("\"{}\"", printable(text)); }
  void tell(int line, std::string found, std::string allowed, std::string mend) {
    read_.problems.push_back({file_, line, "", std::move(found), std::move(allowed), std::move(mend)});
  }

  std::string file_;
  int line_ = 0, last_line_ = 0;
  bool unreadable_ = false;
  Discharge (*make_)(double) = nullptr;
  std::optional<Instant> last_;
  ReadReleases read_;
};

}  // namespace

ReadReleases read_releases(const std::string& file, std::string_view text) {
  ReleasesReader reader(file);
  CsvRows rows(text);
  std::vector<std::string> fields;
  while (!reader.unreadable() && rows.next(fields)) reader.take(rows.line(), fields, rows.fault());
  return std::move(reader).finish();
}

}  // namespace floatwright
