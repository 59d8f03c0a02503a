// The door of this folder: the phone page, served to browsers on the shop's own network.
#pragma once

#include "page/form.h"
#include "page/http_server.h"
#include "page/own_addresses.h"
#include "page/page_gate.h"
