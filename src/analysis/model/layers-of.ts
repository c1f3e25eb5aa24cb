import { aimsAtTemperature } from '../../season/goal.ts';
import type { BinLog } from './bin-log.ts';

/** Their number sets how far a front spreads: twenty spread it about as far as a farm bin's unevenness does. */
export const LAYERS = 20;
/** Fan hours of a bin to cool or hold under which its layers are halved. Our choice. */
const FEW_FAN_H = 250;

/**
 * How many layers a bin's bed is fitted and run in. A fan that runs for some days in all moves a front by a layer or two at a time: twenty
 * layers blunt it, and a fit makes up for that by airflow (5 to 8 % too much in drawn bins run for eight hours a week). So few hours can be
 * played in finer layers.
 */
export function layersOf({ bin, fan }: Pick<BinLog, 'bin' | 'fan'>): number {
  const hours = fan.on.reduce((sum, share) => sum + share, 0);
  return aimsAtTemperature(bin.goal) && hours < FEW_FAN_H ? 2 * LAYERS : LAYERS;
}
