#pragma once
// The configuration directory: river.json, tackle.json, settings.json and what they include, read at once; every
// problem of every file is found in one go, each with file, line and JSON pointer.
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/files/csv_gauge.hpp"
#include "adapters/in/files/mail_settings.hpp"
#include "engine/choice/judgement.hpp"
#include "engine/river/river.hpp"
#include "engine/tackle/listed_tackle.hpp"
#include "engine/trip/settings.hpp"
#include "engine/trip/tuned.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

// A gauge service as the user wants it asked: listing one makes it the one of its prefix.
struct ServiceSettings {
  std::string name;
  std::optional<std::string> address;                 // none: the service's own
  std::optional<std::filesystem::path> api_key_file;  // of mode 0600
};

// Where readings come from and go to; relative paths in settings.json are relative to the configuration directory.
struct ReadingsPlace {
  std::optional<std::filesystem::path> payloads;  // "readings": a directory of payload files instead of the network
  std::optional<std::filesystem::path> archive;   // "archive": the directory of the archive
  std::string contact;                            // for the User-Agent
  std::optional<std::filesystem::path> api_key_file;  // of usgs-water-data
  std::vector<ServiceSettings> services;
  std::vector<CsvGauge> csv_gauges;  // read at every plan, from their files alone
};

struct Configuration {
  std::filesystem::path directory;
  River river;
  Tackle tackle;        // what is owned
  ListedTackle listed;  // with what is only thought of
  Settings settings;
  Judgement judgement;
  ReadingsPlace readings;
  std::optional<MailSettings> mail;
  Tuned tuned;  // of tuned.json where it is there; its lags and channels stand in `river`
};

struct LoadedConfiguration {
  std::optional<Configuration> configuration;  // none when any problem is not a warning
  Problems problems;                           // sorted by file and line
  int exit_code = 0;  // 0; 77 (a secret others may read), else 66 (the directory or one of its files
                      // is not there), else 78
};

[[nodiscard]] LoadedConfiguration load_configuration(const std::filesystem::path& directory);

// One problem as people read it: "river.json:12: /accesses/1/mile: found "forty"; allowed: a number of miles; ..."
[[nodiscard]] std::string say(const Problem& problem);

}  // namespace floatwright
