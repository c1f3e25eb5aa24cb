import { pushSpan, spanList, toFanSpans } from '../fan/spans.ts';
import { FAN_OFF, type FanSpans, type Span } from '../types.ts';
import { DAY_MS } from './outdoor-days.ts';

/** What fans that a bin does not have did: never ran. The local day around the last moment is at rest too. */
export function restThroughout({ fromMs, toMs }: Span): FanSpans {
  const list = spanList();
  pushSpan(list, fromMs, toMs + DAY_MS, FAN_OFF, 0);
  return toFanSpans(list);
}
