import { cssString, LAST_LINE } from './frame.ts';
import { DARK, LIGHT, type Theme } from './palette.ts';

function variables(theme: Theme): string {
  const { categories, ...named } = theme;
  const all = [
    ...Object.entries(named).map(([name, colour]) => `--${name}:${colour}`),
    ...categories.map((colour, i) => `--c${i + 1}:${colour}`),
  ];
  return `${all.join(';')};`;
}

/** The one sheet of every page. Sizes 1, 1.25, 1.6, 2; text of 68 characters; figures as wide as the frame. */
export const STYLES = `
:root{${variables(LIGHT)}color-scheme:light dark}
@media (prefers-color-scheme:dark){:root{${variables(DARK)}}}
*{box-sizing:border-box}
html{font:100%/1.55 system-ui,-apple-system,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif;background:var(--paper);color:var(--ink);-webkit-text-size-adjust:100%}
body{margin:0}
.frame{max-width:58rem;margin:0 auto;padding:0 1.25rem}
p,li,dd,dt,.answer{max-width:68ch}
p{margin:.6rem 0}
a{color:var(--link);text-underline-offset:.15em}
a:focus-visible,summary:focus-visible,[tabindex]:focus-visible{outline:3px solid var(--link);outline-offset:2px}
.skip{position:absolute;left:-99rem}
.skip:focus{left:1rem;top:.5rem;background:var(--paper);padding:.5rem .75rem;z-index:1}
.masthead{border-bottom:1px solid var(--rule);padding:.9rem 0}
.masthead .frame{display:flex;flex-wrap:wrap;gap:.25rem 2rem;align-items:baseline;justify-content:space-between}
.masthead p{margin:0;color:var(--soft)}
nav ul{list-style:none;margin:0;padding:0;display:flex;flex-wrap:wrap;gap:.25rem 1.25rem}
nav.here{margin:1.5rem 0 0}
ul.columns{columns:9rem auto;column-gap:2rem;padding:0;list-style:none}
nav.here p{margin:0}
nav.here ul{display:block;columns:13rem auto;column-gap:2rem}
nav.here li{max-width:none;break-inside:avoid;padding:.1rem 0}
nav a[aria-current]{color:var(--ink);font-weight:650;text-decoration:none}
h1{font-size:2rem;line-height:1.2;margin:2.5rem 0 .25rem;letter-spacing:-.01em;text-wrap:balance}
h2{font-size:1.6rem;line-height:1.25;margin:3.5rem 0 .5rem}
h3{font-size:1.25rem;line-height:1.3;margin:2rem 0 .25rem}
.question{color:var(--soft);margin:0 0 1rem;font-size:1.25rem}
.answer{font-size:1.25rem;line-height:1.5;margin:0 0 1.75rem}
.keys{display:grid;grid-template-columns:repeat(auto-fill,minmax(13rem,1fr));gap:1.25rem 2rem;margin:0 0 1rem;padding:1rem 0;border-top:2px solid var(--ink);border-bottom:1px solid var(--rule)}
.keys dt{color:var(--soft)}
.keys dd{margin:0}
.keys.four{grid-template-columns:repeat(auto-fill,minmax(11rem,1fr))}
@media screen and (max-width:44rem){.keys,.keys.four{grid-template-columns:repeat(auto-fill,minmax(8.5rem,1fr));gap:1rem}}
.keys .big{font-size:1.6rem;line-height:1.25;font-variant-numeric:tabular-nums}
.keys .unit{font-size:1rem;color:var(--soft)}
.small,.note,figcaption p,.why{color:var(--soft)}
.note+.note{margin-top:-.2rem}
.failure{border:2px solid var(--ink);padding:.5rem .9rem;max-width:68ch}
figure{margin:1.75rem 0}
figcaption h3{margin:0}
figcaption p{margin:.1rem 0 .5rem}
figcaption h3,figcaption p{text-wrap:pretty}
.legend{display:flex;flex-wrap:wrap;gap:.2rem 1.1rem;list-style:none;margin:.4rem 0;padding:0}
.legend li{display:inline-flex;align-items:center;gap:.4rem}
.legend svg{flex:none}
.keyed{display:flex;flex-wrap:wrap;gap:.2rem 1.75rem;align-items:flex-start;margin:.4rem 0}
.keyed .legend{margin:0}
.ramp{display:flex;list-style:none;margin:0 1rem 0 .75rem;padding:0;max-width:min(34rem,calc(100% - 1.75rem));flex:0 1 auto}
.ramp li{position:relative;width:4rem;min-width:0;flex:0 1 auto;padding-bottom:1.5rem;font-variant-numeric:tabular-nums}
.ramp svg{display:block;width:100%;height:.9rem}
.ramp li>span:not(.heard){position:absolute;top:.95rem;left:0;transform:translateX(-50%);color:var(--soft)}
.ramp li>span.last{left:100%}
.heard{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.plot{--plot-background:var(--paper);width:100%;height:auto;overflow:visible;font-family:inherit}
.at-wide,.at-narrow{position:relative}
.read{position:absolute;z-index:2;max-width:min(24rem,100%);width:max-content;padding:.3rem .6rem;background:var(--paper);color:var(--ink);border:1px solid var(--ink);border-radius:3px;font-size:.95rem;line-height:1.35;pointer-events:none}
.spot{position:absolute;outline:2px solid var(--ink);box-shadow:0 0 0 4px var(--paper);border-radius:2px;pointer-events:none}
.read[hidden],.spot[hidden]{display:none}
.at-narrow{display:none}
@media (max-width:44rem){.at-wide{display:none}.at-narrow{display:block}}
.scroll{--shade:color-mix(in srgb,var(--ink) 30%,transparent);overflow-x:auto;margin:1.25rem 0;max-width:100%;
background:linear-gradient(to right,var(--paper) 40%,transparent) left/3rem calc(100% + 2px) local no-repeat,linear-gradient(to left,var(--paper) 40%,transparent) right/3rem calc(100% + 2px) local no-repeat,linear-gradient(to right,var(--shade),transparent) left/.8rem 100% scroll no-repeat,linear-gradient(to left,var(--shade),transparent) right/.8rem 100% scroll no-repeat}
.sideways{display:none;margin:1.25rem 0 -.75rem}
@media screen and (min-width:64rem){.scroll.crowded{width:min-content;min-width:100%;max-width:calc(50vw + 26.5rem)}.scroll.crowded:has(th:nth-child(10)) :is(th,td):not(:first-child){padding-left:.22rem;padding-right:.22rem}}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;line-height:1.4}
caption{text-align:left;font-weight:650;padding:0 0 .5rem}
th,td{padding:.32rem .6rem;text-align:left;vertical-align:top;font-weight:400}
.wide th,.wide td{padding-left:.5rem;padding-right:.5rem}
@media screen and (min-width:44.01rem){.crowded table{font-size:.92rem}.crowded th,.crowded td{padding-left:.3rem;padding-right:.3rem}}
.wide tr>:first-child,th:first-child,td:first-child{padding-left:0}
.wide tr>:last-child{padding-right:.25rem}
thead th{vertical-align:bottom;font-weight:650}
thead tr.units td{color:var(--soft);font-weight:400;padding-top:0}
thead tr:last-child>*{border-bottom:1.5px solid var(--ink)}
tbody tr+tr>*{border-top:1px solid color-mix(in srgb,var(--rule) 35%,transparent)}
tfoot>tr>*{border-top:1.5px solid var(--ink);font-weight:650}
.n{text-align:right;white-space:nowrap}
.t{white-space:nowrap}
@media screen and (min-width:44.01rem){.s{white-space:nowrap}}
thead th.n{white-space:normal}
td.marked{font-weight:700}
.known{font-size:.82rem}
.range{font-size:.82rem;font-weight:400;color:var(--soft);white-space:nowrap}
@media (min-width:44.01rem){.own br{display:none}.own .range{margin-left:.4em;font-size:inherit}}
sup{line-height:0}
sup,a:has(>sup){text-decoration:none}
tbody th,tfoot th{min-width:5.5rem}
@media print,(min-width:44.01rem){tbody th{overflow-wrap:anywhere}}
.pad{visibility:hidden}
details{margin:.75rem 0}
summary{cursor:pointer;color:var(--link)}
details.why{display:inline;margin:0}
details.why[open]{display:block;max-width:22rem;white-space:normal;text-align:left}
details.why summary{display:inline;color:inherit;text-decoration:underline dotted}
dl.entries dt{font-weight:650;margin-top:1.1rem}
dl.entries dd{margin:0}
code{font:.95em/1.4 ui-monospace,SFMono-Regular,Menlo,Consolas,monospace;background:var(--wash);padding:.05em .3em;overflow-wrap:anywhere}
code.equation{display:block;width:fit-content;max-width:100%;margin:.35rem 0;padding:.3em .6em}
.hash{overflow-wrap:anywhere;max-width:12rem;display:inline-block}
.cautions{border-left:4px solid var(--ink);padding-left:1rem}
footer nav p{margin:0 0 .6rem;font-size:1.25rem}
footer{border-top:1px solid var(--rule);margin-top:4rem;padding:1rem 0 3rem;color:var(--soft)}
.print-head{display:none}
@media (max-width:44rem){
.sideways{display:block}
.scroll.wide tr>:first-child{position:sticky;left:0;background:var(--paper);min-width:5.5rem}
.scroll.wide tr.units>:first-child{padding-right:0}
th,td{padding:.32rem .45rem}
}
@media print{
@page{margin:18mm 15mm;@bottom-left{content:${cssString(LAST_LINE)};font-size:7pt;color:#555a5c}}
:root{${variables(LIGHT)}--paper:#fff;color-scheme:light}
html{font-size:9.5pt;line-height:1.42}
.frame{max-width:none;padding:0}
nav,.skip,summary,.on-screen,.read,.spot{display:none}
details::details-content{content-visibility:visible;display:block}
details>:not(summary){display:block}
.masthead{display:none}
.print-head{display:block;border-bottom:1px solid var(--ink);padding-bottom:.3rem;color:var(--ink)}
.print-head p{margin:0;max-width:none}
h1{margin-top:1rem}
h2{font-size:1.45rem;margin-top:1.1rem}
footer{display:none}
h2,h2+p,h3,figcaption,caption,thead,tbody tr:first-child:not(:last-child){break-after:avoid}
tbody tr:last-child:not(:first-child){break-before:avoid}
figure,tr,.keys,.cautions li,.failure,h2+p,.scroll:has(td.own),.scroll:not(:has(tbody tr:nth-child(17))){break-inside:avoid}
figure,.scroll{margin:.6rem 0}
p{margin:.4rem 0}
thead{display:table-header-group}
@supports (width:attr(x type(*))){
.scroll:has(tbody tr:nth-child(17)){--caption:attr(aria-label)}
.scroll:has(tbody tr:nth-child(17)) caption{display:none}
.scroll:has(tbody tr:nth-child(17)) thead::before{content:var(--caption);display:block;width:0;padding:0 0 .5rem;white-space:nowrap;font-weight:650}
}
tfoot{display:table-row-group}
.at-narrow{display:none}
.at-wide{display:block}
.paired{display:grid;grid-template-columns:1fr 1fr;gap:0 7mm;align-items:start;grid-auto-flow:dense}
.paired>*{min-width:0;margin:.5rem 0}
.paired .whole{grid-column:1/-1}
.paired figure:not(.whole) .at-narrow{display:block}
.paired figure:not(.whole) .at-wide{display:none}
.paired h3{font-size:1.05rem}
.paired figure{padding-left:1.2mm}
.paired figcaption p,.paired .legend,.paired .ramp,.paired .note{font-size:.82rem;line-height:1.25;margin:.1rem 0}
.paired .ramp{margin:.1rem 1rem .1rem .75rem}
.paired .legend{gap:.05rem .8rem}
.paired h3{line-height:1.2}
:not(.paired)>.scroll:not(.wide):has(td.own):not(:has(th:nth-child(4))){columns:2;column-gap:7mm}
.note,.small,.cautions li,section[aria-labelledby="made"] li{font-size:.88rem;line-height:1.38;max-width:92ch}
.cautions ul,section[aria-labelledby="made"]>ul{columns:2;column-gap:8mm}
.scroll{overflow:visible;background:none}
.sideways{display:none}
.range{font-size:.9em}
table{font-size:.85rem}
table{line-height:1.25}
th,td{padding:.13rem .45rem}
.wide th,.wide td{padding:.13rem .3rem}
section[aria-labelledby="made"] table{font-size:.74rem;line-height:1.15}
section[aria-labelledby="made"] td,section[aria-labelledby="made"] th{padding-top:.05rem;padding-bottom:.05rem}
section[aria-labelledby="made"] tbody tr:first-child>*{padding-top:.25rem}
.n{white-space:normal}
dl.entries,section[aria-labelledby="sources"]>ul{columns:2;column-gap:8mm;font-size:.88rem;line-height:1.38}
dl.entries dt{margin-top:.7rem;break-after:avoid}
dl.entries dt:first-child{margin-top:0}
section[aria-labelledby="sources"]>ul{font-size:.8rem;line-height:1.27}
section[aria-labelledby="sources"] li{break-inside:avoid}
a{color:inherit}
a.source::after{content:" <" attr(href) ">";overflow-wrap:anywhere}
}`;
