import { drawTemplate } from '../../src/cut/draw-template.ts';
import { CONTEXT, hole, outline, template } from '../cut/fixtures.ts';

/** Prints how many templates of six tiles are drawn a second (one paper: PDF, SVG, DXF, preview), and the memory. */
const RUNS = 20;

const six = template({
  id: 'bench',
  outlines: [
    outline([
      [-140, 20, 30],
      [140, 20, 30],
      [140, 480, 30],
      [-140, 480, 30],
    ]),
  ],
  holes: [-120, -60, 0, 60, 120].map((x) => hole(x, 8, 6)),
});

const context = { ...CONTEXT, papers: ['a4' as const] };
const warm = await drawTemplate(six, context);
const plan = warm.sides[0]?.plans[0];
const start = performance.now();
for (let i = 0; i < RUNS; i++) await drawTemplate(six, context);
const each = (performance.now() - start) / RUNS;
const memory = process.memoryUsage().rss / 2 ** 20;
console.log(
  `${plan?.pages} pages (${plan?.tiles.length} tiles): ${each.toFixed(0)} ms each, ${(1000 / each).toFixed(1)} templates/s`,
);
console.log(`memory ${memory.toFixed(0)} MiB`);
