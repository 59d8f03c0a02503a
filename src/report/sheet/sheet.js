// Saves what was typed into the boxes as a file of readings. The sheet reads and prints the same without it.
(function () {
  "use strict";
  var code = document.body.dataset.code;
  var bar = document.getElementById("save");
  var status = bar.querySelector("p");
  var boxes = Array.prototype.slice.call(document.querySelectorAll("input[data-at]"));
  var changed = false;

  // The value as TOML, or null where it is no number. A comma is taken as the decimal point.
  function written(box) {
    var text = box.value.trim();
    if (box.dataset.kind !== "number") return JSON.stringify(text);
    text = text.replace(",", ".");
    return /^-?[0-9]+(\.[0-9]+)?$/.test(text) ? text.replace(/^(-?)0+(?=[0-9])/, "$1") : null;
  }

  function mark(box, wrong) {
    if (wrong) box.setAttribute("aria-invalid", "true");
    else box.removeAttribute("aria-invalid");
  }

  function readings() {
    var places = [], lines = {}, wrong = [];
    boxes.forEach(function (box) {
      mark(box, false);
      if (box.value.trim() === "") return;
      var value = written(box), at = box.dataset.at;
      if (value === null) {
        mark(box, true);
        wrong.push(box);
        return;
      }
      if (!lines[at]) {
        lines[at] = {};
        places.push(at);
      }
      lines[at][box.dataset.field] = value;
    });
    return { places: places, lines: lines, wrong: wrong };
  }

  function file_text(read) {
    return "[job]\ncode = " + JSON.stringify(code) + "\n" + read.places.map(function (at) {
      var fields = read.lines[at];
      return "\n[[reading]]\nat = " + JSON.stringify(at) + "\n" + Object.keys(fields).map(function (field) {
        return field + " = " + fields[field] + "\n";
      }).join("");
    }).join("");
  }

  function save() {
    var read = readings();
    if (read.wrong.length !== 0) {
      status.textContent = "Not a number: " + read.wrong[0].value + ". Nothing was saved.";
      read.wrong[0].focus();
      return;
    }
    if (read.places.length === 0) {
      status.textContent = "Nothing has been typed yet.";
      return;
    }
    var address = URL.createObjectURL(new Blob([file_text(read)], { type: "application/toml" }));
    var link = document.createElement("a");
    link.href = address;
    link.download = "readings-" + code + ".toml";
    link.click();
    setTimeout(function () { URL.revokeObjectURL(address); }, 10000);
    changed = false;
    status.textContent = "Saved as " + link.download + ".";
  }

  boxes.forEach(function (box) {
    box.addEventListener("input", function () { changed = true; });
  });
  window.addEventListener("beforeunload", function (event) {
    if (changed) event.preventDefault();
  });
  bar.querySelector("button").addEventListener("click", save);
  bar.hidden = boxes.length === 0;
})();
