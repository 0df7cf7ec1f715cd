import { expect, it } from 'vitest';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const body = (torque: string) => `::tool[13 mm crowfoot]{#crowfoot-13 drive="hex 13" offset="4 in"}
::tool[Torque wrench]{#wrench range="10..60 lbf·ft" length="12 in"}
::fastener[Bracket bolt]{#bolt drive="hex 13" torque="${torque}"}

::step[Loosen the bolt]{#loosen}

:loosen[bolt]{with=crowfoot-13}.

::step[Tighten the bolt]{#tighten}

:tighten[bolt]{with="wrench crowfoot-13"}.
`;

/** What stands under the step that tightens, with ordinary spaces. */
async function settingOf(guide: string): Promise<string> {
  const found = await bench(exampleWorkspace(guide));
  expect(await found.build()).toMatchObject({ code: 0, err: '' });
  const page = (await found.page('guides/example/index.html')).replace(/\s/g, ' ');
  return /<dt>Torque<\/dt><dd>[^<]*<strong>[^<]*<\/strong>(.*?)<\/dd>/.exec(page)?.[1] ?? '';
}

// 40 lbf·ft, L 12 in, E 4 in: set 30 lbf·ft (TM 9-2350-277-40&P p. 44).
it('a step that tightens with a crowfoot prints what the wrench is set to, and how that is worked out', async () => {
  expect(await settingOf(body('40 lbf·ft'))).toBe(
    '<br>Set the wrench to <strong>30 lbf·ft (40.7 N·m)</strong> with the 13 mm crowfoot in line with it (40 lbf·ft × 12 in ÷ (12 in + 4 in)), or to <strong>40 lbf·ft (54.2 N·m)</strong> with the 13 mm crowfoot at 90° to it. What the maker of the wrench says comes first.',
  );
});

it('each pass has its own setting, and an angle has none', async () => {
  expect(await settingOf(body('20 lbf·ft, 40 lbf·ft, +90°'))).toContain(
    '<strong>15 lbf·ft (20.3 N·m), then to 30 lbf·ft (40.7 N·m)</strong> with the 13 mm crowfoot in line with it (20 lbf·ft × 12 in ÷ (12 in + 4 in); 40 lbf·ft × 12 in ÷ (12 in + 4 in))',
  );
});

it('a step without a crowfoot prints the torque alone', async () => {
  const plain = body('40 lbf·ft').replace(' offset="4 in"', '');
  expect(await settingOf(plain)).toBe('');
});
