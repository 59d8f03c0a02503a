// See chromium.h. The page lies in a fresh folder only this user can read; all of it is removed again.
#include "cli/chromium.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <thread>
#include <vector>

#include "cli/command.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& message) {
    throw CatalogError(CatalogTrouble::input_output, message,
                       "write the page with --html FILE and print it from any browser");
}

// A folder that goes away with everything in it.
class OwnFolder {
  public:
    OwnFolder() {
        std::string name = (fs::temp_directory_path() / "tapbook-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) refuse("cannot make a folder for the page to be printed");
        place_ = name;
    }
    ~OwnFolder() {
        std::error_code ignored;
        fs::remove_all(place_, ignored);
    }
    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;
    const fs::path& place() const { return place_; }

  private:
    fs::path place_;
};

std::string found_program() {
    if (const char* named = std::getenv("TAPBOOK_CHROMIUM"); named != nullptr && *named != '\0') return named;
    const char* path = std::getenv("PATH");
    const std::string folders = path == nullptr ? "/usr/bin:/bin" : path;
    for (const char* name : {"chromium", "chromium-browser", "google-chrome"})
        for (std::size_t start = 0; start <= folders.size();) {
            const std::size_t end = std::min(folders.find(':', start), folders.size());
            const fs::path candidate = fs::path(folders.substr(start, end - start)) / name;
            if (::access(candidate.c_str(), X_OK) == 0) return candidate.string();
            start = end + 1;
        }
    refuse("no Chromium was found, and only it can make the PDF");
}

std::vector<std::string> words_for(const std::string& program, const fs::path& folder) {
    std::vector<std::string> words = {program,
                                      "--headless",
                                      "--disable-gpu",
                                      "--disable-dev-shm-usage",
                                      "--no-first-run",
                                      "--host-resolver-rules=MAP * ~NOTFOUND",
                                      "--no-pdf-header-footer",
                                      fmt::format("--user-data-dir={}", (folder / "profile").string()),
                                      fmt::format("--print-to-pdf={}", (folder / "sheet.pdf").string())};
    if (::geteuid() == 0) words.push_back("--no-sandbox");  // its sandbox does not start for the administrator
    words.push_back(fmt::format("file://{}", (folder / "sheet.html").string()));
    return words;
}

// In the child: everything it prints goes nowhere.
[[noreturn]] void become(std::vector<std::string>& words) {
    std::vector<char*> list;
    for (auto& word : words) list.push_back(word.data());
    list.push_back(nullptr);
    ::setpgid(0, 0);
    const int nowhere = ::open("/dev/null", O_RDWR);
    for (const int handle : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) ::dup2(nowhere, handle);
    ::execv(list[0], list.data());
    ::_exit(127);
}

// Exit status; -1 when patience ran out.
int ended(pid_t child, std::chrono::seconds patience) {
    const auto last = std::chrono::steady_clock::now() + patience;
    for (int status = 0; std::chrono::steady_clock::now() < last;) {
        if (::waitpid(child, &status, WNOHANG) == child) return WIFEXITED(status) ? WEXITSTATUS(status) : 1;
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    ::kill(-child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    return -1;
}

}  // namespace

std::string pdf_of_html(std::string_view html, std::chrono::seconds patience) {
    const std::string program = found_program();
    const OwnFolder folder;
    const FileToWrite page{folder.place() / "sheet.html", html};
    write_files({&page, 1}, Existing::refuse);
    auto words = words_for(program, folder.place());
    const pid_t child = ::fork();
    if (child < 0) refuse("cannot start Chromium");
    if (child == 0) become(words);
    const int status = ended(child, patience);
    if (status == -1) refuse(fmt::format("{} was still at it after {} s and was ended", program, patience.count()));
    const fs::path pdf = folder.place() / "sheet.pdf";
    if (status != 0 || !fs::exists(pdf)) refuse(fmt::format("{} made no PDF", program));
    return read_file(pdf.string());
}

}  // namespace tapbook
