import { revisionLine, type SheetContext, sideAndFace } from '../job.ts';
import { HEIGHT, lettering, type Mark, strokeLine } from './drawing.ts';
import type { View } from './view.ts';

/** Lines of the block stand this many heights apart. */
const LINE = 1.55;

/** The block is at least so wide, mm, and the arrow beside it takes so much of that. */
const WIDTH = { block: 96, arrow: 16 } as const;

/**
 * A drawing for a machine with who it is below it, clear of every line: name, builds, guide, side, face, revision,
 * fingerprint, what was applied, how the guide stands to its release, and the arrow that points up. Nothing of it is
 * cut. A correction for one printer is not said: it does not apply to these files.
 */
export function identified(view: View, context: SheetContext): { view: View; identity: readonly Mark[] } {
  const { window, resolved, metrics } = view;
  const width = Math.max(WIDTH.block, window.maxX - window.minX);
  const small = linesOf(view, context).flatMap(({ text, bold }) =>
    metrics
      .wrap(text, HEIGHT.small, width - WIDTH.arrow, bold)
      .map((one) => ({ text: one, bold, height: HEIGHT.small })),
  );
  const lines = [
    ...(context.draft ? [{ text: 'DRAFT', bold: true, height: HEIGHT.sheet }] : []),
    {
      text: metrics.fit(resolved.title, HEIGHT.title, width - WIDTH.arrow, true),
      bold: true,
      height: HEIGHT.title,
    },
    ...small,
  ];
  const identity: Mark[] = [];
  let y = window.minY;
  for (const { text, bold, height } of lines) {
    y -= height * LINE;
    identity.push(lettering(text, window.minX, y, height, { bold }));
  }
  const up = { x: window.minX + width - WIDTH.arrow / 2, y: window.minY - 4 };
  identity.push(
    strokeLine('thin', up.x, up.y - 12, up.x, up.y),
    // A DXF has no filled arrowhead.
    strokeLine('thin', up.x - 0.8, up.y - 2.5, up.x, up.y),
    strokeLine('thin', up.x + 0.8, up.y - 2.5, up.x, up.y),
    lettering('UP', up.x, up.y - 16, HEIGHT.small, { anchor: 'middle', bold: true }),
  );
  const low = Math.min(y, up.y - 16) - 2;
  return { view: { ...view, window: { ...window, minY: low, maxX: window.minX + width } }, identity };
}

function linesOf({ resolved }: View, context: SheetContext): { text: string; bold: boolean }[] {
  const { guideTitle, standing } = context;
  const { side, face, variant, applied } = resolved;
  const plain = (text: string) => ({ text, bold: false });
  const strong = (text: string) => ({ text, bold: true });
  return [
    ...(variant ? [strong(`ONLY ${variant.builds}`)] : []),
    strong(sideAndFace(context, side, face)),
    plain(revisionLine(context)),
    ...(standing ? [strong(standing)] : []),
    plain(guideTitle),
    plain('SCALE 1:1, in millimetres'),
    ...applied.map(plain),
  ];
}
