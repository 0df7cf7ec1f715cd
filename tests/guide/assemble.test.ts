import { describe, expect, it } from 'vitest';
import { readBody, soundGuide, stepsIn } from './read.ts';

describe('a guide is parted into sections and steps', () => {
  const guide = soundGuide(`Before it all.

::tool[Trim lever]{#lever}

## First {#first}

Between heading and step.

::step[One]{#one time="3..6 min" people=2}

Do it with the :tool[lever].

::tool[Second tool]{#second}

Still of step one.

::step[Two]{#two side=each}

## Second {#second-section}

Only words.
`);

  it('text before the first heading opens the guide', () => {
    expect(guide.opening).toHaveLength(1);
  });

  it('text after a heading belongs to the section, after a step to the step', () => {
    const [first] = guide.sections;
    expect(first?.intro).toHaveLength(1);
    expect(first?.steps[0]?.blocks).toHaveLength(2);
  });

  it('a declaration opens and closes nothing, wherever it stands', () => {
    expect([...guide.items.keys()]).toEqual(['lever', 'second']);
    expect(stepsIn(guide).map(({ id }) => id)).toEqual(['one', 'two']);
  });

  it('time is read with its likely value in the middle of a range', () => {
    expect(stepsIn(guide)[0]).toMatchObject({
      people: 2,
      time: { value: { least: 3, likely: 4.5, most: 6 } },
    });
  });

  it('sections, steps and templates are places to link to', () => {
    expect(guide.anchors).toEqual(new Set(['first', 'one', 'two', 'second-section']));
  });

  it('items and places have name spaces of their own', () => {
    expect(readBody('## Lever {#lever}\n\n::tool[Lever]{#lever}\n').findings).toEqual([]);
  });
});

describe('what is at fault in one line costs the others nothing', () => {
  it('the text of a step whose opening line is at fault falls to no other step', () => {
    const { guide, findings } = readBody('## A {#a}\n\n::step[One]{#one}\n\nOne.\n\n::step[Two]\n\nTwo.\n');
    expect(findings.map(({ code }) => code)).toEqual(['attribute-missing']);
    expect(guide?.sections[0]?.steps.map(({ blocks }) => blocks.length)).toEqual([1]);
  });

  it('a broken torque and a doubled id appear in the same run', () => {
    const { findings } = readBody('## A {#a}\n\n::kit[Nut]{#nut torque=25}\n::kit[Bolt]{#nut}\n');
    expect(findings.map(({ code }) => code)).toEqual(['attribute-value', 'id-doubled']);
  });

  it('an action outside a step is told, and a measurement in a proving list is not', () => {
    const { findings } = readBody(`::measure[Gap]{#gap}

## A {#a}

:remove[cover]

:::prove[All]
- :measure[gap]
:::
`);
    expect(findings.map(({ message }) => message)).toEqual([
      ':remove stands outside any step, so it is never done and never counted; move it into a step',
    ]);
  });
});

describe('a template', () => {
  it('takes the radius of the cutter that its cutting step names', () => {
    const guide = soundGuide(`::tool[Rotary cutter]{#cutter cutter-radius="3 mm"}
::part{#cover}

## Cut {#cut}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Edge]{axis=horizontal at="-5 mm"}
::outline{points="0,0 1,0 1,1 r0.25 0,1" unit=in}
:::

::step[Cut]{#do}

:cut[notch]{with=cutter}.
`);
    const notch = guide.templates.get('notch');
    expect(notch).toMatchObject({ cutterRadius: { value: 3 }, datums: [{ position: -5 }] });
    expect(notch?.outlines[0]).toMatchObject({
      corners: [{ point: { x: 0 } }, { point: { x: 25.4 } }, { point: { y: 25.4 }, radius: 6.35 }, {}],
    });
  });
});
