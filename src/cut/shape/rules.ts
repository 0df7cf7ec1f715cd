import type { RuleCard, RuleExample } from '../../diagnostics/rule-card.ts';

const RECTANGLE = '::outline{points="-40,20 40,20 40,60 -40,60" unit=mm}';

/** A guide that cuts with one template; `attributes` go on the template, `body` into it. */
function guide(body: string, attributes = '', tools = ''): string {
  return `${tools}::tool[Jigsaw]{#jigsaw}
::part[Bumper cover]{#cover}

:::cut-template[Opening]{#opening panel=cover face=outside${attributes}}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Lower edge of the cover]{axis=horizontal at="0 mm"}
${body}
:::

## Cut {#cut}

::step[Cut the opening]{#cut-opening time="8 min"}

Lay the :cut-template[opening] template on the datums, then :cut[opening]{with=jigsaw}.
`;
}

/** A guide that drills one hole with an 8 mm bit. */
function drilled(diameter: string): string {
  return guide(
    `::hole[Bolt]{#bolt centre="0,40" unit=mm diameter="${diameter}"}`,
    '',
    '::tool[8 mm bit]{#jigsaw diameter="8 mm"}\n',
  )
    .replace('::tool[Jigsaw]{#jigsaw}\n', '')
    .replace(':cut[opening]', ':drill[bolt]');
}

function card(
  code: string,
  title: string,
  why: string,
  bad: RuleExample,
  good: RuleExample = guide(RECTANGLE),
): RuleCard {
  return { code, severity: 'error', title, why, bad, good };
}

export const NUMBER_UNUSABLE = card(
  'cut-number-unusable',
  'A size or place on a template that nobody can cut',
  'A size of nothing, a negative one or one larger than any panel is a slip of the pen, and a saw would follow it.',
  guide(`${RECTANGLE}\n::slot[Cable]{#cable from="0,70" to="0,7000" unit=mm width="12 mm"}`),
  guide(`${RECTANGLE}\n::slot[Cable]{#cable from="0,70" to="0,90" unit=mm width="12 mm"}`),
);

export const TOO_FEW_CORNERS = card(
  'cut-corners-too-few',
  'An outline or keep-out with fewer than three corners',
  'Two points enclose nothing, so there is no waste side and nothing to cut away.',
  guide('::outline{points="-40,20 40,20" unit=mm}'),
);

export const OUTLINE_OPEN = card(
  'cut-outline-open',
  'An outline that does not close',
  'Where the line has a gap nobody knows which side falls away. Only a side on the panel’s own edge may be open.',
  guide('::outline{points="-40,20 0,5 40,20 40,60 -40,60" unit=mm open-edge=bottom}'),
);

export const OUTLINE_CROSSING = card(
  'cut-outline-crossing',
  'An outline that crosses itself',
  'A saw that follows a crossing line cuts loose what should stay.',
  guide('::outline{points="-40,20 40,60 40,20 -40,60" unit=mm}'),
);

export const RADIUS_MISFIT = card(
  'cut-radius-misfit',
  'A corner radius that does not fit',
  'A rounding takes a length of both sides of its corner. Where they are shorter, the outline cannot be drawn as stated.',
  guide('::outline{points="-40,20 40,20 40,30 r12 -40,30" unit=mm}'),
  guide('::outline{points="-40,20 40,20 40,30 r4 -40,30" unit=mm}'),
);

export const RADIUS_BELOW_CUTTER = card(
  'cut-radius-below-cutter',
  'A corner tighter than the cutter can make',
  'A round cutter leaves its own radius in an inner corner. A tighter one needs a file, or a radius on the drawing.',
  guide('::outline{points="-40,20 r6 40,20 r6 40,60 r2 -40,60 r6" unit=mm}').replace(
    '::tool[Jigsaw]{#jigsaw}',
    '::tool[Rotary cutter]{#jigsaw cutter-radius="3 mm"}',
  ),
  guide('::outline{points="-40,20 r6 40,20 r6 40,60 r6 -40,60 r6" unit=mm}').replace(
    '::tool[Jigsaw]{#jigsaw}',
    '::tool[Rotary cutter]{#jigsaw cutter-radius="3 mm"}',
  ),
);

export const HOLE_NO_BIT = card(
  'cut-hole-no-bit',
  'A hole that no declared bit makes',
  'The technician stands at the panel with the wrong bit and opens the hole with whatever is near.',
  drilled('8.5 mm'),
  drilled('8 mm'),
);

export const WEB_NARROW = card(
  'cut-web-narrow',
  'Less panel between two cuts than the template asks for',
  'A narrow web cracks when it is cut or when the part is tightened against it.',
  guide(`${RECTANGLE}\n::hole[Bolt]{#bolt centre="47,40" unit=mm diameter="8 mm"}`, ' web="6 mm"'),
  guide(`${RECTANGLE}\n::hole[Bolt]{#bolt centre="54,40" unit=mm diameter="8 mm"}`, ' web="6 mm"'),
);

export const KEEP_OUT_TOUCHED = card(
  'cut-keep-out-touched',
  'A cut that reaches a keep-out',
  'Behind a keep-out runs a hose, a wire or a beam. The cutter’s own radius counts.',
  guide(`${RECTANGLE}\n::keep-out[Washer hose]{points="-80,50 80,50 80,70 -80,70" unit=mm}`),
  guide(`${RECTANGLE}\n::keep-out[Washer hose]{points="-80,66 80,66 80,75 -80,75" unit=mm}`),
);

export const OUTSIDE_PANEL = card(
  'cut-outside-panel',
  'A cut that lies outside its panel',
  'A cut that runs off the panel was measured from the wrong datum, or the panel’s outline is wrong.',
  guide(`${RECTANGLE}\n::outline{of=panel points="-30,0 30,0 30,90 -30,90" unit=mm}`),
  guide(`${RECTANGLE}\n::outline{of=panel points="-60,0 60,0 60,90 -60,90" unit=mm}`),
);

export const TOLERANCE_BEYOND_PAPER = card(
  'cut-tolerance-beyond-paper',
  'A tolerance tighter than a paper template can hold',
  'Paper, tape and a pencil line hold about 0.3 mm, and a printer 0.2 % more. What must be truer is marked out with a rule or cut from the DXF file.',
  guide(RECTANGLE, ' tolerance="0.1 mm"'),
  guide(RECTANGLE, ' tolerance="1 mm"'),
);

export const FEATURES_COINCIDE = card(
  'cut-features-coincide',
  'Two cuts in one place',
  'One of them is a copy that was not moved, and the hole that was meant is missing.',
  guide(
    '::hole[Upper bolt]{#upper centre="0,40" unit=mm diameter="8 mm"}\n::hole[Lower bolt]{#lower centre="0,41" unit=mm diameter="8 mm"}',
  ),
  guide(
    '::hole[Upper bolt]{#upper centre="0,60" unit=mm diameter="8 mm"}\n::hole[Lower bolt]{#lower centre="0,41" unit=mm diameter="8 mm"}',
  ),
);

export const TOO_MANY_FEATURES = card(
  'cut-features-too-many',
  'More cuts on one template than can be told apart',
  'Every cut has its own letter and its own line in the list of positions. Beyond the limit nobody could follow it: split the template.',
  guide('::pattern[Grille]{#grille count=1000 diameter="3 mm" along="0,10 2000,10" unit=mm}'),
  guide('::pattern[Grille]{#grille count=10 diameter="3 mm" along="0,10 200,10" unit=mm}'),
);

export const NOTHING_CUT = card(
  'cut-template-empty',
  'A template that cuts nothing',
  'A sheet without a cut would be printed, taped and then be of no use.',
  guide('::keep-out[Washer hose]{points="-80,66 80,66 80,75 -80,75" unit=mm}'),
);

export const ARC_STRAY = card(
  'cut-arc-stray',
  'An arc that bends no side of an outline',
  'An arc replaces the straight side between two neighbouring corners of an outline, as they are typed: a rounded corner is rounded into the arc. One that meets none would be lost.',
  guide(`${RECTANGLE}\n::arc{from="-40,61" through="0,70" to="40,61" unit=mm}`),
  guide(`${RECTANGLE}\n::arc{from="-40,60" through="0,70" to="40,60" unit=mm}`),
);

export const FILE_UNREADABLE: RuleCard = card(
  'cut-file-unreadable',
  'A maker’s outline that cannot be read exactly',
  'A drawing is cut as its standard says it is seen. What is seen and is no outline, or a file without units, would have to be guessed, and makes a part that does not fit.',
  {
    'example/notch.svg':
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path d="M0 0Q5 9 9 0Z"/></svg>',
    'example/guide.md': guide('::outline{from=notch.svg}'),
  },
);

/** An opening of 50 × 30 mm with a hole of 6 mm on either side, as the maker drew it. */
const PLATE =
  '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="40mm" viewBox="-40 -60 80 40"><rect x="-25" y="-55" width="50" height="30"/><circle cx="-34" cy="-40" r="3"/><circle cx="34" cy="-40" r="3"/></svg>';

export const FILE_HOLES: RuleCard = card(
  'cut-file-holes',
  'Holes that a maker’s drawing does not have as stated',
  'Count and diameter are typed so that they can be held against the drawing: a circle more or less than expected is a wrong file, a wrong layer or a hole that was overlooked.',
  {
    'example/plate.svg': PLATE,
    'example/guide.md': guide(
      '::outline{from=plate.svg}\n::pattern[Bolts]{#bolts from=plate.svg count=3 diameter="6 mm"}',
    ),
  },
  {
    'example/plate.svg': PLATE,
    'example/guide.md': guide(
      '::outline{from=plate.svg}\n::pattern[Bolts]{#bolts from=plate.svg count=2 diameter="6 mm"}',
    ),
  },
);

export const SET_BACK_LOST = card(
  'cut-set-back-lost',
  'A set-back that cannot be drawn',
  'The outline is too tight for the set-back: the lines that stand back from it would run into each other.',
  guide(
    '::outline{points="-40,20 40,20 40,60 2,60 2,50 30,50 30,30 -30,30 -30,50 -2,50 -2,60 -40,60" unit=mm}',
    ' set-back="3 mm"',
  ),
);

export const CURVE_TOO_TIGHT = card(
  'cut-curve-too-tight',
  'A cut that lies beyond the panel’s curve',
  'A straight projection cannot reach further than the radius of the curve that it is laid on.',
  guide(RECTANGLE, ' curve-radius="30 mm"'),
  guide(RECTANGLE, ' curve-radius="600 mm"'),
);

export const SHEETS_TOO_MANY = card(
  'cut-sheets-too-many',
  'A template that needs more sheets than can be laid true',
  'Each seam adds an error. A template of many sheets is better cut from the DXF file, or marked out with a rule.',
  guide('::outline{points="-1500,20 1500,20 1500,1900 -1500,1900" unit=mm}'),
);

export const DATUM_MISSING: RuleCard = {
  ...card(
    'cut-datum-missing',
    'A template that cannot be placed',
    'Without one upright and one level datum nobody knows where on the panel the sheet is laid.',
    guide(RECTANGLE).replace(/::datum.*\n/g, ''),
  ),
  severity: 'warning',
};

const FAR_HOLE = '::hole[Bolt]{#bolt centre="2400,40" unit=mm diameter="8 mm"}';

export const DATUM_FAR: RuleCard = {
  ...card(
    'cut-datum-far',
    'A cut too far from its datum to be laid true',
    'A sheet far from its datum shows a line parallel to it, which the technician lays with a rule. Beyond two metres no rule reaches in one go, and what is measured in two goes is off by as much as the template is meant to save.',
    guide(FAR_HOLE),
    guide(`::datum[Rear door gap]{axis=vertical at="2300 mm"}\n${FAR_HOLE}`),
  ),
  severity: 'warning',
};

export const UNIT_DOUBTFUL: RuleCard = {
  ...card(
    'cut-unit-doubtful',
    'A place or size that is 25.4 times another beside it',
    'One hole typed in inches among millimetres, or the other way round, lies a panel’s width off, and the set grows to dozens of sheets. Nobody means that, and a drill would follow it.',
    guide(
      '::hole[Left bolt]{#left centre="-60,30" unit=mm diameter="8 mm"}\n::hole[Right bolt]{#right centre="60,30" unit=mm diameter="8 mm"}\n::hole[Cable]{#cable centre="40,36" unit=in diameter="8 mm"}',
    ),
    guide(
      '::hole[Left bolt]{#left centre="-60,30" unit=mm diameter="8 mm"}\n::hole[Right bolt]{#right centre="60,30" unit=mm diameter="8 mm"}\n::hole[Cable]{#cable centre="40,36" unit=mm diameter="8 mm"}',
    ),
  ),
  severity: 'warning',
};

export const LETTERS_MISSING: RuleCard = {
  ...card(
    'cut-letters-missing',
    'Letters that a template cannot print',
    'The sheets carry their own lettering. A letter that it lacks would leave a hole in a title or a label.',
    guide(RECTANGLE).replace('[Opening]', '[Opening 開口]'),
  ),
  severity: 'warning',
};

/** Every rule of cut templates, for the handbook. */
export const CUT_RULES: readonly RuleCard[] = [
  NUMBER_UNUSABLE,
  TOO_FEW_CORNERS,
  OUTLINE_OPEN,
  OUTLINE_CROSSING,
  RADIUS_MISFIT,
  RADIUS_BELOW_CUTTER,
  HOLE_NO_BIT,
  WEB_NARROW,
  KEEP_OUT_TOUCHED,
  OUTSIDE_PANEL,
  TOLERANCE_BEYOND_PAPER,
  FEATURES_COINCIDE,
  TOO_MANY_FEATURES,
  NOTHING_CUT,
  ARC_STRAY,
  FILE_UNREADABLE,
  FILE_HOLES,
  SET_BACK_LOST,
  CURVE_TOO_TIGHT,
  SHEETS_TOO_MANY,
  DATUM_MISSING,
  DATUM_FAR,
  UNIT_DOUBTFUL,
  LETTERS_MISSING,
];
