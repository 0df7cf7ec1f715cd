import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Drive } from '../trade/drives.ts';
import { atBearing, hexalobe, NARROW, outline, regularCorners, star, WIDE } from './shapes.ts';

const centre = [12, 12] as const;

/**
 * A drive as the technician sees it from above: heads that a tool goes over are outlines, recesses that it goes
 * into are solid in a round head. A plastic fastener, which has no recess, is seen from the side.
 * 24 × 24 units in the colour of the text. The page says the name beside it, so readers of the screen skip it.
 */
export function driveGlyph(drive: Drive): Element {
  const shapes = driveShapes(drive);
  return s(
    'svg',
    {
      className: ['glyph', `drive-${drive.kind}`],
      viewBox: '0 0 24 24',
      ariaHidden: 'true',
      focusable: 'false',
    },
    ...shapes,
  );
}

function driveShapes(drive: Drive): Element[] {
  switch (drive.kind) {
    case 'hexagon':
      return [line(outline(regularCorners(6, 11, centre))), ring(8.2, NARROW)];
    case 'twelve-point':
      return [line(outline(star(12, 11, 9, centre))), ring(7, NARROW)];
    case 'square-flats':
      return [line(outline(regularCorners(4, 13, centre, 45))), ring(7.6, NARROW)];
    case 'external-hexalobular':
      return [line(hexalobe(22, 16, 2.1, centre)), ring(5.6, NARROW)];
    case 'hexagon-socket':
      return [ring(10.5), solid(outline(regularCorners(6, 6.6, centre)))];
    case 'hexalobular':
      return [ring(10.5), solid(lobes)];
    case 'security-hexalobular':
      return [ring(10.5), solid(lobes + disc(2.5))];
    case 'square':
      return [ring(10.5), solid(outline(regularCorners(4, 7, centre, 45)))];
    case 'spline':
      return [ring(10.5), solid(outline(star(12, 7, 5.2, centre)))];
    case 'cross':
      return [ring(10.5), solid(crossOutline(drive.form)), ...crossMark(drive.form)];
    case 'slotted':
      return [ring(10.5), solid('M2.5 10.4h19v3.2h-19z')];
    case 'push-in':
      return pushIn();
    case 'pull-out':
      return pullOut();
  }
}

/** Proportions of size 30 of ISO 10664: 5.60 over the lobes, 3.95 over the hollows; lobe radius 0.45 (from memory). */
const lobes = hexalobe(14, (14 * 3.95) / 5.6, (14 * 0.45) / 5.6, centre);

/** Wings that taper, with rounded roots, for PH and JIS; straight wings for PZ. */
function crossOutline(form: 'PH' | 'PZ' | 'JIS'): string {
  const [tip, root] = form === 'PZ' ? [1.5, 1.5] : [1.4, 2.3];
  const quarter = [0, 90, 180, 270].flatMap((turn) => [
    atBearing(Math.sqrt(49 + tip * tip), turn - (Math.atan2(tip, 7) * 180) / Math.PI, centre),
    atBearing(Math.sqrt(49 + tip * tip), turn + (Math.atan2(tip, 7) * 180) / Math.PI, centre),
    atBearing(root * Math.SQRT2, turn + 45, centre),
  ]);
  return outline(quarter);
}

/** PZ heads carry four fine lines between the wings, JIS heads one dimple (ISO 4757 and JIS B 1012, from memory). */
function crossMark(form: 'PH' | 'PZ' | 'JIS'): Element[] {
  if (form === 'JIS') return [solid('M15.9 6.6a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0-3 0z')];
  if (form === 'PH') return [];
  const ticks = [45, 135, 225, 315].map((turn) => {
    const [[x1, y1], [x2, y2]] = [atBearing(4, turn, centre), atBearing(7.6, turn, centre)];
    return `M${x1.toFixed(2)} ${y1.toFixed(2)}L${x2.toFixed(2)} ${y2.toFixed(2)}`;
  });
  return [line(ticks.join(''), NARROW * 1.4)];
}

/** A pin that spreads two legs when it is pushed in; shown raised, ready to draw. */
function pushIn(): Element[] {
  return [
    solid('M8 1.5h8v2.6h-8z'),
    line('M12 4v14', WIDE * 1.4),
    line('M3.5 8.2h17v2.6h-17z'),
    line('M8.6 10.8v7l1.6 4M15.4 10.8v7l-1.6 4'),
  ];
}

/** A shank with barbs like a fir tree. */
function pullOut(): Element[] {
  return [
    solid('M3.5 2h17v3h-17z'),
    line('M12 5v17', WIDE * 1.4),
    line('M6.5 11L12 8.6L17.5 11M7.2 15L12 12.6L16.8 15M8 19L12 16.6L16 19'),
  ];
}

function line(d: string, width = WIDE): Element {
  return s('path', {
    d,
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': width,
    'stroke-linejoin': 'round',
  });
}

function solid(d: string): Element {
  return s('path', { d, fill: 'currentColor', 'fill-rule': 'evenodd' });
}

function ring(r: number, width = WIDE): Element {
  return s('circle', { cx: 12, cy: 12, r, fill: 'none', stroke: 'currentColor', 'stroke-width': width });
}

function disc(r: number): string {
  return `M${12 - r} 12a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
}
