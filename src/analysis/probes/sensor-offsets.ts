import { estimate, Z95 } from '../../base/estimate.ts';
import type { Bin } from '../../season/season.ts';
import { firmPart, joinErrors } from '../moisture/error-part.ts';
import { scatterPart, weightedOffset } from './probe-offset.ts';
import type { ProbePair, SensorOffset } from './probe-types.ts';

/** A sample is a sensor's own where the sensor carries so much of what the cable says there. */
const OWN_SHARE = 0.75;
/** So many standard errors from the others, a sensor is called off: of a dozen good ones none is by chance. */
const SURE_SDS = 3;

/** A sample beside a sensor. */
interface Beside {
  offset: number;
  sd: number;
  between: number;
}

/**
 * Each sensor's own offset, by the samples that lie beside it: those that count, and those that were left out as far from
 * all others, for a sensor that is off makes its samples so.
 *
 * @param meterLimit  points that 95 % of readings keep
 */
export function sensorOffsets(bin: Bin, pairs: readonly ProbePair[], meterLimit: number): SensorOffset[] {
  const used = pairs.filter((one) => one.counted || one.far === true);
  const sensors = bin.cables.flatMap(({ id, sensorHeightsM }) =>
    sensorHeightsM.map((_, i) => ({ cable: id, sensor: i + 1, own: besideOf(used, id, i + 1) })),
  );
  const sampled = sensors.filter(({ own }) => own.length > 0);
  return sampled.map(({ cable, sensor, own }) => {
    const value = weightedOffset(own);
    const parts = ownParts(own);
    const { half90 } = joinErrors([...parts, firmPart('the hand meter', meterLimit / Z95)]);
    const others = sampled.filter((one) => one.cable !== cable || one.sensor !== sensor).flatMap((one) => one.own);
    return {
      cable,
      sensor,
      pairs: own.length,
      offset: estimate(value, value - half90, value + half90),
      beyondOthers: others.length === 0 ? null : beyond(value, parts, others),
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
function ownParts(own: readonly Beside[]) {
  const shared = Math.sqrt(own.reduce((sum, one) => sum + one.between ** 2, 0) / own.length);
  return [scatterPart(own), firmPart('which cable of the ring the samples lay near', shared)];
}

/** The meter's own error is in both and cancels. */
function beyond(value: number, parts: ReturnType<typeof ownParts>, others: readonly Beside[]) {
  const { sd, half90 } = joinErrors([...parts, ...ownParts(others)]);
  const more = value - weightedOffset(others);
  return Math.abs(more) > SURE_SDS * sd && Math.abs(more) > half90
    ? estimate(more, more - half90, more + half90)
    : null;
}
