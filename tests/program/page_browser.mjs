// What an installer does on the page, and what every page must be like, in headless Chromium. Started by page_browser.py.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { faint, too_small } from "./page_looks.mjs";

const [folder, executablePath, base, digits, extent, shots] = process.argv.slice(2);
const whole = extent === "whole";
const require = createRequire(folder + "/");
const { chromium } = require("playwright-core");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

const phone = { width: 360, height: 640 };
const desk = { width: 1280, height: 800 };
const car = "/car/hadrik/ostrel/wagon/2016";

// Every page that can be read on the practice shop.
const pages = {
  find: "/", found: "/?words=ostrl", nothing: "/?words=zzzzz", car, system: car + "?system=base&year=2018",
  advice: "/advice/hadrik/ostrel/wagon/2016?system=base&amp=masrow-floor-four",
  changes: "/changes/hadrik/ostrel/wagon/2016", jobs: "/jobs", start: "/jobs/new/hadrik/ostrel/wagon/2016",
  job: "/job/J5XE7G", came: "/job/J5XE7G/came", left: "/job/J5XE7G/left", plan: "/job/J5XE7G/plan",
  places: "/job/J5XE7G/read", read: "/job/J5XE7G/read?at=front-left/radio-plug", close: "/job/J5XE7G/close",
  closed: "/job/K7MQ2X", drawing: "/job/K7MQ2X/drawing", note: "/note/hadrik/ostrel/wagon/2016?tap=base/front-left/radio-plug",
  why: "/why/hadrik/ostrel/wagon/2016?tap=base/front-left/radio-plug&year=2018", shelf: "/shelf", count: "/shelf/count",
  part: "/shelf/count/ottrey-strong-four?booking=receive&pieces=2", pair: "/pair", missing: "/job/ZZZZZZ",
};

let wrong = 0;
function check(is_so, words, details = "") {
  if (is_so) return;
  wrong += 1;
  console.log(`WRONG: ${words}${details === "" ? "" : "\n       " + details}`);
}

const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });

// A new phone or desk; told when something asks another machine, opens a dialog or fails in a script.
async function visitor(viewport, options = {}) {
  const context = await browser.newContext({ viewport, ...options });
  context.on("request", (request) => {
    const is_ours = request.url().startsWith(base + "/") || request.url().startsWith("data:") || request.url().startsWith("blob:");
    check(is_ours, "a request left the machine", request.url());
  });
  const page = await context.newPage();
  page.on("dialog", (dialog) => { check(false, "a dialog opened", page.url()); dialog.dismiss(); });
  page.on("pageerror", (error) => check(false, "a script failed", `${page.url()}: ${error}`));
  return page;
}

async function pair(page) {
  await page.goto(base + "/pair");
  await page.fill("input[name=pin]", digits);
  await page.click("button.main");
  await page.waitForURL(base + "/");
}

// Chooses one of a row of buttons, away from the bar with the action that stands low on the screen.
async function press(page, name, value) {
  const button = page.locator(`input[name=${name}][value=${value}]`);
  await button.evaluate((one) => one.scrollIntoView({ block: "center" }));
  await button.check({ force: true });
}

async function says(page, text, words) {
  const all = await page.locator("body").innerText();
  check(all.includes(text), words, `"${text}" is not on ${page.url()}`);
}

// 1. Before a panel comes off: find the car, see where to tap, which conductors, what is in the way.
async function looks_up_taps(viewport, javaScriptEnabled) {
  const page = await visitor(viewport, { javaScriptEnabled });
  await page.goto(base + "/");
  const box = page.locator("input[name=words]");
  await box.click();
  await box.pressSequentially("ostrl wagn");
  if (javaScriptEnabled) {
    await page.waitForFunction(() => document.querySelectorAll("#found a").length === 1);
    check(page.url() === base + "/", "finding while typing leaves the page", page.url());
  } else {
    await page.keyboard.press("Enter");
  }
  await page.click("#found a");
  check(page.url() === base + car, "the car that was meant opens", page.url());
  for (const text of ["2 sound systems", "tell", "about 15 min", "off comes", "WH/BK", "white, black stripe", "cavity B6", "PROVEN",
                      "bridged", "before you cut or join"])
    await says(page, text, "the car's page tells what is needed before a panel comes off");
  await page.click("text=Which converter");
  await page.selectOption("select[name=system]", "base");
  await page.selectOption("select[name=amp]", "masrow-floor-four");
  await page.click("button:has-text('Judge')");
  await says(page, "best of those that were judged", "the best converter is named");
  const more = page.locator("details summary").first();
  await more.click();
  check(await page.locator("details[open] .finding").first().isVisible(), "every reason can be opened");
  await page.context().close();
}

// 2. A job from its start to notes with grades.
async function notes_from_a_job(viewport, javaScriptEnabled, plate) {
  const page = await visitor(viewport, { javaScriptEnabled });
  await pair(page);
  await page.goto(base + car + "?year=2018&system=base");
  await page.click("text=Start a job");
  await page.fill("input[name=initials]", "qa");
  await page.fill("input[name=customer]", "T-900");
  await page.fill("input[name=car]", plate);
  await page.click("button.main");
  await says(page, "As it came", "a job that was started asks how the car came");
  const code = new URL(page.url()).pathname.split("/")[2];
  await page.check("input[name=rest]");
  await page.fill("input[name=agreed]", "cu");
  await page.click("button.main");
  await says(page, "the list is filled", "the list as it came is filled");
  await page.goto(`${base}/job/${code}/plan`);
  await page.selectOption("select[name=amp]", "masrow-floor-four");
  await page.fill("input[name=metres]", "5,5");
  await page.click("button.main");
  await says(page, "Steps", "the plan has its steps");
  await page.goto(`${base}/job/${code}/read?at=front-left/radio-plug`);
  await page.check("input[name=method][value=metered]", { force: true });
  await page.fill("input[name=positive]", "white");
  await page.fill("input[name=negative]", "W-B");
  await page.click("button.main");
  await says(page, "Not saved yet", "an ambiguous colour is asked back");
  check((await page.inputValue("input[name=positive]")) === "white", "what was typed is still there");
  check(await page.locator("input[name=negative][aria-invalid=true]").isVisible(), "the complaint stands at its box");
  await page.fill("input[name=negative]", "white/black");
  await page.fill("input[name=dc_positive_v]", "7,1");
  await page.fill("input[name=dc_negative_v]", "7.1");
  await page.fill("input[name=ac_v]", "8.4");
  await page.fill("input[name=supply_v]", "14.2");
  await page.check("input[name=full_volume][value=yes]", { force: true });
  await page.click("button.main");
  await says(page, "Saved: front-left/radio-plug", "a reading is saved");
  await says(page, "bridged", "the reading is explained at once");
  await says(page, "Next: ", "the next circuit follows");
  check(await page.isChecked("input[name=method][value=metered]"), "the method is kept for the next circuit");
  await page.click("button:has-text('Undo')");
  check((await page.inputValue("input[name=positive]")) === "", "undo takes the reading back");
  await page.goBack();
  await page.goto(`${base}/job/${code}/read?at=front-left/radio-plug`);
  check(await page.isChecked("input[name=method][value=metered]"), "the last method is kept on this phone");
  await page.fill("input[name=positive]", "WH");
  await page.fill("input[name=negative]", "WH/BK");
  await page.fill("input[name=ac_v]", "8.4");
  await page.click("button[value=stay]");
  await says(page, "Saved: front-left/radio-plug", "it is saved again");
  await page.goto(`${base}/job/${code}`);
  await page.fill("input[name=words]", "pulled fuse 31");
  await page.click("button:has-text('Write it down')");
  await page.goto(`${base}/job/${code}/close`);
  await page.check("input[name=outcome][value=fine]", { force: true });
  await page.check("input[name=rest]");
  await page.click("button.main");
  await says(page, "pulled fuse 31", "an open action holds the job back");
  await page.goto(`${base}/job/${code}`);
  await page.click("button:has-text('It is put back')");
  await page.goto(`${base}/job/${code}/close`);
  await page.check("input[name=outcome][value=fine]", { force: true });
  await page.check("input[name=rest]");
  await page.click("button.main");
  await says(page, "the job is closed", "the job is closed");
  await says(page, "noted as", "its reading is a note");
  await says(page, "PROVEN", "the note has its grade");
  await page.context().close();
  return code;
}

// 3. A note without a job, asked back, saved, undone.
async function notes_and_undoes(javaScriptEnabled) {
  const page = await visitor(phone, { javaScriptEnabled });
  await pair(page);
  await page.goto(base + pages.note);
  await page.fill("input[name=positive]", "white");
  await page.click("button.main");
  await says(page, "how was it found?", "the method is asked for");
  await page.check("input[name=method][value=seen]", { force: true });
  await page.fill("input[name=negative]", "white/black");
  await page.fill("input[name=car]", "QA 77 " + javaScriptEnabled);
  await page.click("button[value=stay]");
  await says(page, "Saved: note", "the note is saved");
  await page.click("button:has-text('Undo')");
  await says(page, "Undone", "it is undone");
  await page.context().close();
}

// 4. The line breaks: nothing typed is lost.
async function loses_nothing(code) {
  const page = await visitor(phone);
  await pair(page);
  const address = `${base}/job/${code}/read?at=front-left/radio-plug`;
  await page.goto(address);
  await page.fill("input[name=ac_v]", "6.25");
  await page.context().setOffline(true);
  await page.click("button.main");
  await says(page, "kept on this phone", "a lost connection is told");
  check((await page.inputValue("input[name=ac_v]")) === "6.25", "the typed reading still stands");
  await page.context().setOffline(false);
  await page.goto(base + "/");
  await page.goto(address);
  check((await page.inputValue("input[name=ac_v]")) === "6.25", "the typed reading is back when the page is");
  await says(page, "not saved yet", "it is said that it is not saved");
  await page.click("button[value=stay]");
  await says(page, "Saved", "it is saved now");
  await page.goto(`${base}/job/${code}`);
  const kept = await page.evaluate(() => Object.keys(localStorage).filter((name) => name.startsWith("typed:")));
  check(kept.length === 0, "what was saved is no longer kept on the phone", kept.join());
  await page.goto(`${base}/job/${code}`);
  const box = page.locator("input[data-step]").first();
  await box.check();
  await page.reload();
  check(await page.locator("input[data-step]").first().isChecked(), "a ticked step stays ticked on this phone");
  await page.context().close();
}

// 5. Decide what to stock: what to order and why, count, book, take back.
async function decides_what_to_stock(viewport, javaScriptEnabled) {
  const page = await visitor(viewport, { javaScriptEnabled });
  await page.goto(base + "/");
  await page.click("nav >> text=Shelf");
  for (const text of ["What to keep on the shelf", "keep ", "comes in 14 days", "covered", "without it", "rests on", "judged", "find the shelf empty"])
    await says(page, text, "the shelf says what to order and why");
  check(await page.locator(".curve svg").isVisible(), "the curve is drawn");
  await page.selectOption("select[name=models]", "3");
  await page.click("button:has-text('Show')");
  await says(page, "the best 3 models", "another number of models is another question");
  await page.click("text=Count the shelf");
  await page.click(".count a:has-text('ottrey-slim-two')");
  await says(page, "3 on the shelf", "the part says how many lie there");
  check(await page.locator("button:has-text('Book')").count() === 0, "who is not paired books nothing");
  await pair(page);
  await page.goto(base + "/shelf/count/ottrey-slim-two");
  await press(page, "booking", "use");
  await page.fill("input[name=pieces]", "4");
  await page.click("button.main");
  await says(page, "only 3 lie on the shelf", "more than lies there cannot be taken");
  check((await page.inputValue("input[name=pieces]")) === "4", "what was typed is still there");
  await press(page, "booking", "receive");
  await page.click("button.main");
  await says(page, "3 -> 7 on the shelf", "what came in is booked");
  await page.reload();
  await says(page, "3 -> 7 on the shelf", "loading the page again books nothing");
  await page.click("button:has-text('Undo')");
  await says(page, "Undone: shelf count ottrey-slim-two receive 4", "it is taken back");
  await says(page, "3 on the shelf", "and the number is the one before");
  if (javaScriptEnabled) {
    await page.click("text=To the list");
    await page.locator("input[data-step=ottrey-slim-two]").check();
    await page.reload();
    check(await page.isChecked("input[data-step=ottrey-slim-two]"), "what was ticked while counting stays ticked on this phone");
  }
  await page.context().close();
}

// 6. What every page must be like.
// `rules`: those of axe; without them all.
async function looks_right(viewport, colorScheme, is_paired, rules) {
  const page = await visitor(viewport, { colorScheme });
  if (is_paired) await pair(page);
  for (const [name, address] of Object.entries(pages)) {
    const answer = await page.goto(base + address);
    const where = `${name} at ${viewport.width} px, ${colorScheme}${is_paired ? ", paired" : ""}`;
    check(answer.status() === (name === "missing" ? 404 : 200), "the page answers", `${where}: ${answer.status()}`);
    check((await answer.body()).length <= 60000, "the page is at most 60 KB", where);
    check(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth), "nothing scrolls sideways", where);
    const small = await page.evaluate(too_small);
    check(small.length === 0, "every target has 48 px", `${where}: ${small.slice(0, 4).join("; ")}`);
    const pale = await page.evaluate(faint);
    check(pale.length === 0, "codes and volts have a contrast of 7:1", `${where}: ${pale.slice(0, 4).join("; ")}`);
    await page.evaluate(axe);
    const found = await page.evaluate((options) => window.axe.run(document, options), {
      resultTypes: ["violations"], ...(rules ? { runOnly: { type: "rule", values: rules } } : {}) });
    const serious = found.violations.filter((one) => one.impact === "serious" || one.impact === "critical");
    check(serious.length === 0, "axe finds nothing serious",
          `${where}: ${serious.map((one) => `${one.id}: ${one.nodes.slice(0, 2).map((node) => node.html.slice(0, 120)).join(" | ")}`).join("; ")}`);
    if (shots) await page.screenshot({ path: `${shots}/${name}-${viewport.width}-${colorScheme}.png`, fullPage: true });
  }
  await page.context().close();
}

// 7. 200 % zoom is half the width; forced colours keep the swatches; who wants no motion gets none.
async function bends() {
  for (const width of whole ? [180, 320, 640] : [180]) {
    const page = await visitor({ width, height: 320 });
    await pair(page);
    for (const [name, address] of Object.entries(pages)) {
      await page.goto(base + address);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      check(over <= 0, "nothing scrolls sideways at 200 % zoom", `${name} at ${width} px: ${over} px`);
    }
    await page.context().close();
  }
  const forced = await visitor(phone, { forcedColors: "active" });
  await forced.goto(base + car);
  check((await forced.evaluate(() => getComputedStyle(document.querySelector(".swatch")).forcedColorAdjust)) === "none",
        "forced colours leave the wires their colours");
  await says(forced, "WH/BK", "the code stands beside it");
  await forced.context().close();
  const still = await visitor(phone, { reducedMotion: "reduce" });
  await pair(still);
  await still.goto(base + pages.came);
  await still.click("button.main");
  check((await still.evaluate(() => getComputedStyle(document.querySelector(".telling")).animationName)) === "none",
        "nothing moves for who wants no motion");
  await still.context().close();
}

// 8. The sheet is a file of its own; its script runs, and only its own.
async function prints_the_sheet() {
  const page = await visitor(desk);
  const blocked = [];
  page.on("console", (line) => { if (line.text().includes("Content Security Policy")) blocked.push(line.text()); });
  await page.goto(base + "/job/J5XE7G/sheet");
  await says(page, "J5XE7G", "the sheet names its job");
  check(await page.locator("#save").isVisible(), "the sheet's own script runs");
  check(blocked.length === 0, "the policy lets the sheet be", blocked.join());
  await page.goto(base + "/J/j5xe7g");
  check(page.url() === base + "/job/J5XE7G", "the code of a sheet leads to its job", page.url());
  await page.goto(base + "/?words=j5xe7g");
  check(page.url() === base + "/job/J5XE7G", "the code typed into the search does too", page.url());
  await page.context().close();
}

if (extent !== "look") {
  for (const viewport of [phone, desk])
    for (const script of [true, false]) await looks_up_taps(viewport, script);
  await notes_from_a_job(phone, true, "QA 1001");
  await notes_from_a_job(phone, false, "QA 1002");
  await notes_from_a_job(desk, true, "QA 1003");
  await notes_and_undoes(true);
  await notes_and_undoes(false);
  await loses_nothing("J5XE7G");
  await decides_what_to_stock(phone, true);
  await decides_what_to_stock(desk, false);
  await prints_the_sheet();
}
if (extent !== "work") {
  // Each size once and each scheme once, the second time only what hangs on the colours; tools/long looks at all of them.
  await looks_right(phone, "light", true);
  await looks_right(desk, "dark", false, whole ? undefined : ["color-contrast", "link-in-text-block"]);
  if (whole) {
    await looks_right(phone, "dark", true);
    await looks_right(desk, "light", false);
  }
  await bends();
}
await browser.close();
console.log(wrong === 0 ? "the pages work in the browser" : `${wrong} wrong`);
process.exit(wrong === 0 ? 0 : 1);
