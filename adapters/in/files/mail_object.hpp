#pragma once
// Reads the "mail" object of settings.json.
#include "adapters/in/files/mail_settings.hpp"
#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

[[nodiscard]] std::optional<MailSettings> read_mail(TypedObject& settings);

}  // namespace floatwright
