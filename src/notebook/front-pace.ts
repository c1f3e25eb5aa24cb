import { handbookCooling, thumbHours } from '../analysis/fronts/planning-hours.ts';
import { HANDBOOK_HOURS, RULE_OF_THUMB_HOURS } from '../analysis/fronts/rule-of-thumb.ts';
import type { SeasonFront } from '../analysis/fronts/season-front.ts';
import { withheld } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { airflowPerGrain } from './per-grain.ts';

/** How fast each bin's coldest front went, beside what its airflow lets expect. */
export function paceTable(fronts: readonly SeasonFront[], units: Units, latitudeDeg: number | null): Table {
  return {
    id: 'pace',
    caption: 'How fast it went, beside the planning figures for the bin’s airflow',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'speed', label: 'Front speed, with fan on', quantity: 'front speed' },
      { key: 'air', label: 'Airflow', quantity: 'airflow per grain' },
      { key: 'through', label: 'Through after', quantity: 'hours' },
      { key: 'rule', label: 'Rule of thumb', quantity: 'hours' },
      { key: 'handbook', label: 'Handbook, by season', quantity: 'hours' },
    ],
    rows: fronts.map(({ review, main, why }): Record<string, Cell> => {
      const cfm = review.airflow.cfmPerBushel;
      const none = withheld(why ?? 'No cooling front was followed.');
      return {
        bin: review.bin.name,
        speed: main === null ? none : (main.campaign.speed?.speedMH ?? none),
        air: airflowPerGrain(cfm, units),
        through: main?.throughHours ?? none,
        rule: thumbHours(cfm),
        handbook: main === null ? none : handbookCooling(cfm, main.campaign.span.fromMs, units.zone, latitudeDeg),
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

export const PACE_NOTE = `Front speed: the median of the slopes of fan hours over height in each cable, the cables by their mean; it is estimated, as are the airflow and what follows from it. Rule of thumb: ${RULE_OF_THUMB_HOURS} h at 13.4 L/s per m³ (1 cfm/bu), and as many times more as the airflow is less (Iowa State University Extension; about the same is stated from field tests, 300 h at 0.67 L/s per m³ (0.05 cfm/bu) and 150 h at 1.3 L/s per m³ (0.1 cfm/bu)), a planning figure with a margin. Handbook: ${HANDBOOK_HOURS.fall} h in fall (September to November, south of the equator half a year later) and ${HANDBOOK_HOURS.winter} h in winter, likewise; that table is recalled and was not checked.`;
