// A folder for catalogs that goes away with the test.
#pragma once

#include <stdlib.h>

#include <filesystem>
#include <stdexcept>
#include <string>

class AFolder {
  public:
    AFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "tapbook-files-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
        path_ = name;
    }
    ~AFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    AFolder(const AFolder&) = delete;
    AFolder& operator=(const AFolder&) = delete;

    std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

  private:
    std::filesystem::path path_;
};
