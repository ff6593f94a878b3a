import { LIVE_ROLES, rolesStyle } from "./_theme.ts";

const colours = (theme: 0 | 1): string =>
  ["paper", "ink", "quiet", "line", "first", "alarm", "veil"].map((role) =>
    `--lv-${role}:${LIVE_ROLES[role][theme]}`
  ).join(";");

/** The look of a live figure, whatever page it stands in. */
export const PANEL_STYLE = [
  `[data-is-live]{${
    colours(0)
  };background:var(--lv-paper);color:var(--lv-ink);`,
  "border:1px solid var(--lv-line);border-radius:8px;padding:.8rem;margin:1rem 0;max-width:62rem}",
  `@media screen and (prefers-color-scheme:dark){[data-is-live]{${
    colours(1)
  }}}`,
  rolesStyle("[data-is-live] "),
  "[data-is-live] .lv-picture{display:block;width:100%;height:auto;max-height:78vh}",
  "[data-is-live] .lv-numbers{display:grid;grid-template-columns:repeat(auto-fit,minmax(13rem,1fr));gap:.5rem 1.2rem;margin:.8rem 0}",
  "[data-is-live] .lv-numbers div{border-left:4px solid var(--lv-first);padding-left:.6rem}",
  "[data-is-live] dt{color:var(--lv-quiet);font-weight:400;font-size:.95rem;line-height:1.3}",
  "[data-is-live] dd{margin:0;font-size:1.45rem;font-weight:600;line-height:1.3;font-variant-numeric:tabular-nums lining-nums}",
  "[data-is-live] output{display:inline;padding:0;color:inherit;font:inherit}",
  "[data-is-live] .lv-controls{display:grid;grid-template-columns:repeat(auto-fit,minmax(15rem,1fr));gap:.7rem 1.6rem;align-items:start}",
  "[data-is-live] .lv-control{display:grid;grid-template-columns:1fr auto;align-items:center;column-gap:.6rem}",
  "[data-is-live] label{margin:0;font-weight:400;font-size:1rem;color:var(--lv-ink)}",
  "[data-is-live] .lv-field{box-sizing:border-box;font:inherit;font-size:1.05rem;width:6rem;height:auto;min-height:2.4rem;padding:.2rem .4rem;margin:0;color:var(--lv-ink);background:var(--lv-paper);border:1px solid var(--lv-quiet);border-radius:5px}",
  "[data-is-live] select.lv-field{width:auto;max-width:100%}",
  "[data-is-live] .lv-field[aria-invalid]{border:2px solid var(--lv-alarm)}",
  "[data-is-live] .lv-range{grid-column:1/-1;width:100%;height:2.6rem;margin:0;accent-color:var(--lv-first);cursor:pointer}",
  "[data-is-live] .lv-wrong{grid-column:1/-1;color:var(--lv-alarm);font-weight:600}",
  "[data-is-live] .lv-back{font:inherit;min-height:2.6rem;padding:.3rem .9rem;justify-self:start;align-self:end;color:var(--lv-ink);background:var(--lv-veil);border:1px solid var(--lv-quiet);border-radius:5px;cursor:pointer}",
  "[data-is-live] :focus-visible{outline:3px solid var(--lv-first);outline-offset:2px}",
  "@media print{[data-is-live] .lv-controls{display:none}[data-is-live] .lv-picture{max-height:11cm}[data-is-live]{break-inside:avoid}}",
].join("\n");
