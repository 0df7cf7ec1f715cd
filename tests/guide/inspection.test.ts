import { describe, expect, it } from 'vitest';
import { told } from '../checks/told.ts';

const declared = '::inspection[Thread]{#thread outcomes="clean rusty worn-out"}\n::part[Cover]{#cover}\n\n';
const look = '::step[Look at the thread]{#look}\n\n:remove[cover] and :inspect[thread].\n\n';
const clean = '::step[Clean it]{#clean when="thread is rusty"}\n\nBrush the thread.\n\n';
const refit = '::step[Put it back]{#back}\n\n:refit[cover].\n';
const stop = '::step[Ask the owner]{#ask when="thread is worn-out" stop}\n\nTell the owner.\n\n';

describe('what hangs on an inspection', () => {
  it('is done once it is found', async () => {
    expect(await told(declared + look + clean + refit)).toEqual([]);
  });

  it('is not done before it is looked at', async () => {
    expect(await told(declared + clean + look + refit)).toEqual(['need-unmet: thread is rusty']);
  });

  it('stands within the step that looks, after the look and not before', async () => {
    const early =
      '::step[Look]{#look}\n\n:where[:remove[cover], :refit[cover].]{when="thread is rusty"} :inspect[thread].\n';
    const late =
      '::step[Look]{#look}\n\n:inspect[thread]. :where[:remove[cover], :refit[cover].]{when="thread is rusty"}\n';
    expect(await told(declared + late)).toEqual([]);
    expect(await told(declared + early)).toEqual(['need-unmet: :remove[cover]']);
  });

  it('may end the job with what is off the vehicle, for that finding alone', async () => {
    expect(await told(declared + look + stop + refit)).toEqual([]);
    expect(await told(declared + look + stop)).toEqual(['part-left-off: :remove[cover]']);
  });

  it('is one of the outcomes', async () => {
    const unknown = clean.replace('rusty', 'dusty');
    expect((await told(declared + look + unknown + refit)).map((line) => line.split(':')[0])).toContain(
      'option-unknown',
    );
    const one = declared.replace('clean rusty worn-out', 'clean');
    expect((await told(one + look + refit)).map((line) => line.split(':')[0])).toContain('attribute-value');
  });
});
