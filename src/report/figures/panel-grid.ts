import type { Size } from '../page.ts';

/** Where small multiples stand: panels in rows, three side by side on a wide page, one on a narrow one. */
export interface PanelGrid {
  /** column and row of each panel */
  places: readonly { fx: number; fy: number }[];
  height: number;
  /** of one panel's frame, px */
  panelWidth: number;
  panelHeight: number;
  margins: { marginLeft: number; marginRight: number; marginTop: number; marginBottom: number };
  /** scales between the panels, without axes of their own */
  facets: {
    fx: { axis: null; padding: number; domain: readonly number[] };
    fy: { axis: null; padding: number; domain: readonly number[] };
  };
}

const HEADING_PX = 40;

/**
 * @param count        panels, one or more
 * @param size         room of the whole figure
 * @param panelHeight  px, of each frame
 */
export function panelGrid(count: number, size: Size, panelHeight: number): PanelGrid {
  const columns = size.narrow ? 1 : Math.min(3, count);
  const rows = Math.ceil(count / columns);
  const margins = { marginLeft: 46, marginRight: 54, marginTop: HEADING_PX, marginBottom: 40 };
  // Between columns: the labels at the ends of lines; between rows: the heading of the next panel.
  const paddingX = columns === 1 ? 0 : 0.2;
  const paddingY = rows === 1 ? 0 : HEADING_PX / (panelHeight + HEADING_PX);
  const step = rows === 1 ? panelHeight : panelHeight / (1 - paddingY);
  const inner = size.width - margins.marginLeft - margins.marginRight;
  return {
    places: Array.from({ length: count }, (_, i) => ({ fx: i % columns, fy: Math.floor(i / columns) })),
    height: margins.marginTop + margins.marginBottom + Math.round(step * (rows - paddingY)),
    panelWidth: columns === 1 ? inner : (inner / (columns - paddingX)) * (1 - paddingX),
    panelHeight,
    margins,
    facets: {
      fx: { axis: null, padding: paddingX, domain: range(columns) },
      fy: { axis: null, padding: paddingY, domain: range(rows) },
    },
  };
}

function range(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i);
}

/** Labels at the ends of lines, moved apart where they would lie on each other; heights in px from the top. */
export function spreadLabels(heights: readonly number[], roomPx: number): number[] {
  const order = heights.map((_, i) => i).sort((a, b) => heights[a] - heights[b]);
  const placed = [...heights];
  for (let k = 1; k < order.length; k++) {
    placed[order[k]] = Math.max(placed[order[k]], placed[order[k - 1]] + roomPx);
  }
  return placed;
}
