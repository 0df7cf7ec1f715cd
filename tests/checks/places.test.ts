import { expect, it } from 'vitest';
import { told } from './told.ts';

const template = (panel: string, bolt: string) => `::tool[8 mm bit]{#bit diameter="8 mm"}
::part[Bumper cover]{#cover}
::kit[Bolt]{#bolt}

:::cut-template[Opening]{#opening panel=${panel} face=outside}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Lower edge of the cover]{axis=horizontal at="0 mm"}
::hole[Bolt hole]{#hole centre="0,40" unit=mm diameter="8 mm" for=${bolt}}
:::

::step[Drill]{#drill}

Lay the :cut-template[opening] template on the :part[cover]. :drill[hole]{with=bit} and :fit[bolt].
`;

it('points at the very id that a template names and nobody declares', async () => {
  expect(await told(template('cover', 'bolt'))).toEqual([]);
  expect(await told(template('grille', 'bolt'))).toEqual(['item-undeclared: grille']);
  expect(await told(template('cover', 'bracket'))).toEqual(['item-undeclared: bracket']);
});
