import { zoneOf } from '../../base/zone.ts';
import { fillTimes } from '../grain/fill-times.ts';
import { countedHours } from './counted-hours.ts';
import { entryMoisture } from './entry-moisture.ts';
import type { KnownHours } from './hour-cases.ts';
import type { Aim } from './hour-effects.ts';
import { judgeCases } from './judge-cases.ts';
import type { Judged } from './judged-hours.ts';
import type { SeasonHours } from './known-hours.ts';
import { HOUR_CLASSES, type UsefulHours, VERDICTS } from './useful-hours-types.ts';
import type { UsefulInput } from './useful-input.ts';

const AGAINST = VERDICTS.indexOf('against');
const EMPTY = HOUR_CLASSES.indexOf('empty');

/** What the air could do to the layer that it met first; null where no sensor hangs there. */
export function entryLayer(input: UsefulInput, hours: SeasonHours, aim: Aim, sdH: number): UsefulHours['entryLayer'] {
  const { bin, series, spans, season } = input;
  const { on, known, choices, grain, silent, silentKnown, silentGrain } = hours;
  const entryAt = (atMs: Float64Array) =>
    entryMoisture(bin, series, spans, fillTimes(bin), zoneOf(season.site.timeZone), atMs);
  const found = entryAt(on.midMs);
  if (found === null || found.moistureWb.every(Number.isNaN)) return null;
  const judged = (of: KnownHours, grainWb: Float64Array, inGrain: Uint8Array) =>
    judgeCases({ ...of, grainWb }, { ...choices, withPlateaus: false }, aim, inGrain);
  const time = {
    on,
    cases: judged(known, found.moistureWb, grain),
    silent,
    silentCases: judged(silentKnown, entryAt(silent.midMs)?.moistureWb ?? silentKnown.grainWb, silentGrain),
    sdH,
  };
  // No effect is told of an hour without grain: none is open either.
  const untold = (one: Judged, i: number) => Number.isNaN(one.moisture[i]) && one.classes[i] !== EMPTY;
  const effect = (sign: number) => countedHours(time, (one, i) => one.moisture[i] === sign, untold);
  const overdried = (one: Judged, i: number) => one.verdicts[i] === AGAINST && one.moisture[i] < 0;
  return {
    dry: effect(-1),
    rewet: effect(1),
    overdried: aim.goal === 'dry' && aim.moistureWb !== null ? countedHours(time, overdried, untold) : null,
    heightM: found.heightM,
  };
}
