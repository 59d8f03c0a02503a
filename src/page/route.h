// Which page answers which address? One table, put together from the parts of the pages; the server, the tests over all
// routes and the links that are checked read it.
#pragma once

#include <span>

#include "page/page_desk.h"
#include "page/request.h"

namespace tapbook {

// Who may ask? anybody: what a phone needs to be paired. reader: a paired phone, or a browser on this machine itself:
// what the catalog holds. paired_phone: whoever changes something.
enum class RouteFor { anybody, reader, paired_phone };

struct Route {
    PageMethod method = PageMethod::get;
    // Segments after "/". "{}" catches one segment; "{...}", only at the end, one or more, joined by "/":
    // "/car/{...}", "/job/{}/reading". Written segments win over holes, more segments over "{...}".
    std::string_view pattern;
    RouteFor whom = RouteFor::anybody;
    PageAnswer (*run)(PageDesk&, const PageRequest&) = nullptr;
};

std::span<const Route> routes();

// The parts, one per file of pages.
std::span<const Route> asset_routes();
std::span<const Route> pairing_routes();

struct RouteFound {
    const Route* route = nullptr;
    std::vector<std::string> caught;
};

// The route of this method for the segments of a path; `route` is nullptr when there is none.
RouteFound find_route(PageMethod method, std::span<const std::string> segments);

}  // namespace tapbook
