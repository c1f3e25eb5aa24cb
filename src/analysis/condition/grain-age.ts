import { withheld } from '../../base/estimate.ts';
import { localDayOf, type Zone } from '../../base/zone.ts';
import { sensorShares } from '../../bin/shares.ts';
import { STORAGE_RULES, type StorageRule } from '../../grain/storage-rules.ts';
import type { Bin } from '../../season/season.ts';
import { type StorageLife, storageLifeBy } from '../../simulation/bed/storage-life.ts';
import { ageNotes } from './age-notes.ts';
import type { GrainAge, PlaceAge } from './condition-types.ts';
import { lossOf, meanLoss } from './dry-matter-loss.ts';
import { lifeInterval } from './life-interval.ts';
import { lifeUsedSoFar } from './life-used.ts';
import type { PlaceMoistures } from './place-moistures.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { STEP_MS, type StepGrid } from './step-grid.ts';

/** What a place's storage life may be told of: where readings stand near this part of its stay or on both sides of it, and where it lay for a day at least. */
const LEAST_SEEN = 0.8;
const LEAST_STEPS = 4;

export interface GrainAgeInput {
  bin: Bin;
  grid: StepGrid;
  tracks: readonly PlaceTrack[];
  moistures: PlaceMoistures;
  /** standard errors of a temperature, K: of one place, and of the mean of all */
  placeSdK: number;
  meanSdK: number;
  depthM: number | null;
  zone: Zone;
  /** whether any outdoor air is known */
  weather: boolean;
}

/** How much of its storage time a bin's grain has used, by its crop's rule summed over the temperatures and moistures of its places. */
export function grainAge(input: GrainAgeInput): GrainAge {
  const { bin, tracks, moistures, depthM } = input;
  const rules = STORAGE_RULES.filter((one) => one.crop === bin.grain.crop);
  if (rules.length === 0) return none(null, `No rule for how long ${bin.grain.crop} keeps was read.`);
  const [rule] = rules;
  if (depthM === null) return none(rule, 'No depth of the grain is stated, so no sensor is known to hang in it.');
  if (tracks.length === 0) return none(rule, 'No temperature of the grain could be believed.');
  const told = tracks
    .map((track, i) => ({ track, moistureWb: moistures.moistureWb[i] }))
    .filter(({ track, moistureWb }) => isTold(track, moistureWb));
  const shares = sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) =>
    told.some(({ track }) => track.cable === cable && track.sensor === sensor),
  );
  if (shares.length === 0) return none(rule, whyNot(tracks, moistures));
  const places = shares.map((place) => ({
    ...told.find(({ track }) => track.cable === place.cable && track.sensor === place.sensor)!,
    share: place.share,
  }));
  return aged(input, rules, places);
}

type Place = { track: PlaceTrack; moistureWb: Float64Array; share: number };

function aged(input: GrainAgeInput, rules: readonly StorageRule[], places: readonly Place[]): GrainAge {
  const [rule, ...others] = rules.map((one) => ({ rule: one, life: storageLifeBy(one) }));
  const errors = (sdK: number, sdWb: number) => ({
    sdK,
    sdWb,
    crop: rule.rule.crop,
    others: others.map((one) => one.life),
  });
  const ofPlace = errors(input.placeSdK, input.moistures.placeSdWb);
  const each = places.map((place): PlaceAge => {
    const used = lifeInterval(rule.life, [{ ...place, share: 1 }], ofPlace);
    const { cable, sensor, heightM } = place.track;
    return { cable, sensor, heightM, share: place.share, lifeUsed: used, loss: lossOf(rule.life, used) };
  });
  const worst = each.reduce((a, b) => ((b.lifeUsed.value ?? 0) > (a.lifeUsed.value ?? 0) ? b : a));
  const mean = lifeInterval(rule.life, places, errors(input.meanSdK, input.moistures.meanSdWb));
  const { name, criterion, honesty, sourceKeys } = rule.rule;
  return {
    rule: { name, criterion, honesty, sourceKeys },
    lifeUsed: mean,
    worstLifeUsed: worst.lifeUsed,
    loss: meanLoss(rule.life, each, mean),
    worstLoss: worst.loss,
    worst: { cable: worst.cable, sensor: worst.sensor, heightM: worst.heightM },
    places: each,
    days: daysOf(input, rule.life, places, places[each.indexOf(worst)]),
    notes: ageNotes({ ...input, rule: rule.rule, places }),
  };
}

function daysOf({ grid, zone }: GrainAgeInput, life: StorageLife, places: readonly Place[], worst: Place) {
  const all = places.map((place) => ({ place, used: lifeUsedSoFar(life, place.track, place.moistureWb) }));
  const byDay = new Map<number, { dayMs: number; mean: number; worst: number }>();
  for (let i = 0; i < grid.count; i++) {
    const ms = grid.startMs + (i + 0.5) * STEP_MS;
    const dayMs = localDayOf(zone, ms);
    byDay.set(dayMs, {
      dayMs,
      mean: all.reduce((sum, { place, used }) => sum + place.share * used[i], 0),
      worst: all.find(({ place }) => place === worst)!.used[i],
    });
  }
  return [...byDay.values()];
}

function seenShare({ seen, carried, from, to }: PlaceTrack): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += seen[i] | carried[i];
  return to > from ? sum / (to - from) : 0;
}

function isTold(track: PlaceTrack, moistureWb: Float64Array): boolean {
  if (track.to - track.from < LEAST_STEPS || seenShare(track) < LEAST_SEEN) return false;
  for (let i = track.from; i < track.to; i++) if (Number.isNaN(moistureWb[i])) return false;
  return true;
}

function whyNot(tracks: readonly PlaceTrack[], { moistureWb, why }: PlaceMoistures): string {
  const moist = tracks.filter((track, i) => !Number.isNaN(moistureWb[i][track.from]));
  if (moist.length === 0) return why ?? 'No moisture of the grain is known.';
  const long = moist.filter(({ from, to }) => to - from >= LEAST_STEPS);
  if (long.length === 0) return 'No sensor lay in the grain for a day.';
  const most = Math.floor(100 * Math.max(...long.map(seenShare)));
  const where = moist.length < tracks.length ? 'At the sensors of which a moisture is known readings' : 'Readings';
  return `${where} tell the temperature for at most ${most} % of the time in which the grain lay there; ${100 * LEAST_SEEN} % are needed.`;
}

function none(rule: StorageRule | null, why: string): GrainAge {
  const missing = withheld(why);
  return {
    rule:
      rule === null
        ? null
        : { name: rule.name, criterion: rule.criterion, honesty: rule.honesty, sourceKeys: rule.sourceKeys },
    lifeUsed: missing,
    worstLifeUsed: missing,
    loss: missing,
    worstLoss: missing,
    worst: null,
    places: [],
    days: [],
    notes: [],
  };
}

/** Of a bin that could not be worked out. */
export const missingAge = (why: string): GrainAge => none(null, why);
