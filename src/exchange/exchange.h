// The door of this folder: packs, in which shops hand each other what they know, and the folder through which packs go.
#pragma once

#include "exchange/folder.h"
#include "exchange/pack_reader.h"
#include "exchange/pack_writer.h"
