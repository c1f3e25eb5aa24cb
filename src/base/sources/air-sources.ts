import type { Source } from './source.ts';

/** Air, its measurement, and what a fan does to it. Sorted by key. */
export const AIR_SOURCES: readonly Source[] = [
  {
    key: 'ashrae-2017',
    authors: 'American Society of Heating, Refrigerating and Air-Conditioning Engineers',
    year: 2017,
    title: 'ASHRAE Handbook - Fundamentals (SI edition), chapter 1: Psychrometrics',
    where: 'ASHRAE, Atlanta',
    provenance: 'memory',
  },
  {
    key: 'engineers-edge-fan',
    authors: 'Engineers Edge',
    year: null,
    title: 'Temperature rise across fan, after ASHRAE Fundamentals 2021',
    where: 'engineersedge.com',
    url: 'https://engineersedge.com/calculators/temperature_rise_across_15945.htm',
    provenance: 'seen',
  },
  {
    key: 'smithsonian-1951',
    authors: 'List, R. J. (editor)',
    year: 1951,
    title: 'Smithsonian meteorological tables, 6th edition',
    where: 'Smithsonian Institution, Washington',
    provenance: 'memory',
  },
  {
    key: 'wmo-8',
    authors: 'World Meteorological Organization',
    year: 2018,
    title: 'WMO-No. 8: Guide to instruments and methods of observation',
    where: 'WMO, Geneva, volume I',
    provenance: 'memory',
  },
];
