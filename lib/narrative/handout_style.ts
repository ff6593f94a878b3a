/**
 * The look of sheets that each fill one side of paper, A4 or Letter.
 *
 * @module
 */
import { ROLES } from "../display/colour_roles.ts";

/** The drawings' colours, for a light page (0) or a dark one (1). */
function colours(page: 0 | 1): string {
  const used = ["ink", "quiet", "first", "haze"] as const;
  return used.map((role) => `--${role}-c:${ROLES[role][page]}`).join(";");
}

/**
 * Style rules for sheets, after those of every page.
 *
 * On paper a sheet keeps inside what A4 and Letter have in common: 190 mm by
 * 259 mm within the margins of 10 mm. A page of one sheet prints its title and foot
 * too; in a page of `several` each sheet carries its own.
 *
 * @example
 * ```ts
 * import { HANDOUT_STYLE } from "sagbook/narrative/handout_style.ts";
 * import { match } from "node:assert/strict";
 *
 * match(HANDOUT_STYLE, /@page\{margin:10mm\}/);
 * ```
 */
export const HANDOUT_STYLE: string = `
.sheet{${colours(0)}}
@media (prefers-color-scheme:dark){.sheet{${colours(1)}}}
.sb-head,main{max-width:62rem}.sb-foot{max-width:59.5rem}
.sheet+.sheet{border-top:2px solid var(--line);margin-top:2rem;padding-top:1rem}
.sheet h2{font-size:1.08rem;margin:0 0 .3em;color:var(--accent)}
.sheet p,.sheet ul{margin:.35em 0}.sheet ul{padding-left:1.15em}.sheet li{margin:.2em 0}
.sheet .about,.sheet .tiny{color:var(--soft);font-size:.88rem}
.sheet .tiny{text-align:center;margin-top:0}
.parts{columns:2 21rem;column-gap:2.2rem}
.parts>section{margin:0 0 1.1em}.parts li,.parts p,.eq,.sets,.sheet svg{break-inside:avoid}.sheet h2,.sheet .eq,.sheet svg{break-after:avoid}
.eq{display:flex;flex-wrap:wrap;gap:.2em 1.6em;align-items:center;margin:.4em 0}
.sheet svg{display:block;width:100%;max-width:24rem;height:auto;margin:.3em auto}
.sheet svg text{font:italic 13px "Source Serif 4","Charter","Georgia",serif;fill:var(--ink-c)}
.sheet svg text.small{font-size:11px;font-style:normal}
.glass{fill:none;stroke:var(--first-c);stroke-width:2}.disc{fill:var(--haze-c);stroke:var(--first-c);stroke-width:1.2}
.thin,.dash{fill:none;stroke:var(--quiet-c);stroke-width:1}.dash{stroke-dasharray:4 3}
.foot,.probe{fill:none;stroke:var(--ink-c);stroke-width:1.4}.sag{stroke:var(--ink-c);stroke-width:2.2}.dot{fill:var(--ink-c)}
.wide{overflow-x:auto}
.sheet th,.sheet td{padding:.18em .7em .18em 0;text-align:right;white-space:nowrap;font-weight:400}
.sheet thead th{font-weight:600;white-space:normal;vertical-align:bottom}
.wide th:first-child,.sets th{text-align:left}.sheet th:last-child,.sheet td:last-child{padding-right:0}
.sets{margin:.3em 0 .3em 1.15em}.sets td{padding-left:.6em}
.card{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,17rem),1fr));gap:1rem 1.8rem;align-items:start}
.card table{width:100%}
.card tbody tr:nth-child(5n) td{border-bottom-color:var(--soft)}
.card tr.here td{background:var(--well);font-weight:700}
body:has(.several) .sb-foot{display:none}
@page{margin:10mm}
@media print{
.sheet{${colours(0)};max-width:190mm}
html{font-size:8.6pt;line-height:1.26}
.sb-head,.sb-foot,main{max-width:190mm;margin:0;padding:0}
.sb-head h1{font-size:12.5pt;margin:0}.sb-head p{margin:0 0 1.5mm}
.sb-foot{margin-top:1mm;padding-top:.6mm}
.sheet{margin:0!important;padding:0!important;border:0!important}
body:has(.several) .sb-head{display:none}
.several .sheet{break-after:page;break-inside:avoid}.several .sheet:last-of-type{break-after:auto}
.sheet p,.sheet ul{margin:.25em 0}.sheet li{margin:.1em 0}.eq{margin:.25em 0}
.parts{columns:2;column-gap:7mm}.parts>section{margin:0 0 .6em}
.wide{overflow:visible}.wide table{font-size:7.4pt;line-height:1.26;width:100%;max-width:none}.sets{font-size:7.4pt;line-height:1.26}
.sheet th,.sheet td{white-space:nowrap!important;overflow-wrap:normal}.sheet .wide thead th{white-space:normal!important}
.sheet .wide th,.sheet .wide td,.sets th,.sets td{padding-top:.6pt;padding-bottom:.6pt}
.eq{gap:0 1.2em}
.sheet svg{max-width:68mm;margin:.1em auto}
.card{grid-template-columns:repeat(3,1fr);gap:0 7mm}
.card:not(:has(table:nth-child(3))){grid-template-columns:repeat(2,1fr)}
.card table{font-size:8.4pt;line-height:1.2}.card th,.card td{padding-top:.7pt!important;padding-bottom:.7pt!important}
}
`.trim();
