import { createHash } from 'node:crypto';

/** Keeps the page in step: a new one is loaded where the reader was, troubles are written over it as text. */
const SCRIPT = `
const frame = document.querySelector('iframe'), line = document.querySelector('#line'), list = document.querySelector('#troubles');
let shown = 0;
const put = (into, tag, text, name) => { const made = document.createElement(tag); made.textContent = text; if (name) made.className = name; into.append(made); return made; };
const show = (state) => {
  line.textContent = state.line;
  list.replaceChildren();
  list.hidden = state.troubles.length === 0;
  for (const one of state.troubles) {
    const item = put(list, 'li', '');
    const place = one.file === null ? '' : one.file + (one.line === null ? '' : ':' + one.line + (one.column === null ? '' : ':' + one.column));
    put(item, 'p', (place === '' ? '' : place + '  ') + one.kind, 'where');
    put(item, 'p', one.message);
    if (one.excerpt.length > 0) {
      const code = put(item, 'pre', '');
      for (const row of one.excerpt) put(code, 'span', String(row.line).padStart(4) + '  ' + row.text + '\\n', row.line === one.line ? 'here' : '');
    }
  }
  if (state.version === shown || state.file === null) return;
  shown = state.version;
  document.title = state.title;
  frame.title = state.title;
  let at = 0;
  try { at = frame.contentWindow.scrollY; } catch {}
  frame.onload = () => { try { frame.contentWindow.scrollTo(0, at); } catch {} };
  frame.contentWindow.location.replace('/' + state.file + '?' + state.version);
};
const source = new EventSource('/changes');
source.onmessage = (event) => show(JSON.parse(event.data));
source.onerror = () => { line.textContent = 'The command that draws has ended, or cannot be reached; the page is as it was last drawn.'; };
`;

const STYLE = `
:root{color-scheme:light dark}
*{box-sizing:border-box}
html,body{height:100%;margin:0}
body{display:flex;flex-direction:column;font:.95rem/1.45 system-ui,sans-serif}
#line{margin:0;padding:.3rem .9rem;border-bottom:1px solid}
#troubles{margin:0;padding:.4rem .9rem;list-style:none;max-height:55vh;overflow:auto;border-bottom:3px solid}
#troubles[hidden]{display:none}
#troubles li{margin:.5rem 0}
#troubles p{margin:.1rem 0}
#troubles pre{margin:.4rem 0;overflow-x:auto}
.where,.here{font-weight:700}
iframe{flex:1;border:0;width:100%}
`;

const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** What the shell may do: run its one script, ask its own address. */
export const SHELL_POLICY = [
  "default-src 'none'",
  `script-src ${hashOf(SCRIPT)}`,
  `style-src ${hashOf(STYLE)}`,
  "connect-src 'self'",
  "frame-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The page around a watched notebook's page, which itself stays as it is written to a file. */
export const SHELL = `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>Notebook</title><style>${STYLE}</style></head>
<body>
<p id="line" role="status">The season is being read.</p>
<ol id="troubles" role="alert" hidden></ol>
<iframe title="The notebook’s page"></iframe>
<noscript><p>Without script the page does not follow its notebook: write it to a file by leaving --watch out.</p></noscript>
<script>${SCRIPT}</script>
</body>
</html>
`;
