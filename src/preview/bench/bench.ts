import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { pictureBox, picturePoint } from '../../directives/attributes/attribute-types.ts';
import { marksOverlay } from '../../drawings/marks.ts';
import { placeMarks } from '../../drawings/place-marks.ts';
import { stringify } from '../../html/stringify.ts';
import { inspectPicture } from '../../pictures/inspect.ts';
import { shownUpright, turnedRight } from '../../pictures/show.ts';
import { resolvePath } from '../../shop/files/resolve-path.ts';
import { readText } from '../../shop/files/text-files.ts';
import type { WorkspaceFiles } from '../../shop/files/workspace-files.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { contentHash, sha256 } from '../../store/content-hash.ts';
import { itemsOf, type KnownItems, type PointedItem } from './bench-items.ts';
import { cleanName } from './clean-name.ts';
import type { BenchFigure } from './figure-text.ts';
import { type PanelOrder, type PanelReading, readPanel } from './panel-points.ts';
import { type FigurePlace, type PlacedFigure, readFigures } from './read-figures.ts';
import type { TextWritten } from './text-edit.ts';
import { addFigure, changeFigure } from './write-figure.ts';
import { addOutline } from './write-outline.ts';

/** What the bench shows of a guide. */
export interface BenchView {
  readonly guide: string;
  /** Of the text that was read; what is written must come from it. */
  readonly edition: string;
  readonly pictures: readonly BenchPicture[];
  readonly figures: readonly (BenchFigure & Pick<PlacedFigure, 'step' | 'of'>)[];
  readonly places: readonly FigurePlace[];
  readonly items: readonly PointedItem[];
  /** Whether the last change of the file was made here and can be taken back. */
  readonly undo: boolean;
}

/** A picture beside the guide; sizes are those of the upright picture in pixels. */
export interface BenchPicture {
  /** From the folder of the guide, as a figure names it. */
  readonly src: string;
  readonly width: number;
  readonly height: number;
  /** Differs where its bytes do. */
  readonly hash: string;
  /** Why it cannot be shown; empty where it can. */
  readonly problem: string;
}

/** A figure to be written: over the one of a number, or as a new one behind a place. */
interface WriteOrder {
  readonly edition: string;
  readonly figure: BenchFigure;
  readonly over: number | null;
  readonly after: number | null;
}

/** An outline that was pressed on a photograph, to be written as a draft behind a place. */
interface OutlineOrder {
  readonly edition: string;
  readonly src: string;
  readonly pressed: PanelOrder;
  readonly panel: string;
  readonly face: 'outside' | 'inside';
  readonly after: number;
}

/** Marks to be drawn as they will print. */
interface OverlayOrder {
  readonly marks: readonly { readonly letter: string; readonly at: string }[];
  readonly width: number;
  readonly height: number;
  readonly crop: string;
}

/** What came of an order. */
export type Done<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: string };

/** The pictures of the guides of a workspace, for pointing on. */
export interface PictureBench {
  readonly look: (guide: string) => Promise<BenchView | null>;
  readonly write: (guide: string, order: WriteOrder) => Promise<Done<BenchView>>;
  /** Takes back the last change that was made here, as long as nobody has changed the file since. */
  readonly undo: (guide: string) => Promise<Done<BenchView>>;
  /** Keeps a copy of a photograph beside the guide, and gives back how a figure names it. */
  readonly keep: (guide: string, name: string, bytes: Uint8Array) => Promise<Done<string>>;
  /** Turns the copy by a quarter to the right. */
  readonly turn: (guide: string, src: string) => Promise<Done<string>>;
  /** A picture for a browser, upright; `null` where there is none. */
  readonly show: (
    guide: string,
    src: string,
  ) => Promise<{ readonly type: string; readonly bytes: Uint8Array } | null>;
  readonly overlay: (order: OverlayOrder) => string;
  /** What was pressed on a photograph of a panel, measured by two known lengths. */
  readonly measure: (order: PanelOrder) => Done<PanelReading>;
  /** Writes it into the guide as the draft of a cut template. */
  readonly outline: (guide: string, order: OutlineOrder) => Promise<Done<BenchView>>;
}

/**
 * The bench of a workspace. Nothing outside the folder of a guide is written, and nothing of the bench reaches a site.
 *
 * @param root the folder of the workspace
 * @param known what the shop and the platforms call the things that a guide takes from them
 */
export function pictureBench(root: string, files: WorkspaceFiles, known: () => KnownItems): PictureBench {
  /** For each guide, its text before and after each change that was made here. */
  const changes = new Map<string, { readonly before: string; readonly after: string }[]>();
  const sourceOf = (guide: string): SourceFile | null =>
    /^[^/\\]+$/.test(guide) && !guide.startsWith('.') ? readText(files, `${guide}/guide.md`) : null;

  const save = async (source: SourceFile, text: string): Promise<void> => {
    const path = join(root, source.path);
    const mark = (await readFile(path)).subarray(0, 3).equals(byteOrderMark) ? '\uFEFF' : '';
    await writeFile(path, mark + text);
  };
  const look = async (guide: string): Promise<BenchView | null> => {
    const source = sourceOf(guide);
    if (!source) return null;
    const { figures, places } = readFigures(source);
    const shown = figures.map(({ directive: _, marks, ...figure }) => ({
      ...figure,
      marks: marks.map(({ letter, at, text }) => ({ letter, at, text })),
    }));
    return {
      guide,
      edition: editionOf(source),
      pictures: await picturesOf(guide, shown, files),
      figures: shown,
      places,
      items: itemsOf(source, known()),
      undo: changes.get(guide)?.at(-1)?.after === source.text,
    };
  };
  const looked = async (guide: string): Promise<Done<BenchView>> => {
    const view = await look(guide);
    return view ? { ok: true, value: view } : noGuide(guide);
  };
  /** Changes a guide, as long as it is still the text that the bench shows. */
  const change = async (
    guide: string,
    edition: string,
    changed: (source: SourceFile) => TextWritten,
  ): Promise<Done<BenchView>> => {
    const source = sourceOf(guide);
    if (!source) return noGuide(guide);
    if (editionOf(source) !== edition)
      return {
        ok: false,
        problem: 'the guide has been saved elsewhere since; it has been read anew, look at it again',
      };
    const written = changed(source);
    if (!written.ok) return written;
    if (written.text !== source.text) {
      await save(source, written.text);
      changes.set(guide, [...(changes.get(guide) ?? []), { before: source.text, after: written.text }]);
    }
    return looked(guide);
  };
  return {
    look,
    write: (guide, { edition, figure, over, after }) =>
      change(guide, edition, (source) => {
        const fault = faultIn(figure);
        if (fault !== null) return { ok: false, problem: fault };
        return over === null ? addFigure(source, figure, after ?? -1) : changeFigure(source, figure, over);
      }),
    measure: readPanel,
    outline: (guide, { edition, src, pressed, panel, face, after }) =>
      change(guide, edition, (source) => {
        const read = readPanel(pressed);
        if (!read.ok) return read;
        if (read.value.points === '')
          return {
            ok: false,
            problem: 'an outline has three corners at the least; press them one after the other',
          };
        const [one, other] = pressed.known;
        if (!itemsOf(source, known()).some(({ kind, id }) => kind === 'part' && id === panel))
          return { ok: false, problem: 'choose the part that is cut; the guide must declare it first' };
        return addOutline(source, read.value, { src, panel, face, known: [one.typed, other.typed] }, after);
      }),
    undo: async (guide) => {
      const source = sourceOf(guide);
      const made = changes.get(guide) ?? [];
      const last = made.at(-1);
      if (!source || !last)
        return { ok: false, problem: 'nothing was written here that could be taken back' };
      if (last.after !== source.text)
        return { ok: false, problem: 'the guide has been saved elsewhere since; take it back in the editor' };
      await save(source, last.before);
      changes.set(guide, made.slice(0, -1));
      return looked(guide);
    },
    keep: async (guide, name, bytes) => {
      if (!sourceOf(guide)) return noGuide(guide);
      const clean = cleanName(name);
      if (clean === null)
        return {
          ok: false,
          problem: `${name} is no picture that a guide shows; JPEG, PNG, WebP or SVG was expected`,
        };
      const looked = await inspectPicture(bytes, name);
      if (!looked.ok) return { ok: false, problem: looked.problems[0]?.message ?? '' };
      for (let again = 1; ; again += 1) {
        const src = `pictures/${again === 1 ? clean : clean.replace(/(?=\.[a-z]+$)/, `-${again}`)}`;
        const there = files.read(`${guide}/${src}`);
        if (there && sha256(there) !== sha256(bytes)) continue;
        if (!there) await put(join(root, guide, src), bytes);
        return { ok: true, value: src };
      }
    },
    turn: async (guide, src) => {
      const bytes = pictureBytes(guide, src, files);
      if (!bytes || !/^pictures\/[^/]+\.jpg$/.test(src))
        return { ok: false, problem: 'only a photograph in the folder pictures of the guide can be turned' };
      await put(join(root, guide, src), await turnedRight(bytes));
      return { ok: true, value: src };
    },
    show: async (guide, src) => {
      const bytes = pictureBytes(guide, src, files);
      if (!bytes) return null;
      if (src.endsWith('.svg')) return { type: 'image/svg+xml', bytes };
      return { type: 'image/webp', bytes: await shownUpright(bytes) };
    },
    overlay: ({ marks, width, height, crop }) => {
      const box = crop === '' ? null : pictureBox.read(crop, nowhere);
      const points = marks.flatMap(({ letter, at }) => {
        const point = picturePoint.read(at, nowhere);
        return point.ok ? [{ letter, point: point.value }] : [];
      });
      return stringify([marksOverlay(placeMarks(points, { width, height }, box?.ok ? box.value : null))])
        .html;
    },
  };
}

const byteOrderMark = Buffer.from([0xef, 0xbb, 0xbf]);

/** The place of what comes from the bench and stands in no file yet. */
const nowhere = { file: '', start: 0, end: 0 };

function noGuide(guide: string) {
  return { ok: false, problem: `there is no guide "${guide}"` } as const;
}

function editionOf({ path, text }: SourceFile): string {
  return contentHash(path, text);
}

async function put(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, bytes);
}

function pictureBytes(guide: string, src: string, files: Pick<WorkspaceFiles, 'read'>): Uint8Array | null {
  const path = resolvePath(`${guide}/guide.md`, src);
  return path !== null && /\.(?:jpe?g|png|webp|svg|avif|tiff?|gif)$/i.test(path) ? files.read(path) : null;
}

/** What the format would not read, in its own words, and what is not said yet: a figure goes into the guide whole. */
function faultIn({ crop, blur, zoom, shows, marks, src, caption, alt }: BenchFigure): string | null {
  const boxes = [crop, blur, zoom].filter((box) => box !== '').map((box) => pictureBox.read(box, nowhere));
  const points = marks.map(({ at }) => picturePoint.read(at, nowhere));
  const bad = [...boxes, ...points].find((read) => !read.ok);
  if (bad && !bad.ok) return bad.message;
  if (src === '') return 'choose a picture first';
  if (!['', 'left', 'right'].includes(shows)) return `"${shows}" is no side of the vehicle`;
  if (caption.trim() === '') return 'the caption is still empty';
  if (alt.trim() === '') return 'nothing says yet what the picture shows, for whoever cannot see it';
  const silent = marks.find(({ text }) => text.trim() === '');
  return silent
    ? `mark ${silent.letter} does not say yet what it shows: choose it, write it in words, or take the mark away`
    : null;
}

async function picturesOf(
  guide: string,
  figures: readonly BenchFigure[],
  files: WorkspaceFiles,
): Promise<readonly BenchPicture[]> {
  const own = new RegExp(
    `^${guide.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}/(pictures/[^/]+\\.(?:jpg|jpeg|png|webp|svg))$`,
    'i',
  );
  const beside = [...(await files.list()).files.keys()].flatMap((path) => own.exec(path)?.[1] ?? []);
  const all = [...new Set([...beside.sort(), ...figures.map(({ src }) => src)])].filter((src) => src !== '');
  return Promise.all(
    all.map(async (src): Promise<BenchPicture> => {
      const bytes = pictureBytes(guide, src, files);
      if (!bytes) return { src, width: 0, height: 0, hash: '', problem: `${src} is not there` };
      const looked = await inspectPicture(bytes, src);
      const hash = sha256(bytes);
      return looked.ok
        ? { src, width: looked.value.width, height: looked.value.height, hash, problem: '' }
        : { src, width: 0, height: 0, hash, problem: looked.problems[0]?.message ?? '' };
    }),
  );
}
