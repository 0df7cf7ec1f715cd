import { MIRROR, moveContour, movePoint, moveSegment } from '../../geometry/transform.ts';
import type { Face } from '../../model/cut-template.ts';
import type { TradeWords } from '../../trade/words.ts';
import { base } from '../../units/quantity.ts';
import type { Resolved } from './resolved.ts';

/** The same template for the other side of the vehicle or seen on the other face; lettering is drawn later. */
export function mirrored(
  resolved: Resolved,
  side: Resolved['side'],
  face: Face,
  words: TradeWords,
): Resolved {
  const flip = (contour: Resolved['cuts'][number]['area']): typeof contour => moveContour(contour, MIRROR);
  return {
    ...resolved,
    applied: [...resolved.applied, mirrorWords(resolved, side, face, words)],
    side,
    face,
    origin: movePoint(resolved.origin, MIRROR),
    datums: resolved.datums.map((datum) =>
      datum.axis === 'vertical' ? { ...datum, position: base<'length'>(-datum.position + 0) } : datum,
    ),
    cuts: resolved.cuts.map((cut) => {
      const edge = cut.edge && moveSegment(cut.edge, MIRROR);
      return {
        ...cut,
        area: flip(cut.area),
        cut: flip(cut.cut),
        // Run backwards, as the contours are, so that the panel stays on the same hand.
        edge: edge?.kind === 'line' ? { kind: 'line', from: edge.to, to: edge.from } : null,
        toolPath: cut.toolPath && flip(cut.toolPath),
        stations: cut.stations.map((s) => ({
          ...s,
          point: movePoint(s.point, MIRROR),
          ...(s.on && { on: movePoint(s.on, MIRROR) }),
        })),
      };
    }),
    keepOuts: resolved.keepOuts.map((k) => ({ ...k, area: flip(k.area) })),
    panel: resolved.panel && flip(resolved.panel),
  };
}

function mirrorWords(from: Resolved, side: Resolved['side'], face: Face, words: TradeWords): string {
  return face === from.face && from.side && side
    ? `Mirrored from the ${words[from.side]} side for the ${words[side]} side`
    : `Mirrored for the ${face} face; the guide gives it on the ${from.face} face`;
}
