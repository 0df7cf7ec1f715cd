import type { BenchPicture, BenchView } from '../../src/preview/bench/bench.ts';
import { button, make, say } from './bay/elements.ts';
import { askBench, benchAddress } from './bench/ask.ts';
import { type Draft, emptyDraft } from './bench/draft.ts';
import { formOf } from './bench/form.ts';
import { panelOf } from './bench/panel.ts';
import { printView } from './bench/print-view.ts';
import { stageOf } from './bench/stage.ts';

/**
 * The bench for the pictures of a guide: photographs are dropped in, marks are placed by pointing, and the figure is
 * written into the guide.
 */
const own = document.currentScript;
if (own instanceof HTMLScriptElement) void start(own.dataset.guide ?? '');

async function start(guide: string): Promise<void> {
  const read = await askBench<BenchView>(benchAddress('view', guide), null);
  const main = document.querySelector('main');
  if (!main) return;
  if (!read.ok) {
    main.append(make('p', 'bench-told', read.problem));
    return;
  }
  let view = read.value;
  let draft: Draft | null = null;
  const told = make('p', 'bench-told');
  told.setAttribute('role', 'status');
  const list = make('section', 'bench-list');
  list.setAttribute('aria-label', 'Photographs');
  const work = make('section', 'bench-work');
  const side = make('section', 'bench-form');
  main.append(told, make('div', 'bench', list, work, side));

  const picture = (): BenchPicture | null => view.pictures.find(({ src }) => src === draft?.src) ?? null;
  const drawn = printView();
  const changed = (): void => {
    stage.draw(draft, picture(), guide);
    form.draw(draft, view);
    void drawn.draw(draft, picture(), guide);
    panel.draw(picture(), view);
  };
  const take = (next: Draft | null): void => {
    draft = next;
    changed();
    drawList();
  };
  const carryOut = async (what: string, order: unknown, done: string): Promise<boolean> => {
    const answer = await askBench<BenchView>(benchAddress(what, guide), order);
    if (!answer.ok) {
      say(told, answer.problem);
      const anew = await askBench<BenchView>(benchAddress('view', guide), null);
      if (anew.ok) view = anew.value;
      return false;
    }
    view = answer.value;
    say(told, done);
    return true;
  };
  const stage = stageOf(
    () => draft,
    changed,
    async () => {
      const src = draft?.src ?? '';
      const used = view.figures.filter((figure) => figure.src === src).length;
      if (used > (draft?.over === null ? 0 : 1)) {
        say(told, 'Other figures show this photograph too; turn it before it is used twice');
        return false;
      }
      const turned = await askBench(benchAddress('turn', guide, src), {});
      if (!turned.ok) {
        say(told, turned.problem);
        return false;
      }
      const anew = await askBench<BenchView>(benchAddress('view', guide), null);
      if (anew.ok) view = { ...anew.value, edition: view.edition };
      return true;
    },
  );
  const form = formOf(changed, {
    write: async () => {
      if (!draft) return;
      const { over, after, figure } = draft.order();
      const order = { edition: view.edition, figure, over, after };
      if (await carryOut('write', order, 'Written into the guide')) {
        const at =
          over ?? view.figures.findIndex((one) => one.src === figure.src && one.caption === figure.caption);
        take(emptyDraft(figure.src, view, at < 0 ? null : at));
      } else changed();
    },
    undo: async () => {
      if (await carryOut('undo', {}, 'The last change was taken back')) take(null);
    },
  });
  const panel = panelOf(guide, async (order) => {
    const done = 'The draft stands in the guide; measure on the panel before anything is cut';
    await carryOut('outline', { ...order, edition: view.edition }, done);
    changed();
  });
  work.append(stage.element, drawn.element, panel.element);
  side.append(form.element);

  const choose = make('input', '');
  choose.type = 'file';
  choose.multiple = true;
  choose.accept = 'image/*';
  const drop = make(
    'div',
    'bench-drop',
    make('label', '', 'Drop photographs here, or choose them: ', choose),
  );
  const keep = async (files: Iterable<File>): Promise<void> => {
    const problems: string[] = [];
    let last = '';
    for (const file of files) {
      const kept = await askBench<string>(benchAddress('keep', guide, file.name), file);
      if (kept.ok) last = kept.value;
      else problems.push(kept.problem);
    }
    const anew = await askBench<BenchView>(benchAddress('view', guide), null);
    if (anew.ok) view = anew.value;
    say(
      told,
      problems.length > 0 ? problems.join('; ') : 'Copied beside the guide; the originals are as they were',
    );
    if (last !== '') take(emptyDraft(last, view, null));
    else drawList();
  };
  choose.addEventListener(
    'change',
    () =>
      void keep(choose.files ?? []).then(() => {
        choose.value = '';
      }),
  );
  drop.addEventListener('dragover', (event) => {
    event.preventDefault();
    drop.classList.add('over');
  });
  drop.addEventListener('dragleave', () => drop.classList.remove('over'));
  drop.addEventListener('drop', (event) => {
    event.preventDefault();
    drop.classList.remove('over');
    void keep(event.dataTransfer?.files ?? []);
  });

  const entry = (src: string, words: string, over: number | null): HTMLElement => {
    const own = view.pictures.find((one) => one.src === src);
    const line = button('', '', () => take(emptyDraft(src, view, over)));
    line.setAttribute('aria-pressed', String(draft?.src === src && draft.over === over));
    if (own && own.problem === '') {
      const thumb = make('img', '');
      thumb.src = `${benchAddress('picture', guide, src)}&hash=${own.hash.slice(0, 12)}`;
      thumb.alt = '';
      thumb.loading = 'lazy';
      line.append(thumb);
    }
    line.append(make('b', '', src.replace(/^pictures\//, '')), ` ${own?.problem || words}`);
    return line;
  };
  const drawList = (): void => {
    const used = new Set(view.figures.map(({ src }) => src));
    const where = ({ step, caption }: BenchView['figures'][number]) =>
      step === '' ? caption : `in “${step}”`;
    const figures = view.figures.flatMap((figure, index) =>
      figure.src === '' ? [] : [entry(figure.src, where(figure), index)],
    );
    // The own picture of a thing lies where the thing is declared, and other guides show it too.
    const ofThings = view.figures
      .filter(({ src, of }) => src === '' && of !== '')
      .map((figure) => make('p', '', make('b', '', figure.of), ` ${where(figure)}`));
    const free = view.pictures
      .filter(({ src }) => !used.has(src))
      .map(({ src }) => entry(src, 'not in the guide yet', null));
    list.replaceChildren(
      drop,
      ...(free.length > 0 ? [make('h2', '', 'Not used yet'), ...free] : []),
      ...(figures.length > 0 ? [make('h2', '', 'In the guide'), ...figures] : []),
      ...(ofThings.length > 0
        ? [make('h2', '', 'Pictures of things, kept where these are declared'), ...ofThings]
        : []),
    );
  };
  take(null);
}
