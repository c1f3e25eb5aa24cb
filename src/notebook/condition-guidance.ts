import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { type StorageGuidance, storageGuidanceOf } from '../grain/storage-guidance.ts';
import type { Cell, SectionBody, Table } from '../report/page.ts';
import { momentEstimate } from './bin-table.ts';
import { binsNamed, conditionOf } from './condition-words.ts';
import { sourceText } from './methods/source-text.ts';
import { counted } from './words.ts';

/** How a moisture with its interval lies to what is published. */
export type DryEnough = 'longer' | 'perhaps' | 'short' | 'no' | 'open' | null;

/** Null where the moisture or the guidance is not known. */
export function dryEnough({ value, interval }: Estimate, guidance: StorageGuidance | null): DryEnough {
  if (value === null || guidance === null) return null;
  const [low, high] = interval ?? [value, value];
  const { shortWb, longWb } = guidance;
  if (high <= longWb) return 'longer';
  if (low > (shortWb ?? longWb)) return 'no';
  if (shortWb === null || high > shortWb) return 'open';
  return low > longWb ? 'short' : 'perhaps';
}

const SAID: Readonly<Record<Exclude<DryEnough, null>, string>> = {
  longer: 'dry enough to keep longer',
  perhaps: 'dry enough for six months; for longer the limit lies in its interval',
  short: 'dry enough for six months, not for longer',
  no: 'moister than the guidance',
  open: 'not clear, the limit lies in its interval',
};

/** Each bin's moisture and temperature at the end beside what is published for storing its crop. */
export function guidanceSection(bins: readonly BinReview[]): SectionBody {
  const told = bins
    .map((one) => dryEnough(endOf(one), storageGuidanceOf(one.bin.grain.crop)))
    .filter((one) => one !== null);
  const wet = bins
    .filter((one) => conditionOf(one).wettest?.aboveWb != null)
    .filter((one) => dryEnough(endOf(one), storageGuidanceOf(one.bin.grain.crop)) !== 'no')
    .map(({ bin }) => bin.name);
  return {
    lead: `${guidanceLead(bins, told)}${wet.length === 0 ? '' : ` A mean hides the wettest grain: in ${binsNamed(wet)} a sensor ended above what is published for storing the crop.`}`,
    table: guidanceTable(bins),
    notes: [
      'Temperature: in winter −7 to −1 °C (20 to 30 °F) where winters are cold, through spring and summer as cool as can be kept, 4 to 16 °C (40 to 60 °F).',
      'Guidance is for sound, clean grain. Advice of your own region comes first.',
    ],
  };
}

function guidanceLead(bins: readonly BinReview[], told: readonly Exclude<DryEnough, null>[]): string {
  const [first] = told;
  if (first === undefined) return 'Can’t hold the moisture of any bin against published guidance; the table says why.';
  if (bins.length === 1) return `At the end the mean grain was, by published guidance for storing it, ${SAID[first]}.`;
  const count = (how: DryEnough) => told.filter((one) => one === how).length;
  const parts = [
    ...(count('perhaps') > 0 ? [`${count('perhaps')} for six months and perhaps longer`] : []),
    ...(count('short') > 0 ? [`${count('short')} for six months`] : []),
    ...(count('open') > 0 ? [`${count('open')} too near the limit to tell`] : []),
    ...(count('no') > 0 ? [`${count('no')} moister than it`] : []),
  ];
  const enough = count('longer') === 0 ? 'none' : count('longer');
  return `By published guidance for storing it, the mean grain of ${enough} of ${counted(told.length, 'bin')} ended clearly dry enough to keep longer than six months${parts.length === 0 ? '' : `; ${parts.join(', ')}`}.`;
}

const endOf = ({ moisture }: BinReview): Estimate => momentEstimate(moisture.end, moisture.why);

function guidanceTable(bins: readonly BinReview[]): Table {
  return {
    id: 'guidance',
    caption: 'Moisture and temperature at the end beside published guidance for storage',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'moisture', label: 'Moisture at the end', quantity: 'moisture' },
      { key: 'wettest', label: 'Wettest sensor', quantity: 'moisture' },
      { key: 'guidance', label: 'Guidance', quantity: null },
      { key: 'enough', label: 'The mean beside it', quantity: null },
      { key: 'temperature', label: 'Temperature at the end', quantity: 'temperature' },
      { key: 'source', label: 'Source', quantity: null },
    ],
    rows: bins.map((one) => {
      const guidance = storageGuidanceOf(one.bin.grain.crop);
      const none: Cell = { value: null, why: `No guidance for storing ${one.bin.grain.crop} was read.` };
      const moisture = endOf(one);
      const enough = dryEnough(moisture, guidance);
      return {
        bin: one.bin.name,
        moisture,
        wettest: conditionOf(one).wettest?.endWb ?? { value: null, why: 'No sensor tells the moisture at the end.' },
        guidance: guidance === null ? none : guidanceSaid(guidance),
        enough:
          enough !== null
            ? SAID[enough]
            : guidance === null
              ? none
              : { value: null, why: moisture.why ?? 'Not known.' },
        temperature: momentEstimate(one.temperature.end, one.temperature.why),
        source: guidance === null ? none : guidance.sourceKeys.map((key) => sourceText({ key })).join('. '),
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

function guidanceSaid({ shortWb, longWb, also }: StorageGuidance): string {
  const percent = (wb: number) => `${Number((100 * wb).toFixed(1))} %`;
  const said =
    shortWb === null
      ? `${percent(longWb)} for longer`
      : `${percent(shortWb)} to six months, ${percent(longWb)} for longer`;
  return also === null ? said : `${said}; ${also}`;
}
