// How does the table of names become one value in the catalog, and back? Layout: "TBN1"; then makes, bodies, last path
// parts, models, cars, each with its count before it (4 bytes). A name is four texts: shown, slug, folded, glued
// (empty: as folded); a model is its make's place (4), its number of cars (4) and its name; a car is body and last part
// (3 bytes each), first and last year (2 each). A text has its length before it (2). Numbers are little-endian.
// Whatever does not fit is refused: the entries are the truth, and the table is made from them again.
#include <array>

#include "catalog/name_table.h"

namespace tapbook {
namespace {

constexpr std::string_view layout = "TBN1";

class Writing {
  public:
    void number(std::size_t value, int bytes) {
        for (int i = 0; i < bytes; ++i) out += static_cast<char>((value >> (8 * i)) & 0xff);
    }
    void text(std::string_view value) {
        value = value.substr(0, 0xffff);
        number(value.size(), 2);
        out += value;
    }
    void name(const KnownName& value) {
        text(value.shown);
        text(value.slug);
        text(value.folded);
        text(value.glued == value.folded ? std::string_view() : value.glued);
    }

    std::string out;
};

// Reads what Writing wrote; `good` turns false at the first thing that does not fit, and nothing is read after it.
class Reading {
  public:
    explicit Reading(std::string_view bytes) : left_(bytes) {}

    std::string_view take(std::size_t count) {
        if (count > left_.size()) {
            good = false;
            left_ = {};
            return {};
        }
        const auto taken = left_.substr(0, count);
        left_.remove_prefix(count);
        return taken;
    }
    std::size_t number(std::size_t bytes) {
        std::size_t value = 0, shift = 0;
        for (const char byte : take(bytes)) {
            value |= static_cast<std::size_t>(static_cast<unsigned char>(byte)) << shift;
            shift += 8;
        }
        return value;
    }
    // A count of things of which each takes at least `least` bytes.
    std::size_t count(std::size_t least) {
        const std::size_t value = number(4);
        if (value > left_.size() / least) good = false;
        return good ? value : 0;
    }
    std::size_t place(std::size_t bytes, std::size_t size) {
        const std::size_t value = number(bytes);
        if (value >= size) good = false;
        return good ? value : 0;
    }
    std::string_view text() { return take(number(2)); }
    KnownName name() {
        KnownName value;
        value.shown = text();
        value.slug = text();
        value.folded = text();
        value.glued = text();
        if (value.glued.empty()) value.glued = value.folded;
        return value;
    }
    bool at_end() const { return left_.empty(); }

    bool good = true;

  private:
    std::string_view left_;
};

}  // namespace

std::string NameTable::pack() const {
    Writing writing;
    writing.out = layout;
    for (const auto* names : {&makes_, &bodies_}) {
        writing.number(names->size(), 4);
        for (const auto& name : *names) writing.name(name);
    }
    writing.number(last_parts_.size(), 4);
    for (const auto part : last_parts_) writing.text(part);
    writing.number(models_.size(), 4);
    for (const auto& model : models_) {
        writing.number(model.make, 4);
        writing.number(model.cars, 4);
        writing.name(model.name);
    }
    writing.number(cars_.size(), 4);
    for (const auto& car : cars_) {
        for (const auto place : {car.body, car.last_part}) writing.number(place, 3);
        for (const auto year : {car.first_year, car.last_year}) writing.number(year, 2);
    }
    return std::move(writing.out);
}

std::optional<NameTable> NameTable::unpack(std::string bytes) {
    NameTable table;
    Reading reading(table.texts_.emplace_back(std::move(bytes)));
    if (reading.take(layout.size()) != layout) return std::nullopt;
    for (auto* names : {&table.makes_, &table.bodies_}) {
        names->resize(reading.count(8));
        for (auto& name : *names) name = reading.name();
    }
    table.last_parts_.resize(reading.count(2));
    for (auto& part : table.last_parts_) part = reading.text();
    table.models_.resize(reading.count(16));
    std::size_t cars = 0;
    for (auto& model : table.models_) {
        model.make = static_cast<std::uint32_t>(reading.place(4, table.makes_.size()));
        model.first_car = static_cast<std::uint32_t>(cars);
        model.cars = static_cast<std::uint32_t>(reading.number(4));
        cars += model.cars;
        model.name = reading.name();
    }
    table.cars_.resize(reading.count(10));
    for (auto& car : table.cars_) {
        car.body = static_cast<std::uint32_t>(reading.place(3, table.bodies_.size()));
        car.last_part = static_cast<std::uint32_t>(reading.place(3, table.last_parts_.size()));
        car.first_year = static_cast<std::uint16_t>(reading.number(2));
        car.last_year = static_cast<std::uint16_t>(reading.number(2));
    }
    if (!reading.good || !reading.at_end() || cars != table.cars_.size()) return std::nullopt;
    return table;
}

}  // namespace tapbook
