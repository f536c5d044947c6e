#pragma once
// settings.json as values. Paths come out as typed; load_configuration() joins them to the configuration directory.
#include "adapters/in/files/configuration.hpp"
#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

struct ReadSettings {
  Settings settings;
  ReadingsPlace readings;
  std::optional<MailSettings> mail;
};

[[nodiscard]] ReadSettings read_settings(const LocatedJson& root, FileReading& reading);

}  // namespace floatwright
