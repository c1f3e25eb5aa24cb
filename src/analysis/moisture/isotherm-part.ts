import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { moistureByOtherIsothermWb } from '../../grain/isotherm-spread.ts';
import { isothermsInUse } from '../useful/isotherms-in-use.ts';
import { meanMoisture } from './cable-points.ts';
import type { ErrorPart } from './error-part.ts';
import { isothermNamed } from './isotherm-named.ts';
import type { MomentName } from './moment-window.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { sensorMean } from './sensor-mean.ts';
import { believedReadings } from './sensor-readings.ts';

/** What speaks for the cable's own isotherm is that its maker took it for the crop; the other half is shared by the others in use. */
const OTHERS_WEIGHT = 0.5;
/** Grain without a temperature, C: of a bin in autumn. */
const ASSUMED_C = 12;
/** Moistures that are turned around at, fraction. */
const LEAST_WB = 0.04;
const MOST_WB = 0.4;

/**
 * A cable tells moisture from the humidity in it by an isotherm, and which of the published ones this grain follows nobody
 * knows. By another the same humidities are other moistures. Isotherms part more in wet grain than in dry, so this does not
 * cancel in a difference as the fixed error of a sensor does.
 *
 * @returns  of the points removed: what they would be moved by in each edition, at most what the stated bias of a bin's
 *           sensors allows, and the root mean square of it by weight; 0 where the crop has one isotherm only
 */
export function isothermPart(observed: ObservedMoisture): ErrorPart {
  const { bin, season } = observed.input;
  const part = { cause: 'isotherm of the cables', sd: 0, df: Number.POSITIVE_INFINITY };
  const editions = editionsInUse(bin.grain.crop, season.sensors.moisture.isotherm);
  if (editions === null || observed.changes.length === 0) return part;
  const moments = [momentOf(observed, 'start'), momentOf(observed, 'end')];
  const shares = observed.changes.map((one) => one.share);
  const biasWb = season.sensors.moisture.biasWb;
  const movedBy = (edition: Isotherm) => {
    const [start, end] = moments.map(({ moistures, temps }) => {
      const turned = moistures.map((wb, i) => byOther(editions.own, edition, temps[i], wb));
      return 100 * (meanMoisture(turned, shares) - meanMoisture(moistures, shares));
    });
    return (start - end) * withinBias(start, end, biasWb);
  };
  const weight = OTHERS_WEIGHT / editions.others.length;
  const choices = editions.others.map((edition) => ({ moves: movedBy(edition), weight }));
  return { ...part, sd: Math.sqrt(choices.reduce((sum, one) => sum + weight * one.moves ** 2, 0)), choices };
}

/**
 * A wrong isotherm is an error that a bin's sensors share. Where season.yaml states the limit that 95 % of such errors keep,
 * an edition tells only how the error would part between the two moments, not that it could be larger: each is more likely
 * than the 5 % that the limit leaves out, so none is beyond it.
 *
 * @param startPoints, endPoints  what the edition would move the two means by
 * @returns                       part of it that the stated bias allows, 0 to 1
 */
function withinBias(startPoints: number, endPoints: number, biasWb: number | null): number {
  const size = Math.hypot(startPoints, endPoints) / Math.SQRT2;
  return biasWb === null || size === 0 ? 1 : Math.min(1, (100 * biasWb) / size);
}

/** The cable's isotherm and the others in use for the crop; null where there is nothing to choose. */
function editionsInUse(crop: string, named: string | null): { own: Isotherm; others: readonly Isotherm[] } | null {
  // One name stands for all cables of a season: in a bin of another crop they work by that crop's own.
  const own = isothermNamed(crop, named) ?? isothermOf(crop);
  const { others } = isothermsInUse({ crop, isotherm: own.name });
  return others.length === 0 ? null : { own, others };
}

/** What each sensor told, and how warm it was there. */
function momentOf({ input, moments, changes }: ObservedMoisture, name: MomentName) {
  const { bin, series, spans } = input;
  const { span, stillAir } = moments[name]!;
  const warmths = believedReadings(bin, series, 'temperature', spans, span.fromMs, span.toMs);
  const each = changes.map(({ cable, sensor }) => {
    const own = warmths.find((one) => one.cable === cable && one.sensor === sensor);
    return own === undefined ? Number.NaN : sensorMean(own, span, stillAir).value;
  });
  const known = each.filter((tempC) => !Number.isNaN(tempC));
  const usual = known.length === 0 ? ASSUMED_C : known.reduce((sum, tempC) => sum + tempC, 0) / known.length;
  return {
    moistures: changes.map((one) => (name === 'start' ? one.startWb : one.endWb)),
    temps: each.map((tempC) => (Number.isNaN(tempC) ? usual : tempC)),
  };
}

/** Moved by what parts the two isotherms; a humidity that is held at its bounds on the way moves nothing by itself. */
function byOther(from: Isotherm, to: Isotherm, tempC: number, moistureWb: number): number {
  const coldest = Math.max(from.tempRangeC[0], to.tempRangeC[0]);
  const held = Math.max(coldest, Math.min(from.tempRangeC[1], to.tempRangeC[1], tempC));
  const wb = Math.min(MOST_WB, Math.max(LEAST_WB, moistureWb));
  const there = moistureByOtherIsothermWb(from, to, held, wb);
  return moistureWb + there - moistureByOtherIsothermWb(from, from, held, wb);
}
