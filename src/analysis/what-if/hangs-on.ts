import type { Outcome } from '../../simulation/run/outcome.ts';
import { runSeason } from '../../simulation/run/run-season.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { otherPhysics, type PhysicsPart } from './other-physics.ts';

/** What a bin's runs come to with one part of the bed's physics changed. */
export interface HangsOn {
  part: PhysicsPart;
  title: string;
  logged: Outcome;
  /** by the rule that the kit would take; null where there is none */
  pick: Outcome | null;
}

/** The season as logged and by the rule taken, once for each choice of physics; the first as fitted. */
export function hangsOn(spec: RunSpec, logged: Strategy, pick: Strategy | null): HangsOn[] {
  return otherPhysics(spec).map(({ part, title, spec: changed }) => ({
    part,
    title,
    logged: runSeason(changed, logged).outcome,
    pick: pick === null ? null : runSeason(changed, pick).outcome,
  }));
}
