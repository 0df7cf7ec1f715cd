import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { notChecked } from '../../../src/checks/index.ts';
import { notCheckedWords } from '../../../src/pages/overview/not-checked.ts';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { exampleWorkspace } from '../../example-workspace.ts';
import { openWorkspace } from '../../job/mutation/workspace.ts';

/** What stands under "not checked" for the body of a guide, and the codes of what is found in it. */
async function unchecked(body: string) {
  const { guides, findings } = await inspect(memoryFiles(exampleWorkspace(body)));
  const [found] = guides;
  if (!found) throw new Error('the guide was not read');
  const words = notChecked(found.guide).map((one) => notCheckedWords(one, found.guide));
  return { words, codes: findings.map(({ code }) => code) };
}

const bolt = (attributes: string) =>
  `::fastener[Bolt]{#bolt ${attributes}}\n\n::step[Feel the bolt]{#feel}\n\nSee that the :fastener[bolt] sits flat.`;
const look = '\n\n::step[Look at the roof]{#look}\n\nLook for dents.';
const cut = (tools: string, by: string) => `${tools}
::kit[Console]{#console}
::part[Cover]{#cover}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Middle]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="-40,20 r2 40,20 r2 40,60 r2 -40,60 r2" unit=mm}
:::

::step[Try the console]{#trial}

Hold the :kit[console] up.

::step[Cut the notch]{#cut-notch}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

${by}, and :fit[console].`;
const hole = (id: string, datum: string, panel = 'cover', extra = '') => `
:::cut-template[${id}]{#${id} panel=${panel} face=outside ${extra}}
::datum[${datum}]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::hole[Bolt hole]{#${id}-hole centre="20,20" diameter="9 mm" for=bolt unit=mm}
:::
`;
const twoTemplates = (first: string, second: string) =>
  `::part[Cover]{#cover}
::part[Tray]{#tray}
::fastener[Bolt]{#bolt thread=M8x1.25}
${first}${second}
::step[Feel the bolt]{#feel}

See that the :fastener[bolt], the :part[cover] and the :part[tray] sit flat.`;
const joint = (bolt: string, nut: string, spacer: string) =>
  `::tool[13 mm socket]{#socket drive="hex 13"}
::kit[Bar]{#bar length="6 mm"}
::kit[Spacer]{#spacer${spacer}}
::kit[Bar bolt]{#bolt thread=M8x1.25 drive="hex 13" holds=bar stack="bar spacer nut" with=socket${bolt}}
::kit[Lock nut]{#nut${nut} drive="hex 13" with=socket}

::step[Hang the bar]{#hang}

:fit[bar] and :fit[spacer]. Then :start[bolt] and :start[nut], and :tighten[nut]. :tighten[bolt].`;
const cutter = '::tool[Rotary cutter]{#cutter cutter-radius="3 mm"}';
const saw = '::tool[Jigsaw]{#jigsaw}';
const lever = '::tool[Trim lever]{#lever}';

describe('what is not checked is said, and is no finding', () => {
  it.each([
    [
      'a torque without a grade',
      bolt('thread=M6x1 torque="20 N·m"'),
      'the torque of the bolt: its grade is not stated',
    ],
    [
      'a torque without a thread',
      bolt('torque="20 N·m"'),
      'the torque of the bolt: its thread is not stated',
    ],
    [
      'a hexagon on a thread that no table has',
      bolt('thread=M27 drive="hex 41"'),
      'the width across flats of the bolt: no table here has it for its thread',
    ],
    [
      'a loom without a circuit',
      `::kit[Relay loom]{#loom}\n\n::step[Lay the loom]{#lay}\n\n:fit[loom].`,
      'wire and fuse of the relay loom: the guide declares no circuit',
    ],
    [
      'a force against a mass',
      `::rating[Rail]{#rail limit="60 kg"}\n::rating[Awning]{#awning claim="900 N"}${look}`,
      'the load of the awning against the limit of the rail: they are of unlike kinds',
    ],
    [
      'a load that nothing limits',
      `::rating[Awning]{#awning claim="70 kg"}${look}`,
      'the load of the awning: nothing that carries it states a limit of that kind',
    ],
    [
      'a load that nobody puts in figures',
      `::rating[Rail]{#rail}\n::rating[Awning]{#awning claim="70 kg"}\n::rating[Bar]{#bar limit="75 kg"}${look}`,
      'the load of the rail: neither a limit nor a load is stated',
    ],
    [
      'a tool for a bolt whose drive nobody states',
      '::tool[13 mm socket]{#socket drive="hex 13"}\n::fastener[Bolt]{#bolt}\n\n::step[Turn]{#turn}\n\n:loosen[bolt]{with=socket} and :tighten[bolt]{with=socket}.',
      'whether the 13 mm socket fits the bolt: its drive is not stated',
    ],
    [
      'a bolt through a spacer of no length',
      joint(' length="30 mm"', ' thread=M8x1.25', ''),
      'whether the bar bolt is long enough for what lies on it: the length of the spacer is not stated',
    ],
    [
      'a nut of no thread',
      joint(' length="30 mm"', '', ' length="10 mm"'),
      'whether the threads on the bar bolt agree: that of the lock nut is not stated',
    ],
    [
      'a cut by a saw whose radius nobody states',
      cut(saw, ':cut[notch]{with=jigsaw trial=trial}'),
      'the corners of the cut “Notch”: the jigsaw states no least radius',
    ],
    [
      'a cut by a saw that is only mentioned',
      cut(saw, 'With the :tool[jigsaw] :cut[notch]{trial=trial}'),
      'the corners of the cut “Notch”: the jigsaw states no least radius',
    ],
    [
      'a cut by what may not be a cutter',
      cut(lever, ':cut[notch]{with=lever trial=trial}'),
      'the corners of the cut “Notch”: the trim lever states no least radius',
    ],
  ])('%s', async (_, body, words) => {
    expect(await unchecked(body)).toEqual({ words: [words], codes: [] });
  });

  it('cuts in one panel that are measured from different edges; those of two panels or sides have nothing to do with each other', async () => {
    const edges = twoTemplates(hole('upper', 'Left edge'), hole('lower', 'Right edge'));
    expect((await unchecked(edges)).words).toEqual([
      'whether the cuts of “upper” and “lower” keep clear of each other: they are not measured from the same datums',
    ]);
    const same = twoTemplates(hole('upper', 'Left edge'), hole('lower', 'Left edge'));
    expect((await unchecked(same)).words).toEqual([]);
    const panels = twoTemplates(hole('upper', 'Left edge'), hole('lower', 'Right edge', 'tray'));
    expect((await unchecked(panels)).words).toEqual([]);
    const left = hole('upper', 'Left edge', 'cover', 'side=left');
    const sides = twoTemplates(left, hole('lower', 'Right edge', 'cover', 'side=right'));
    expect((await unchecked(sides)).words).toEqual([]);
  });

  it('a cutter that is only mentioned is held against the corners', async () => {
    const body = cut(cutter, 'With the :tool[cutter] :cut[notch]{trial=trial}');
    expect((await unchecked(body)).codes).toEqual(Array(4).fill('cut-radius-below-cutter'));
  });

  it('is the care that a name asks for, where the item states no kind of work', async () => {
    const plug = (label: string, attributes = '') =>
      `::connector[${label}]{#plug${attributes}}\n\n::step[Unplug it]{#unplug sign-off=second}\n\n:disconnect[plug] and :connect[plug].`;
    const said = (work: string, label: string) =>
      `the messages and signatures that belong to work on the ${label}: it does not state work=${work}`;
    expect((await unchecked(plug('Side airbag plug'))).words).toEqual([said('airbag', 'side airbag plug')]);
    expect((await unchecked(plug('Belt tensioner plug'))).words).toEqual([
      said('airbag', 'belt tensioner plug'),
    ]);
    expect((await unchecked(plug('Seat belt switch'))).words).toEqual([
      said('seat-belt', 'seat belt switch'),
    ]);
    expect((await unchecked(plug('High-voltage plug'))).words).toEqual([
      said('high-voltage', 'high-voltage plug'),
    ]);
    expect((await unchecked(plug('Brake pad wear sensor'))).words).toEqual([
      said('brakes', 'brake pad wear sensor'),
    ]);
    expect((await unchecked(plug('Tow bar socket'))).words).toEqual([said('towing', 'tow bar socket')]);
    expect((await unchecked(plug('Side airbag plug', ' work=airbag'))).words).toEqual([]);
    expect((await unchecked(plug('Third brake lamp'))).words).toEqual([]);
    const named = `${plug('Lamp plug')} Leave the :connector[other] alone.`;
    expect((await unchecked(`::connector[Airbag plug]{#other}\n${named}`)).words).toEqual([]);
  });

  it('is the cure of a product for which nothing waits', async () => {
    const glued = (needs: string) =>
      `::kit[Hook]{#hook}\n::supply[Glue]{#glue quantity="10 ml" cures="24 h"}\n\n::step[Glue the hook]{#stick${needs === '' ? '' : ' wait="24 h"'}}\n\n:apply[glue]{amount="5 ml" on=hook} and :bond[hook].\n\n::step[Hang the coat on it]{#coat${needs}}\n\nHang a coat on it.`;
    expect((await unchecked(glued(''))).words).toEqual([
      'whether the glue has cured before it is loaded or gets wet: nothing that waits for it states needs=glue',
    ]);
    expect(await unchecked(glued(' needs=glue'))).toEqual({ words: [], codes: [] });
  });

  it('is nothing in the guide that the design fixes', async () => {
    const folder = resolve(import.meta.dirname, '../../cases/lamp-cradle-fixture');
    const { clean } = await openWorkspace(folder);
    expect(clean.map(notChecked)).toEqual([[]]);
    expect(readFileSync(resolve(folder, 'lamp-cradle/guide.md'), 'utf8')).toContain('torque="25 N·m"');
  });
});
