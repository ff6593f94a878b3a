/**
 * The look of an exported page, on a screen and on paper.
 *
 * @module
 */
import { pageColours } from "./page_colours.ts";

/** Style rules: two palettes, the column, the parts, narrow screens, paper. */
export const PAGE_STYLE = `
:root{color-scheme:light dark;${pageColours(0)};
--data:system-ui,"Segoe UI","Helvetica Neue","DejaVu Sans",sans-serif;
--figure-paper:var(--paper);--figure-ink:var(--ink);--figure-quiet:var(--soft);--figure-line:var(--line)}
@media (prefers-color-scheme:dark){:root{${pageColours(1)}}}
*{box-sizing:border-box}
html{font:17px/1.55 "Source Serif 4","Charter","Georgia",serif;background:var(--paper);color:var(--ink);
-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0}
.sb-skip{position:absolute;left:-100vw;background:var(--paper);color:var(--accent);padding:.4rem .8rem}
.sb-skip:focus{left:.5rem;top:.5rem;z-index:2}
.sb-head,main,.sb-foot{max-width:50rem;margin:0 auto;padding:0 1.25rem}
.sb-head{padding-top:1.4rem;padding-bottom:.9rem}
.sb-head p,.sb-foot{color:var(--soft);font:.82rem/1.45 var(--data);margin-top:.1rem;margin-bottom:.1rem;overflow-wrap:anywhere}
.sb-foot{margin-top:2.5rem;padding-bottom:1.5rem}.sb-foot::before{content:"";display:block;border-top:1px solid var(--line);margin-bottom:.7rem}
h1,h2,h3,h4,h5,h6{line-height:1.25;font-weight:600;margin:1.7em 0 .5em;overflow-wrap:break-word}
h1{font-size:1.6rem;margin:0 0 .3rem}h2{font-size:1.22rem}h3{font-size:1.06rem}h4,h5,h6{font-size:1rem;color:var(--soft)}
p,ul,ol,dl,blockquote{margin:.7em 0}
main{overflow-wrap:break-word}
main>:first-child,.sb-cell>:first-child,.sb-cell>div>ul:first-child{margin-top:0}
.sb-cell{margin:.9rem 0}
.sb-cell>h2:first-child,.sb-cell>.sb-scroll>h2:first-child{margin-top:2rem;padding-top:.9rem;border-top:1px solid var(--line)}
.answer{border-left:4px solid var(--accent);padding:.1rem 0 .1rem 1rem}
.answer p{margin:.55rem 0}.answer p:first-child{font-size:1.18rem;line-height:1.4}
.answer em{color:var(--soft);font:.82rem/1.45 var(--data)}
a{color:var(--accent)}
blockquote{border-left:3px solid var(--line);padding-left:1rem;color:var(--soft);margin-left:0}
code,pre,kbd,samp{font:.82rem/1.5 "DejaVu Sans Mono","Menlo","Consolas",monospace}
p code,li code,td code{background:var(--well);padding:.05em .3em;border-radius:3px}
pre{margin:.5rem 0;white-space:pre;overflow-x:auto}
.sb-code,.sb-text{padding:.6rem .8rem;border-radius:5px;background:var(--well)}
.sb-text{max-height:32rem;overflow:auto;white-space:pre-wrap;overflow-wrap:anywhere;background:none;border:1px solid var(--line)}
summary{cursor:pointer;color:var(--soft);font:.78rem/1.45 var(--data);width:fit-content;padding:.2rem 0}
summary:hover{color:var(--accent)}
:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
.sb-scroll{margin:.7rem 0}
.sb-scroll,.sb-math,.wide{overflow-x:auto;background:linear-gradient(to left,var(--paper) 40%,transparent) right/2rem 100% no-repeat local,
linear-gradient(to left,var(--line),transparent) right/.8rem 100% no-repeat scroll}
table{border-collapse:collapse;font:.78rem/1.5 var(--data);font-variant-numeric:tabular-nums lining-nums}
.sb-scroll>table{width:max-content;max-width:max(100%,46rem)}
caption{text-align:left;color:var(--soft);padding-bottom:.35rem;position:sticky;left:0;max-width:88vw}
th,td{padding:.34rem .8rem .34rem 0;border-bottom:1px solid var(--line);text-align:left;vertical-align:top;overflow-wrap:break-word}
td:last-child:empty{min-width:5.5rem}.sb-scroll td:first-child:not([style]){min-width:8rem}
thead th{border-bottom:1.5px solid var(--soft);font-weight:600}
th:last-child,td:last-child{padding-right:0}
.sb-figure{margin:1rem -.8rem;overflow-x:auto}
.sb-figure svg,.sb-figure img,main img{max-width:100%;height:auto}
.sb-figure>svg,.sb-figure>div>svg{display:block}
.sb-figure svg[viewBox][width="480"]{width:min(100%,30rem)}
.sb-figure figure{margin:0;max-width:100%}
@media (prefers-color-scheme:dark){.sb-card{background:#fbfaf7;color:#20242a;border-radius:5px;padding:.6rem}}
.sb-live dl{display:flex;flex-wrap:wrap;gap:.4rem 1.6rem}.sb-live dt{color:var(--soft)}.sb-live dd{margin:0;font-weight:600}
.sb-fold-text{border-left:3px solid var(--line);padding-left:1rem;margin:.9rem 0}.sb-fold-text>summary{font-size:1rem;color:var(--accent)}
.sb-math{display:block;overflow-y:hidden;padding:.2rem 0;text-align:center}
math{font-family:"Latin Modern Math","STIX Two Math","Cambria Math","DejaVu Math TeX Gyre",math;font-size:1.08em}
.sb-fault{color:var(--alarm)}
.sb-note{color:var(--soft);font:.82rem/1.45 var(--data);margin:.3rem 0}
.sb-stderr{border-left:3px solid var(--line);padding-left:.8rem}
.sb-error,.sb-banner{border-left:4px solid var(--alarm);background:var(--alarm-well);padding:.5rem .9rem;border-radius:0 5px 5px 0;margin:.8rem 0}
.sb-error p,.sb-banner p{margin:.2rem 0}.sb-error strong,.sb-banner strong{color:var(--alarm)}
.sb-words{white-space:pre-wrap;overflow-wrap:anywhere}
.bold{font-weight:700}.t-red{color:var(--alarm)}.t-green{color:var(--text)}.t-blue{color:var(--number)}
.t-magenta{color:var(--key)}.t-cyan{color:var(--accent)}.t-yellow{color:var(--remark)}.t-black,.t-white{color:var(--soft)}
.hljs-keyword,.hljs-built_in,.hljs-literal,.hljs-type{color:var(--key)}
.hljs-string,.hljs-regexp,.hljs-subst .hljs-string{color:var(--text)}
.hljs-number,.hljs-symbol{color:var(--number)}
.hljs-comment,.hljs-doctag,.hljs-meta{color:var(--remark);font-style:italic}
.hljs-title,.hljs-title.class_,.hljs-title.function_{color:var(--accent)}
.hljs-subst,.hljs-params,.hljs-property,.hljs-attr{color:inherit}
@media screen and (max-width:30rem){.sb-figure{margin-left:-.9rem;margin-right:-.9rem}.sb-figure svg[viewBox][width="480"]{width:100%;max-width:none}}
@media (max-width:30rem){html{font-size:16px}.sb-head,main,.sb-foot{padding-left:.9rem;padding-right:.9rem}th,td{padding-right:.7rem}}
@page{margin:16mm 16mm}
@media print{
:root{color-scheme:light;--paper:#fff;--ink:#000;--soft:#444;--line:#bbb;--well:#f4f4f4;--accent:#0d3f45;--alarm:#8a1f17;--alarm-well:#fff;
--key:#4b2a59;--text:#1f4a23;--number:#143f69;--remark:#555}
html{font-size:10pt}
.sb-head,main,.sb-foot{max-width:none;padding:0}.sb-foot{break-before:avoid;margin-top:1rem}
.sb-skip,.sb-fold,.sb-error details{display:none}
.sb-scroll,.sb-figure,.sb-math,.wide,pre,.sb-text{overflow:visible;max-height:none}.sb-scroll,.sb-math,.wide{background:none}
pre{white-space:pre-wrap;overflow-wrap:anywhere}
.sb-cell>h2:first-child,.sb-cell>.sb-scroll>h2:first-child{margin-top:1.1rem;padding-top:.6rem}
table,.sb-scroll>table{width:auto;max-width:100%;font-size:8pt}td:not([style*=nowrap]){overflow-wrap:anywhere}
table:where(:not(.fits,.wraps)) :where(th,td){overflow-wrap:anywhere}table:where(:not(.fits)) :where(th,td:not(.whole)){white-space:normal!important}table:where(:not(.fits)) :where(th,td){padding-right:.6rem}
.sb-card{background:none;color:inherit;padding:0}
.sb-figure{margin:.7rem 0 .7rem -2.4mm}
.sb-figure svg[viewBox],.sb-figure img{max-height:16cm;max-width:12.5cm;width:auto}.sb-figure svg[viewBox][width="480"]{width:10cm;max-width:100%}
.sb-cell:has(>.sb-figure:only-child):has(+.sb-cell>.sb-figure:only-child),
.sb-cell:has(>.sb-figure:only-child)+.sb-cell:has(>.sb-figure:only-child){display:inline-block;vertical-align:top;width:49%;margin:.4rem 0}
.sb-figure,.sb-math,tr,img,svg,.answer,table:not(:has(tbody tr:nth-child(12))){break-inside:avoid}
h1,h2,h3,h4,h5,h6,caption{break-after:avoid}
thead{display:table-header-group}
p,li{orphans:3;widows:3}
a[href^="http"]::after{content:" (" attr(href) ")";font-size:.85em;overflow-wrap:anywhere}
}
`.trim();

/**
 * Added for a class: on a screen at least 900 px wide, words a third larger; on
 * a phone pictures from rim to rim, so that their words keep 12 px at 360 px.
 */
export const ROOM_STYLE = `
@media screen and (min-width:900px){html{font-size:22px}.sb-head,main,.sb-foot{max-width:56rem}
.sb-scroll>table{max-width:max(100%,52rem)}table{font-size:.92rem}code,pre,kbd,samp{font-size:.86rem}
summary,.sb-note,.sb-head p,.sb-foot{font-size:.9rem}}
@media screen and (max-width:30rem){.sb-live,.sb-live[data-is-live]{margin-left:-.9rem;margin-right:-.9rem}.sb-live .sb-figure{margin:0}
.sb-live[data-is-live]{padding:.8em 0;border-width:1px 0;border-radius:0}.sb-live>dl,.sb-live .lv-side{padding:0 .9rem}
.sb-live svg text[font-size="15"]{font-size:16.1px}}
`.trim();

/** Added when the code is to be printed: its folds open on paper. */
export const PRINT_CODE_STYLE = `
@media print{.sb-fold{display:block}.sb-fold>summary{list-style:none}.sb-fold::details-content{content-visibility:visible;height:auto;display:block}}
`.trim();
