import type { Section } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import type { Season } from '../../season/season.ts';
import { airflowChecks } from './airflow-checks.ts';
import { emcChecks } from './emc-checks.ts';
import { isothermFigure } from './isotherm-figure.ts';
import { resistanceFigure } from './resistance-figure.ts';
import { seasonConstants } from './season-constants.ts';
import { isothermCrops, resistanceCrops } from './season-crops.ts';

/** Isotherms and airflow resistance, a small chart for each crop: those of the season, or the others, folded. */
export function cropSection(season: Pick<Season, 'bins'>, which: 'used' | 'others', units: Units): Section {
  const charts = () => {
    const prefix = which === 'used' ? 'season' : 'other';
    const all = [
      isothermFigure(`${prefix}-isotherms`, isothermCrops(season)[which], emcChecks(), units),
      resistanceFigure(`${prefix}-resistance`, resistanceCrops(season)[which], airflowChecks(), units),
    ].filter((one) => one !== null);
    return { figures: all.map((one) => one.figure), tables: all.map((one) => one.table) };
  };
  return which === 'used'
    ? section('crops', 'The season’s crops', () => ({
        lead:
          season.bins.length === 0
            ? 'No bin is listed, so there is no crop of the season.'
            : 'Equilibrium moisture and resistance to airflow as the kit takes them, with every published point of the crop. A point off its line is most often a statement that names no equation and agrees with another edition; the table of values that are not reproduced says which.',
        table: seasonConstants(season),
        ...charts(),
      }))
    : section('other-crops', 'Other crops', () => ({
        lead: 'The same for crops that no bin of this season held; not printed.',
        folded: 'Charts of the other crops',
        printed: false,
        ...charts(),
      }));
}
