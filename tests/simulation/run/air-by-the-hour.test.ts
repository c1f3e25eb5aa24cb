import { describe, expect, it } from 'vitest';
import { ACCOUNT } from '../../../src/simulation/bed/bed.ts';
import { conduct } from '../../../src/simulation/bed/conduct.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { playBin, playHour } from '../../../src/simulation/run/played-bin.ts';
import { BLOWER, inventedBin, inventedHours } from './invented-bin.ts';

describe('the air of an hour', () => {
  // Ideal gas of dry air, 287.05 J/(kg K) (textbook), by hand with 1.608 of the vapour: what 0.084 m3/s hold in that hour.
  it.each([-10, 30])('weighs what the volume holds at %d degC', (tempC) => {
    const spec = inventedBin(inventedHours({ count: 24, tempC: () => tempC }));
    const { humidityRatio, pressurePa } = spec.hours;
    const kgM2S = (BLOWER.airM3M2S * pressurePa) / (287.05 * (tempC + 273.15) * (1 + 1.608 * humidityRatio[0]));
    const [played, byHand] = [playBin(spec), playBin(spec)];
    playHour(played, 0, 1, false);
    passAir(byHand.bed, 3600 * kgM2S, 3600, tempC + BLOWER.warmingK, humidityRatio[0]);
    conduct(byHand.bed, 3600, played.around);
    const { waterByAir, heatByAir } = ACCOUNT;
    for (const at of [waterByAir, heatByAir]) expect(played.bed.account[at] / byHand.bed.account[at]).toBeCloseTo(1, 3);
  });
});
