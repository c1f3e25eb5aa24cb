import type { Source } from './source.ts';

/** Law that a page’s cautions stand on. Sorted by key. */
export const LAW_SOURCES: readonly Source[] = [
  {
    key: 'cfr-1910-147',
    authors: 'Occupational Safety and Health Administration',
    year: null,
    title: 'The control of hazardous energy (lockout/tagout)',
    where: '29 CFR 1910.147',
    provenance: 'memory',
  },
  {
    key: 'cfr-1910-272',
    authors: 'Occupational Safety and Health Administration',
    year: null,
    title: 'Grain handling facilities',
    where: '29 CFR 1910.272, as carried over in Michigan rule R 408.17707',
    url: 'http://mirules.elaws.us/rule/r408.17707',
    provenance: 'seen',
  },
  {
    key: 'federal-register-1994-water',
    authors: 'Federal Grain Inspection Service',
    year: 1994,
    title: 'Prohibition on adding water to grain, 7 CFR Part 800',
    where: 'Federal Register 59, no. 198, 14 October 1994',
    url: 'https://www.govinfo.gov/content/pkg/FR-1994-10-14/html/94-25371.htm',
    provenance: 'seen',
  },
];
