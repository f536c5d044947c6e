#include "adapters/in/words/pencil_note.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <sstream>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/words/amounts.hpp"

namespace floatwright {
namespace {

using Fields = std::map<std::string, std::string>;

// What can be at all in a river that is floated: as the river file's ranges.
constexpr Allowed<Length> kDepths{metres(0.05), metres(60.0)};
constexpr Allowed<Speed> kSpeeds{metres_per_second(0.01), metres_per_second(9.0)};
constexpr Allowed<Temperature> kWarmths{celsius(-1.0), celsius(45.0)};
constexpr Allowed<Duration> kCounts{seconds(1.0), minutes(5.0)};
constexpr double kLongestStopMin = 24.0 * 60.0;

// The words of the row, each by the field that it begins.
const std::map<std::string, std::string>& field_words() {
  static const std::map<std::string, std::string> words{
      {"where", "where"},   {"hour", "hour"},         {"at", "hour"},          {"depth", "depth"},     {"deep", "depth"},
      {"speed", "speed"},   {"fast", "speed"},        {"surface", "surface"},  {"bottom", "bottom"},   {"fly", "fly"},
      {"rod", "rod"},       {"count", "count"},       {"water", "water"},      {"put-in", "put-in"},   {"take-out", "take-out"},
      {"stopped", "stopped"}, {"boat", "boat"}};
  return words;
}

std::string without_colon(std::string word) {
  if (word.ends_with(':')) word.pop_back();
  return word;
}

bool is_blank_line_to_write_on(const std::string& word) { return word.find_first_not_of('_') == std::string::npos; }

// "ft 3 1/2", as the row has its unit before the box, is "3 1/2 ft"; a unit alone is a box left empty.
std::string unit_last(const std::string& text) {
  constexpr const char* kDigits = "0123456789";
  const auto cut = text.find(' ');
  const std::string first = text.substr(0, cut);
  if (text.find_first_of(kDigits) == std::string::npos) return text.find(' ') == std::string::npos && text.size() < 5 ? "" : text;
  if (first.find_first_of(kDigits) != std::string::npos || cut == std::string::npos) return text;
  return text.substr(cut + 1) + " " + first;
}

// A field told twice keeps both, so that its reader refuses it.
Fields fields_of(const std::string& line) {
  Fields fields;
  std::string field = "where";
  std::istringstream words{line};
  for (std::string word; words >> word;) {
    if (is_blank_line_to_write_on(word)) continue;
    const auto known = field_words().find(without_colon(lower_case(word)));
    const bool by_count = known != field_words().end() && known->second == "count" && fields[field].ends_with(" by");
    const bool named_boat = field == "boat" && fields["boat"].empty() && known != field_words().end() && known->second == "boat";
    const bool begins = known != field_words().end() && known->second != "surface" && !by_count && !named_boat;
    const bool first_half = known != field_words().end() && known->second == "surface";
    if (begins) field = known->second;
    if (begins) fields[field] += fields[field].empty() ? "" : " and ";
    if (begins || first_half) continue;
    std::string& text = fields[field];
    text += (text.empty() || text.ends_with(' ') ? "" : " ") + word;
  }
  for (const char* number : {"depth", "speed", "fly", "count", "water"})
    if (const auto found = fields.find(number); found != fields.end()) found->second = unit_last(found->second);
  std::erase_if(fields, [](const auto& entry) { return entry.second.empty() || entry.second == "Y/N"; });
  return fields;
}

Failure unreadable(const std::string& what) { return {what, kExitBadData}; }

bool is_bare_number(const std::string& text) {
  return !text.empty() && text.find_first_not_of("0123456789./ ") == std::string::npos;
}
std::string with_unit(const std::string& text, const char* unit) { return is_bare_number(text) ? text + " " + unit : text; }

std::optional<Duration> clock_time(const std::string& text) {
  const auto colon = text.find(':');
  int hour = 0, minute = 0;
  const auto whole = [&](std::size_t from, std::size_t to, int& value) {
    const auto [end, error] = std::from_chars(text.data() + from, text.data() + to, value);
    return error == std::errc{} && end == text.data() + to && to > from;
  };
  if (colon == std::string::npos || text.size() - colon != 3 || !whole(0, colon, hour) ||
      !whole(colon + 1, text.size(), minute))
    return std::nullopt;
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return std::nullopt;
  return minutes(60.0 * hour + minute);
}

class NoteReader {
 public:
  NoteReader(const std::string& line, bool metric) : fields_(fields_of(line)), metric_(metric) { note_.typed = line; }

  Result<PencilNote> read() && {
    if (fields_.contains("put-in") || fields_.contains("take-out")) {
      if (const auto done = read_float(); !done) return tl::unexpected(done.error());
      return std::move(note_);
    }
    for (const auto step : {&NoteReader::read_place, &NoteReader::read_water, &NoteReader::read_touch})
      if (const auto done = (this->*step)(); !done) return tl::unexpected(done.error());
    return std::move(note_);
  }

 private:
  struct Read {};
  using Done = Result<Read>;

  [[nodiscard]] std::string text(const char* field) const {
    const auto found = fields_.find(field);
    return found == fields_.end() ? "" : found->second;
  }
  // The field's value where it stands there.
  template <class T, class ReadAs, class Keep>
  Done take(const char* field, const char* example, Allowed<T> allowed, const char* unit, ReadAs read_as, Keep keep) {
    if (!fields_.contains(field)) return Read{};
    const auto value = read_as(AskedFor{field, example}, with_unit(text(field), unit), allowed);
    if (!value) return tl::unexpected(unreadable(value.error().what));
    keep(*value);
    return Read{};
  }

  Done read_place() {
    note_.where = text("where");
    if (note_.where.empty())
      return tl::unexpected(unreadable("no place: write where it was, such as \"where Mill run bank\""));
    const std::string hour = text("hour");
    if (hour.empty()) return tl::unexpected(unreadable("no hour: write it as \"hour 10:10\""));
    note_.hour = clock_time(hour);
    if (note_.hour) return Read{};
    return tl::unexpected(unreadable(fmt::format("hour: found \"{}\"; write it as 10:10, from 0:00 to 23:59", printable(hour))));
  }

  Done read_water() {
    std::string& depth = fields_["depth"];
    for (const char* by : {" by count", " counted"}) {
      if (!depth.ends_with(by)) continue;
      depth.resize(depth.size() - std::string_view(by).size());
      note_.by_count = true;
    }
    if (depth.empty()) fields_.erase("depth");  // it was not there
    const char* const length = metric_ ? "m" : "ft";
    Done done = take("depth", "3 1/2 ft", kDepths, length, length_in, [&](Length v) { note_.depth = v; });
    if (done)
      done = take("speed", "3 ft/s", kSpeeds, metric_ ? "m/s" : "ft/s", speed_in,
                  [&](Speed v) { note_.surface_speed = surface_metres_per_second(v.si()); });
    if (done)
      done = take("water", "52 F", kWarmths, metric_ ? "C" : "F", temperature_in, [&](Temperature v) { note_.temperature = v; });
    return done;
  }

  Done read_touch() {
    note_.rod = text("rod");
    note_.boat = text("boat");
    const std::string bottom = lower_case(text("bottom"));
    if (bottom == "y" || bottom == "yes") note_.bottom = true;
    if (bottom == "n" || bottom == "no") note_.bottom = false;
    if (fields_.contains("bottom") && !note_.bottom)
      return tl::unexpected(unreadable(fmt::format("bottom: found \"{}\"; write Y if the fly touched it, else N", printable(bottom))));
    Done done = take("fly", "3 ft", kDepths, metric_ ? "m" : "ft", length_in, [&](Length v) { note_.fly = v; });
    if (done) done = take("count", "12", kCounts, "s", duration_in, [&](Duration v) { note_.count = v; });
    return done;
  }

  // A place and the hour behind it.
  Result<std::pair<std::string, Duration>> place_and_hour(const char* field) const {
    const std::string all = text(field);
    const auto cut = all.rfind(' ');
    const auto hour = cut == std::string::npos ? std::nullopt : clock_time(all.substr(cut + 1));
    if (hour) return std::pair{all.substr(0, cut), *hour};
    return tl::unexpected(unreadable(
        fmt::format("{}: found \"{}\"; write the access and the hour, such as \"{} Mill Bridge 07:30\"", field, printable(all), field)));
  }

  Done read_float() {
    const auto put_in = place_and_hour("put-in"), take_out = place_and_hour("take-out");
    if (!put_in) return tl::unexpected(put_in.error());
    if (!take_out) return tl::unexpected(take_out.error());
    FloatNote trip{put_in->first, take_out->first, text("boat"), put_in->second, take_out->second, {}};
    if (trip.taken_out <= trip.put_in)
      return tl::unexpected(unreadable("the take-out is not after the put-in: a float that runs over midnight is two notes"));
    if (fields_.contains("stopped")) {
      trip.stopped = stopped_time(text("stopped"));
      if (!trip.stopped)
        return tl::unexpected(unreadable(
            fmt::format("stopped: found \"{}\"; write how long the boat was not afloat, such as \"2 h\" or \"90 min\"",
                        printable(text("stopped")))));
    }
    note_.trip = trip;
    return Read{};
  }

  // "2 h", "1 1/2 h", "90 min".
  static std::optional<Duration> stopped_time(const std::string& typed) {
    const bool in_hours = typed.ends_with(" h") || typed.ends_with(" hours");
    const std::string as_minutes = in_hours ? typed.substr(0, typed.rfind(' ')) + " min" : typed;
    const auto phrase = phrase_of("stopped", as_minutes, "2 h");
    if (!phrase || phrase->amounts.size() != 1 || phrase->amounts[0].kind != AmountKind::OfDuration || !phrase->words.empty())
      return std::nullopt;
    const double value = phrase->amounts[0].from / 60.0 * (in_hours ? 60.0 : 1.0);  // min
    return value >= 0.0 && value <= kLongestStopMin ? std::optional(minutes(value)) : std::nullopt;
  }

  Fields fields_;
  bool metric_;
  PencilNote note_;
};

constexpr std::array<std::string_view, 12> kMonths{"jan", "feb", "mar", "apr", "may", "jun",
                                                   "jul", "aug", "sep", "oct", "nov", "dec"};

std::optional<int> whole_number(const std::string& text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size() ? std::optional(value) : std::nullopt;
}

std::optional<std::chrono::year_month_day> dated(std::optional<int> year, std::optional<int> month, std::optional<int> day) {
  if (!year || !month || !day || *year < 1900 || *year > 2200 || *month < 1 || *day < 1) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day)}};
  return date.ok() ? std::optional(date) : std::nullopt;
}

}  // namespace

Result<PencilNote> pencil_note(const std::string& line, bool metric) {
  std::string words = line;
  std::ranges::replace(words, '\t', ' ');
  if (has_control_characters(words))
    return tl::unexpected(unreadable(fmt::format("control characters in \"{}\"", printable(words))));
  return NoteReader(words, metric).read();
}

std::optional<std::chrono::year_month_day> day_alone(const std::string& line) {
  std::vector<std::string> words;
  std::istringstream in{line};
  for (std::string word; in >> word;) words.push_back(word);
  if (words.size() == 1 && words[0].size() == 10 && words[0][4] == '-' && words[0][7] == '-')
    return dated(whole_number(words[0].substr(0, 4)), whole_number(words[0].substr(5, 2)), whole_number(words[0].substr(8, 2)));
  if (words.size() == 4) words.erase(words.begin());  // the day of the week
  if (words.size() != 3) return std::nullopt;
  const auto month = std::ranges::find(kMonths, std::string_view(lower_case(words[1])).substr(0, 3));
  if (month == kMonths.end()) return std::nullopt;
  return dated(whole_number(words[2]), static_cast<int>(month - kMonths.begin()) + 1, whole_number(words[0]));
}

}  // namespace floatwright
