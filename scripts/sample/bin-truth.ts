import { type BinRun, STEP_MS } from './bin-run.ts';
import { DAY, fromLocal, HOUR } from './calendar.ts';
import { fanTruth, iso, round } from './fan-truth.ts';
import type { FarmEnergy } from './farm-energy.ts';
import type { FarmPlan } from './farm-types.ts';
import { trueArrivals } from './front-truth.ts';
import { toWetBasis } from './kernels.ts';

const LB = 0.45359237;

/** Dry-basis mean over a span of steps, told as wet basis, %. */
function meanMoisture(run: BinRun, fromMs: number, toMs: number): number {
  const from = Math.round((fromMs - run.startMs) / STEP_MS);
  const to = Math.round((toMs - run.startMs) / STEP_MS);
  let sum = 0;
  for (let s = from; s < to; s++) sum += run.meanMoistureDb[s];
  return toWetBasis(sum / (to - from));
}

function meanTemp(run: BinRun, fromMs: number, toMs: number): number {
  const from = Math.round((fromMs - run.startMs) / STEP_MS);
  const to = Math.round((toMs - run.startMs) / STEP_MS);
  let sum = 0;
  for (let s = from; s < to; s++) sum += run.meanTempC[s];
  return sum / (to - from);
}

/** The contract calls a stretch a campaign when its air, averaged over a day, is clearly cooler or warmer than the grain it enters. */
function gapAtStart(run: BinRun, fanIds: readonly string[], fromMs: number, toMs: number) {
  const spans = fanIds.flatMap((id) => run.runs.get(id)!);
  const at = (ms: number) => Math.round((ms - run.startMs) / STEP_MS);
  let sum = 0;
  let steps = 0;
  for (let ms = fromMs; ms < toMs && steps < DAY / STEP_MS; ms += STEP_MS) {
    if (!spans.some((one) => ms >= one.fromMs && ms < one.toMs)) continue;
    sum += run.plenumC[at(ms)];
    steps++;
  }
  return { enteringC: round(sum / steps, 2), grainC: round(run.meanTempC[at(fromMs) - 1], 2) };
}

/** What truly happened in one bin, by the generator's own account. */
export function binTruth(farm: FarmPlan, run: BinRun, energy: FarmEnergy, months: readonly string[]) {
  const { plan } = run;
  const filled = fromLocal(plan.fills.at(-1)!.at);
  const end = plan.emptying.length > 0 ? fromLocal(plan.emptying[0].at) : fromLocal(farm.ends) + DAY;
  // Whole steps after the filling moment, so that the last load counts.
  const startPct = meanMoisture(run, filled + STEP_MS, filled + DAY);
  const endPct = meanMoisture(run, end - DAY, end);
  const pounds = run.wetKgFilled / LB;
  const bushels = pounds / run.kernel.bushelLb;
  const base = { corn: 15, soybean: 13, wheat: 13.5 }[plan.crop];
  const endKg = run.dryKg / (1 - endPct / 100);
  const atBase = run.dryKg / (1 - base / 100);
  const price = { corn: 4.35, soybean: 10.6, wheat: 5.6 }[plan.crop];
  const lostBushels = Math.max(0, (atBase - endKg) / LB / run.kernel.bushelLb);
  const stages = plan.stages.map((stage) => {
    const from = fromLocal(stage.from);
    const to = fromLocal(stage.to);
    // One stage may follow another without a stop (a second fan joins), so runs are cut at its bounds.
    const spans = stage.fans
      .flatMap((id) => run.runs.get(id)!)
      .filter((one) => one.toMs > from && one.fromMs < to + HOUR)
      .map((one) => ({ fromMs: Math.max(one.fromMs, from), toMs: Math.min(one.toMs, to + HOUR) }));
    if (spans.length === 0) return { rule: stage.rule.kind, fromMs: null, toMs: null };
    return {
      rule: stage.rule.kind,
      fromMs: Math.min(...spans.map((one) => one.fromMs)),
      toMs: Math.max(...spans.map((one) => one.toMs)),
    };
  });
  const campaigns = plan.stages.flatMap((stage, i) => {
    const { fromMs, toMs } = stages[i];
    if (stage.front === undefined || fromMs === null || toMs === null) return [];
    const arrivals = trueArrivals(run, stage.fans, fromMs, toMs, stage.front === 'cooling' ? -1 : 1);
    return [
      {
        kind: stage.front,
        from: iso(fromMs),
        to: iso(toMs),
        ...gapAtStart(run, stage.fans, fromMs, toMs),
        arrivals: arrivals.map((one) => ({
          cable: one.cable,
          sensor: one.sensor,
          heightM: round(one.heightM, 4),
          arrived: one.arrivedMs === null ? null : iso(one.arrivedMs),
          fanHours: one.fanHours === null ? null : round(one.fanHours, 2),
          aheadC: one.aheadC === null ? null : round(one.aheadC, 2),
          behindC: one.behindC === null ? null : round(one.behindC, 2),
          runnerUp: one.runnerUp === null ? null : round(one.runnerUp, 2),
          why: one.why,
        })),
      },
    ];
  });
  const profile = run.columns.map((column) => ({
    column: column.id,
    share: round(column.areaM2 / run.areaM2, 4),
    bottomPct: round(toWetBasis(column.moistureDb[4]), 2),
    middlePct: round(toWetBasis(column.moistureDb[32]), 2),
    topPct: round(toWetBasis(column.moistureDb[59]), 2),
  }));
  return {
    id: plan.id,
    name: plan.name,
    crop: plan.crop,
    goal: plan.goal,
    grain: {
      isothermOfTheGrain: run.kernel.isotherm,
      filled: iso(filled),
      wetKgFilled: round(run.wetKgFilled, 1),
      dryMatterKg: round(run.dryKg, 1),
      bushels: round(bushels, 1),
      depthM: round(run.layerM * 64, 4),
    },
    airflow: {
      flowM3S: round(run.flowM3S, 4),
      cfmPerBushel: round(
        run.flowM3S / (0.3048 ** 3 / 60) / ((run.areaM2 * run.layerM * 64) / (1.2445 * 0.3048 ** 3)),
        4,
      ),
    },
    fan: fanTruth(farm, run, energy, months),
    moisture: {
      startPct: round(startPct, 4),
      endPct: round(endPct, 4),
      pointsRemoved: round(startPct - endPct, 4),
      overdryingLossBushels: round(lostBushels, 2),
      overdryingLoss: round(lostBushels * price, 2),
      endProfile: profile,
    },
    temperature: {
      startC: round(meanTemp(run, filled + STEP_MS, filled + DAY), 3),
      endC: round(meanTemp(run, end - DAY, end), 3),
    },
    water: { carriedByAirKg: round(run.waterByAirKg, 1), lostByGrainKg: round(run.waterLostKg, 1) },
    stages: stages.map((one) => ({ ...one, from: one.fromMs === null ? null : iso(one.fromMs) })),
    campaigns,
  };
}
