// How does a page become a PDF? Through Chromium, when it is there: an outside program that is started without network,
// with a folder of its own, and ended when it takes too long.
#pragma once

#include <chrono>
#include <string>
#include <string_view>

namespace tapbook {

// The bytes of the PDF of one self-contained HTML page; paper and margins are the page's own. Looks for chromium,
// chromium-browser and google-chrome, or what TAPBOOK_CHROMIUM names. Throws CatalogError (input_output) with the way
// out when none is found, it fails, or `patience` runs out.
std::string pdf_of_html(std::string_view html, std::chrono::seconds patience = std::chrono::seconds(60));

}  // namespace tapbook
