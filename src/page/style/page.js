// What a phone does beside reading: finds as one types, keeps what was typed until the shop has it, remembers ticks.
// Every page reads and writes the same without it.
(function () {
  "use strict";

  // What cannot be kept (a browser that allows no storage) is simply not kept.
  var store = {
    get: function (name) { try { return localStorage.getItem(name); } catch (error) { return null; } },
    set: function (name, text) { try { localStorage.setItem(name, text); } catch (error) { return; } },
    remove: function (name) { try { localStorage.removeItem(name); } catch (error) { return; } }
  };

  function all(selector, within) {
    return Array.prototype.slice.call((within || document).querySelectorAll(selector));
  }

  // Finds while one types; the newest question alone may answer.
  all("input[data-fills]").forEach(function (box) {
    var list = document.getElementById(box.dataset.fills);
    var asked = 0, timer = 0, first = box.value;
    box.addEventListener("input", function () {
      clearTimeout(timer);
      timer = setTimeout(function () {
        var mine = ++asked;
        if (box.value.trim() === first.trim()) return;
        first = box.value;
        fetch("/found?words=" + encodeURIComponent(box.value), { credentials: "same-origin" })
          .then(function (answer) { return answer.ok ? answer.text() : null; })
          .then(function (text) {
            if (text === null || mine !== asked) return;
            var piece = new DOMParser().parseFromString(text, "text/html");
            list.replaceChildren.apply(list, Array.prototype.slice.call(piece.body.childNodes));
          })
          .catch(function () { return; });
      }, 120);
    });
  });

  // Typed fields of a form; not the hidden ones.
  function fields(form) {
    return all("input, select, textarea", form).filter(function (field) {
      return field.name && field.type !== "hidden";
    });
  }

  function typed(form) {
    var list = {};
    fields(form).forEach(function (field) {
      if (field.type === "radio" || field.type === "checkbox") {
        if (field.checked) list[field.name + "=" + field.value] = true;
      } else if (field.value !== field.defaultValue && field.tagName !== "SELECT") {
        list[field.name] = field.value;
      } else if (field.tagName === "SELECT") {
        list[field.name] = field.value;
      }
    });
    return list;
  }

  function fill(form, list) {
    fields(form).forEach(function (field) {
      if (field.type === "radio" || field.type === "checkbox") field.checked = list[field.name + "=" + field.value] === true;
      else if (typeof list[field.name] === "string") field.value = list[field.name];
    });
  }

  function notice(form, words) {
    var line = form.querySelector(".kept");
    if (!line) {
      line = document.createElement("p");
      line.className = "kept";
      line.setAttribute("role", "status");
      form.insertBefore(line, form.querySelector(".act") || form.lastChild);
    }
    line.textContent = words;
  }

  // The page that says "saved" names what is saved: only then is it thrown away here.
  all("[data-saved]").forEach(function (mark) { store.remove("typed:" + mark.dataset.saved); });

  all("form[data-keep]").forEach(function (form) {
    var name = "typed:" + form.dataset.keep;
    var before = store.get(name);
    if (before && !form.querySelector("[aria-invalid]") && !document.querySelector("[data-refused]")) {
      try {
        fill(form, JSON.parse(before));
        notice(form, "What you typed before is still here. It is not saved yet.");
      } catch (error) {
        store.remove(name);
      }
    }
    form.addEventListener("input", function () { store.set(name, JSON.stringify(typed(form))); });
    form.addEventListener("submit", function (event) {
      store.set(name, JSON.stringify(typed(form)));
      if (navigator.onLine === false) {
        event.preventDefault();
        notice(form, "No connection. What you typed is kept on this phone: press again when it is back.");
      }
    });
  });

  // Ticks of the steps stay on this phone, for each job.
  all("[data-ticks]").forEach(function (list) {
    var name = "ticks:" + list.dataset.ticks;
    var ticked = {};
    try { ticked = JSON.parse(store.get(name) || "{}"); } catch (error) { ticked = {}; }
    all("input[data-step]", list).forEach(function (box) {
      box.checked = ticked[box.dataset.step] === true;
      box.addEventListener("change", function () {
        if (box.checked) ticked[box.dataset.step] = true;
        else delete ticked[box.dataset.step];
        store.set(name, JSON.stringify(ticked));
      });
    });
  });
})();
