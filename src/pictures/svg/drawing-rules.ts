import type { RuleCard, RuleExample } from '../../diagnostics/rule-card.ts';
import type { PictureCode } from '../picture.ts';
import { example, exampleDrawing } from '../rule-examples.ts';

type DrawingCode = Extract<PictureCode, `drawing-${string}`>;

/** The cards of the rules about SVG drawings; `good` is the example that all of them share. */
export function drawingRules(good: RuleExample): Readonly<Record<DrawingCode, RuleCard>> {
  return {
    'drawing-unreadable': {
      code: 'drawing-unreadable',
      severity: 'error',
      title: 'A drawing cannot be read',
      why: 'Browsers guess at broken drawings, each in its own way, so what the author saw is not what the technician sees. A drawing is sound XML, in UTF-8, with an svg element that has a viewBox.',
      bad: example('arch.svg', '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 60"><g></svg>\n'),
      good,
    },
    'drawing-too-complex': {
      code: 'drawing-too-complex',
      severity: 'error',
      title: 'A drawing has too many shapes',
      why: 'A drawing traced from a photo, or one whose parts use each other over and over, makes a tablet stand still.',
      bad: example('arch.svg', exampleDrawing('<g id="a"><use href="#a"/></g>')),
      good,
    },
    'drawing-unsafe': {
      code: 'drawing-unsafe',
      severity: 'error',
      title: 'A drawing could run code',
      why: 'Drawings are put into the page. A script in one would run with the page, and entities can grow a small file until the memory is full. A drawing for a guide needs neither.',
      bad: example('arch.svg', exampleDrawing('<script>alert(1)</script>')),
      good,
    },
    'drawing-reaches-outside': {
      code: 'drawing-reaches-outside',
      severity: 'error',
      title: 'A drawing reaches outside itself',
      why: 'The site works with the network off, and nobody may learn which guide is being read. So a drawing holds everything it shows.',
      bad: example('arch.svg', exampleDrawing('<use href="other.svg#clip"/>')),
      good,
    },
    'drawing-part-unsupported': {
      code: 'drawing-part-unsupported',
      severity: 'error',
      title: 'A drawing holds something that is not kept',
      why: 'Style sheets, filters, masks and embedded photos either leak into the page or look different from one reader to the next. Left out silently, they would change what the drawing shows.',
      bad: example('arch.svg', exampleDrawing('<style>path { stroke: red }</style><path d="M10 10h80"/>')),
      good,
    },
    'drawing-blurred': {
      code: 'drawing-blurred',
      severity: 'error',
      title: 'A drawing is to be blurred',
      why: 'A blur laid over lines leaves the lines in the file for anyone to read. What must not be seen is taken out of the drawing.',
      bad: {
        ...Object.fromEntries(Object.entries(good)),
        'example/guide.md':
          ':::figure[The edge]{src=pictures/arch.svg alt="Rear edge" blur="10%,10%,20%,20%"}\n:::\n',
      },
      good,
    },
  };
}
