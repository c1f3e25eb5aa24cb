import { cssString } from './frame.ts';

/** What a printable document has beyond every page: cover, contents, chapters, the line to sign. */
export const DOCUMENT_STYLES = `
.cover{padding:3rem 0 1rem;border-bottom:2px solid var(--ink)}
.cover .season{font-size:1.25rem;color:var(--soft);margin:0}
.cover h1{margin:.25rem 0}
.cover .subtitle{font-size:1.25rem;margin:.25rem 0 1.5rem}
.facts{display:grid;grid-template-columns:repeat(auto-fill,minmax(13rem,1fr));gap:.75rem 2rem;margin:1rem 0}
.facts dt,.signature dt{color:var(--soft)}
.facts dd,.signature dd{margin:0}
.contents h2{font-size:1.25rem;margin:1.75rem 0 .5rem}
.contents ol{list-style:none;margin:0;padding:0;display:block;max-width:44rem}
.contents.long ol{columns:2;column-gap:2.5rem;max-width:none}
.contents li{break-inside:avoid;max-width:none}
.contents a{display:flex;gap:.5rem;align-items:baseline;padding:.12rem 0}
.contents .part{padding-left:1.25rem}
.contents .title{flex:1}
.contents .sheet{font-variant-numeric:tabular-nums}
h3.part{font-size:1.25rem;margin-top:2.25rem}
.signature{margin-top:3rem}
.signature dl{display:grid;grid-template-columns:2fr 2fr 1fr;gap:1.5rem;margin:3rem 0 0}
.signature dl div{border-top:1px solid var(--ink);padding-top:.3rem;display:flex;flex-wrap:wrap;gap:0 .75rem}
section[aria-labelledby="summary"] dl.entries .small{display:block;color:var(--ink);margin:.35rem 0}
section[aria-labelledby="summary"] dl.entries br{display:none}
@media (min-width:44.01rem){section[aria-labelledby="summary"] table{font-size:.84rem}}
@media (max-width:44rem){.contents.long ol{columns:1}.signature dl{grid-template-columns:1fr;gap:3rem}}
@media print{
.document nav.contents{display:block}
.cover{padding:22mm 0 6mm}
.cover .season{font-size:1.6rem}
.cover h1{font-size:2.6rem}
.cover .subtitle{font-size:1.25rem;max-width:none}
.facts{grid-template-columns:1fr 1fr}
.contents a{text-decoration:none;padding:.06rem 0}
.numbered .title{display:flex;gap:.4rem;align-items:baseline}
.numbered .title::after{content:"";flex:1;border-bottom:1px dotted var(--rule)}
.contents .chapter{font-weight:650}
.contents .chapter:not(:first-child){margin-top:.25rem}
.contents.long{font-size:.88rem}
.new-sheet{break-before:page}
.new-sheet>section>h2,.new-sheet>section>h3.part{margin-top:0}
h3.part{font-size:1.2rem;margin-top:1rem;break-after:avoid}
h3.part+p{break-after:avoid;break-inside:avoid}
.document .wide table{width:100%}
section[aria-labelledby="summary"] table{font-size:.84rem}
section[aria-labelledby="summary"] :is(th,td){line-height:1.25;padding-top:.07rem;padding-bottom:.07rem}
section[aria-labelledby="summary"] .keys{padding:.5rem 0;margin-bottom:.6rem}
section[aria-labelledby="summary"] .note{margin:.2rem 0;font-size:.85rem}
section[aria-labelledby^="bin-"] .paired .plot{width:73%}
section[aria-labelledby^="bin-"] .paired figure{margin:.1rem 0}
section[aria-labelledby^="bin-"] .paired h3{font-size:.95rem}
section[aria-labelledby^="bin-"] table{font-size:.8rem}
section[aria-labelledby^="bin-"] tbody th{white-space:nowrap}
section[aria-labelledby^="bin-"]>.note{margin:.15rem 0}
section[aria-labelledby="quality"] .plot{width:88%}
section[aria-labelledby="before"] table{font-size:.78rem}
section[aria-labelledby="before"] tbody td:nth-child(2){white-space:nowrap}
section[aria-labelledby="before"] .range{white-space:normal}
section[aria-labelledby="cautions"]{break-inside:avoid}
section[aria-labelledby="summary"] dl.entries{columns:1;margin:.4rem 0;font-size:.9rem}
section[aria-labelledby="summary"] dl.entries dt{margin-top:.6rem}
section[aria-labelledby="summary"] dl.entries .small{margin:.1rem 0;max-width:none}
section[aria-labelledby="summary"] dl.entries dd,section[aria-labelledby="summary"] p{max-width:none}
section[aria-labelledby="advice"] dl.entries{columns:1}
section[aria-labelledby="advice"] dl.entries dd{max-width:none}
section[aria-labelledby="advice"] dl.entries dt:not(:first-child){margin-top:.9rem}
.signature{break-inside:avoid;margin-top:8mm}
.signature dl{margin-top:12mm}
}`;

/** Running head and foot of every sheet but the cover, and the paper's size where one is asked for. */
export function documentHead(place: string, title: string, paper?: 'letter' | 'a4'): string {
  const font = 'font:8pt system-ui,sans-serif;color:#555a5c';
  return `@media print{@page{margin:16mm 15mm 14mm;${paper === undefined ? '' : `size:${paper};`}@top-left{content:${cssString(place)};${font}}@top-right{content:${cssString(title)};${font}}@bottom-right{content:"Page " counter(page) " of " counter(pages);${font}}}@page :first{@top-left{content:none}@top-right{content:none}@bottom-right{content:none}}}`;
}
