import { DAY, fromLocal, HOUR, MINUTE } from '../../sample/calendar.ts';
import { type Random, randomStream } from '../../sample/random.ts';
import { between, pick, weighted } from './chance.ts';
import { drawCables, drawColumns, round } from './draw-cables.ts';
import { drawErrors } from './draw-errors.ts';
import { blowable, horsepower, speedOf } from './draw-fan.ts';
import { drawResistance } from './draw-resistance.ts';
import { type CropId, CURVES, drawHeat, grainOf } from './grains.ts';
import type { BinDraw, Goal, MoistureErrors, Running, SeasonDraw } from './plan.ts';

/** About how long a bin is looked at, days; some days without the fan follow. */
const MOST_DAYS: Readonly<Record<Goal, number>> = { dry: 45, cool: 40, condition: 45, hold: 70 };

/** A season drawn from a seed; nothing in it is asked of the kit. */
export function drawSeason(seed: number): SeasonDraw {
  const random = randomStream(seed, 'season');
  const errors = drawErrors(random);
  const bins = Array.from({ length: random.uniform() < 0.6 ? 1 : 2 }, (_, b) =>
    drawBin(randomStream(seed, `bin ${b}`), randomStream(seed, `grain ${b}`), b, errors),
  );
  oneMake(random, bins);
  return {
    seed,
    startMs: Math.min(...bins.map((bin) => bin.filledMs)) - 2 * DAY,
    endMs: Math.max(...bins.map((bin) => bin.endMs)),
    bins,
    tariff: {
      day: round(between(random, 0.08, 0.16), 3),
      night: random.uniform() < 0.5 ? round(between(random, 0.05, 0.08), 3) : null,
      connected: random.uniform() < 0.3 ? 12 : 0,
      // A peak is shared by bins; one bin's is its own.
      demand: bins.length === 1 && random.uniform() < 0.35 ? 9 : 0,
    },
  };
}

/** A farm's cables are of one make: what season.yaml says of them must hold in every bin. */
function oneMake(random: Random, bins: BinDraw[]): void {
  const oneCrop = bins.every((bin) => bin.crop === bins[0].crop);
  const sameCurve = random.uniform() < 0.6;
  const drawn = sameCurve ? bins[0].grainCurve : pick(random, CURVES[bins[0].crop]);
  const tacit = random.uniform() < 0.5;
  for (const bin of bins) {
    const usual = CURVES[bin.crop][0];
    bin.cableCurve = oneCrop ? drawn : usual;
    bin.statedCurve = oneCrop && !(drawn === usual && tacit) ? drawn.name : null;
  }
}

function drawBin(random: Random, ofGrain: Random, index: number, moistureErrors: MoistureErrors): BinDraw {
  const crop = weighted<CropId>(random, [
    ['corn', 4],
    ['soybean', 3],
    ['wheat', 3],
  ]);
  const goal = weighted<Goal>(random, [
    ['dry', 10],
    ['cool', 5],
    ['condition', crop === 'corn' ? 0 : 4],
    ['hold', 3],
  ]);
  const diameterM = round(between(random, 5, 15), 1);
  const depthM = round(between(random, 3.5, 7.5), 1);
  const wantedCfm = goal === 'dry' || goal === 'condition' ? between(random, 0.6, 1.4) : between(random, 0.1, 0.35);
  const resistance = drawResistance(ofGrain, crop, speedOf(wantedCfm, depthM));
  const grainCurve = pick(random, CURVES[crop]);
  const grain = grainOf(crop, grainCurve.curve, drawHeat(ofGrain, crop), resistance);
  const cfmPerBu = blowable(wantedCfm, depthM, grain.resistance);
  const filledMs = fillTime(random, crop, goal);
  const depthFactor = 1 + 0.02 * random.normal();
  const days = Math.round(MOST_DAYS[goal] + between(random, 8, 25));
  const hp = horsepower(cfmPerBu, diameterM, depthM, grain.resistance);
  const targetWb = { corn: 15, soybean: 13, wheat: 13.5 }[crop];
  const pf = 0.85;
  return {
    id: `B${index + 1}`,
    crop,
    goal,
    running: runningOf(random, goal),
    diameterM,
    depthM,
    // Heaped and levelled by eye, and packed under its own weight by what pack-factor tables span.
    depthFactor,
    massFactor: depthFactor * (1 + between(random, 0, 0.05)),
    testWeightLb: round({ corn: 56, soybean: 57, wheat: 60 }[crop] + between(random, -2, 2), 1),
    columns: drawColumns(random, diameterM / 2),
    cables: drawCables(random, random.integer(1, 7), diameterM / 2, depthM),
    cfmPerBu,
    throughGrain: 1,
    statedPacking: random.uniform() < 0.15 ? round(resistance.packing * (1 + 0.08 * random.normal()), 2) : null,
    grain,
    grainCurve,
    cableCurve: grainCurve,
    statedCurve: null,
    filledMs,
    fanFromMs: filledMs + (random.uniform() < 0.6 ? between(random, 1.5, 4) * DAY : between(random, 0, 10) * HOUR),
    endMs: filledMs + days * DAY,
    unloaded: random.uniform() < 0.4,
    loadsWb: loads(random, moistureIn(random, crop, goal)),
    tempC: between(random, 3, 9),
    targetWb,
    fan: {
      id: `F${index + 1}`,
      hp,
      kw: (0.7457 * hp * between(random, 0.88, 1.08)) / between(random, 0.84, 0.92),
      statedPowerFactor: pf,
      truePowerFactor: pf * (1 + 0.03 * random.normal()),
      log: weighted(random, [
        ['power', 3],
        ['current', 4],
        ['energy', 2],
        ['state', 1],
      ]),
    },
    powerFactorOfLog: 1 + 0.01 * random.normal(),
    everyMin: weighted(random, [
      [15, 1],
      [30, 1],
      [60, 4],
      [120, 2],
      [180, 2],
    ]),
    fanEveryMin: pick(random, [5, 10, 15]),
    plenum: random.uniform() < 0.8,
    gaugeFactor: 1 + 0.02 * random.normal(),
    gaugeOffsetPa: 8 * random.normal(),
    slip: between(random, 0, 0.2),
    moistureErrors,
    holes: {
      grain: random.uniform() < 0.4 ? between(random, 0.01, 0.12) : 0,
      fan: random.uniform() < 0.2 ? between(random, 0.002, 0.01) : 0,
    },
    deadSensors: random.uniform() < 0.2 ? 1 : 0,
  };
}

function fillTime(random: Random, crop: CropId, goal: Goal): number {
  const [month, from, to] = {
    corn: goal === 'dry' ? ['09', 20, 30] : ['10', 1, 20],
    soybean: ['09', 20, 30],
    wheat: goal === 'cool' ? ['08', 20, 31] : ['07', 3, 20],
  }[crop] as [string, number, number];
  const day = String(random.integer(from, to)).padStart(2, '0');
  const minutes = 5 * random.integer(0, 11);
  return fromLocal(`2024-${month}-${day} 16:00`) + minutes * MINUTE;
}

function runningOf(random: Random, goal: Goal): Running {
  if (goal === 'hold') return 'weekly';
  if (goal === 'condition') return 'humidity';
  if (goal === 'cool') return random.uniform() < 0.5 ? 'continuous' : 'nights';
  return random.uniform() < 0.6 ? 'continuous' : 'humidity';
}

/** Points wet basis as poured in. */
function moistureIn(random: Random, crop: CropId, goal: Goal): number {
  const base = { corn: 15, soybean: 13, wheat: 13.5 }[crop];
  if (goal === 'dry') return base + between(random, 1.2, crop === 'corn' ? 6 : 3.5);
  if (goal === 'condition') return base - between(random, 1.5, 3.5);
  return base + between(random, -1.2, 0.5);
}

function loads(random: Random, mean: number): number[] {
  const spread = between(random, 0.1, 0.6);
  return Array.from({ length: 7 }, () => mean + spread * random.normal());
}
