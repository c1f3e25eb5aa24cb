import { zoneOf } from '../../base/zone.ts';
import { fillTimes } from '../grain/fill-times.ts';
import { entryMoisture } from './entry-moisture.ts';
import type { Aim } from './hour-effects.ts';
import { hoursWhere, sumOf, sumWhere } from './hour-sums.ts';
import { judgeCases } from './judge-cases.ts';
import { type Judged, spanned } from './judged-hours.ts';
import type { SeasonHours } from './known-hours.ts';
import { type UsefulHours, VERDICTS } from './useful-hours-types.ts';
import type { UsefulInput } from './useful-input.ts';

const AGAINST = VERDICTS.indexOf('against');

/** What the air could do to the layer that it met first; null where no sensor hangs there. */
export function entryLayer(input: UsefulInput, hours: SeasonHours, aim: Aim): UsefulHours['entryLayer'] {
  const { bin, series, spans, season } = input;
  const { on, known, choices, grain } = hours;
  const found = entryMoisture(bin, series, spans, fillTimes(bin), zoneOf(season.site.timeZone), on.midMs);
  if (found === null || found.moistureWb.every(Number.isNaN)) return null;
  const cases = judgeCases({ ...known, grainWb: found.moistureWb }, { ...choices, withPlateaus: false }, aim, grain);
  const all = sumOf(on.hours);
  const effect = (sign: number) => (one: Judged) => sumWhere(on, (i) => one.moisture[i] === sign);
  const overdried = hoursWhere(
    on,
    ({ verdicts }) => verdicts,
    AGAINST,
    (one, i) => one.moisture[i] < 0,
  );
  return {
    dry: spanned(cases, effect(-1), all),
    rewet: spanned(cases, effect(1), all),
    overdried: aim.goal === 'dry' && aim.moistureWb !== null ? spanned(cases, overdried, all) : null,
    heightM: found.heightM,
  };
}
