import { type Estimate, estimate, Z95 } from '../../base/estimate.ts';
import { median } from '../../base/stats/quantile.ts';
import type { Bin, SensorErrors } from '../../season/season.ts';
import { type ErrorPart, firmPart, joinErrors } from '../moisture/error-part.ts';
import { ASSUMED_ACCURACY } from '../moisture/reading-parts.ts';
import type { BinMoisture } from '../types.ts';
import { correctedForSensor } from './corrected-for-sensor.ts';
import { scatterPart, weightedOffset } from './probe-offset.ts';
import type { ProbePair, SensorOffset } from './probe-types.ts';

/** A sample is a sensor's own where the sensor carries so much of what the cable says there. */
const OWN_SHARE = 0.75;
/** So many standard errors off, its accuracy counted, a sensor is named: one good one of eighty is so by chance, and a look is cheap. */
const SURE_SDS = 2.5;
/** Fewer others cannot say which of them is off. */
const LEAST_OTHERS = 2;
/** Standard error of a median over that of a mean, of many normal values. */
const MEDIAN_RATIO = Math.sqrt(Math.PI / 2);

/** A sample beside a sensor. */
interface Beside {
  offset: number;
  sd: number;
  between: number;
}

/** A sensor by its samples, points; the meter's own error, which is the same for all, is not in its parts. */
interface Found {
  cable: string;
  sensor: number;
  pairs: number;
  value: number;
  parts: readonly ErrorPart[];
}

/**
 * Each sensor's own offset, by the samples that lie beside it: those that count, and those that were left out as far from
 * all others, for a sensor that is off makes its samples so.
 *
 * @param meterLimit  points that 95 % of readings keep
 */
export function sensorOffsets(
  bin: Bin,
  moisture: BinMoisture,
  errors: SensorErrors['moisture'],
  pairs: readonly ProbePair[],
  meterLimit: number,
): SensorOffset[] {
  const used = pairs.filter((one) => one.counted || one.far === true);
  const found = bin.cables.flatMap(({ id, sensorHeightsM }) =>
    sensorHeightsM.flatMap((_, i): Found[] => {
      const own = besideOf(used, id, i + 1);
      if (own.length === 0) return [];
      return [{ cable: id, sensor: i + 1, pairs: own.length, value: weightedOffset(own), parts: ownParts(own) }];
    }),
  );
  return found.map((one) => {
    const { cable, sensor, value, parts } = one;
    const { half90 } = joinErrors([...parts, firmPart('the hand meter', meterLimit / Z95)]);
    const others = found.filter((other) => other !== one);
    const offset = estimate(value, value - half90, value + half90);
    return {
      cable,
      sensor,
      pairs: one.pairs,
      offset,
      beyondOthers: others.length < LEAST_OTHERS ? null : beyond(one, others, accuracySd(errors)),
      corrected: correctedForSensor(moisture, cable, sensor, offset),
    };
  });
}

function besideOf(pairs: readonly ProbePair[], cable: string, sensor: number): Beside[] {
  return pairs.flatMap(({ byCable, between }) =>
    byCable
      .filter((one) => one.cable === cable)
      .filter(({ parts }) => parts.some((part) => part.sensor === sensor && part.share >= OWN_SHARE))
      .map(({ offset, sd }) => ({ offset, sd, between })),
  );
}

/** What several samples share does not shrink with their number: which of the ring's cables they lay near. */
function ownParts(own: readonly Beside[]): ErrorPart[] {
  const shared = Math.sqrt(own.reduce((sum, one) => sum + one.between ** 2, 0) / own.length);
  return [scatterPart(own), firmPart('which cable of the ring the samples lay near', shared)];
}

/** Beside the middle of the others, which one that is off itself does not move; good sensors differ by their accuracy. */
function beyond(one: Found, others: readonly Found[], usualSd: number): Estimate | null {
  const more = one.value - median(others.map(({ value }) => value));
  const otherSd = Math.hypot(median(others.map(({ parts }) => joinErrors(parts).sd)), usualSd);
  const middle = firmPart('the middle of the others', (MEDIAN_RATIO * otherSd) / Math.sqrt(others.length));
  const { sd, half90 } = joinErrors([...one.parts, middle]);
  return Math.abs(more) > SURE_SDS * Math.hypot(sd, usualSd) ? estimate(more, more - half90, more + half90) : null;
}

function accuracySd({ accuracyWb }: SensorErrors['moisture']): number {
  return (accuracyWb === null ? ASSUMED_ACCURACY : 100 * accuracyWb) / Z95;
}
