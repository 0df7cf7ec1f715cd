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

  it('ends the job only for what is found', async () => {
    const always = stop.replace('when="thread is worn-out" ', '');
    expect(await told(declared + look + always + refit)).toEqual([
      'stop-always: ::step[Ask the owner]{#ask stop}',
    ]);
  });

  it('is found once: a step that looks on each side asks for two', async () => {
    const twice =
      '::step[Look]{#look side=each}\n\n:inspect[thread].\n\n::step[Lift it]{#lift}\n\n:remove[cover].\n\n';
    expect(await told(declared + twice + clean + refit)).toEqual(['side-disagrees: :inspect[thread]']);
  });

  it('hangs on an inspection that is there in some builds alone', async () => {
    const some = declared.replace('outcomes', 'when=fog outcomes');
    const sought = look.replace(':inspect[thread]', ':where[:inspect[thread]]{when=fog}');
    const narrow = clean.replace('thread is rusty', 'fog and thread is rusty');
    expect(await told(some + sought + narrow + refit)).toEqual([]);
    expect(await told(some + sought + clean + refit)).toEqual(['inspection-absent: thread is rusty']);
  });

  it('hangs on it where a procedure is placed, under the name that it has there', async () => {
    const placed = (attributes: string, after = '') => ({
      'procedures/thread-seen.md': `---\ntitle: Thread looked at\n---\n\n${declared}${look}${clean}${refit}`,
      'example/guide.md': `## Work {#work}\n\n::procedure{of=thread-seen${attributes}}\n\n${after}`,
    });
    expect(await told(placed(''))).toEqual([]);
    expect(await told(placed(' prefix=left'))).toEqual([]);
    const more = '::step[Oil it]{#oil when="left-thread is rusty"}\n\nOil the thread.\n';
    expect(await told(placed(' prefix=left', more))).toEqual([]);
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
