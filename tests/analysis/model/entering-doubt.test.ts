import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { enteringSdK } from '../../../src/analysis/model/entering-doubt.ts';

/** A fan of 8 kW whose air, 1.5 kg/s of it at 1.2 m3/s, its power warms by 0.9 x 8000 / (1.5 x 1006) = 4.771 K. */
const log = (other: object) =>
  ({
    bin: { fanIds: ['F1'], air: 'up' },
    season: {
      fans: [{ id: 'F1', nameplateW: 6000, load: null, motorEfficiency: null, heater: null }],
      bins: [{ fanIds: ['F1'] }],
    },
    review: {
      fan: { fans: [{ fanId: 'F1', onHours: 100, energyKwh: 800, energyFrom: 'current', energyRelSd: 0.03 }] },
      airflow: { fanSet: 'F1' },
    },
    depthM: 4,
    floorAreaM2: 10,
    meanVolumeM3Kg: 0.8,
    warmingK: 5,
    ...other,
  }) as unknown as BinLog;

describe('how far the air that enters may be from what is logged', () => {
  it('is a thermometer’s half a degree, which 95 % keep, where the plenum logs it', () => {
    expect(1.96 * enteringSdK(log({}), 1.2)).toBeCloseTo(0.5, 1);
  });

  it('is that and a part of the fan’s own warming where no plenum does, the less the more air there is: 0.15 x 4.771 = 0.716', () => {
    const untold = log({ warmingK: null });
    expect(enteringSdK(untold, 1.2)).toBeCloseTo(Math.hypot(0.25, 0.716), 3);
    expect(enteringSdK(untold, 2.4)).toBeCloseTo(Math.hypot(0.25, 0.358), 3);
  });

  it('is over a degree where the fan draws it from under the roof', () => {
    expect(enteringSdK(log({ bin: { fanIds: ['F1'], air: 'down' } }), 1.2)).toBeGreaterThan(1);
  });
});
