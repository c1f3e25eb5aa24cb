import type { BinFan, BinHeater, BinReview } from '../analysis/types.ts';
import type { BinWhatIf } from '../analysis/what-if/what-if-types.ts';
import { agreeing } from '../base/agreeing.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { STRATEGIES } from '../simulation/strategies/strategies.ts';
import { quoted } from './words.ts';

const HEATING = STRATEGIES.filter(({ heater }) => heater !== undefined);

/** When a heater burns in the runs: where bins have one, what heats the air was run. */
export function heaterNotes(
  bins: readonly { review: Pick<BinReview, 'bin'>; whatIf: Pick<BinWhatIf, 'strategies'> }[],
): string[] {
  const names = bins
    .filter(({ whatIf }) => whatIf.strategies.some(({ id }) => HEATING.some((one) => one.id === id)))
    .map(({ review }) => review.bin.name);
  if (names.length === 0) return [];
  const heating = listed(HEATING.map(({ title }) => quoted(title)));
  return [
    `${listed(names)}: no fan log tells when a heater burns. As run it is taken to burn when the warming of the plenum’s air tells it, and without that whenever its fan does; ${heating} burns it by its own rule, the best in hindsight in the hours that pay, and all other rules leave it off.`,
  ];
}

type Heated = Pick<BinFan, 'cost' | 'heatCost' | 'heaters' | 'fans'>;

/** What of a bin's cost is heat, where a cost of fans is told as one number. */
export function heatCostNotes(
  bins: readonly { bin: Pick<BinReview['bin'], 'name'>; fan: Heated }[],
  units: Units,
): string[] {
  return bins.flatMap(({ bin, fan }) => {
    const { cost, heatCost, heaters = [] } = fan;
    if (cost.value === null || !(Number(heatCost.value) > 0)) return [];
    const head = `${bin.name}: ${units.say('money', heatCost)} of the ${units.say('money', cost.value)} is for heat`;
    return [heaters.length > 1 ? `${head}. ${severalSaid(heaters, units)}` : `${head}; ${oneSaid(fan, units)}`];
  });
}

function oneSaid({ fans, heaters: [heater] = [] }: Heated, units: Units): string {
  const hours = fans.some((one) => one.heater !== undefined) ? 'plenum' : 'fan';
  const used = heater === undefined || heater.used.value === null ? '' : `: ${fuelSaid(heater, units)}`;
  return `${(heater?.hoursFrom ?? hours) === 'plenum' ? 'the warming of the plenum’s air tells in which hours the heater burned' : `the heater ${AS_ITS_FAN}`}${used}. What it burnt or drew is not in the kWh.`;
}

const AS_ITS_FAN = 'is taken to run whenever its fan does, and the lower end leaves it out';

function severalSaid(heaters: readonly BinHeater[], units: Units): string {
  const beside = heaters.filter(({ used }) => used.value !== null);
  const within = heaters.filter(({ used }) => used.value === null).map(({ fanId }) => fanId);
  const each = beside.map(
    (one) =>
      `The heater of fan ${one.fanId} ${one.hoursFrom === 'plenum' ? 'burned in the hours that the warming of the plenum’s air tells' : AS_ITS_FAN}: ${fuelSaid(one, units)}.`,
  );
  const these = `What ${beside.length === 1 ? 'it' : 'these'} burnt or drew is not in the kWh.`;
  const own =
    within.length === 0
      ? []
      : [
          `${agreeing(within.length, 'That', 'Those')} of ${agreeing(within.length, 'fan', 'fans')} ${listed(within)} ${agreeing(within.length, 'is', 'are')} in the kWh and the energy cost of ${agreeing(within.length, 'its fan', 'their fans')}.`,
        ];
  return [...each, these, ...own].join(' ');
}

const FUELS: Readonly<Record<BinHeater['fuel'], string>> = {
  electric: 'electricity',
  propane: 'propane',
  'natural gas': 'natural gas',
};

const fuelSaid = ({ used, unit, fuel }: BinHeater, units: Units) =>
  `${units.say(`fuel by ${unit}`, used)} of ${FUELS[fuel]}`;
