import { LIVE_ROLES, rolesStyle } from "./_theme.ts";

const colours = (theme: 0 | 1): string =>
  ["paper", "ink", "quiet", "line", "first", "alarm", "veil"].map((role) =>
    `--lv-${role}:${LIVE_ROLES[role][theme]}`
  ).join(";");

const HOST = "[data-is-live]";

/** Declarations by selector, below a live figure. */
const RULES: Readonly<Record<string, string>> = {
  ".lv-body": "display:grid;gap:.9em 1.4em;align-items:start",
  ".lv-picture":
    "display:block;width:100%;height:auto;max-width:calc(78vh*1.45);margin:0 auto",
  ".lv-numbers": "display:grid;gap:.55em;margin:0 0 1em",
  ".lv-numbers div": "border-left:4px solid var(--lv-first);padding-left:.6em",
  "dt":
    "color:var(--lv-quiet);font-weight:400;font-size:.92em;line-height:1.25;margin:0",
  "dd":
    "margin:0;font-size:1.35em;font-weight:600;line-height:1.3;font-variant-numeric:tabular-nums lining-nums",
  "output": "display:inline;padding:0;color:inherit;font:inherit",
  ".lv-controls":
    "display:grid;grid-template-columns:repeat(auto-fit,minmax(min(15em,100%),1fr));gap:.5em 1.6em;align-items:start",
  ".lv-control":
    "display:grid;grid-template-columns:1fr auto;align-items:center;column-gap:.6em",
  "label":
    "margin:0;font-weight:400;font-size:1em;line-height:1.25;color:var(--lv-ink)",
  ".lv-typed":
    "display:inline-grid;grid-template-columns:auto 1.9em;gap:.3em;align-items:center",
  ".lv-field":
    "box-sizing:border-box;font:inherit;width:5.2em;height:auto;min-height:2.2em;padding:.1em .4em;margin:0;color:var(--lv-ink);background:var(--lv-paper);border:1px solid var(--lv-quiet);border-radius:5px",
  "select.lv-field": "width:auto;max-width:100%",
  ".lv-field[aria-invalid]": "border:2px solid var(--lv-alarm)",
  ".lv-range":
    "grid-column:1/-1;width:100%;height:2.2em;margin:0;accent-color:var(--lv-first);cursor:pointer",
  ".lv-wrong": "grid-column:1/-1;color:var(--lv-alarm);font-weight:600",
  ".lv-back":
    "font:inherit;min-height:2.2em;padding:.2em .9em;margin-top:.3em;justify-self:start;color:var(--lv-ink);background:var(--lv-veil);border:1px solid var(--lv-quiet);border-radius:5px;cursor:pointer",
  ":focus-visible": "outline:3px solid var(--lv-first);outline-offset:2px",
};

const below = (selector: string): string => `${HOST} ${selector}`;

/** The look of a live figure, whatever page it stands in. */
export const PANEL_STYLE: string = [
  `${HOST}{${
    colours(0)
  };background:var(--lv-paper);color:var(--lv-ink);border:1px solid var(--lv-line);border-radius:8px;padding:.8em;margin:1em 0;font-size:max(1em,17px);container-type:inline-size}`,
  `@media screen and (prefers-color-scheme:dark){${HOST}{${colours(1)}}}`,
  rolesStyle(`${HOST} `),
  ...Object.entries(RULES).map(([selector, rule]) =>
    `${below(selector)}{${rule}}`
  ),
  `@container (min-width:44em){${
    below(".lv-body")
  }{grid-template-columns:minmax(0,1.75fr) minmax(0,1fr)}${
    below(".lv-controls")
  }{grid-template-columns:1fr}}`,
  `@media print{${below(".lv-controls")}{display:none}${
    below(".lv-picture")
  }{max-height:11cm}${HOST}{break-inside:avoid;border:0;padding:0}}`,
].join("\n");
