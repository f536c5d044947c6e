#include "adapters/out/mail/outbox.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <iterator>

#include "adapters/out/files/whole_file.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

constexpr const char* kSetAside = "set-aside";
constexpr int kMostUnanswered = 2;

class OutboxLock {
 public:
  explicit OutboxLock(const fs::path& outbox) : folder_(::open(outbox.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    while (folder_ >= 0 && !(held_ = ::flock(folder_, LOCK_EX) == 0) && errno == EINTR) {
    }
  }
  ~OutboxLock() {
    if (folder_ >= 0) ::close(folder_);
  }
  OutboxLock(const OutboxLock&) = delete;
  OutboxLock& operator=(const OutboxLock&) = delete;
  [[nodiscard]] bool held() const { return held_; }

 private:
  int folder_;
  bool held_ = false;
};

std::vector<fs::path> letters_in(const fs::path& outbox) {
  std::vector<fs::path> files;
  std::error_code error;
  for (fs::directory_iterator entry{outbox, error}, end; !error && entry != end; entry.increment(error)) {
    const auto name = entry->path().filename().string();
    if (name.ends_with(".eml") && !name.starts_with(".")) files.push_back(entry->path());
  }
  std::ranges::sort(files);
  return files;
}

std::string text_of(const fs::path& file) {
  std::ifstream in{file, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

// A name among what is set aside that is not taken.
fs::path place_aside(const fs::path& file) {
  const fs::path folder = file.parent_path() / kSetAside;
  std::error_code ignored;
  fs::create_directories(folder, ignored);
  fs::path place = folder / file.filename();
  for (int copy = 2; fs::exists(place, ignored); ++copy)
    place = folder / fmt::format("{}-{}.eml", file.stem().string(), copy);
  return place;
}

struct Waiting {
  fs::path file;
  OutboxLetter letter;
};

void tell_trouble(OutboxRun& run, std::string what) {
  run.told.push_back(std::move(what));
  run.well = false;
}

bool keep(const Waiting& waiting, OutboxRun& run) {
  const auto kept = write_whole_file(waiting.file, outbox_text(waiting.letter));
  if (!kept) tell_trouble(run, kept.error().what);
  return kept.has_value();
}

void take_out(const Waiting& waiting, OutboxRun& run) {
  std::error_code error;
  if (!fs::remove(waiting.file, error))
    tell_trouble(run, fmt::format("{}: done with, but it can't be removed ({}); remove it, or it may be sent again",
                                  waiting.file.string(), error.message()));
}

// False when it could not be written there.
bool set_aside(Waiting waiting, std::vector<std::string> to, const std::string& why, OutboxRun& run) {
  const fs::path place = place_aside(waiting.file);
  waiting.letter.to = std::move(to);
  const auto kept = write_whole_file(place, outbox_text(waiting.letter));
  if (!kept) {
    tell_trouble(run, fmt::format("{}: {}; it can't be set aside: {}", waiting.file.string(), why, kept.error().what));
    return false;
  }
  run.told.push_back(fmt::format("{}: {}. It is not sent any more and lies in {}", waiting.file.filename().string(),
                                 without_stop(why), place.string()));
  return true;
}

// Who is to be tried again, and who never: with the reason.
struct Rest {
  std::vector<std::string> again, never;
  std::string why_again, why_never;
};

void add(std::vector<std::string>& to, std::string& why, const std::string& address, const std::string& reason) {
  to.push_back(address);
  if (why.find(reason) != std::string::npos) return;
  if (!why.empty()) why += "; ";
  why += reason;
}

Rest rest_of(const OutboxLetter& letter, const Delivery& delivery) {
  Rest rest;
  for (const std::string& address : letter.to) {
    const auto refused = std::ranges::find(delivery.refused, address, &RefusedAddress::address);
    if (refused != delivery.refused.end()) {
      const std::string why = address + ": " + refused->words;
      refused->for_good ? add(rest.never, rest.why_never, address, why) : add(rest.again, rest.why_again, address, why);
    } else if (delivery.fate == Fate::Later) {
      add(rest.again, rest.why_again, address, delivery.why);
    } else if (delivery.fate == Fate::Refused) {
      add(rest.never, rest.why_never, address, delivery.why);
    } else if (delivery.fate == Fate::Unknown && letter.unanswered >= kMostUnanswered) {
      add(rest.never, rest.why_never, address, "went out whole twice and no answer came, so it may have arrived (" + delivery.why + ")");
    } else if (delivery.fate == Fate::Unknown) {
      add(rest.again, rest.why_again, address, "it went out whole but no answer came, so it may have arrived (" + delivery.why + ")");
    }
  }
  return rest;
}

Delivery sent(Waiting& waiting, const MailServer& server, OutboxRun& run) {
  const int before = waiting.letter.unanswered;
  const Delivery delivery = deliver(waiting.letter.eml, {waiting.letter.from, waiting.letter.to}, server, [&] {
    ++waiting.letter.unanswered;  // on the disk first: this run may end before the answer comes
    return keep(waiting, run);
  });
  if (delivery.fate != Fate::Unknown) waiting.letter.unanswered = before;
  return delivery;
}

void close(Waiting& waiting, const Rest& rest, OutboxRun& run) {
  if (!rest.again.empty() || !rest.never.empty()) run.well = false;
  const bool parted = rest.never.empty() || set_aside(waiting, rest.never, rest.why_never, run);
  if (!parted) return;
  if (rest.again.empty()) return take_out(waiting, run);
  waiting.letter.to = rest.again;
  if (keep(waiting, run))
    tell_trouble(run, fmt::format("{}: not delivered: {}. It goes with the next --send", waiting.file.string(),
                                  without_stop(rest.why_again)));
}

// The letters that are to be sent now; those of past days are set aside, those that can't be read are told.
std::vector<Waiting> due(const fs::path& outbox, const std::string& from, std::chrono::year_month_day today, OutboxRun& run) {
  std::vector<Waiting> all;
  for (const fs::path& file : letters_in(outbox)) {
    auto letter = read_outbox_text(text_of(file));
    if (!letter) {
      tell_trouble(run, fmt::format("{}: is not a letter of the outbox, so it is not sent; look at it and remove it", file.string()));
    } else if (letter->from == from && letter->day < today) {
      const Waiting past{file, *letter};
      if (set_aside(past, letter->to, "was never delivered and its day is over", run)) take_out(past, run);
    } else if (letter->from == from) {
      all.push_back({file, std::move(*letter)});
    }
  }
  return all;
}

}  // namespace

Result<fs::path> put_in_outbox(const fs::path& outbox, const Letter& letter, std::chrono::year_month_day day) {
  std::error_code error;
  fs::create_directories(outbox, error);
  if (error)
    return tl::unexpected(Failure{fmt::format("{}: can't be made ({}); nothing was sent", outbox.string(), error.message()), kExitCantCreate});
  const fs::path file = outbox / outbox_name(letter, day);
  if (fs::exists(file, error)) return file;
  return write_whole_file(file, outbox_text(outbox_letter(letter, day))).map([&](Written) { return file; });
}

OutboxRun send_outbox(const fs::path& outbox, const std::string& from, const MailServer& server,
                      std::chrono::year_month_day today) {
  OutboxRun run;
  const OutboxLock lock{outbox};
  if (!lock.held()) {
    tell_trouble(run, outbox.string() + ": can't be locked, so nothing was sent; see that it may be read");
    return run;
  }
  std::vector<Waiting> letters = due(outbox, from, today, run);
  for (std::size_t i = 0; i < letters.size(); ++i) {
    const Delivery delivery = sent(letters[i], server, run);
    if (!delivery.reached) {
      tell_trouble(run, fmt::format("{}: {}. {} in {} and sent with the next --send", server.url, without_stop(delivery.why),
                                    letters.size() - i == 1 ? "1 letter is kept" : fmt::format("{} letters are kept", letters.size() - i),
                                    outbox.string()));
      break;
    }
    close(letters[i], rest_of(letters[i].letter, delivery), run);
  }
  return run;
}

}  // namespace floatwright
