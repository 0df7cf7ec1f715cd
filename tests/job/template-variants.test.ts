import { describe, expect, it } from 'vitest';
import { templateVariants } from '../../src/job/index.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { told } from '../checks/told.ts';
import { exampleWorkspace } from '../example-workspace.ts';

/** A guide with one template; `attributes` go on the template, `body` into it, `steps` after it. */
function guide(body: string, steps: string, attributes = ''): string {
  return `---
title: Example guide
platform: example-van
options:
  lamps: {one-of: {halogen: Halogen headlamps, led: LED headlamps, laser: Laser headlamps}}
---

## Work {#work}

::none{of=supplies}
::none{of=kit}
::none{of=conditions}
::wear[Eye protection]{#eye-protection}
::tool[Jigsaw]{#jigsaw}
::tool[8 mm bit]{#bit diameter="8 mm"}
::part[Bumper cover]{#cover}

:::cut-template[Opening]{#opening panel=cover face=outside${attributes}}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Lower edge of the cover]{axis=horizontal at="0 mm"}
${body}
:::

::step[Cut the opening]{#cut-opening}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

${steps}
`;
}

const rectangle = '::outline{points="-40,20 40,20 40,60 -40,60" unit=mm}';
const hole = (id: string, x: number, when = '') =>
  `::hole[Hole ${id}]{#${id} centre="${x},40" unit=mm diameter="8 mm"${when && ` when="${when}"`}}`;

async function variantsOf(text: string) {
  const { guides, findings } = await inspect(memoryFiles(exampleWorkspace({ 'example/guide.md': text })));
  const [{ guide: found, job } = {}] = guides;
  const template = found?.templates.get('opening');
  if (!found || !job || !template) throw new Error('no template');
  const drawn = templateVariants(template, found, job).map(({ template: one, plans }) => ({
    variant: one.variant,
    holes: one.holes.map(({ id }) => id),
    builds: plans.flatMap((plan) => plan.builds),
  }));
  return {
    drawn,
    template,
    same: templateVariants(template, found, job)[0]?.template === template,
    findings,
  };
}

describe('the drawings of a template', () => {
  it('are one, the template as written, where nothing in it has a condition', async () => {
    const { drawn, same } = await variantsOf(guide(rectangle, ':cut[opening]{with=jigsaw}.'));
    expect(drawn).toHaveLength(1);
    expect(same).toBe(true);
  });

  it('are one for each set of features that a build has, named after what tells them apart', async () => {
    const steps =
      ':cut[opening]{with=jigsaw}. :where[Then :drill[near]{with=bit}.]{when=fog} :where[:drill[far]{with=bit}.]{when="lamps is led"}';
    const { drawn, findings } = await variantsOf(
      guide(`${rectangle}\n${hole('near', 70, 'fog')}\n${hole('far', 90, 'lamps is led')}`, steps),
    );
    expect(findings).toEqual([]);
    expect(drawn.map(({ variant, holes }) => [variant?.suffix, variant?.builds, holes])).toEqual([
      [
        'fog-yes_lamps-halogen_or_fog-yes_lamps-laser',
        'with front fog lamps and halogen headlamps; or with front fog lamps and laser headlamps',
        ['near'],
      ],
      ['fog-yes_lamps-led', 'with front fog lamps and LED headlamps', ['near', 'far']],
      [
        'fog-no_lamps-halogen_or_fog-no_lamps-laser',
        'with halogen headlamps, without front fog lamps; or with laser headlamps, without front fog lamps',
        [],
      ],
      ['fog-no_lamps-led', 'with LED headlamps, without front fog lamps', ['far']],
    ]);
  });

  it('are only those that a build which gets the template really has', async () => {
    const steps = ':where[:cut[opening]{with=jigsaw} and :drill[near]{with=bit}.]{when=fog}';
    const { drawn, findings } = await variantsOf(
      guide(`${rectangle}\n${hole('near', 70, 'fog')}`, steps, ' when=fog'),
    );
    expect(drawn.map(({ variant, holes }) => [variant, holes])).toEqual([[null, ['near']]]);
    expect(findings).toEqual([]);
  });

  it('are numbered where their names would be too long', async () => {
    const conditions = ['fog and lamps is led', 'fog and lamps is halogen', 'not fog and lamps is laser'];
    const holes = conditions.map((when, index) => hole(`h-${index}`, 70 + 20 * index, when));
    const { drawn } = await variantsOf(
      guide([rectangle, ...holes].join('\n'), ':cut[opening]{with=jigsaw}.'),
    );
    expect(drawn.map(({ variant }) => variant?.suffix)).toEqual([
      'drawing-1',
      'drawing-2',
      'drawing-3',
      'drawing-4',
    ]);
    expect(drawn[2]?.variant?.builds.split('; or ')).toHaveLength(3);
  });
});

describe('what is told of a template that differs between builds', () => {
  const cut = ':cut[opening]{with=jigsaw}.';

  it('is told for the builds that show it', async () => {
    const text = guide(
      `${rectangle}\n${hole('near', 42, 'fog')}`,
      `${cut} :where[:drill[near]{with=bit}.]{when=fog}`,
    );
    const { findings } = await variantsOf(text);
    expect(findings.map(({ code, notes }) => [code, notes.map(({ message }) => message)])).toEqual([
      ['cut-features-coincide', ['B: Hole near', 'This happens when *fog* is fitted.']],
    ]);
  });

  it.each([
    [
      'a hole that its builds do not drill',
      hole('near', 70, 'fog'),
      cut.replace('.', ', and look.'),
      'cut-never-made',
    ],
    [
      'a hole that is drilled where it is not drawn',
      hole('near', 70, 'fog'),
      `${cut} :drill[near]{with=bit}.`,
      'action-impossible',
    ],
    ['a hole that no build has', hole('near', 70, 'fog and not fog'), cut, 'branch-dead'],
    ['a mistyped option', hole('near', 70, 'fogs'), cut, 'option-unknown'],
  ])('%s', async (_, feature, steps, code) => {
    // A hole that is named is made by itself where another is.
    const other = hole('other', 90);
    const text = guide(`${rectangle}\n${other}\n${feature}`, `${steps} :drill[other]{with=bit}.`);
    expect((await told({ 'example/guide.md': text })).map((line) => line.split(':')[0])).toContain(code);
  });

  it('counts the holes of each build for what goes through them', async () => {
    const text = guide(
      `${hole('near', 70, 'fog').replace('}', ' for=screw}')}\n${hole('far', 90, 'not fog').replace('}', ' for=screw}')}`,
      ':where[:drill[near]{with=bit}.]{when=fog} :where[:drill[far]{with=bit}.]{when="not fog"} :fit[screw].',
    )
      .replace('::none{of=kit}', '::kit[Screw]{#screw}')
      .replace('::tool[Jigsaw]{#jigsaw}\n', '');
    expect(await told({ 'example/guide.md': text })).toEqual([]);
    const two = text
      .replace('when="not fog" for=screw', 'for=screw')
      .replace(':where[:drill[far]{with=bit}.]{when="not fog"}', ':drill[far]{with=bit}.');
    const { findings } = await variantsOf(two);
    expect(findings.map(({ code, message }) => [code, message])).toEqual([
      ['holes-disagree', 'the templates make 2 holes for 1 screw'],
    ]);
    expect(findings[0]?.notes.at(-1)?.message).toBe('This happens when *fog* is fitted.');
  });

  it('takes the options of the guide where a procedure brings the template', async () => {
    const own = guide(
      `${rectangle}\n${hole('near', 70, 'lamp')}`,
      `${cut} :where[:drill[near]{with=bit}.]{when=lamp}`,
    );
    const files = {
      'procedures/opening.md': own
        .replace(/title[\s\S]*?---/, 'title: Opening\noptions:\n  lamp: A lamp\n---')
        .replace(/::none.*\n/g, ''),
      'example/guide.md': guide('', '').replace(
        /::wear[\s\S]*/,
        '\n::procedure{of=opening #placed options="lamp=fog"}\n',
      ),
    };
    expect(await told(files)).toEqual([]);
  });
});
