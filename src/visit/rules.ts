import type { RuleCard } from '../diagnostics/rule-card.ts';

const head = (title: string, platform = 'example-van') => `---\ntitle: ${title}\nplatform: ${platform}\n`;
const nones = ['wear', 'tools', 'supplies', 'kit', 'conditions'].map((of) => `::none{of=${of}}\n`).join('');
const guide = (title: string, more = '', platform?: string) =>
  `${head(title, platform)}${more}---\n\n## Without {#without}\n\n${nones}\n## Work {#work}\n\n::step[Look at the ${title.toLowerCase()}]{#look time="2 min"}\n\nLook behind the edge.\n`;
const visit = (guides: string, more = '') =>
  `---\ntitle: Lamp and mirror\nplatform: example-van\nguides: ${guides}\n${more}---\n`;

/** Two guides that can be one visit. */
const two = { 'lamp/guide.md': guide('Lamp'), 'mirror/guide.md': guide('Mirror') };
/** A visit of two guides, as an example. */
export const twoInOneVisit = { 'visits/both.md': visit('[lamp, mirror]'), ...two };

export const visitEmpty: RuleCard = {
  code: 'visit-empty',
  severity: 'error',
  title: 'A visit without a guide',
  why: 'A visit plans the work of its guides as one job. Without a guide there is nothing to plan.',
  bad: { ...two, 'visits/both.md': visit('[]') },
  good: twoInOneVisit,
};

export const visitGuideUnknown: RuleCard = {
  code: 'visit-guide-unknown',
  severity: 'error',
  title: 'A visit names a guide that is not there',
  why: 'A visit names its guides by their folders. One that is not there would be left out of the job, and the customer has paid for it.',
  bad: { ...two, 'visits/both.md': visit('[lamp, miror]') },
  good: twoInOneVisit,
};

export const visitGuideRepeated: RuleCard = {
  code: 'visit-guide-repeated',
  severity: 'error',
  title: 'A visit names one guide twice',
  why: 'A guide counts what is in one box and where it goes. Fitted twice it would want two boxes and two places, which no guide describes.',
  bad: { ...two, 'visits/both.md': visit('[lamp, lamp]') },
  good: twoInOneVisit,
};

export const visitGuideFaulty: RuleCard = {
  code: 'visit-guide-faulty',
  severity: 'error',
  title: 'A visit names a guide that has errors',
  why: 'A guide with errors is not published, since it would leave a technician stranded. The same work in a visit would do so too.',
  bad: twoInOneVisit,
  good: twoInOneVisit,
};

export const visitPlatformDiffers: RuleCard = {
  code: 'visit-platform-differs',
  severity: 'error',
  title: 'A visit names a guide for another vehicle',
  why: 'A visit is several jobs on one vehicle. A guide that is for another platform describes parts that this one does not have.',
  bad: {
    ...two,
    'platforms/other-van.md': '---\ntitle: Other van\n---\n\nA van.\n',
    'mirror/guide.md': guide('Mirror', '', 'other-van'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
  good: twoInOneVisit,
};

export const visitBuildUnknown: RuleCard = {
  code: 'visit-build-unknown',
  severity: 'error',
  title: 'A visit says something of its vehicle that no guide asks about',
  why: 'The build of a visit is told in the options of its platform and its guides. A word that is none of them settles nothing, and the plan would be for another vehicle than the one that is booked.',
  bad: { ...two, 'visits/both.md': visit('[lamp, mirror]', 'build: fogs\n') },
  good: { ...two, 'visits/both.md': visit('[lamp, mirror]', 'build: no fog\n') },
};

export const visitBuildImpossible: RuleCard = {
  code: 'visit-build-impossible',
  severity: 'error',
  title: 'No vehicle can have what a visit asks for',
  why: 'A guide may be for some builds alone, and a platform may list those that exist. Where these and what the visit says of its vehicle exclude each other, there is no vehicle to work on.',
  bad: {
    'lamp/guide.md': guide('Lamp', 'when: fog\n'),
    'mirror/guide.md': guide('Mirror', 'when: not fog\n'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
  good: twoInOneVisit,
};

const cover = (title: string, doing: string) =>
  `${head(title)}---\n\n## What comes off {#off}\n\n${nones}\n::part{#cover}\n\n## Work {#work}\n\n::step[Work on the ${title.toLowerCase()}]{#work-on time="5 min"}\n\n${doing}\n`;
const platform = {
  'platforms/example-van.md':
    '---\ntitle: Example van\noptions:\n  fog: Front fog lamps\n---\n\nA van.\n\n::part[Front cover]{#cover}\n',
};

export const visitUnorderable: RuleCard = {
  code: 'visit-unorderable',
  severity: 'error',
  title: 'No order of the guides of a visit is possible',
  why: 'The dry run plays the guides of a visit as one job on one vehicle. Where one of them leaves the vehicle so that the other cannot be done, before it or after it, they are not one job; the fewest steps that exclude each other are named, with their places.',
  bad: {
    ...platform,
    'lamp/guide.md': cover('Lamp', ':remove[cover], :discard[cover].'),
    'mirror/guide.md': cover('Mirror', ':remove[cover], :hand-over[cover].'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
  good: {
    ...platform,
    'lamp/guide.md': cover('Lamp', ':remove[cover]. Then :refit[cover].'),
    'mirror/guide.md': cover('Mirror', ':remove[cover]. Then :refit[cover].'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
};

const clips = (title: string, label: string) =>
  `${head(title)}---\n\n## What comes off {#off}\n\n${nones}\n::fastener[${label}]{#clip type=push-clip count=2}\n\n## Work {#work}\n\n::step[Free the ${title.toLowerCase()}]{#free time="5 min"}\n\n:remove[clip].\n\n## Refit {#refit}\n\n::reverse{of=work}\n`;

export const visitLookAlike: RuleCard = {
  code: 'visit-look-alike',
  severity: 'warning',
  title: 'Two guides of a visit declare what seems to be one thing',
  why: 'A thing is one in a visit where it is of the platform or of a procedure, never because two guides call it alike. Two that look alike are taken off and refitted for each guide; if they are one, the visit does that work twice.',
  bad: {
    'lamp/guide.md': clips('Lamp', 'Edge clip'),
    'mirror/guide.md': clips('Mirror', 'Edge clip'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
  good: {
    'lamp/guide.md': clips('Lamp', 'Lamp clip'),
    'mirror/guide.md': clips('Mirror', 'Mirror clip'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
};

const roof = {
  'platforms/example-van.md':
    '---\ntitle: Example van\n---\n\nA van.\n\n::part[Roof rail]{#rail}\n::rating[Roof load]{#roof-load limit="60 kg"}\n',
};
const load = (title: string, claim: string) =>
  `${head(title)}---\n\n## What you need {#need}\n\n${nones}\n::rating{#roof-load}\n::rating[${title} with all on it]{#own-load claim="${claim}"}\n\n## Work {#work}\n\n::step[Look at the ${title.toLowerCase()}]{#look time="2 min"}\n\nLook at the roof.\n`;

export const visitLoadExceeded: RuleCard = {
  code: 'visit-load-exceeded',
  severity: 'error',
  title: 'The guides of a visit together load something with more than it may bear',
  why: 'Each guide holds its own load against the limits that it names. What two of them put on one roof, or draw from one feed, adds up; a limit that the platform declares is one in all guides, so that the sum can be told.',
  bad: {
    ...roof,
    'lamp/guide.md': load('Lamp', '28 kg'),
    'mirror/guide.md': load('Mirror', '40 kg'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
  good: {
    ...roof,
    'lamp/guide.md': load('Lamp', '28 kg'),
    'mirror/guide.md': load('Mirror', '30 kg'),
    'visits/both.md': visit('[lamp, mirror]'),
  },
};

const declared = (what: string) => nones.replace(new RegExp(`::none\\{of=(?:${what})\\}\\n`, 'g'), '');
const feed = (along: string) =>
  `${head('Lamp')}---\n\n## What you need {#need}\n\n${declared('kit')}::kit[Lamp feed]{#feed}\n::part{#rail}\n\n## Work {#work}\n\n::step[Lay the feed]{#lay time="5 min"}\n\n:fit[feed] and :route[feed]{${along}} behind the :part[rail].\n`;
const holes = `${head('Mirror')}---\n\n## What you need {#need}\n\n${declared('tools|wear')}::tool[9 mm drill]{#drill diameter="9 mm"}\n::wear[Eye protection]{#eyes}\n::part{#rail}\n\n## Drill {#drilling}\n\n:::cut-template[Mirror holes]{#holes panel=rail face=outside}\n::datum[Middle]{axis=vertical at="0 mm"}\n::datum[Edge]{axis=horizontal at="0 mm"}\n::hole[Hole]{#hole centre="0,0" diameter="9 mm" unit=mm}\n:::\n\n::step[Try the mirror]{#trial time="2 min"}\n\nHold it up.\n\n::step[Drill the hole]{#drill-it time="5 min"}\n\n:::warning[Flying swarf]\nChips blind an eye. Wear :wear[eyes].\n:::\n\n:drill[hole]{with=drill trial=trial}.\n`;

export const visitRouteCut: RuleCard = {
  code: 'visit-route-cut',
  severity: 'warning',
  title: 'One guide of a visit cuts into a part along which another lays something',
  why: 'A loom or a hose that lies behind a panel is not seen by whoever drills it. Each guide by itself knows only its own; `on` of what is routed says along which parts it lies, and the visit drills first where it can.',
  bad: {
    ...roof,
    'lamp/guide.md': feed('on=rail'),
    'mirror/guide.md': holes,
    'visits/both.md': visit('[lamp, mirror]'),
  },
  good: {
    ...roof,
    'lamp/guide.md': feed('say=tie'),
    'mirror/guide.md': holes,
    'visits/both.md': visit('[lamp, mirror]'),
  },
};

/** The rules about visits. */
export const visitRules: readonly RuleCard[] = [
  visitEmpty,
  visitGuideUnknown,
  visitGuideRepeated,
  visitGuideFaulty,
  visitPlatformDiffers,
  visitBuildUnknown,
  visitBuildImpossible,
  visitUnorderable,
  visitLookAlike,
  visitLoadExceeded,
  visitRouteCut,
];
