// Style and script of every page: files that travel inside the program.
#include "embedded.h"
#include "page/route.h"

namespace tapbook {
namespace {

PageAnswer embedded(std::string_view name, std::string type) {
    for (const auto& one : embedded_texts()) {
        if (one.name != name) continue;
        PageAnswer answer;
        answer.type = std::move(type);
        answer.body = one.text;
        return answer;
    }
    throw PageRefused(404, "There is no such page.", "Start again from the first page.");
}

PageAnswer style(PageDesk&, const PageRequest&) {
    return embedded("style/page.css", "text/css; charset=utf-8");
}

PageAnswer script(PageDesk&, const PageRequest&) {
    return embedded("style/page.js", "text/javascript; charset=utf-8");
}

constexpr Route list[] = {{PageMethod::get, "/page.css", RouteFor::anybody, style},
                          {PageMethod::get, "/page.js", RouteFor::anybody, script}};

}  // namespace

std::span<const Route> asset_routes() {
    return list;
}

}  // namespace tapbook
