import { expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { type Estimate, estimate, withheld } from '../../src/base/estimate.ts';
import { airflowLead } from '../../src/notebook/airflow-section.ts';
import { Units } from '../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const bin = (name: string, byFront: Estimate, agree: boolean | null = true) =>
  ({
    bin: { name },
    airflow: { cfmPerBushel: estimate(0.5, 0.4, 0.6), byFront, byPressure: estimate(1, 0.9, 1.1), agree },
  }) as unknown as BinReview;
const told = estimate(1, 0.9, 1.1);

it('says that two ways agree only of bins of which both are shown', () => {
  expect(airflowLead([bin('A', told), bin('B', told)], units)).toContain('fronts and pressure agree in every bin');
  // Fronts too wide to be shown overlap with the pressure, but no reader sees a number of theirs.
  expect(airflowLead([bin('A', told), bin('B', withheld('Too wide.'))], units)).toContain(
    'fronts and pressure agree in the one bin that has both',
  );
  expect(airflowLead([bin('A', told), bin('B', withheld('Too wide.'), false)], units)).toContain(
    'fronts and pressure disagree in B',
  );
});
