import type { BinCondition, ConditionAlert } from './condition-types.ts';

/** A fall's cooling takes two weeks; grain that stays so warm for longer was left warm. Own judgement. */
const LONG_WARM_DAYS = 14;

/** What of a bin's condition a reader should act on. */
export function conditionAlerts({
  age,
  warming,
  outdoors,
  wettest,
  meanWb,
}: Pick<BinCondition, 'age' | 'warming' | 'outdoors' | 'wettest'> & { meanWb: number | null }): ConditionAlert[] {
  const { value, interval } = age.worstLifeUsed;
  const { worst } = age;
  const alerts: ConditionAlert[] = [];
  if (worst !== null && value !== null && (interval?.[1] ?? value) >= 1 && value >= 0.5) {
    alerts.push({
      kind: value >= 1 ? 'time used up' : 'time may be used up',
      place: worst,
      lifeUsed: age.worstLifeUsed,
    });
  }
  if (warming.found.length > 0) {
    const found = warming.found.reduce((a, b) => (b.aboveK > a.aboveK ? b : a));
    alerts.push({ kind: 'warmed by itself', place: found, found, others: warming.found.length - 1 });
  }
  if ((outdoors.days.interval?.[0] ?? 0) >= LONG_WARM_DAYS && outdoors.days.value !== null) {
    alerts.push({ kind: 'warmer than outdoors', days: outdoors.days });
  }
  if (wettest !== null && wettest.aboveWb !== null) {
    alerts.push({ kind: 'ended wet', place: wettest, limitWb: wettest.aboveWb, meanWb });
  }
  return alerts;
}

/** An alert as `summary.json` carries it: SI units and local dates. */
export function alertText(alert: ConditionAlert): string {
  switch (alert.kind) {
    case 'time used up':
    case 'time may be used up': {
      const [low, high] = alert.lifeUsed.interval ?? [Number.NaN, Number.NaN];
      const used = percent(alert.lifeUsed.value ?? Number.NaN);
      return `${placeText(alert.place)} used ${used} % (${percent(low)} to ${percent(high)}) of its allowable storage time.`;
    }
    case 'warmed by itself': {
      const { span, riseK, aboveK } = alert.found;
      return `${placeText(alert.place)} warmed by ${riseK.toFixed(1)} K from ${day(span.fromMs)} to ${day(span.toMs - 1)} with the fan at rest, to ${aboveK.toFixed(1)} K above all that lay near it${othersToo(alert.others)}.`;
    }
    case 'warmer than outdoors':
      return `The grain was 11 K and more warmer than the outdoor mean of 30 days on ${Math.round(alert.days.value ?? Number.NaN)} days.`;
    case 'ended wet': {
      const { endWb } = alert.place;
      const [low, high] = endWb.interval ?? [Number.NaN, Number.NaN];
      const tenth = (share: number) => (100 * share).toFixed(1);
      return `${placeText(alert.place)} ended at ${tenth(endWb.value ?? Number.NaN)} % moisture (${tenth(low)} to ${tenth(high)}), above the ${Number(tenth(alert.limitWb))} % that is published for storing the crop.`;
    }
  }
}

/** That other places did it too; empty where none did. */
export const othersToo = (others: number) =>
  others === 0 ? '' : `; so did ${others} other ${others === 1 ? 'place' : 'places'}`;

const percent = (share: number) => (100 * share).toFixed(0);
const day = (localMs: number) => new Date(localMs).toISOString().slice(0, 10);
const placeText = ({ cable, sensor, heightM }: { cable: string; sensor: number; heightM: number }) =>
  `Cable ${cable}, sensor ${sensor} (${heightM.toFixed(1)} m)`;
