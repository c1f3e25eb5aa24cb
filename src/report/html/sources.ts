import { citation, sourceOf } from '../../base/sources/sources.ts';
import { html, type Markup } from './markup.ts';

/** The works that the page stands on, in the order of the keys. @throws RangeError for a key not in the bibliography */
export function renderSources(keys: readonly string[]): Markup {
  const works = [...new Set(keys)].map(sourceOf);
  const note = (provenance: 'seen' | 'memory') =>
    provenance === 'memory' ? ' Constants from memory, not checked.' : '';
  return html`<section aria-labelledby="sources"><h2 id="sources">Sources</h2>
${works.length === 0 && html`<p>This page stands on the season's own files only.</p>`}
<ul>${works.map(
    (work) =>
      html`<li id="source-${work.key}">${citation(work)}${work.url !== undefined && html` <a class="source" href="${work.url}">Read it</a>.`}${note(work.provenance)}</li>`,
  )}</ul></section>`;
}
