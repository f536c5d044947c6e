#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/files/judgement_file.hpp"
#include "adapters/in/files/releases_file.hpp"
#include "adapters/in/files/river_file.hpp"
#include "adapters/in/files/settings_file.hpp"
#include "adapters/in/files/tackle_file.hpp"
#include "adapters/in/files/tuned_file.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "engine/river/graph.hpp"
#include "engine/river/told_order.hpp"
#include "engine/tackle/tackle_problems.hpp"

namespace floatwright {
namespace {

// One JSON file of the directory: its tree if it could be read, and what is wrong so far.
struct OpenFile {
  FileReading reading;
  std::optional<LocatedJson> root;
};

class Loader {
 public:
  explicit Loader(std::filesystem::path directory) { configuration_.directory = std::move(directory); }

  LoadedConfiguration load() && {
    OpenFile river = open("river.json"), tackle = open("tackle.json"), settings = open("settings.json");
    if (river.root) load_river(river);
    if (settings.root) load_settings(settings);
    if (tackle.root) load_tackle(tackle);
    load_judgement();
    if (river.root) load_tuned();
    if (river.root && settings.root) check_stretch(settings);
    if (river.root && settings.root) check_csv_gauges(river);
    put_in_told_order(configuration_.river);
    for (OpenFile* file : {&river, &tackle, &settings}) keep(file->reading.problems);
    return std::move(*this).finish();
  }

 private:
  [[nodiscard]] std::filesystem::path beside(const std::filesystem::path& typed) const {
    return typed.is_absolute() ? typed : (configuration_.directory / typed).lexically_normal();
  }

  OpenFile open(const std::string& name) {
    OpenFile file;
    file.reading.file = (configuration_.directory / name).string();
    const auto text = read_whole_text(configuration_.directory / name);
    if (!text) {
      missing_ = true;
      file.reading.problems.push_back({file.reading.file, 0, "", text.error().what,
                                       "a file " + name + " in the configuration directory",
                                       "Write it, or name another directory with --config."});
      return file;
    }
    ParsedJson parsed = parse_located_json(file.reading.file, *text);
    file.root = std::move(parsed.root);
    file.reading.problems = std::move(parsed.problems);
    return file;
  }

  void load_river(OpenFile& file) {
    ReadRiver read = read_river(*file.root, file.reading);
    for (std::size_t i = 0; i < read.river.dams.size(); ++i) load_schedule(file, i, read.river.dams[i]);
    for (std::size_t i = 0; i < read.river.gauges.size(); ++i) find_rating(file, i, read.river.gauges[i].rating_file);
    if (read.all_places_read) add_engine_problems(file, river_problems(read.river));
    configuration_.river = std::move(read.river);
  }

  void load_schedule(OpenFile& file, std::size_t index, Dam& dam) {
    if (dam.schedule_file.empty()) return;
    const std::filesystem::path path = beside(dam.schedule_file);
    const auto text = read_whole_text(path);
    if (!text) {
      tell(file, fmt::format("/dams/{}/releases", index), text.error().what, "the CSV file of the dam's releases",
           "Put the file there, or mend its name.");
      return;
    }
    ReadReleases read = read_releases(path.string(), *text);
    dam.schedule = std::move(read.schedule);
    keep(read.problems);
  }

  // What the file holds is read by with_ratings(), which knows the services' formats.
  void find_rating(OpenFile& file, std::size_t index, std::string& rating) {
    if (rating.empty()) return;
    rating = beside(rating).string();
    if (std::filesystem::is_regular_file(rating)) return;
    tell(file, fmt::format("/gauges/{}/rating", index), rating + ": no such file", "the rating of the gauge as an RDB file",
         "Put the file there, or mend its name.");
  }

  void load_tackle(OpenFile& file) {
    configuration_.listed = read_tackle(*file.root, file.reading);
    configuration_.tackle = owned_part(configuration_.listed);
    const Tackle& all = configuration_.listed.all;
    std::set<Method> fished;
    for (const auto& [method, preference] : configuration_.settings.preferences.methods) fished.insert(method);
    add_engine_problems(file, fished.empty() ? tackle_problems(all) : tackle_problems(all, fished));
    if (!all.lines.empty() && configuration_.tackle.lines.empty())
      tell(file, "/lines", "no line that is owned, on a rod that is", "at least one",
           "Take \"owned\": false away from what is on the rods now.");
  }

  void load_settings(OpenFile& file) {
    ReadSettings read = read_settings(*file.root, file.reading);
    ReadingsPlace& place = read.readings;
    if (place.payloads) *place.payloads = beside(*place.payloads);
    if (place.archive) *place.archive = beside(*place.archive);
    if (place.payloads && !std::filesystem::is_directory(*place.payloads)) {
      tell(file, "/readings", place.payloads->string() + ": no such directory", "a directory of payload files",
           "Mend the path, or take \"readings\" away to read from the network.");
    }
    for (std::size_t i = 0; i < place.csv_gauges.size(); ++i) complete(file, i, place.csv_gauges[i]);
    if (place.api_key_file) check_secret(file, "/api_key_file", *place.api_key_file);
    for (std::size_t i = 0; i < place.services.size(); ++i)
      if (auto& key = place.services[i].api_key_file) check_secret(file, fmt::format("/services/{}/api_key_file", i), *key);
    if (read.mail && read.mail->password_file) check_secret(file, "/mail/password_file", *read.mail->password_file);
    if (read.mail && read.mail->ca_file) check_authority(file, *read.mail->ca_file);
    configuration_.settings = std::move(read.settings);
    configuration_.readings = std::move(read.readings);
    configuration_.mail = std::move(read.mail);
  }

  // The shipped judgement holds where the directory has none of its own.
  void load_judgement() {
    if (!std::filesystem::exists(configuration_.directory / "judgement.json")) return;
    OpenFile file = open("judgement.json");
    if (file.root) configuration_.judgement = read_judgement(*file.root, file.reading);
    keep(file.reading.problems);
  }

  // Only warnings come of it.
  void load_tuned() {
    TunedFile file = read_tuned_file(configuration_.directory / kTunedFile, configuration_.river);
    configuration_.river.fitted_lags = std::move(file.tuning.lags);
    configuration_.river.fitted_channels = std::move(file.tuning.channels);
    configuration_.tuned = std::move(file.tuning.tuned);
    keep(file.problems);
  }

  void check_secret(OpenFile& file, const std::string& pointer, std::filesystem::path& path) {
    path = beside(path);
    if (!std::filesystem::is_regular_file(path)) {
      tell(file, pointer, path.string() + ": no such file", "a file that holds the secret alone",
           "Write the file, mode 0600.");
    } else if (is_readable_by_others(path)) {
      not_permitted_ = true;
      tell(file, pointer, path.string() + ", which others may read", "a file of mode 0600", "Run chmod 600 on it.");
    }
  }

  void check_authority(OpenFile& file, std::filesystem::path& path) {
    path = beside(path);
    if (std::filesystem::is_regular_file(path)) return;
    tell(file, "/mail/ca_file", path.string() + ": no such file", "the certificate of an authority (PEM)",
         "Mend the path, or take the key away for the authorities that the system knows.");
  }

  // A clock whose zone is not typed is the river's.
  void complete(OpenFile& file, std::size_t index, CsvGauge& gauge) {
    if (gauge.time_zone.empty()) gauge.time_zone = configuration_.river.time_zone;
    if (gauge.file.empty()) return;
    gauge.file = beside(gauge.file);
    if (!std::filesystem::is_regular_file(gauge.file))
      tell(file, fmt::format("/csv_gauges/{}/file", index), gauge.file.string() + ": no such file", "the CSV file of the gauge",
           "Put the file there, or mend its name.");
  }

  void check_csv_gauges(OpenFile& river) {
    const auto& declared = configuration_.readings.csv_gauges;
    const auto& gauges = configuration_.river.gauges;
    for (std::size_t i = 0; i < gauges.size(); ++i) {
      const std::string& station = gauges[i].station;
      const bool known = !station.starts_with("csv:") ||
                         std::any_of(declared.begin(), declared.end(), [&](const CsvGauge& g) { return g.station == station; });
      if (!known)
        tell(river, fmt::format("/gauges/{}/station", i), "\"" + station + "\"", "a station of csv_gauges in settings.json",
             "Declare its file and columns there.");
    }
  }

  // The one stretch a person asks for must be two accesses of the river.
  void check_stretch(OpenFile& file) {
    const auto& accesses = configuration_.river.accesses;
    const auto check = [&](const std::optional<std::string>& id, const std::string& pointer) {
      const bool known =
          !id || std::any_of(accesses.begin(), accesses.end(), [&](const Access& a) { return a.id == *id; });
      if (!known) tell(file, pointer, "\"" + *id + "\"", "the id of an access in river.json", "Write one of its ids.");
    };
    check(configuration_.settings.from, "/stretch/from");
    check(configuration_.settings.to, "/stretch/to");
  }

  // The engine knows pointers, not lines. What it says of a value that could not be read to begin with is left out.
  static void add_engine_problems(OpenFile& file, Problems problems) {
    const Problems told = file.reading.problems;
    for (Problem& problem : problems) {
      const auto covers = [&](const Problem& t) {
        return !t.warning && !t.pointer.empty() && (problem.pointer + "/").starts_with(t.pointer + "/");
      };
      if (std::any_of(told.begin(), told.end(), covers)) continue;
      problem.file = file.reading.file;
      problem.line = line_of(*file.root, problem.pointer);
      file.reading.problems.push_back(std::move(problem));
    }
  }

  static void tell(OpenFile& file, const std::string& pointer, std::string found, std::string allowed,
                   std::string mend) {
    file.reading.problems.push_back({file.reading.file, line_of(*file.root, pointer), pointer, std::move(found),
                                     std::move(allowed), std::move(mend)});
  }

  void keep(const Problems& problems) { problems_.insert(problems_.end(), problems.begin(), problems.end()); }

  LoadedConfiguration finish() && {
    const auto place = [](const Problem& p) { return std::tie(p.file, p.line, p.pointer); };
    std::stable_sort(problems_.begin(), problems_.end(),
                     [&](const Problem& a, const Problem& b) { return place(a) < place(b); });
    const bool sound = std::all_of(problems_.begin(), problems_.end(), [](const Problem& p) { return p.warning; });
    LoadedConfiguration loaded;
    loaded.exit_code = not_permitted_ ? kExitNotPermitted : missing_ ? kExitNoInput : sound ? 0 : kExitConfiguration;
    if (sound) loaded.configuration = std::move(configuration_);
    loaded.problems = std::move(problems_);
    return loaded;
  }

  Configuration configuration_;
  Problems problems_;
  bool missing_ = false, not_permitted_ = false;
};

LoadedConfiguration no_directory(const std::filesystem::path& directory) {
  return {
      std::nullopt,
      {{directory.string(), 0, "", "no such directory", "a directory with river.json, tackle.json and settings.json",
        "Name one with --config, or make one with \"floatwright start\"."}},
      kExitNoInput};
}

}  // namespace

LoadedConfiguration load_configuration(const std::filesystem::path& directory) {
  std::error_code error;
  if (!std::filesystem::is_directory(directory, error)) return no_directory(directory);
  return Loader(directory).load();
}

}  // namespace floatwright
