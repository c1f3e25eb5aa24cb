import { estimate, Z90, Z95 } from '../../base/estimate.ts';
import { shrunkenMeans } from '../../base/stats/shrunken-means.ts';
import { storageGuidanceOf } from '../../grain/storage-guidance.ts';
import type { Bin, SensorErrors } from '../../season/season.ts';
import { ASSUMED_ACCURACY, ASSUMED_BIAS } from '../moisture/reading-parts.ts';
import type { BinMoisture, SensorShare } from '../types.ts';
import type { WettestPlace } from './condition-types.ts';

type Ended = SensorShare & { endWb: number };

/** A third of the depth with fewer sensors than these is judged among all sensors of the bin. */
const LEAST_OF_THIRD = 6;

/**
 * A mean hides a wet core: the wettest place decides whether the grain keeps. The wettest of many sensors reads high partly by its own error, so
 * each is drawn towards its third of the depth as far as the sensors' errors alone would scatter them.
 *
 * @returns  null where no sensor tells the moisture at the end
 */
export function wettestPlace(
  bin: Bin,
  { shares }: Pick<BinMoisture, 'shares'>,
  errors: SensorErrors['moisture'],
): WettestPlace | null {
  const ended = shares.filter((one): one is Ended => one.endWb !== null);
  if (ended.length === 0) return null;
  const told = likelyMoistures(ended, (errors.accuracyWb ?? ASSUMED_ACCURACY / 100) / Z95);
  const most = told.reduce((wettest, one) => (one.mean > wettest.mean ? one : wettest));
  const half = Z90 * Math.hypot(most.sd, (errors.biasWb ?? ASSUMED_BIAS / 100) / Z95);
  const { cable, sensor, heightM } = most.place;
  const guidance = storageGuidanceOf(bin.grain.crop);
  const limit = guidance === null ? null : (guidance.shortWb ?? guidance.longWb);
  const above = limit !== null && most.mean - half > limit && bin.grain.unloadedMs === null;
  return {
    cable,
    sensor,
    heightM,
    endWb: estimate(most.mean, Math.max(0, most.mean - half), most.mean + half),
    aboveWb: above ? limit : null,
  };
}

function likelyMoistures(ended: readonly Ended[], errorSd: number) {
  const highestM = Math.max(...ended.map((one) => one.heightM));
  const third = (one: Ended) => Math.min(2, Math.floor((3 * one.heightM) / highestM));
  const likely = (among: readonly Ended[]) => {
    const drawn = shrunkenMeans(
      among.map((one) => one.endWb),
      errorSd,
    );
    return among.map((place, i) => ({ place, ...drawn[i] }));
  };
  const ofBin = likely(ended);
  return [0, 1, 2].flatMap((part) => {
    const beside = ended.filter((one) => third(one) === part);
    return beside.length >= LEAST_OF_THIRD ? likely(beside) : ofBin.filter(({ place }) => third(place) === part);
  });
}
