import type { Season } from '../season.ts';
import { shown } from './shown.ts';
import { directionWord } from './words.ts';

/** Where a row belongs: the table's text columns, and for grain the sensor. */
export interface Place {
  texts: Readonly<Record<string, string>>;
  sensor: number | null;
  heightM: number | null;
}

/** An id as a file writes it: exactly, else but for capitals where only one fits. */
function findId<T extends { id: string }>(all: readonly T[], text: string): T | null {
  const exact = all.find((one) => one.id === text);
  if (exact !== undefined) return exact;
  const alike = all.filter((one) => one.id.toLowerCase() === text.toLowerCase());
  return alike.length === 1 ? alike[0] : null;
}

/** `3`, `03`, `3.0` as a sensor number; NaN for another text. */
function sensorNumber(text: string): number {
  return /^\d{1,4}(?:\.0+)?$/.test(text) ? Number(text) : Number.NaN;
}

/**
 * The place that a row's cells name, or in words why there is none.
 *
 * @param said  cells or constants by key: bin, cable, sensor, fan, direction, tariff
 */
export function findPlace(season: Season, said: Readonly<Record<string, string>>): Place | string {
  const texts: Record<string, string> = {};
  for (const [key, text] of Object.entries(said)) if (text === '') return `has no ${key}`;
  if (said.fan !== undefined) {
    const fan = findId(season.fans, said.fan);
    if (fan === null) return `names the fan ${shown(said.fan)}, which season.yaml does not have`;
    texts.fan = fan.id;
  }
  if (said.tariff !== undefined) {
    const tariff = findId(season.tariffs, said.tariff);
    if (tariff === null) return `names the tariff ${shown(said.tariff)}, which season.yaml does not have`;
    texts.tariff = tariff.id;
  }
  if (said.direction !== undefined) {
    const direction = directionWord(said.direction);
    if (direction === null) return `has the direction ${shown(said.direction)}; write in or out`;
    texts.direction = direction;
  }
  if (said.bin === undefined) return { texts, sensor: null, heightM: null };
  const bin = findId(season.bins, said.bin);
  if (bin === null) return `names the bin ${shown(said.bin)}, which season.yaml does not have`;
  texts.bin = bin.id;
  if (said.cable === undefined) return { texts, sensor: null, heightM: null };
  const cable = findId(bin.cables, said.cable);
  if (cable === null) return `names the cable ${shown(said.cable)}, which bin ${bin.id} does not have`;
  texts.cable = cable.id;
  const sensor = sensorNumber(said.sensor);
  const heightM = cable.sensorHeightsM[sensor - 1];
  if (heightM === undefined) {
    return `names the sensor ${shown(said.sensor)}; cable ${cable.id} of bin ${bin.id} has 1 to ${cable.sensorHeightsM.length}`;
  }
  return { texts, sensor, heightM };
}
