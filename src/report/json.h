// How is an answer written as JSON? A small writer: members in the order they are given, numbers as SI decimals rounded
// to 1e-4 (or as asked), absent values as null, text escaped. Reading JSON is not done here.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

class Json {
  public:
    Json& begin_object();
    Json& end_object();
    Json& begin_list();
    Json& end_list();
    Json& key(std::string_view name);

    Json& text(std::string_view value);
    Json& whole(std::int64_t value);
    Json& flag(bool value);
    Json& null();
    Json& number(double value, int digits = 4);

    // key() and a value in one; absent becomes null.
    Json& member(std::string_view name, std::string_view value);
    Json& member(std::string_view name, const char* value) { return member(name, std::string_view(value)); }
    Json& member(std::string_view name, const std::string& value) { return member(name, std::string_view(value)); }
    Json& member(std::string_view name, const std::optional<std::string>& value);
    Json& member(std::string_view name, const std::optional<bool>& value);
    Json& member(std::string_view name, const std::optional<int>& value);
    Json& member(std::string_view name, const std::vector<std::string>& values);
    Json& member_number(std::string_view name, std::optional<double> value, int digits = 4);
    template <class Quantity, class Unit>
    Json& member_in(std::string_view name, const std::optional<Quantity>& value, Unit unit, int digits = 4) {
        return member_number(name, value ? std::optional<double>(value->in(unit)) : std::nullopt, digits);
    }

    std::string take() { return std::move(out_); }

  private:
    void separate();
    std::string out_;
    bool first_ = true;
};

// {"ok":true,"schema":"tapbook.<name>/1","data":<data>} on one line with a line feed.
std::string json_answer(std::string_view schema, std::string_view data);

// {"ok":false,"error":{"code":...,"message":...,"hint":...}} on one line with a line feed.
std::string json_failure(std::string_view code, std::string_view message, std::string_view hint);

}  // namespace tapbook
