/** Something found at one sensor. */
export interface AtSensor {
  bin: string;
  cable: string;
  sensor: number;
  fromMs: number;
  toMs: number;
  cells: number;
}

/** Things of one kind that happened at one time, told by the largest place that they fill. */
export interface Place<T extends AtSensor = AtSensor> {
  /** `B1`, `B1 C5`, `B1 C5 sensor 3`, `B1 C5 sensors 2 and 3` */
  where: string;
  binId: string;
  whole: 'bin' | 'cable' | 'sensors';
  fromMs: number;
  toMs: number;
  cells: number;
  items: T[];
}

/** Which sensors there are: bin, cable, sensor numbers. */
export type Roster = ReadonlyMap<string, ReadonlyMap<string, ReadonlySet<number>>>;

export function rosterOf(sensors: Iterable<{ bin: string; cable: string; sensor: number }>): Roster {
  const roster = new Map<string, Map<string, Set<number>>>();
  for (const { bin, cable, sensor } of sensors) {
    const cables = roster.get(bin) ?? new Map<string, Set<number>>();
    roster.set(bin, cables);
    const numbers = cables.get(cable) ?? new Set<number>();
    cables.set(cable, numbers);
    numbers.add(sensor);
  }
  return roster;
}

/**
 * One place for what happened to many sensors at once.
 *
 * @param slackMs  how far apart starts, and ends, of one event may lie
 */
export function placesOf<T extends AtSensor>(items: readonly T[], roster: Roster, slackMs: number): Place<T>[] {
  const events: T[][] = [];
  for (const item of items) {
    const event = events.find(
      ([first]) =>
        first.bin === item.bin &&
        Math.abs(first.fromMs - item.fromMs) <= slackMs &&
        Math.abs(first.toMs - item.toMs) <= slackMs,
    );
    if (event === undefined) events.push([item]);
    else event.push(item);
  }
  return events.flatMap((event) => placesOfEvent(event, roster));
}

function placesOfEvent<T extends AtSensor>(event: readonly T[], roster: Roster): Place<T>[] {
  const bin = event[0].bin;
  const cables = roster.get(bin) ?? new Map<string, ReadonlySet<number>>();
  const byCable = new Map<string, T[]>();
  for (const item of event) byCable.set(item.cable, [...(byCable.get(item.cable) ?? []), item]);
  const isWhole = (cable: string) =>
    new Set((byCable.get(cable) ?? []).map((item) => item.sensor)).size === cables.get(cable)?.size;
  if ([...cables.keys()].every(isWhole) && cables.size > 1) return [place(bin, bin, 'bin', event)];
  return [...byCable].map(([cable, items]) => {
    if (isWhole(cable) && items.length > 1) return place(bin, `${bin} ${cable}`, 'cable', items);
    const numbers = [...new Set(items.map((item) => item.sensor))].sort((a, b) => a - b);
    return place(bin, `${bin} ${cable} sensor${numbers.length > 1 ? 's' : ''} ${listed(numbers)}`, 'sensors', items);
  });
}

function place<T extends AtSensor>(binId: string, where: string, whole: Place['whole'], items: readonly T[]): Place<T> {
  return {
    where,
    binId,
    whole,
    fromMs: Math.min(...items.map((item) => item.fromMs)),
    toMs: Math.max(...items.map((item) => item.toMs)),
    cells: items.reduce((sum, item) => sum + item.cells, 0),
    items: [...items],
  };
}

/** `1`, `1 and 2`, `1, 2 and 3` */
export function listed(parts: readonly (string | number)[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;
}
