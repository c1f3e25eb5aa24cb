import { errorText } from '../base/error-text.ts';
import type { Section, SectionBody } from './page.ts';

/** A section that stands on its own: when its making throws it keeps its heading and says what failed. */
export function section(id: string, title: string, make: () => SectionBody): Section {
  try {
    return { id, title, ...make() };
  } catch (error) {
    return { id, title, lead: 'This section could not be made.', failure: errorText(error) };
  }
}
