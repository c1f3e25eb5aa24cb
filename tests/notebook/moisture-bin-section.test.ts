import { expect, it } from 'vitest';
import { moistureSection } from '../../src/notebook/moisture-bin-section.ts';
import { Units } from '../../src/report/units.ts';
import { exampleInput } from '../report/example-review.ts';

it('a bin’s points by fan hours say of which hours they are: beside them stand all of the bin’s', () => {
  const [one] = exampleInput().review.bins;
  const { tables } = moistureSection(one, new Units('us', 'USD', 'America/Chicago'), false);
  const text = JSON.stringify(tables);
  expect(text).toContain('Points removed per 100 fan hours between the two moistures');
});
