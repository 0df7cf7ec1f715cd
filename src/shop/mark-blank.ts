import type { RuleCard } from '../diagnostics/rule-card.ts';

const guide = (at: string) => ({
  'example/guide.md': `:::figure[The edge]{src=edge.svg alt="Edge of the trim, seen from below"}
- :mark[A]{at="${at}"} tip of the lever
:::
`,
  'example/edge.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><rect width="90" height="60" fill="#fff"/><path d="M10 30h40v20h-40z"/></svg>\n',
});

/** A mark whose line ends where the picture shows nothing. */
export const markBlank: RuleCard = {
  code: 'mark-blank',
  severity: 'warning',
  title: 'A mark that points at nothing',
  why: 'The technician looks for the thing where the line ends. Where the drawing has nothing there, or the photograph only paper, sky or a plain face, the letter stands in the key and leads nowhere; most often the picture was drawn anew and the mark stayed. Inside a closed shape that is filled, white too, a mark points at that shape. Photographs less than 480 pixels wide are not judged.',
  bad: guide('80%,20%'),
  good: guide('30%,60%'),
};

/** What is told of it. */
export const nothingThere = (letter: string, path: string) =>
  `the mark ${letter} points at a place of ${path} where nothing is to be seen; point it at what its line of the key names`;
