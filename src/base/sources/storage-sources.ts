import type { Source } from './source.ts';

/** How long grain keeps. Sorted by key. */
export const STORAGE_SOURCES: readonly Source[] = [
  {
    key: 'asabe-d535',
    authors: 'American Society of Agricultural and Biological Engineers',
    year: null,
    title: 'D535: Shelled corn storage time for 0.5 % dry matter loss',
    where: 'ASABE Standards',
    provenance: 'memory',
  },
  {
    key: 'kreyger-1972',
    authors: 'Kreyger, J.',
    year: 1972,
    title: 'Drying and storing grains, seeds and pulses in temperate climates, as carried on by Muir and Sinha',
    where: 'Institute for Storage and Processing of Agricultural Produce, Wageningen',
    provenance: 'memory',
  },
  {
    key: 'ng-1998',
    authors: 'Ng, H. F., Wilcke, W. F., Morey, R. V., Meronuck, R. A. and Lang, J. P.',
    year: 1998,
    title: 'Mechanical damage and corn storability',
    where: 'Transactions of the ASAE 41(4), 1095-1100',
    url: 'http://elibrary.asabe.org/abstract.asp?aid=17239',
    provenance: 'seen',
  },
  {
    key: 'nsa-sunflower-storage',
    authors: 'National Sunflower Association',
    year: null,
    title: 'The Sunflower magazine, article 3222: storage of oil sunflower',
    where: 'sunflowernsa.com',
    url: 'https://sunflowernsa.com/magazine/articles/default.aspx?ArticleID=3222',
    provenance: 'seen',
  },
  {
    key: 'saul-1970',
    authors: 'Saul, R. A.',
    year: 1970,
    title: 'Deterioration rate of moist shelled corn at low temperatures',
    where: 'ASAE paper 70-302',
    provenance: 'memory',
  },
  {
    key: 'steele-1969',
    authors: 'Steele, J. L., Saul, R. A. and Hukill, W. V.',
    year: 1969,
    title: 'Deterioration of shelled corn as measured by carbon dioxide production',
    where: 'Transactions of the ASAE 12(5), 685-689',
    provenance: 'memory',
  },
  {
    key: 'thompson-1972',
    authors: 'Thompson, T. L.',
    year: 1972,
    title: 'Temporary storage of high-moisture shelled corn using continuous aeration',
    where: 'Transactions of the ASAE 15(2), 333-337',
    provenance: 'memory',
  },
];
