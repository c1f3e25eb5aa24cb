import type { BinFan, BinHeater } from '../analysis/types.ts';
import type { Named } from './estimate-rows.ts';

const FUELS: Readonly<Record<BinHeater['fuel'], string>> = {
  electric: 'Electricity',
  propane: 'Propane',
  'natural gas': 'Natural gas',
};

/** Hours and fuel of each heater of a bin, as named numbers. */
export function heaterRows({ heaters = [] }: Pick<BinFan, 'heaters'>): Named[] {
  return heaters.flatMap(({ fanId, fuel, hours, used, unit }): Named[] => [
    { label: `Hours of the heater of fan ${fanId}`, quantity: 'hours', amount: hours },
    { label: `${FUELS[fuel]} of the heater of fan ${fanId}`, quantity: `fuel by ${unit}`, amount: used },
  ]);
}
