import type { BinLog } from './bin-log.ts';
import { CLEAR_K, type Doubt } from './cross-checks.ts';
import { degreesOverSaid, degreesSaid } from './degrees-said.ts';
import { AFTER_H, type FitSamples } from './fit-samples.ts';
import type { Shown } from './play-cable.ts';

const CHECK_CLOCK = 'Check the clock of the fan log.';

/** Whole days by which the fan's log is tried to be shifted. */
const SHIFTS_D = [-7, -6, -5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6, 7];
/** Misfit of a shifted log over that of the log as it stands, from where on the log's clock is doubted. */
const SHIFTED_BETTER = 0.6;
/** Two logs differ at a read where they do in so many of the 48 hours before; fewer reads tell nothing. */
const DIFFER_H = 6;
const LEAST_READS = 8;
/**
 * A log some days early lets the air in before it came: the fit takes less air for it, and no other log does better then. What is left
 * stands where the fan began. Half as much again as a bed leaves out, 0.8 K, and sensors read wrong; in 58 sound drawn logs 0.9 K at the most.
 */
const EARLY_D = [1, 2, 3];
const EARLY_K = 1.2;

/**
 * Whether the grain's temperatures go better with a fan log of other days: looked at where the two logs differ, for a fan that runs for
 * weeks stands as logged nearly always.
 *
 * @param play  temperatures that the sensors would show with a log, by cable
 */
export function clockDoubts(
  log: BinLog,
  samples: FitSamples,
  play: (log: BinLog) => readonly Pick<Shown, 'tempC'>[],
): Doubt[] {
  const asLogged = play(log);
  const tried = SHIFTS_D.map((days) => {
    const other = shifted(log, 24 * days);
    const reads = readsApart(samples.readHours, log.fan.on, other.fan.on);
    const own = reads.length < LEAST_READS ? 0 : misfitAt(samples, asLogged, reads);
    return { days, own, part: own > CLEAR_K ? misfitAt(samples, play(other), reads) / own : 1 };
  });
  const best = tried.reduce((a, b) => (b.part < a.part ? b : a));
  if (best.part < SHIFTED_BETTER)
    return [
      { why: `The grain’s temperatures go better with a fan log moved by ${best.days} days.`, help: CHECK_CLOCK },
    ];
  const early = Math.max(...tried.filter(({ days }) => EARLY_D.includes(days)).map(({ own }) => own));
  if (!(early > EARLY_K)) return [];
  return [
    {
      why: `Where the fan began and ended the bed’s temperatures lie ${degreesOverSaid(early, EARLY_K)} from the log; ${degreesSaid(EARLY_K)} is the limit there.`,
      help: CHECK_CLOCK,
    },
  ];
}

function readsApart(readHours: readonly number[], one: Float64Array, other: Float64Array): number[] {
  const apart = new Float64Array(one.length + 1);
  for (let hour = 0; hour < one.length; hour++) apart[hour + 1] = apart[hour] + Math.abs(one[hour] - other[hour]);
  return [...readHours.keys()].filter((read) => {
    const end = readHours[read] + 1;
    return apart[end] - apart[Math.max(0, end - AFTER_H)] > DIFFER_H;
  });
}

/** Root mean square of the temperatures at some reads, K; 0 where none was told. */
function misfitAt({ cables }: FitSamples, shown: readonly Pick<Shown, 'tempC'>[], reads: readonly number[]): number {
  let sum = 0;
  let count = 0;
  cables.forEach(({ sensors, tempC }, cable) => {
    for (const read of reads) {
      for (let i = read * sensors; i < (read + 1) * sensors; i++) {
        const off = shown[cable].tempC[i] - tempC[i];
        if (Number.isNaN(off)) continue;
        sum += off * off;
        count += 1;
      }
    }
  });
  return count === 0 ? 0 : Math.sqrt(sum / count);
}

function shifted(log: BinLog, hours: number): BinLog {
  const on = log.fan.on.map((_, hour) => log.fan.on[hour - hours] ?? 0);
  const enteringC = log.enteringC.map((value, hour) => (log.fan.on[hour] > 0 && on[hour] > 0 ? value : Number.NaN));
  return { ...log, fan: { ...log.fan, on }, enteringC };
}
