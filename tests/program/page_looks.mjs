// Which targets of a page are too small for a thumb, and which codes and volts too pale to read in the sun? Run inside the page.
export const too_small = () => Array.from(document.querySelectorAll("a, button, input:not([type=hidden]), select, summary")).filter((one) => {
  const place = one.getBoundingClientRect();
  if (place.width === 0 || one.classList.contains("skip")) return false;
  const whole = (one.closest("label") || one).getBoundingClientRect();
  return Math.max(place.height, whole.height) < 47.5 || Math.max(place.width, whole.width) < 47.5;
}).map((one) => `${one.tagName} ${one.textContent || one.name} ${Math.round(one.getBoundingClientRect().height)}`);

export const faint = () => {
  const channels = (text) => (text.match(/[\d.]+/g) || []).map(Number);
  const light = (colour) => {
    const [r, g, b] = colour.slice(0, 3).map((c) => c / 255).map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  return Array.from(document.querySelectorAll(".wire, .volt b, .expected, .code")).filter((one) => {
    let behind = one;
    let ground = [255, 255, 255];
    for (; behind; behind = behind.parentElement) {
      const colour = channels(getComputedStyle(behind).backgroundColor);
      if (colour.length === 3 || colour[3] > 0) { ground = colour; break; }
    }
    const [high, low] = [light(channels(getComputedStyle(one).color)), light(ground)].sort((a, b) => b - a);
    return (high + 0.05) / (low + 0.05) < 7;
  }).map((one) => one.textContent);
};
