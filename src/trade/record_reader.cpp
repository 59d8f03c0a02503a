// Reading a record line. One in the accepted form is read in one pass (record_tokens.h). Of any other a JSON library
// finds the reason: what the record grammar does not have is refused at once, and at the end the line must equal what
// record_line() writes, so that no other spelling is left.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "trade/record_tokens.h"

namespace tapbook {
namespace {

class Reader : public nlohmann::json_sax<nlohmann::json> {
  public:
    Values record;
    std::string reason;
    std::size_t column = 0;

    bool null() override { return refuse("null is not a value of a record"); }
    bool boolean(bool flag) override { return put(flag); }
    bool number_integer(number_integer_t number) override { return whole(number); }
    bool number_unsigned(number_unsigned_t number) override {
        return number > static_cast<number_unsigned_t>(most_record_integer) ? refuse("a number is beyond 2^53 - 1")
                                                                            : whole(static_cast<std::int64_t>(number));
    }
    bool number_float(number_float_t, const string_t& text) override {
        return refuse(fmt::format("{} is not a whole number", text));
    }
    bool string(string_t& text) override {
        if (!in_list_) return put(std::move(text));
        list_.push_back(std::move(text));
        return true;
    }
    bool binary(binary_t&) override { return refuse("binary data"); }
    bool start_object(std::size_t) override {
        if (started_) return refuse("an object inside the record");
        started_ = true;
        return true;
    }
    bool end_object() override { return true; }
    bool key(string_t& name) override {
        if (record.contains(name)) return refuse(fmt::format("the field \"{}\" is there twice", name));
        if (record.size() == most_record_keys) return refuse(fmt::format("more than {} fields", most_record_keys));
        key_ = std::move(name);
        return true;
    }
    bool start_array(std::size_t) override {
        if (!started_ || in_list_) return refuse("a list where none may be");
        in_list_ = true;
        list_.clear();
        return true;
    }
    bool end_array() override {
        in_list_ = false;
        return put(std::move(list_));
    }
    bool parse_error(std::size_t position, const std::string&, const nlohmann::json::exception&) override {
        column = position;
        return refuse("not JSON here");
    }

  private:
    bool refuse(std::string why) {
        if (reason.empty()) reason = std::move(why);
        return false;
    }
    bool whole(std::int64_t number) {
        return number < -most_record_integer ? refuse("a number is beyond 2^53 - 1") : put(number);
    }
    bool put(Value value) {
        if (!started_) return refuse("a record is one object");
        if (in_list_) return refuse("a list holds texts only");
        record.insert_or_assign(key_, std::move(value));
        return true;
    }

    std::string key_;
    TextList list_;
    bool started_ = false;
    bool in_list_ = false;
};

// What the library says of the line: its record, or the reason why it is none.
Values read_slowly(std::string_view line) {
    Reader reader;
    if (!nlohmann::json::sax_parse(line, &reader)) throw RecordRefused(reader.reason, reader.column);
    const std::string again = record_line(reader.record);
    if (again == line) return std::move(reader.record);
    std::size_t same = 0;
    while (same < again.size() && same < line.size() && again[same] == line[same]) ++same;
    throw RecordRefused(
        "not written in the one accepted form (keys sorted, no spaces, plain numbers, shortest escapes)", same + 1);
}

}  // namespace

Values read_record_line(std::string_view line) {
    if (line.size() > most_record_bytes)
        throw RecordRefused(fmt::format("the line is longer than {} bytes", most_record_bytes), 0);
    RecordTokens tokens;
    if (tokens.read(line)) return values_of(tokens);
    try {
        return read_slowly(line);
    } catch (const RecordRefused& refused) {
        if (refused.column() != 0) throw;
        throw RecordRefused(refused.what(), tokens.stopped_at() + 1);
    }
}

Values read_record_line_slowly(std::string_view line) {
    if (line.size() > most_record_bytes)
        throw RecordRefused(fmt::format("the line is longer than {} bytes", most_record_bytes), 0);
    return read_slowly(line);
}

}  // namespace tapbook
