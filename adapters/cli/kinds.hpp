#pragma once
// The kinds of --as: what each prints and how its file is called. To add an output: its printer, and its row in kinds.cpp.
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/files/mail_settings.hpp"
#include "adapters/out/pdf/print_pdf.hpp"
#include "adapters/result.hpp"
#include "engine/plan_day.hpp"

namespace floatwright {

struct Printed {
  std::vector<BoatDay> boats;  // at least one; all of one river and day
  Paper paper = Paper::Letter;
  std::optional<MailSettings> mail{};  // needed for the kind mail
};

struct Kind {
  const char* name;
  const char* ending;  // of its file, behind the day
  Result<std::string> (*print)(const Printed&);
};

// The rows of one kind, in order; none when there is no such kind. A kind with several rows is several files side by
// side; on standard output it is its first.
[[nodiscard]] std::vector<Kind> kinds_named(const std::string& name);

[[nodiscard]] std::string known_kinds();  // "plan, sheet, ..."

}  // namespace floatwright
