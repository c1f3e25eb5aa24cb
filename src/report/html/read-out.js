(() => {
  const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
  const DAY = 86400000;
  const HOURS = Array.from({ length: 24 }, (_, hour) => [`${hour}:00`, hour / 24, (hour + 1) / 24]);
  const make = (name, classes, parent) => {
    const made = document.createElement(name);
    made.className = classes;
    parent.append(made);
    return made;
  };
  const dateOf = (ms, step) => {
    const at = new Date(ms);
    const day = `${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]} ${at.getUTCFullYear()}`;
    return step >= DAY ? day : `${day}, ${at.getUTCHours()}:00`;
  };
  const unpack = (text) =>
    text.split(' ').flatMap((token) => {
      const [value, times] = token.split('*');
      return Array(Number(times || 1)).fill(value === '-' ? null : Number(value));
    });
  const sayLayer = (layer, at) => {
    layer.all ||= unpack(layer.v);
    const value = layer.all[at];
    if (value === null) return '–';
    if (layer.w) return layer.w[value];
    const text = (Math.abs(value) / 10 ** layer.d).toFixed(layer.d).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
    return value < 0 && Number(text) !== 0 ? `−${text}` : text;
  };
  const sayCell = (grid, column, row) => {
    const at = grid.down ? column * grid.rows.length + row : row * grid.count + column;
    const first = sayLayer(grid.layers[0], at);
    const words = grid.say.replace(/\$(\d)/g, (_, n) => sayLayer(grid.layers[n], at));
    const place = [grid.name, dateOf(grid.from + column * grid.step, grid.step), grid.rows[row][0]];
    return `${place.filter(Boolean).join(', ')}: ${first === '–' ? grid.none : words}`;
  };

  // Each frame gives stops: boxes on the page with words. Grids make theirs from the box they are drawn in.
  const start = (figure, frame, grids, heard) => {
    const marks = [...frame.querySelectorAll('title')].map((title) => {
      const point = { element: title.parentNode, text: title.textContent };
      title.remove();
      return point;
    });
    const rects = [...frame.querySelectorAll('[data-grid]')];
    if (marks.length + rects.length === 0) return;
    const box = make('div', 'read', frame);
    const spot = make('div', 'spot', frame);
    box.hidden = spot.hidden = true;
    box.setAttribute('aria-hidden', 'true');
    let at = null;

    const boxOf = (stop) => {
      if (stop.point) return stop.point.element.getBoundingClientRect();
      const frameBox = rects[stop.g].getBoundingClientRect();
      const grid = grids[rects[stop.g].dataset.grid];
      const [, low, high] = grid.rows[stop.row];
      const width = frameBox.width / grid.count;
      return {
        left: frameBox.left + stop.column * width,
        top: frameBox.bottom - high * frameBox.height,
        width,
        height: (high - low) * frameBox.height,
      };
    };
    const textOf = (stop) =>
      stop.point ? stop.point.text : sayCell(grids[rects[stop.g].dataset.grid], stop.column, stop.row);
    const hide = () => {
      box.hidden = spot.hidden = true;
    };
    const show = (stop, aloud) => {
      at = stop;
      const inside = frame.getBoundingClientRect();
      const of = boxOf(stop);
      const left = of.left - inside.left;
      const top = of.top - inside.top;
      box.textContent = textOf(stop);
      box.hidden = spot.hidden = false;
      const grow = stop.point ? 4 : 1;
      Object.assign(spot.style, {
        left: `${left - grow}px`,
        top: `${top - grow}px`,
        width: `${of.width + 2 * grow}px`,
        height: `${of.height + 2 * grow}px`,
      });
      const most = Math.max(0, inside.width - box.offsetWidth);
      box.style.left = `${Math.min(most, Math.max(0, left + of.width / 2 - box.offsetWidth / 2))}px`;
      const above = top - box.offsetHeight - 10;
      box.style.top = `${above + inside.top > 0 ? above : top + of.height + 10}px`;
      if (aloud) heard.textContent = box.textContent;
    };
    const nearest = (x, y) => {
      for (let g = 0; g < rects.length; g++) {
        const of = rects[g].getBoundingClientRect();
        if (x < of.left || x > of.right || y < of.top || y > of.bottom) continue;
        const grid = grids[rects[g].dataset.grid];
        const up = (of.bottom - y) / of.height;
        const row = grid.rows.findIndex(([, low, high]) => up >= low && up <= high);
        if (row < 0) return null;
        return { g, row, column: Math.min(grid.count - 1, Math.floor(((x - of.left) / of.width) * grid.count)) };
      }
      let best = null;
      let least = 48;
      for (const point of marks) {
        const of = point.element.getBoundingClientRect();
        const away = Math.hypot(
          Math.max(of.left - x, 0, x - of.right),
          Math.max(of.top - y, 0, y - of.bottom),
        );
        if (away < least) [best, least] = [point, away];
      }
      return best && { point: best };
    };
    const follow = (event) => {
      const stop = nearest(event.clientX, event.clientY);
      if (stop) show(stop, false);
      else hide();
    };
    frame.addEventListener('pointermove', follow);
    frame.addEventListener('pointerdown', follow);
    frame.addEventListener('pointerleave', hide);

    const first = () => (rects.length > 0 ? { g: 0, row: 0, column: 0 } : { point: marks[0] });
    const moved = (key) => {
      if (at === null) return first();
      const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1], PageUp: [-10, 0], PageDown: [10, 0] };
      if (at.point) {
        const i = marks.indexOf(at.point);
        const by = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1, PageUp: -10, PageDown: 10 }[key];
        const to = key === 'Home' ? 0 : key === 'End' ? marks.length - 1 : i + by;
        return { point: marks[Math.min(marks.length - 1, Math.max(0, to))] };
      }
      const grid = grids[rects[at.g].dataset.grid];
      if (key === 'Home' || key === 'End') return { ...at, column: key === 'Home' ? 0 : grid.count - 1 };
      const [across, up] = steps[key];
      const column = Math.min(grid.count - 1, Math.max(0, at.column + across));
      const row = at.row + up;
      if (row >= 0 && row < grid.rows.length) return { g: at.g, column, row };
      // Past the last row of a panel comes the next one: panels follow each other downwards.
      const g = at.g - up;
      if (g < 0 || g >= rects.length) return { ...at, column };
      const next = grids[rects[g].dataset.grid];
      return { g, column: Math.min(column, next.count - 1), row: up > 0 ? 0 : next.rows.length - 1 };
    };
    frame.tabIndex = 0;
    frame.setAttribute('role', 'application');
    frame.setAttribute('aria-roledescription', 'figure, arrow keys read its values');
    frame.addEventListener('keydown', (event) => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.key === 'Escape') return hide();
      if (!/^(Arrow(Left|Right|Up|Down)|Page(Up|Down)|Home|End)$/.test(event.key)) return;
      event.preventDefault();
      show(moved(event.key), true);
    });
    frame.addEventListener('focus', () => {
      if (!frame.matches(':focus-visible')) return;
      box.textContent = 'Arrow keys read values out';
      box.hidden = false;
      Object.assign(box.style, { left: '0px', top: '0px' });
    });
    frame.addEventListener('blur', hide);
  };

  for (const figure of document.querySelectorAll('figure')) {
    const grids = JSON.parse(figure.dataset.reads || '[]');
    for (const grid of grids) grid.rows ||= HOURS;
    const heard = make('span', 'heard', figure);
    heard.setAttribute('role', 'status');
    for (const frame of figure.querySelectorAll('.at-wide,.at-narrow')) start(figure, frame, grids, heard);
  }
})();
