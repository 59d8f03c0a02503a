// The door of this folder: the catalog in text. TOML in and out with place, caret and nearest key; it decides nothing.
#pragma once

#include "files/batch_reader.h"
#include "files/batch_writer.h"
#include "files/csv_export.h"
#include "files/csv_rows.h"
#include "files/csv_writer.h"
#include "files/forecast_reader.h"
#include "files/job_reader.h"
#include "files/readings_reader.h"
#include "files/rows_report.h"
#include "files/toml.h"
#include "files/typed_note.h"
