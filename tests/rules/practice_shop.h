// The practice shop that comes with the program, made as `demo` makes it, in a folder that goes with it.
#pragma once

#include <stdlib.h>

#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>

#include "embedded.h"
#include "files/files.h"
#include "rules/rules.h"

namespace tapbook::fixture {

class PracticeShop {
  public:
    PracticeShop() {
        std::string name = (std::filesystem::temp_directory_path() / "tapbook-rules-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
        folder_ = name;
        catalog_.emplace(Catalog::create(folder_ / "practice.sqlite", shops().shops.front().name, CatalogKind::practice,
                                         "2026-05-02", repeatable_random("practice")));
        for (const std::string_view file : {"data/shops.toml", "data/parts.toml", "data/stock.toml", "vehicles/"})
            for (const auto& text : embedded_texts())
                if (text.name.starts_with(file))
                    catalog_->add(read_batch(text.text, std::string(text.name)), false, "2026-05-02");
    }
    ~PracticeShop() {
        catalog_.reset();
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    PracticeShop(const PracticeShop&) = delete;
    PracticeShop& operator=(const PracticeShop&) = delete;

    const Catalog& catalog() const { return *catalog_; }

  private:
    static Batch shops() {
        for (const auto& text : embedded_texts())
            if (text.name == "data/shops.toml") return read_batch(text.text, std::string(text.name));
        throw std::runtime_error("no practice shop");
    }
    std::filesystem::path folder_;
    std::optional<Catalog> catalog_;
};

}  // namespace tapbook::fixture
