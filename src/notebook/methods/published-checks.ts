import { airChecks } from './air-checks.ts';
import { airflowChecks } from './airflow-checks.ts';
import { coolingChecks } from './cooling-checks.ts';
import { dryingChecks } from './drying-checks.ts';
import { emcChecks } from './emc-checks.ts';
import { fanChecks } from './fan-checks.ts';
import { moneyChecks } from './money-checks.ts';
import { propertyChecks } from './property-checks.ts';
import type { PublishedCheck } from './published-check.ts';
import { storageChecks } from './storage-checks.ts';

/** Every row of the reference files beside the kit's number, worked out anew with each call. */
export function publishedChecks(): PublishedCheck[] {
  return [
    ...emcChecks(),
    ...airflowChecks(),
    ...fanChecks(),
    ...coolingChecks(),
    ...dryingChecks(),
    ...storageChecks(),
    ...airChecks(),
    ...propertyChecks(),
    ...moneyChecks(),
  ];
}
