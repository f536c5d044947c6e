#include "tests/support/run_program.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace floatwright::testing {
namespace {

std::vector<char*> pointers(const std::vector<std::string>& texts) {
  std::vector<char*> all;
  for (const auto& text : texts) all.push_back(const_cast<char*>(text.c_str()));
  all.push_back(nullptr);
  return all;
}

// Fishing tables once worked out serve every run of this build, unless a test says where they are to be.
Where with_tables_of_this_build(Where where) {
  const auto says_where = [](const std::string& variable) {
    return variable.starts_with("CACHE_DIRECTORY=") || variable.starts_with("XDG_CACHE_HOME=");
  };
  if (std::none_of(where.environment.begin(), where.environment.end(), says_where))
    where.environment.push_back(std::string{"CACHE_DIRECTORY="} + FLOATWRIGHT_TESTS_CACHE);
  return where;
}

[[noreturn]] void become(const std::vector<std::string>& words, const Where& where, int out, int err) {
  dup2(out, STDOUT_FILENO);
  dup2(err, STDERR_FILENO);
  const int nothing = open("/dev/null", O_RDONLY);
  dup2(nothing, STDIN_FILENO);
  if (chdir(where.folder.c_str()) != 0) _exit(126);
  execve(words.front().c_str(), pointers(words).data(), pointers(where.environment).data());
  _exit(127);
}

// Reads both ends until both are closed, so that neither can fill up and stall the program.
void drain(int out, int err, Ran& ran) {
  std::array<pollfd, 2> ends{{{out, POLLIN, 0}, {err, POLLIN, 0}}};
  std::array<std::string*, 2> texts{&ran.out, &ran.err};
  std::array<char, 65536> buffer{};
  while (ends[0].fd >= 0 || ends[1].fd >= 0) {
    if (poll(ends.data(), ends.size(), -1) < 0) break;
    for (std::size_t i = 0; i < 2; ++i) {
      if (ends[i].fd < 0 || ends[i].revents == 0) continue;
      const auto got = read(ends[i].fd, buffer.data(), buffer.size());
      if (got > 0) {
        texts[i]->append(buffer.data(), static_cast<std::size_t>(got));
      } else {
        close(ends[i].fd);
        ends[i].fd = -1;
      }
    }
  }
}

}  // namespace

Ran run_program(const std::vector<std::string>& words, const Where& where) {
  std::array<int, 2> out{}, err{};
  if (pipe2(out.data(), O_CLOEXEC) != 0 || pipe2(err.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
  const Where all = with_tables_of_this_build(where);
  const pid_t child = fork();
  if (child == 0) become(words, all, out[1], err[1]);
  close(out[1]);
  close(err[1]);
  Ran ran;
  drain(out[0], err[0], ran);
  int status = 0;
  waitpid(child, &status, 0);
  ran.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return ran;
}

Ran floatwright_says(std::vector<std::string> words, const Where& where) {
  words.insert(words.begin(), FLOATWRIGHT_PROGRAM);
  return run_program(words, where);
}

ScratchFolder::ScratchFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "floatwright-test-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no scratch folder");
  path_ = name;
}

ScratchFolder::~ScratchFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in{file, std::ios::binary};
  if (!in) throw std::runtime_error("cannot read " + file.string());
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

void write_text(const std::filesystem::path& file, const std::string& text) {
  std::filesystem::create_directories(file.parent_path());
  std::ofstream out{file, std::ios::binary};
  out << text;
  if (!out.flush()) throw std::runtime_error("cannot write " + file.string());
}

}  // namespace floatwright::testing
