import type { Estimate } from '../../base/estimate.ts';
import type { Fan } from '../../bin/fan.ts';
import type { Bin } from '../../season/season.ts';
import type { BinAirflow, BinFan, BinMoisture, BinTemperature, BinWater } from '../types.ts';
import type { UsefulHours } from '../useful/useful-hours-types.ts';
import type { EnergyPlausibility } from './unit-energy-types.ts';

/**
 * Published electricity of natural-air corn drying without heat: 1.57 kWh a bushel from 21 to 16 %, 0.31 a bushel-point
 * (North Dakota, 1.25 cfm/bu); about 1 kWh a bushel in the mean of Minnesota farms. The range about them is the kit's own
 * judgement, no published limit.
 */
export const NATURAL_AIR = { kwhPerBushelPoint: [0.15, 0.45] as const, northDakota: 0.31, minnesotaPerBushel: 1 };
/** Bushels of corn in a tonne: of 56 lb. */
const BUSHELS_PER_TONNE = 1000 / (56 * 0.45359237);
const perTonne = (perBushel: number) => Number((perBushel * BUSHELS_PER_TONNE).toPrecision(2));
/** The same in words. */
export const NATURAL_AIR_TEXT = (() => {
  const { northDakota, minnesotaPerBushel, kwhPerBushelPoint: range } = NATURAL_AIR;
  return `Published figures of natural-air corn drying without heat are ${perTonne(northDakota)} kWh a tonne-point (${northDakota} kWh a bushel-point) in North Dakota, from 21 to 16 %, and about ${perTonne(minnesotaPerBushel)} kWh a tonne (${minnesotaPerBushel} kWh a bushel) in the mean of Minnesota farms; ${range.map(perTonne).join(' to ')} kWh a tonne-point (${range.join(' to ')} kWh a bushel-point) is the kit’s own working range about them.`;
})();
const SOURCES = ['ndsu-2007-natural-air', 'umn-natural-air'];

/** Grain at harvest warmer than this was dried by summer's air, which carries off more with each fan hour; own judgement. */
const WARM_C = 24;
/** Airflow that spares or costs much of the pressure, and so of the energy, of the published 1 to 1.25 cfm/bu; own judgement. */
const LOW_CFM = 0.7;
const HIGH_CFM = 1.6;
/** Hours that worked against the goal: from this share on they are a cause. */
const MUCH = 0.2;
/** Points below the target that fans were run for nothing. */
const FAR_PAST = 0.005;

/** Under this part of the range's lower end no bed is so shallow and no air so warm: the log must leave out hours; own judgement. */
const FAR_BELOW = 1 / 4;

/** What a bin's review knows that can make its energy high or low. */
export interface PlausibilityInput {
  bin: Bin;
  fans: readonly Fan[];
  fan: Pick<BinFan, 'unknownHours' | 'hours' | 'spans'>;
  moisture: Pick<BinMoisture, 'end'>;
  temperature: Pick<BinTemperature, 'start'>;
  water: Pick<BinWater, 'agree' | 'bySensors' | 'byAirBetween' | 'byTickets'>;
  airflow: Pick<BinAirflow, 'cfmPerBushel'>;
  useful: Pick<UsefulHours, 'againstShare'> | null;
  /** a part of its fans' energy in equal shares where these serve other bins too */
  kwhPerBushelPoint: Estimate;
  /** bins that one of its fans serves, at most */
  users: number;
}

/** How the energy of a bin that was dried stands beside published figures; for other goals and with heat there are none here. */
export function plausibleEnergy(input: PlausibilityInput): EnergyPlausibility {
  const { bin, kwhPerBushelPoint: own } = input;
  const none = (text: string): EnergyPlausibility => ({ stands: null, text: [text], sourceKeys: [] });
  if (bin.goal !== 'dry') {
    return none(
      'No published use of energy is at hand for aeration or conditioning by the point, so none stands beside it.',
    );
  }
  if (own.value === null || own.interval === null)
    return none(own.why ?? 'The energy for a point of the grain is not known.');
  if (input.fans.some((fan) => fan.heater !== null)) {
    return none(`The published figures are of air without heat; ${bin.name} has a heater.`);
  }
  const [low, high] = NATURAL_AIR.kwhPerBushelPoint;
  // Of a shared fan's energy the bin may have taken all.
  const [from, to] = [own.interval[0], own.interval[1] * input.users];
  if (input.users > 1 && !(to < low)) {
    return none(
      `The published figures are of fans that serve one bin; that ${bin.name} took an equal part of the energy of its fans is an assumption.`,
    );
  }
  if (from >= low && to <= high) {
    return {
      stands: 'within',
      text: ['Its energy for a point of its grain lies within what fits published figures.'],
      sourceKeys: SOURCES,
    };
  }
  if (to < low || from > high) {
    const stands = to < low ? 'below' : 'above';
    const log =
      'the fan log leaves out most of the hours, or the fan’s power is told far too low: no natural air dries with so little';
    const reasons = [...(to < FAR_BELOW * low ? [log] : []), ...(stands === 'below' ? whyLow(input) : whyHigh(input))];
    const likely =
      reasons.length > 0
        ? `Most likely ${reasons.slice(0, 2).join('; then ')}.`
        : 'Nothing in the logs says why: look at the points and at the fan’s power first.';
    return {
      stands,
      text: [`Its energy for a point of its grain lies ${stands} what fits published figures.`, likely],
      sourceKeys: SOURCES,
      ...(to < FAR_BELOW * low ? { doubtsLog: true } : {}),
    };
  }
  const text = `The interval of its energy for a point of its grain reaches ${from < low ? 'below' : 'above'} what fits published figures; nobody can say that it is unusual.`;
  return { stands: 'across', text: [text], sourceKeys: SOURCES };
}

/** What each published figure cannot know of this bin, surest first. */
function whyLow({ bin, fan, temperature, water, airflow }: PlausibilityInput): string[] {
  const reasons: string[] = [];
  const { filledMs } = bin.grain;
  const late = filledMs !== null && fan.spans.startMs.length > 0 ? (fan.spans.startMs[0] - filledMs) / 86_400_000 : 0;
  const unknown = (fan.unknownHours ?? 0) > 0.1 * (fan.hours.value ?? Number.POSITIVE_INFINITY);
  if (late > 2 || unknown) reasons.push('part of the fan time is not in the log');
  if ((temperature.start.value ?? 0) > WARM_C) {
    reasons.push(
      'warm grain and warm air did it: they carry off more water in each fan hour than the air of a northern fall',
    );
  }
  if ((airflow.cfmPerBushel.value ?? LOW_CFM) < LOW_CFM) {
    reasons.push('little air was pushed, which takes less pressure for each cubic foot');
  }
  if (beside(water) > 0) reasons.push('the points are told too high: by its air or tickets less water left');
  return reasons;
}

function whyHigh({ bin, moisture, water, airflow, useful }: PlausibilityInput): string[] {
  const reasons: string[] = [];
  const { targetMoistureWb } = bin.grain;
  const past = targetMoistureWb === null || moisture.end.value === null ? 0 : targetMoistureWb - moisture.end.value;
  if (past > FAR_PAST) reasons.push('the fans ran on past the target, where each point takes longer');
  if ((useful?.againstShare.value ?? 0) > MUCH) reasons.push('many fan hours worked against the goal');
  if ((airflow.cfmPerBushel.value ?? HIGH_CFM) > HIGH_CFM) {
    reasons.push('much air was pushed, which takes more pressure for each cubic foot');
  }
  if (beside(water) < 0) reasons.push('the points are told too low: by its air or tickets more water left');
  return reasons;
}

/** Where the ways of telling the water disagree: above zero where the sensors tell more than air or tickets, below where less. */
function beside({ agree, bySensors, byAirBetween, byTickets }: PlausibilityInput['water']): number {
  const other = byTickets.value ?? byAirBetween.value;
  return agree !== false || bySensors.value === null || other === null ? 0 : bySensors.value - other;
}
