// What does a page get to answer with, and what does it give back? Values only: nothing here knows sockets.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tapbook {

// HEAD is answered as GET, without the body.
enum class PageMethod { get, post };

// Names and texts of a query or of a form, decoded, in the order sent. A name may come several times (ticked boxes).
class FormFields {
  public:
    FormFields() = default;
    explicit FormFields(std::vector<std::pair<std::string, std::string>> fields) : fields_(std::move(fields)) {}

    // The first text of this name; absent when the name did not come, "" when it came empty.
    std::optional<std::string> text(std::string_view name) const;
    // Every text of this name, in order.
    std::vector<std::string> texts(std::string_view name) const;
    bool has(std::string_view name) const { return text(name).has_value(); }
    const std::vector<std::pair<std::string, std::string>>& all() const { return fields_; }

  private:
    std::vector<std::pair<std::string, std::string>> fields_;
};

// The name under which every form carries PageRequest::form_token in a hidden field.
inline constexpr std::string_view form_token_field = "form_token";

struct PageRequest {
    PageMethod method = PageMethod::get;
    std::string path;                  // as asked, decoded, with its "/" in front: "/car/norvane/aster/sedan/2015"
    std::vector<std::string> caught;   // what the holes of the route's pattern caught, in their order
    FormFields query, form;            // UTF-8 without control characters but tab and line feed
    std::optional<std::string> phone;  // the name of the paired phone; absent: reading only
    std::string form_token;            // for the hidden field of each form
    std::vector<std::pair<std::string, std::string>> kept;  // what earlier answers asked to keep for this phone
    std::string today;                                      // "2026-05-04"

    // What is kept under this name; "" for nothing.
    std::string kept_text(std::string_view name) const;
};

struct PageAnswer {
    int status = 200;
    std::string type = "text/html; charset=utf-8";
    std::string body;
    std::string location;  // with status 303: where to go on, an address of ours that begins with one "/"

    // The exact texts of <style> and <script> elements that stand in the body. Only a file that is whole in itself (the
    // sheet) has any; the content security policy then lets exactly these run, by their hash.
    std::vector<std::string> inline_texts = {};

    // To be kept for this phone (last method, initials), until its session ends: at most 16 names, 200 bytes each. The
    // same name replaces. Without effect for a phone that is not paired.
    std::vector<std::pair<std::string, std::string>> keep = {};

    // Sends the cookie that a form of a phone that is not paired yet needs: the pairing page alone.
    bool begins_visit = false;
    // Pairs the phone that sent this, under this name. The pairing page alone.
    std::optional<std::string> pairs_phone = {};
};

// 303: "done, look there". `address` begins with one "/".
PageAnswer see_other(std::string address);

// What cannot be answered: becomes a page of this status, in these words.
class PageRefused : public std::runtime_error {
  public:
    PageRefused(int status, const std::string& message, std::string hint = {})
        : std::runtime_error(message), status_(status), hint_(std::move(hint)) {}
    int status() const { return status_; }
    const std::string& hint() const { return hint_; }

  private:
    int status_;
    std::string hint_;
};

}  // namespace tapbook
