import type { FitSamples } from './fit-samples.ts';
import type { Shown } from './play-cable.ts';

/** Why a fit is not believed, and what would help. */
export interface Doubt {
  why: string;
  help: string;
}

/** A place fits another sensor's readings better where its misfit is below this part of the own one's, which is above so many K. */
const BETTER = 0.6;
export const CLEAR_K = 0.9;
const MISPLACED_SHARE = 0.2;

/** Sensors whose temperatures go as the bed says of another place on their cable: numbered the wrong way, or plugged in wrongly. */
export function misplacedSensors(samples: FitSamples, shown: readonly Pick<Shown, 'tempC'>[]): Doubt[] {
  let all = 0;
  let misplaced = 0;
  // At rest a bed leaves out more, sun on the wall among it, and more at one height than at another.
  const near = [...samples.near.keys()].filter((read) => samples.near[read] !== 0);
  samples.cables.forEach(({ sensors, tempC }, cable) => {
    for (let sensor = 0; sensor < sensors; sensor++) {
      const offs = Array.from({ length: sensors }, (_, place) => {
        let sum = 0;
        let count = 0;
        for (const read of near) {
          const off = shown[cable].tempC[read * sensors + place] - tempC[read * sensors + sensor];
          if (Number.isNaN(off)) continue;
          sum += off * off;
          count += 1;
        }
        return Math.sqrt(sum / count);
      });
      if (Number.isNaN(offs[sensor])) continue;
      all += 1;
      if (offs[sensor] > CLEAR_K && Math.min(...offs) < BETTER * offs[sensor]) misplaced += 1;
    }
  });
  if (!(misplaced > 1 && misplaced >= MISPLACED_SHARE * all)) return [];
  return [
    {
      why: `${misplaced} of ${all} sensors show temperatures that belong to another height of their cable.`,
      help: 'Check how the cables’ sensors are numbered and plugged in, and their heights.',
    },
  ];
}

/** Points by which the isotherms that the log leaves open may part at the end for the moisture there to be told. */
const MOST_APART = 0.5;
/** Beyond this, half a point to either side of their middle as for other causes, whether a target is reached is a guess. */
const MOST_APART_TRUSTED = 1;

/** What isotherms leave open at the end. */
export interface OpenEnd extends Doubt {
  /** in a bin in which moisture is the goal, whether a way reaches it would be a guess */
  guess: boolean;
}

/** Why the isotherms that go with the log about as well leave the moisture at the end open; null where they do not. @param endsWb  of each, wet basis */
export function openEndOf(endsWb: readonly number[]): OpenEnd | null {
  const apart = 100 * (Math.max(...endsWb) - Math.min(...endsWb));
  if (!(apart > MOST_APART)) return null;
  return {
    guess: apart > MOST_APART_TRUSTED,
    why: `Isotherms that go with the log about as well part by ${apart.toFixed(1)} points at the end.`,
    help: 'Moistures of scale tickets in or out, hand samples by a moisture meter, or the isotherm by which the cables work (`sensors.moisture.isotherm`).',
  };
}
