import { describe, expect, it } from 'vitest';
import condition from '../../notebooks/condition.ts';
import { missingCondition } from '../../src/analysis/condition/bin-condition.ts';
import type { BinCondition } from '../../src/analysis/condition/condition-types.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { type Estimate, estimate } from '../../src/base/estimate.ts';
import { STORAGE_RULES } from '../../src/grain/storage-rules.ts';
import { conditionFigures } from '../../src/notebook/condition-figures.ts';
import { agesSection, besideWeatherSection, warmingSection } from '../../src/notebook/condition-sections.ts';
import { alertSaid, binsEndedWet, conditionAnswer, localDay } from '../../src/notebook/condition-words.ts';
import { Units } from '../../src/report/units.ts';
import { exampleInput } from '../report/example-review.ts';

const { review, units } = exampleInput();
const WORST = { cable: 'C1', sensor: 3, heightM: 3.048 };

function bin(name: string, used: number | null, part: Partial<BinCondition> = {}): BinReview {
  const [first] = review.bins;
  const none = missingCondition('No moisture of the grain is known.');
  const life = used === null ? none.age.lifeUsed : estimate(used, used / 2, 2 * used);
  return {
    ...first,
    bin: { ...first.bin, name },
    condition: {
      ...none,
      why: null,
      warming: { found: [], judged: 4, of: 4, days: 90, why: null },
      ...part,
      age: { ...none.age, lifeUsed: life, worstLifeUsed: life, worst: used === null ? null : WORST },
    },
  };
}
const WARMED = {
  ...WORST,
  span: { fromMs: Date.UTC(2025, 1, 3), toMs: Date.UTC(2025, 1, 15) },
  riseK: 5 / 1.8,
  aboveK: 3 / 1.8,
};

describe('the condition page', () => {
  it('answers with how many bins surely kept, the grain that aged most, and whether any warmed', () => {
    expect(conditionAnswer([bin('North', 0.3), bin('South', 2.2)], units)).toBe(
      'In 1 of 2 bins all grain kept within its storage time, in 1 it did not; the grain that aged most, in South, used 220 % (110 to 440) of its storage time by the rule for its crop; no grain was seen to warm by itself.',
    );
    expect(conditionAnswer([bin('North', 0.3), bin('South', 0.2)], units)).toMatch(/^In both bins all grain kept/);
    expect(conditionAnswer([bin('A', 0.3), bin('B', 0.2), bin('C', 0.1)], units)).toMatch(
      /^In all 3 bins all grain kept/,
    );
    expect(conditionAnswer([bin('A', 2.3), bin('B', 2.2)], units)).toMatch(
      /^In none of 2 bins did all grain keep within its storage time; the grain/,
    );
    expect(conditionAnswer([bin('North', 0.3)], units)).toBe(
      'The grain that aged most, in North, used 30 % (15 to 60) of its storage time by the rule for its crop; no grain was seen to warm by itself.',
    );
  });

  it('warns of a wet place beside a dry mean, in the reader’s words', () => {
    const place = { ...WORST, endWb: estimate(0.185, 0.179, 0.191), aboveWb: 0.15 };
    const alert = { kind: 'ended wet', place, limitWb: 0.15, meanWb: 0.121 } as const;
    const wet = bin('North', 0.3, { wettest: place, alerts: [alert] });
    expect(alertSaid(wet, alert, units)).toBe(
      'North: the grain at cable C1, sensor 3 at 10.0 ft ended at 18.5 % (17.9 to 19.1), moister than the 15.0 % published for storing corn, whatever the mean of 12.1 % says. Probe there, and dry, cool or move that grain before warm weather.',
    );
    expect(binsEndedWet([wet, bin('South', 0.3)])).toEqual(['North']);
    expect(alertSaid(wet, { ...alert, meanWb: 0.173 }, units)).toContain('published for storing corn. Probe there');
  });

  // Intervals reach from half to twice the middle: 0.6 may have used 120 %, 1.2 perhaps only 60 %.
  it('says that grain kept only where the whole interval bears it', () => {
    const of = (...used: number[]) =>
      conditionAnswer(
        used.map((one, i) => bin(`Bin ${i}`, one)),
        units,
      );
    expect(of(0.3, 0.6, 1.2)).toMatch(
      /^In 1 of 3 bins all grain kept within its storage time, in 2 that is not sure; the grain/,
    );
    expect(of(0.3, 0.6, 2.2)).toMatch(
      /kept within its storage time, in 1 that is not sure, in 1 it did not; the grain/,
    );
    expect(of(0.6, 1.2)).toMatch(/^In none of 2 bins is it sure that all grain kept within its storage time; the/);
    expect(of(0.6, 2.2)).toMatch(
      /^In 1 of 2 bins not all grain kept within its storage time, in 1 that is not sure; the grain/,
    );
    const blind = bin('Blind', null);
    const only = (used: number) => conditionAnswer([bin('North', used), blind], units);
    expect(only(0.6)).toMatch(/^In the only bin of 2 that can be told it is not sure that all grain kept within/);
    expect(only(2.2)).toMatch(/^In the only bin of 2 that can be told not all grain kept within its storage time;/);
  });

  it('asks every place whether it kept, not the one alone that used most in the middle', () => {
    const one = bin('North', 0.45);
    const place = { ...WORST, share: 0.5, lifeUsed: estimate(0.4, 0.1, 1.3), loss: estimate(0, 0, 0) };
    const wider = { ...one, condition: { ...one.condition!, age: { ...one.condition!.age, places: [place] } } };
    expect(conditionAnswer([one, bin('South', 0.3)], units)).toMatch(/^In both bins all grain kept/);
    expect(conditionAnswer([wider, bin('South', 0.3)], units)).toMatch(/^In 1 of 2 bins .* in 1 that is not sure/);
  });

  it('says what it cannot tell, and of how many bins it can', () => {
    const blind = { warming: { found: [], judged: 0, of: 4, days: 0, why: 'The fan never rested.' } };
    expect(conditionAnswer([bin('North', null, blind)], units)).toBe(
      'Can’t tell how much of its storage time the grain has used; whether grain warmed by itself can’t be told.',
    );
    const some = conditionAnswer([bin('North', 0.3, blind), bin('South', null)], units);
    expect(some).toMatch(/^In the only bin of 2 that can be told all grain kept within its storage time; the grain/);
    expect(some).toContain('no grain was seen to warm by itself in the 1 bin that can be judged');
  });

  it('counts the bins that warmed where a sentence of names would run on', () => {
    const warm = { warming: { found: [WARMED], judged: 4, of: 4, days: 90, why: null } };
    const many = Array.from({ length: 50 }, (_, i) => bin(`Bin ${i}`, 0.3, warm));
    expect(conditionAnswer(many, units)).toMatch(/^In all 50 bins .*; in 50 bins grain warmed by itself\.$/);
  });

  it('titles grain that never was warmer than the outdoor air as such', () => {
    const days = [0, 1, 2].map((d) => ({
      dayMs: Date.UTC(2025, 1, 3 + d),
      meanC: -4,
      meanLowC: -4,
      meanHighC: -4,
      warmestC: -3,
      coldestC: -5,
      outdoorC: 2,
    }));
    const of = (mostK: number) =>
      conditionFigures(
        bin('North', null, {
          grainDays: days,
          outdoors: { days: estimate(0, 0, 0), mostK: estimate(mostK, mostK - 1, mostK + 1), mostMs: days[0].dayMs },
        }),
        units,
      ).map(({ title }) => title);
    expect(of(-5)).toEqual([
      'The grain of North was always colder than the month’s outdoor air, by 9.0 °F (7.2 to 10.8) and more',
    ]);
    expect(of(5)).toEqual(['North was at most 9.0 °F (7.2 to 10.8) warmer than the month’s outdoor air']);
  });

  it('says days as whole days', () => {
    const said = alertSaid(bin('North', 0.3), { kind: 'warmer than outdoors', days: estimate(79, 52, 105) }, units);
    expect(said).toContain('North: on 79 (52 to 105) days the grain was 11 °C (20 °F) and more warmer');
  });

  it('tells the rule of each crop in a sentence that its criterion fits', () => {
    const of = (criterion: string) =>
      agesSection(
        [
          {
            ...bin('North', 0.3),
            condition: {
              ...bin('North', 0.3).condition!,
              age: {
                ...bin('North', 0.3).condition!.age,
                rule: { name: 'a rule', criterion, honesty: '', sourceKeys: [] },
              },
            },
          },
        ],
        units,
      ).notes?.[0];
    for (const { criterion } of STORAGE_RULES) {
      expect(of(criterion)).toContain(`by the rule “a rule” (${criterion})`);
    }
  });

  it('warns of grain that warmed by itself, with place, days and what to do', () => {
    const warm = bin('North', 0.3, { warming: { found: [WARMED], judged: 4, of: 4, days: 90, why: null } });
    expect(conditionAnswer([warm], units)).toContain('in North grain warmed by itself');
    const said = alertSaid(warm, { kind: 'warmed by itself', place: WORST, found: WARMED, others: 0 }, units);
    expect(said).toContain('cable C1, sensor 3 at 10.0 ft warmed by 5.0 °F from 3 Feb 2025 to 14 Feb 2025');
    expect(said).toContain('3.0 °F above all that lay near it. Look for');
    const more = alertSaid(warm, { kind: 'warmed by itself', place: WORST, found: WARMED, others: 1 }, units);
    expect(more).toContain('3.0 °F above all that lay near it; so did 1 other place. Look for');
    const two = bin('South', 0.3, { warming: { found: [WARMED, WARMED], judged: 4, of: 4, days: 90, why: null } });
    expect(warmingSection([two], units).lead).toMatch(/^2 places warmed by themselves, first at cable C1/);
    const section = warmingSection([warm], units);
    expect(section.lead).toMatch(/^1 place warmed by itself, first at cable C1/);
    expect(section.tables?.map(({ id }) => id)).toEqual(['watched', 'warmed']);
  });

  it('tells the rule of each crop with how far it is data', () => {
    const { notes } = agesSection(review.bins, units);
    expect(notes?.join('\n')).toContain('Corn, by the rule “low-temperature form” (0.5 % of the dry matter lost).');
  });

  it('says a dash with its reason in every bin that is not told', () => {
    const page = condition.page({ ...exampleInput(), review: { ...review, bins: [bin('North', null)] } });
    const [row] = page.sections.find(({ id }) => id === 'ages')!.table!.rows;
    expect(row.used).toMatchObject({ value: null, why: 'No moisture of the grain is known.' });
    expect(row.place).toMatchObject({ value: null });
    expect(besideWeatherSection([bin('North', null)]).lead).toContain('Can’t hold the grain of any bin');
  });

  it('claims of no bin that it stayed near the outdoor air where the days’ interval does not bear it', () => {
    const warm = (name: string, days: Estimate) =>
      bin(name, 0.3, { outdoors: { days, mostK: estimate(9, 7, 11), mostMs: null } });
    const never = warm('North', estimate(0, 0, 0));
    const perhaps = [warm('South', estimate(0, 0, 6)), warm('West', estimate(3, 0, 20))];
    const lead = (bins: BinReview[]) => besideWeatherSection(bins).lead;
    expect(lead([never])).toMatch(/^No bin’s mean grain was 11 °C \(20 °F\) and more warmer .* begins to move\.$/);
    expect(lead([never, ...perhaps])).toMatch(
      /^No bin’s mean grain was for sure 11 °C .* begins to move; in South and West it may have been for some days\.$/,
    );
    expect(lead([warm('East', estimate(12, 4, 20)), ...perhaps])).toMatch(
      /^In East the mean grain was 11 °C .* for some days: moisture then begins to move\. In South and West it may have been\.$/,
    );
  });

  // Midnight of a day, kept as if UTC, is that day in every zone, also on the days when its clock changes.
  it.each(['America/Chicago', 'Australia/Sydney', 'Europe/Berlin', 'Pacific/Auckland'])(
    'names local days in %s',
    (zone) => {
      const there = new Units('us', 'USD', zone);
      for (let day = 0; day < 400; day++) {
        const ms = Date.UTC(2024, 0, 1 + day);
        const date = new Date(ms);
        expect(localDay(there, ms)).toMatch(new RegExp(`^${date.getUTCDate()} .* ${date.getUTCFullYear()}$`));
      }
    },
  );
});
