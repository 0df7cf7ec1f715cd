import { describe, expect, it } from 'vitest';
import { zonesOfStep, zonesOfThing } from '../../src/job/index.ts';
import { readBody, stepsIn } from './read.ts';

/** What lies where on the vehicle is the author's word; the examples are invented. */
const drawing = `
:::figure[The van]{src=van.svg alt="Side view of a van"}
:::

::zone[Front end]{#front at="0%,40%,25%,90%"}
::zone[Roof]{#roof at="20%,5%,95%,20%"}

::part[Beam]{#beam zone=front}
::part[Roof panel]{#roof-panel zone=roof}
::condition[Bonnet open]{#bonnet zone=front set="open the bonnet" clear="shut it"}
`;

function zoned(body: string, procedures: { readonly [id: string]: string } = {}) {
  const { guide, findings } = readBody(`## Work {#work}\n\n${body}`, procedures, drawing);
  if (!guide) throw new Error(findings.map(({ message }) => message).join('\n'));
  return { guide, findings };
}

const messages = (body: string, procedures: { readonly [id: string]: string } = {}) =>
  zoned(body, procedures).findings.map(({ code, message }) => `${code}: ${message}`);

/** The zones of each step. */
function placesIn(body: string) {
  const { guide, findings } = zoned(body);
  expect(findings).toEqual([]);
  return Object.fromEntries(stepsIn(guide).map((step) => [step.id, zonesOfStep(guide, step)]));
}

describe('the zones of things', () => {
  const { guide, findings } = zoned(`::part{#beam}
::part[Cover]{#cover covers=beam}
::part[Shutter]{#shutter}
::part[Grille]{#grille zone=roof covers=shutter}
::fastener[Bolt]{#bolt holds="cover roof-panel"}
::connector[Lamp plug]{#plug on=cover}
::kit[Bracket]{#bracket}
::kit[Bracket bolt]{#bracket-bolt stack="bracket nut" holds=beam thread=M8x1.25}
::kit[Nut]{#nut thread=M8x1.25}
::part[Loose thing]{#thing}
::part{#roof-panel}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Middle]{axis=vertical at="0 mm"}
::datum[Edge]{axis=horizontal at="0 mm"}
::outline{points="-62,0 62,0 62,38 -62,38" unit=mm}
:::

::step[Look]{#look}

Look at it.
`);
  const where = (id: string) => zonesOfThing(guide, id);

  it('are those that the author names, on the platform or in the guide', () => {
    expect(findings).toEqual([]);
    expect([where('beam'), where('grille')]).toEqual([['front'], ['roof']]);
  });

  it('come from what a thing covers, holds, sits on, is cut from or is stacked with', () => {
    expect(where('cover')).toEqual(['front']);
    expect(where('bolt')).toEqual(['front', 'roof']);
    expect(where('plug')).toEqual(['front']);
    expect(where('notch')).toEqual(['front']);
    expect([where('bracket-bolt'), where('bracket'), where('nut')]).toEqual([
      ['front'],
      ['front'],
      ['front'],
    ]);
  });

  it('come from what covers it where it says nothing itself, and from nothing else', () => {
    expect(where('shutter')).toEqual(['roof']);
    expect(where('thing')).toEqual([]);
    expect(where('nothing-of-this-name')).toEqual([]);
  });
});

describe('the zones of a step', () => {
  it('are those of what it does something to, else of what it speaks of, else of what must hold', () => {
    const places = placesIn(`::part{#beam}
::part{#roof-panel}
::condition{#bonnet}
::kit[Label]{#label needs=bonnet}

::step[Clean]{#clean}

:clean[beam] and look at the :part[roof-panel].

::step[Look]{#look}

Look at the :part[roof-panel].

::step[Stick on]{#stick}

:fit[label].

::step[Wash hands]{#wash}

Wash your hands.

::step[At the bench]{#bench zone=off}

:clean[beam].

::step[Behind the roof]{#behind zone="roof front"}

Feel behind it.
`);
    expect(places).toEqual({
      clean: ['front'],
      look: ['roof'],
      stick: ['front'],
      wash: [],
      bench: 'off',
      behind: ['front', 'roof'],
    });
  });

  it('go along with what is undone', () => {
    const places = placesIn(`::part{#beam}

::step[Lay it on the bench]{#off-it zone=off}

:remove[beam].

## Refit {#refit}

::reverse{of=work}
`);
    expect(places).toEqual({ 'off-it': 'off', 'refit-off-it': 'off' });
  });
});

describe('a zone that is wrong', () => {
  it('is told where it is written, with the nearest name, once', () => {
    expect(messages('::part[Cap]{#cap zone=frnt}\n\n::step[Look]{#look zone=frnt}\n\nLook.\n')).toEqual([
      'zone-unknown: the platform has no zone "frnt"',
      'zone-unknown: the platform has no zone "frnt"',
    ]);
    const [first] = zoned('::part[Cap]{#cap zone=frnt}\n').findings;
    expect(first?.suggestion?.text).toBe('front');
  });

  it('is told in a procedure with the place of the procedure', () => {
    const { findings } = zoned('::procedure{of=wash}\n', {
      wash: '::part[Cap]{#cap zone=rear}\n\n::step[Wash]{#wash}\n\n:clean[cap].\n',
    });
    expect(findings.map(({ code, at, notes }) => [code, at.file, notes.length])).toEqual([
      ['zone-unknown', 'procedures/wash.md', 1],
    ]);
  });

  it('is told on a platform without zones with what would declare one', () => {
    const { findings } = readBody('## Work {#work}\n\n::step[Look]{#look zone=front}\n\nLook.\n');
    expect(findings.map(({ message }) => message)).toEqual([
      'the platform has no zones, so that there is no zone "front"; declare it there, as in ::zone[Front end]{#front at="0%,45%,24%,90%"}',
    ]);
  });

  it('stands only on a platform, and only on one that shows a picture', () => {
    expect(messages('::zone[Rear]{#rear at="80%,40%,95%,90%"}\n')).toEqual([
      'directive-misplaced: a zone is a part of the platform’s drawing; declare it in the file of the platform',
    ]);
    const { findings } = readBody(
      '## Work {#work}\n\n::step[Look]{#look}\n\nLook.\n',
      {},
      '\n::zone[Front end]{#front at="0%,40%,25%,90%"}\n',
    );
    expect(findings.map(({ message }) => message)).toEqual([
      'a zone lies in the first picture of the platform, and this one shows none; put a :::figure of the whole vehicle on its page',
    ]);
  });

  it('is neither `off` nor off and on at once', () => {
    expect(messages('::part[Cap]{#cap zone=off}\n')).toEqual([
      'attribute-value: zone: "off" stands on a step that is done off the vehicle; name the zone in which this lies',
    ]);
    expect(messages('::step[Look]{#look zone="off front"}\n\nLook.\n')).toEqual([
      'attribute-value: zone: "off" stands alone: a step is done in zones of the vehicle, or off it',
    ]);
    const { findings } = readBody(
      '## Work {#work}\n\n::step[Look]{#look}\n\nLook.\n',
      {},
      drawing.replace('#roof ', '#off '),
    );
    expect(findings[0]?.message).toBe(
      'id: "off" is what a step says that is done off the vehicle; give the zone another id',
    );
  });
});
