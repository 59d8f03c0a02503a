// Reads every page and sends every text through every box, and looks whether anything ran or became an element. Started by
// page_hostile.py. The content security policy is switched off: it is a second wall, and the first has to stand alone.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const [folder, executablePath, base, digits, work] = process.argv.slice(2);
const { chromium } = createRequire(folder + "/")("playwright-core");
const { texts, pages, forms } = JSON.parse(readFileSync(work, "utf8"));

let wrong = 0, seen = 0, sent = 0, refused = 0;
function tell(words) {
  wrong += 1;
  if (wrong <= 20) console.log(`WRONG: ${words}`);
}

const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
const context = await browser.newContext({ viewport: { width: 360, height: 640 }, bypassCSP: true });
const page = await context.newPage();
page.on("dialog", (dialog) => { tell(`a dialog opened on ${page.url()}`); dialog.dismiss(); });
page.on("request", (request) => { if (!request.url().startsWith(base + "/") && !request.url().startsWith("data:")) tell(`asked for ${request.url()}`); });

// What the pages never use, and what would make an element act.
const strange = () => {
  const found = [];
  if (window.hit !== undefined) found.push("a script ran");
  for (const one of document.querySelectorAll("iframe, img, object, embed, video, audio, source, math, template, base, style, noscript, textarea, frame"))
    found.push(one.tagName);
  for (const one of document.querySelectorAll("script")) if (one.getAttribute("src") !== "/page.js" || one.textContent !== "") found.push("script");
  for (const one of document.querySelectorAll("meta, link")) if (one.parentElement !== document.head) found.push(one.tagName);
  for (const one of document.querySelectorAll("*"))
    for (const attribute of one.attributes) {
      if (attribute.name.startsWith("on") || attribute.name === "style" || attribute.name === "srcdoc") found.push(attribute.name);
      if (["href", "src", "action", "formaction"].includes(attribute.name) && /^\s*javascript:/i.test(attribute.value)) found.push(attribute.value);
    }
  return found;
};

async function look(where) {
  seen += 1;
  const found = await page.evaluate(strange);
  if (found.length > 0) tell(`${where}: ${found.slice(0, 3).join(", ")}`);
}

await page.goto(base + "/pair");
await page.fill("input[name=pin]", digits);
await page.click("button.main");
await page.waitForURL(base + "/");

for (const address of pages) {
  const answer = await page.goto(base + address);
  if (answer.status() !== 200) tell(`${address} answers ${answer.status()}`);
  await look(address);
}

// Every box that takes text, with another text in each; what is pressed or chosen in the form stays as it was.
const boxes = (to) => {
  const box = "input[type=text], input[type=search], textarea";
  const goes_there = (one) => [to, decodeURI(to)].includes(new URL(one.action).pathname) && one.querySelector(box) !== null;
  const form = Array.from(document.querySelectorAll("form")).find(goes_there);
  if (!form) return null;
  const fields = {}, typed = [];
  for (const [name, value] of new FormData(form)) fields[name] = value;
  for (const one of form.querySelectorAll(box)) typed.push(one.name);
  for (const one of form.querySelectorAll("input[type=radio]")) if (!(one.name in fields)) fields[one.name] = one.value;
  return { method: form.method, fields, typed };
};

for (const { page: address, to } of forms) {
  await page.goto(base + address);
  const form = await page.evaluate(boxes, to);
  if (form === null || form.typed.length === 0) { tell(`${address} has no form with a box that goes to ${to}`); continue; }
  for (let number = 0; number < texts.length; number += 1) {
    const fields = { ...form.fields };
    form.typed.forEach((name, place) => { fields[name] = texts[(number + 7 * place) % texts.length]; });
    const where = `${to} sent ${JSON.stringify(fields[form.typed[0]])}`;
    const answer = form.method === "post" ? await context.request.post(base + to, { form: fields, headers: { Origin: base }, maxRedirects: 0 })
                                          : await context.request.get(base + to, { params: fields, maxRedirects: 0 });
    if (answer.status() >= 500) tell(`${where}: ${answer.status()}`);
    sent += 1;
    refused += answer.status() >= 400 ? 1 : 0;
    if (answer.status() === 303) continue;
    await page.setContent(await answer.text(), { waitUntil: "domcontentloaded" });
    await look(where);
  }
}

await browser.close();
if (seen < pages.length || sent < texts.length * forms.length) tell(`${seen} pages seen, ${sent} forms sent: too few`);
console.log(`${texts.length} texts: ${seen} pages looked at, ${sent} forms sent (${refused} refused), ${wrong} wrong`);
process.exit(wrong === 0 ? 0 : 1);
