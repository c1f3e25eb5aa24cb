/** A work that a page or a formula stands on. */
export interface Source {
  /** short and lasting; formulas and pages cite by it */
  key: string;
  authors: string;
  year: number | null;
  title: string;
  where: string;
  url?: string;
  /** seen: what is used was read at the source; memory: recalled from the named work, not checked against it */
  provenance: 'seen' | 'memory';
}

/** The bibliography. Sorted by key. */
export const SOURCES: readonly Source[] = [
  {
    key: 'alam-shove-1973',
    authors: 'Alam, A. and Shove, G. C.',
    year: 1973,
    title: 'Hygroscopicity and thermal properties of soybeans',
    where: 'Transactions of the ASAE 16(4), 707-709, as in ASAE D243',
    provenance: 'memory',
  },
  {
    key: 'asabe-d535',
    authors: 'American Society of Agricultural and Biological Engineers',
    year: null,
    title: 'D535: Shelled corn storage time for 0.5 % dry matter loss',
    where: 'ASABE Standards',
    provenance: 'memory',
  },
  {
    key: 'asae-d243',
    authors: 'American Society of Agricultural Engineers',
    year: null,
    title: 'D243: Thermal properties of grain and grain products',
    where: 'ASAE Standards',
    provenance: 'memory',
  },
  {
    key: 'asae-d245-4',
    authors: 'American Society of Agricultural Engineers',
    year: 1992,
    title:
      'D245.4: Moisture relationships of grains, as in Brooker, D. B., Bakker-Arkema, F. W. and Hall, C. W.: Drying and storage of grains and oilseeds',
    where: 'Van Nostrand Reinhold',
    provenance: 'memory',
  },
  {
    key: 'asae-d245-5',
    authors: 'American Society of Agricultural Engineers',
    year: 1995,
    title: 'D245.5: Moisture relationships of plant-based agricultural products',
    where: 'ASAE Standards',
    provenance: 'memory',
  },
  {
    key: 'asae-d272-3',
    authors: 'American Society of Agricultural Engineers',
    year: 1996,
    title: 'D272.3: Resistance to airflow of grains, seeds, other agricultural products, and perforated metal sheets',
    where: 'ASAE Standards',
    provenance: 'memory',
  },
  {
    key: 'ashrae-2017',
    authors: 'American Society of Heating, Refrigerating and Air-Conditioning Engineers',
    year: 2017,
    title: 'ASHRAE Handbook - Fundamentals (SI edition), chapter 1: Psychrometrics',
    where: 'ASHRAE, Atlanta',
    provenance: 'memory',
  },
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
    key: 'chang-1988',
    authors: 'Chang, C. S.',
    year: 1988,
    title: 'Measuring density and porosity of grain kernels using a gas pycnometer',
    where: 'Cereal Chemistry 65, 13-15',
    url: 'https://www.cerealsgrains.org/publications/cc/backissues/1988/Documents/CC1988a03.html',
    provenance: 'seen',
  },
  {
    key: 'deshpande-bal-1999',
    authors: 'Deshpande, S. D. and Bal, S.',
    year: 1999,
    title: 'Specific heat of soybean',
    where: 'Journal of Food Process Engineering 22, 469-477',
    provenance: 'seen',
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
    key: 'federal-register-1994-water',
    authors: 'Federal Grain Inspection Service',
    year: 1994,
    title: 'Prohibition on adding water to grain, 7 CFR Part 800',
    where: 'Federal Register 59, no. 198, 14 October 1994',
    url: 'https://www.govinfo.gov/content/pkg/FR-1994-10-14/html/94-25371.htm',
    provenance: 'seen',
  },
  {
    key: 'fraser-muir-1981',
    authors: 'Fraser, B. M. and Muir, W. E.',
    year: 1981,
    title: 'Airflow requirements predicted for drying grain with ambient and solar-heated air in Canada',
    where: 'Transactions of the ASAE 24(1), 208-210',
    provenance: 'memory',
  },
  {
    key: 'haque-1978',
    authors: 'Haque, E., Foster, G. H., Chung, D. S. and Lai, F. S.',
    year: 1978,
    title: 'Static pressure drop across a bed of corn mixed with fines',
    where: 'Transactions of the ASAE 21(5), 997-1000',
    provenance: 'memory',
  },
  {
    key: 'haswell-1954',
    authors: 'Haswell, G. A.',
    year: 1954,
    title: 'A note on the specific heat of rice, oats, and their products',
    where: 'Cereal Chemistry 31, 341-343',
    provenance: 'memory',
  },
  {
    key: 'isu-2021-cool-grain',
    authors: 'Iowa State University Extension and Outreach',
    year: 2021,
    title: 'Cool stored grain now',
    where: 'Integrated Crop Management blog',
    url: 'https://crops.extension.iastate.edu/blog/kristina-tebockhorst/cool-stored-grain-now',
    provenance: 'seen',
  },
  {
    key: 'jcgm-100',
    authors: 'Joint Committee for Guides in Metrology',
    year: 2008,
    title: 'JCGM 100: Guide to the expression of uncertainty in measurement',
    where: 'BIPM, annex G (effective degrees of freedom)',
    url: 'https://www.bipm.org/en/committees/jc/jcgm/publications',
    provenance: 'memory',
  },
  {
    key: 'kazarian-hall-1965',
    authors: 'Kazarian, E. A. and Hall, C. W.',
    year: 1965,
    title: 'Thermal properties of grain',
    where: 'Transactions of the ASAE 8(1), 33-37, as in ASAE D243',
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
    key: 'ndsu-2019-drying',
    authors: 'North Dakota State University Extension',
    year: 2019,
    title: 'Corn and soybean drying and storage',
    where: 'Extension slides',
    provenance: 'seen',
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
    key: 'okabe-ito-2008',
    authors: 'Okabe, M. and Ito, K.',
    year: 2008,
    title: 'Color universal design: how to make figures and presentations that are friendly to colorblind people',
    where: 'Jikei Medical School and University of Tokyo',
    provenance: 'memory',
  },
  {
    key: 'rodriguez-arias-1963',
    authors: 'Rodriguez-Arias, J. H., Hall, C. W. and Bakker-Arkema, F. W.',
    year: 1963,
    title: 'Heat of vaporization for shelled corn',
    where: 'Cereal Chemistry 40, 676-683',
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
    key: 'sharma-thompson-1973',
    authors: 'Sharma, D. K. and Thompson, T. L.',
    year: 1973,
    title: 'Specific heat and thermal conductivity of sorghum',
    where: 'Transactions of the ASAE 16(1), 114-117',
    provenance: 'memory',
  },
  {
    key: 'sokhansanj-1986',
    authors: 'Sokhansanj, S., Zhijie, W., Jayas, D. and Kameoka, T.',
    year: 1986,
    title: 'Equilibrium relative humidity-moisture content of rapeseed (canola) from 5 °C to 25 °C',
    where: 'Transactions of the ASAE 29(3), 837-839',
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
    key: 'test-weight',
    authors: 'Wikipedia contributors',
    year: null,
    title: 'Test weight',
    where: 'legal bushel weights of the US states and the bushel of 2150.42 cubic inches',
    url: 'https://en.wikipedia.org/wiki/Test_weight',
    provenance: 'seen',
  },
  {
    key: 'thompson-1972',
    authors: 'Thompson, T. L.',
    year: 1972,
    title: 'Temporary storage of high-moisture shelled corn using continuous aeration',
    where: 'Transactions of the ASAE 15(2), 333-337',
    provenance: 'memory',
  },
  {
    key: 'umn-2014-wet-soybeans',
    authors: 'University of Minnesota Extension',
    year: 2014,
    title: 'Storing, drying, and handling wet soybeans',
    where: 'Minnesota Crop News',
    url: 'http://blog-crop-news.extension.umn.edu/2014/10/storing-drying-and-handling-wet-soybeans.html',
    provenance: 'seen',
  },
  {
    key: 'unl-2022-conditioning',
    authors: 'University of Nebraska-Lincoln',
    year: 2022,
    title: 'Considerations when conditioning too dry soybeans',
    where: 'CropWatch',
    url: 'https://cropwatch.unl.edu/2022/considerations-when-conditioning-too-dry-soybeans',
    provenance: 'seen',
  },
  {
    key: 'wratten-1969',
    authors: 'Wratten, F. T., Poole, W. D., Chesness, J. L., Bal, S. and Ramarao, V.',
    year: 1969,
    title: 'Physical and thermal properties of rough rice',
    where: 'Transactions of the ASAE 12(6), 801-803',
    provenance: 'memory',
  },
];

/** @throws RangeError when the bibliography lacks the key */
export function sourceOf(key: string): Source {
  const found = SOURCES.find((source) => source.key === key);
  if (found === undefined) throw new RangeError(`no source "${key}" in the bibliography (src/base/sources.ts)`);
  return found;
}

/** `Okabe, M. and Ito, K. (2008). Color universal design … . Jikei Medical School …` */
export function citation(source: Source): string {
  const year = source.year === null ? '' : ` (${source.year})`;
  return `${source.authors}${year}. ${source.title}. ${source.where}.`;
}
